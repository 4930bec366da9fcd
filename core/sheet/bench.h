#pragma once
/// What the sheets for the bench say: survey, burette, stack, plate and throws; how they are drawn
/// is not their business.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/plate/outline.h"
#include "core/sheet/kind.h"
#include "core/sheet/sheet.h"

namespace strokewright::sheet {

/// Empty boxes for one entry, and what is entered already.
struct Asked {
  std::string label;                       ///< "Seat above the crank axis"
  std::string unit;                        ///< of what is written into the boxes
  std::string instrument;                  ///< and its ±: "height gauge, ± 0.03 mm"
  std::string how;                         ///< how it is measured
  std::vector<std::string> columns = {};   ///< of each reading: "start", "end", "filled"; none: one
  int readings = 1;                        ///< wanted; fewer where there is no room
  std::string place = "cylinder";          ///< what stands before the label of each place
  std::vector<Box> places = {};            ///< one for each cylinder, with what is entered
  const describe::Input* input = nullptr;  ///< none: it is judged at the bench alone
};

/// A table as it is printed: the first column is words, the others are numbers.
struct Grid {
  std::string heading;
  std::vector<std::string> columns;
  std::vector<std::vector<std::string>> rows;
  bool beside = false;  ///< the one before it, where the page is wide enough
};

/// One part in the chain of dimensions.
struct Link {
  std::string name;
  std::string text;    ///< value and ±: "79.25 ± 0.02"
  double value = 0.0;  ///< [m] negative: it takes away
};

/// From the crank axis up to the squish face of the head on one side, to the crown on the other.
struct Chain {
  std::vector<Link> ofCase;   ///< from below
  std::vector<Link> ofCrank;  ///< from below
  Link gap;                   ///< what is left between them
  std::string caption;        ///< of which cylinder
};

/// How the first note of a plate begins that something forbids.
inline constexpr std::string_view kNotToBeCut = "NOT TO BE CUT";

struct BenchSheet {
  SheetKind kind = SheetKind::Survey;
  int engine = -1;         ///< the engine it is about; -1: the project has none
  std::string title = {};  ///< its name
  std::string subtitle = {};
  std::vector<Asked> asked = {};
  std::vector<Grid> grids = {};
  std::optional<Chain> chain = {};           ///< of the stack sheet
  std::optional<plate::Outline> plate = {};  ///< of the plate
  std::optional<Star> star = {};             ///< of the throws, where there are several
  std::string whyNoDrawing = {};             ///< where there should be one
  std::vector<std::string> notes = {};       ///< beside the drawing: what it is made of, how true
  /// Those that forbid or object, the heaviest first; of the throws all that touch these.
  std::vector<Objection> objections = {};
  std::vector<Objection> leftOut = {};  ///< what is to be read on other sheets
  std::string checkBar = {};
  std::string cautions = {};
  TitleBlock titleBlock = {};
};

/// A sheet for the bench of one engine, worded in the reader's units. Never throws for what a
/// builder entered.
/// @param kind any but the spec sheet
BenchSheet benchSheetOf(const assess::Assessment& assessment, const units::Style& style,
                        const SheetOptions& options, SheetKind kind);

}  // namespace strokewright::sheet

#pragma once
/// What the one-page spec sheet says, in words and numbers; how it is drawn is not its business.

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <vector>

#include "core/assess/assess.h"
#include "core/describe/finding.h"
#include "core/units/style.h"

namespace strokewright::sheet {

struct SheetOptions {
  int engine = -1;            ///< index of the engine the sheet is about; -1: the target
  bool variantColumn = true;  ///< a single variant has a column; otherwise it is only named
  std::string date = {};      ///< as it is to be printed, of the reader's own day
  std::string programVersion = {};
  std::string projectName = {};  ///< stands where the project has no name: that of its file
  /// Says a text in the reader's terms; empty: as it is, British. Names that the builder gave in
  /// cells of their own do not pass through it.
  std::function<std::string(const std::string&)> words = {};
};

/// A number in the table. What differs from cylinder to cylinder is listed, "1.03 · 0.95 · 0.86";
/// what is equal is said once.
struct Text {
  std::string full;
  std::string brief;  ///< where the full text finds no room: "0.86 … 1.03"; empty: there is none
  bool differs = false;  ///< from cylinder to cylinder
  /// Where there is more room than the full text takes: with the ± that was entered.
  std::string exact = {};

  bool operator==(const Text&) const = default;
};

/// How a row stands among the others.
enum class Emphasis : std::uint8_t {
  Plain,
  Strong,       ///< what the sheet is looked at for
  Subordinate,  ///< belongs to the row above: its ±, what it is without something
};

struct Row {
  std::string label;
  std::string unit;
  std::vector<Text> texts;  ///< one for each column of the sheet
  std::string difference;   ///< of the engine the sheet is about against the reference donor
  Emphasis emphasis = Emphasis::Plain;

  bool operator==(const Row&) const = default;
};

struct Group {
  std::vector<Row> rows;

  bool operator==(const Group&) const = default;
};

struct Column {
  std::string heading;  ///< the part it plays: "donor"
  std::string name;     ///< of the engine
  int engine = 0;

  bool operator==(const Column&) const = default;
};

/// What speaks against the engine, or why a number is missing.
struct Objection {
  std::string word;  ///< "forbids", "refused", "objects", "remarks"
  std::string sentence;
  std::string subject = {};  ///< "masses"

  bool operator==(const Objection&) const = default;
};

/// How much is said of an engine without a column, and of no other of the sheet.
struct Aside {
  std::string engine;  ///< its name
  std::string count;   ///< "3 objections on revs and clearances"

  bool operator==(const Aside&) const = default;
};

/// A box to be filled in by hand.
struct Box {
  std::string label;      ///< number of the cylinder where there are several
  std::string drawn;      ///< what it should come out as; may be empty
  std::string what = {};  ///< where it is not what the others of its row are: "skim"

  bool operator==(const Box&) const = default;
};

/// What is measured on the built engine, cylinder by cylinder.
struct Measured {
  std::string what;
  std::vector<Box> boxes;

  bool operator==(const Measured&) const = default;
};

/// The throws of a crank, to be drawn as a star. Angles [rad] in the sense of rotation.
struct Star {
  struct Throw {
    double ahead = 0.0;  ///< of the first
    double axis = 0.0;   ///< of its cylinder, from that of the first
    std::string name;    ///< number of the cylinder

    bool operator==(const Throw&) const = default;
  };
  std::vector<Throw> throws;
  bool clockwise = true;  ///< as seen
  bool senseSaid = true;  ///< else clockwise is assumed
  std::string heading;    ///< the part its engine plays; "donor, target" where both are alike
  std::string order;      ///< and intervals: "1-3-2, 240° each"; or what it waits for
  std::string firing;     ///< order and intervals; of each cylinder throw and top after the first
  std::string caption;    ///< from which end it is seen and which way it turns, said or not

  bool operator==(const Star&) const = default;
};

struct TitleBlock {
  std::string project;
  std::string drawnFor;
  std::string units;  ///< "mm · ml · g"
  std::string revision;
  std::string date;
  std::string sheet;  ///< "1 of 1"
  std::string program;

  bool operator==(const TitleBlock&) const = default;
};

struct Sheet {
  int engine = -1;    ///< the engine it is about; -1: the project has none
  std::string title;  ///< its name
  std::string subtitle;
  std::vector<Column> columns;  ///< donor, the engine, and a single variant
  bool differences = false;     ///< there is a donor to differ from
  std::vector<Group> groups;
  /// That of the engine first, then that of the donor where it is another; none of a single, nor
  /// before every cylinder has its throw.
  std::vector<Star> stars;
  std::vector<Objection> objections;  ///< the heaviest first, of equals those on the stack
  std::vector<Aside> asides;          ///< of engines of which there is something to say
  /// What is assumed or by default of what decides; may be empty.
  std::string restsOn;
  std::string restsFurtherOn;  ///< the same of the rest; from books, computed, none; may be empty
  std::string waitsFor;        ///< entries that are missing; may be empty
  std::string besides;         ///< engines of the project without a column, by name; may be empty
  std::vector<Measured> asBuilt;
  std::vector<Box> closing;  ///< boxes of the whole engine
  std::string checkBar;
  std::string cautions;
  TitleBlock titleBlock;
};

/// What finds no room on a page: "2 remarks on masses and motion". Empty where there is nothing.
std::string countOf(std::span<const Objection> leftOut);

/// Length of the check bar [m].
inline constexpr double kCheckBar = 0.1;

/// The sheet of one engine beside its donor, worded in the reader's units.
///
/// A number that waits says what for; one that is refused, or means nothing for this engine, is a
/// dash, and the refusal is among the objections. Never throws for what a builder entered.
Sheet sheetOf(const assess::Assessment& assessment, const units::Style& style,
              const SheetOptions& options);

}  // namespace strokewright::sheet

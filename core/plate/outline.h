#pragma once
/// The spacer plate as it is cut out: outline, bores and holes, and the walls between them.

#include <string>
#include <string_view>
#include <vector>

#include "core/describe/reader.h"
#include "core/describe/table.h"

namespace strokewright::plate {

/// A round hole of the plate. Lengths in metres, from the axis of the first cylinder.
struct Hole {
  std::string name;     ///< "bore 1", "stud 3"
  double along = 0.0;   ///< along the crankshaft
  double across = 0.0;  ///< across it, minus on the thrust side
  double diameter = 0.0;
  bool isBore = false;
  bool mayPart = false;  ///< plates that meet here may have half of it each, as of a stud
};

/// "bore 3", of the cylinder with that number.
std::string nameOfBore(int number);

/// [m] From where to where there is metal along the crankshaft.
struct Stretch {
  double from;
  double to;
};

/// [m] Where the plate of a cylinder would lie that has none; it ends where another's would.
struct Gap {
  std::string name;  ///< "cylinder 2: no plate"; it may be broken after the colon
  double from = 0.0;
  double to = 0.0;
};

/// [m] A rectangle with rounded corners, its sides along and across the crankshaft.
struct Outline {
  double along = 0.0;   ///< of its middle
  double across = 0.0;  ///< of its middle
  double length = 0.0;  ///< along the crankshaft
  double width = 0.0;   ///< across it
  std::vector<Hole> holes;
  std::vector<double> partings = {};  ///< along the crankshaft, where one plate ends and the next
                                      ///< begins; none: it is in one piece
  std::vector<Gap> gaps = {};         ///< along the crankshaft

  double left() const { return along - length / 2.0; }
  double right() const { return along + length / 2.0; }
  double lower() const { return across - width / 2.0; }
  double upper() const { return across + width / 2.0; }

  /// Radius of the corners.
  double corner() const;
  /// What the gaps leave, plates that meet in one.
  std::vector<Stretch> stretches() const;
  /// An end of a stretch is a gap's, so that no corner is rounded there.
  bool endsInGap(double end) const;

  static constexpr double kSame = 1e-9;  ///< [m] places nearer to each other are one
};

/// Puts a plate of this size under the bores: its middle is theirs, and where a hole would run out
/// on a side, that of bores and holes together.
/// @param holes at least one bore among them
/// @throws describe::Refusal for a size that is not positive
/// @source plane geometry
Outline outlineAround(std::vector<Hole> holes, double length, double width);

/// What a hole comes nearest to.
struct Wall {
  double thickness = 0.0;   ///< [m] of the metal between; negative: they run into each other
  std::string_view beside;  ///< name of the other hole, "edge", kParting or kEnd; lives as long as
                            ///< the outline
};

/// Where one plate ends and the next begins, and where it ends beside a gap.
inline constexpr std::string_view kParting = "parting";
inline constexpr std::string_view kEnd = "end";

/// [m] The metal between two holes; negative where they run into each other.
double wallBetween(const Hole& one, const Hole& other);

/// [m] The metal between a hole and the straight edges; negative where it runs out of the plate.
double wallToEdge(const Outline& outline, const Hole& hole);

/// [m] The metal between a hole and the nearest parting; negative where it is cut; infinite where
/// there is none.
double wallToParting(const Outline& outline, const Hole& hole);

/// [m] The metal between a hole and the nearest gap; negative where it runs out into it; infinite
/// where there is none.
double wallToGap(const Outline& outline, const Hole& hole);

/// The least of them around one hole of the outline; the corners count as square.
Wall leastWall(const Outline& outline, const Hole& hole);

/// Where the number of a hole stands. Lengths in metres, from the axis of the first cylinder.
struct Spot {
  double along = 0.0;
  double across = 0.0;
};

/// Beside a hole, on the plate and clear of other holes, edges and partings as far as one of eight
/// places around it is, the one towards the middle of the plate rather; in a bore, off its centre
/// lines.
/// @param hole of the outline
/// @param room [m] half of what the number takes
Spot spotForNumber(const Outline& outline, const Hole& hole, double room);

/// The plate as entered: bores at the places of the cylinders, and the list of its holes; of
/// several banks, which lie in several planes, that of the first cylinder with a plate. Where each
/// cylinder is to have its own plate, they part half-way between the bores; what lies at a cylinder
/// that needs none is left out, once the plates of all are known.
/// @throws describe::Refusal for a size that is not positive, or that leaves nothing of the plates
Outline outlineAsEntered(describe::Reader& read);

/// [m] Along the crankshaft over the bores of the cylinders of that plate, those without one too.
double lengthOverBores(describe::Reader& read);

/// An outline out of the rows of the table of the plate.
Outline outlineFrom(const describe::Rows& rows);

/// Corners are rounded by 5 mm, or what a narrow plate leaves. Common practice, no published
/// source.
inline constexpr double kCorner = 5e-3;

/// How true a plate is to be ground [m]. Common practice, no published source.
inline constexpr double kFlatWithin = 0.02e-3;
inline constexpr double kParallelWithin = 0.02e-3;

}  // namespace strokewright::plate

namespace strokewright::out {

extern const describe::Table plateOutline;

}  // namespace strokewright::out

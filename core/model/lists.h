#pragma once
/// The described lists: what is kept item by item, of the project or of an engine.

#include <span>
#include <string_view>

#include "core/describe/list.h"

namespace strokewright::model {

/// Lists of the project, and of an engine. Their columns are numbered.
std::span<const describe::List* const> projectLists();
std::span<const describe::List* const> engineLists();

/// The list with this key, or nullptr.
const describe::List* listOf(std::span<const describe::List* const> lists, std::string_view key);

enum class PartRole { BaseGasket, Plate, HeadGasket };
enum class PartServes { EachCylinder, AllCylinders };
enum class HoleFor { Stud, Dowel, Water, Oil, ChainTunnel, Other };

}  // namespace strokewright::model

namespace strokewright::model::list {

/// Gaskets, shims and plates at hand or to be bought; of the project.
extern const describe::List shelf;
extern const describe::Input partRole, partThickness, partBore, partQuantity, partServes;

/// Holes of the spacer plate beside the bores; of an engine.
extern const describe::List plateHoles;
extern const describe::Input holeFor, holeAlong, holeAcross, holeDiameter;

}  // namespace strokewright::model::list

#include "core/model/inputs.h"

#include <array>

namespace strokewright::model {
namespace {

using describe::Input;

/// Page order.
constexpr std::array<const Input*, 152> kTable = {
    // Layout and purpose
    &in::cylinderCount,
    &in::cycle,
    &in::ignition,
    &in::use,
    &in::classLimit,
    // Throws and firing
    &in::viewedFrom,
    &in::rotation,
    &in::firstStandsAt,
    &in::throwAhead,
    &in::cylinderAxis,
    &in::cylinderNumber,
    &in::firingOrder,
    &in::firesLater,
    // Bore, throw, rod, piston
    &in::bore,
    &in::crankThrow,
    &in::stroke,
    &in::rodLength,
    &in::compressionHeight,
    &in::cylinderOffset,
    &in::cylinderOffsetSide,
    &in::pinOffset,
    &in::pinOffsetSide,
    // Deck and stack
    &in::seatHeight,
    &in::barrelHeight,
    &in::deckHeight,
    &in::heightTakenTo,
    &in::linerProud,
    &in::spacer,
    &in::baseGasket,
    &in::secondBaseGasket,
    &in::thirdBaseGasket,
    &in::headGasket,
    &in::headGasketBore,
    &in::headGasketVolume,
    &in::headGasketTaper,
    &in::headRecess,
    &in::crownRise,
    &in::stackDriver,
    &in::wantedSquish,
    &in::wantedDeckClearance,
    &in::wantedCompressionRatio,
    // Volumes
    &in::chamberVolume,
    &in::crownVolume,
    &in::crownVolumeSense,
    &in::creviceVolume,
    &in::inletClosing,
    &in::inletClosingLift,
    // Volumes from the burette, ports
    &in::crownFillDepth,
    &in::crownFill,
    &in::wholeVolume,
    &in::plugHoleVolume,
    &in::crankcaseVolume,
    &in::exhaustPortTop,
    &in::transferPortTop,
    // Compression: what is wanted, what can be cut
    &in::ambientPressure,
    &in::crankingExponent,
    &in::crankingPressureRead,
    &in::chamberFaceArea,
    &in::headLand,
    &in::headLandLeast,
    &in::crownThickness,
    &in::crownCutArea,
    &in::crownLeftShare,
    &in::ratioLeast,
    &in::ratioMost,
    // What may go into the stack, and the plate
    &in::platesInStack,
    &in::gasketsInStack,
    &in::baseGasketsLeast,
    &in::baseGasketsMost,
    &in::squishLeastAtWorst,
    &in::stackOrder,
    &in::plateBore,
    &in::plateLength,
    &in::plateWidth,
    &in::plateTolerance,
    // Survey of the case
    &in::measuredDeckClearance,
    &in::cylinderPitch,
    &in::cylinderPosition,
    &in::seatAcross,
    &in::seatAcrossWidth,
    &in::seatSlopeMost,
    &in::caseMeasuredWarmer,
    // The gap when it runs
    &in::squishKnownBy,
    &in::measuredSquish,
    &in::mainClearance,
    &in::bigEndClearance,
    &in::gudgeonPinClearance,
    &in::rodModulus,
    &in::caseMaterial,
    &in::caseExpansion,
    &in::rodExpansion,
    &in::crankExpansion,
    &in::pistonExpansion,
    &in::caseWarming,
    &in::rodWarming,
    &in::crankWarming,
    &in::pistonWarming,
    &in::runningSquishEstimate,
    &in::runningSquishLeast,
    // Fits
    &in::gudgeonPinDiameter,
    &in::smallEndBore,
    &in::smallEndKind,
    &in::bigEndPinDiameter,
    &in::bigEndEyeDiameter,
    &in::bigEndWidth,
    // Masses
    &in::pistonMass,
    &in::ringSetMass,
    &in::gudgeonPinMass,
    &in::circlipMass,
    &in::smallEndBearingMass,
    &in::rodSmallEndMass,
    &in::rodBigEndMass,
    &in::rodMass,
    &in::bigEndCageMass,
    &in::crankpinMass,
    &in::balanceFactor,
    // Limits and speeds
    &in::ringWidth,
    &in::rodLeastSection,
    &in::rodStressLimit,
    &in::meanPistonSpeedLimit,
    &in::ringFlutterConstant,
    &in::inletValveCount,
    &in::inletValveDiameter,
    &in::inletFlowCoefficient,
    &in::soundSpeed,
    &in::breathingLimit,
    &in::speedFactorLimit,
    &in::wantedSpeed,
    &in::provenSpeed,
    &in::overRevShare,
    // Going round
    &in::skirtLength,
    &in::counterweightRadius,
    &in::linerBottomHeight,
    &in::linerLength,
    &in::rodHalfWidth,
    // Limits behind the objections
    &in::rodRatioLow,
    &in::rodRatioLimit,
    &in::rodRatioHigh,
    &in::rodLoadRatioLimit,
    &in::squishLeast,
    &in::squishMost,
    &in::spacerLeast,
    &in::spacerMost,
    &in::seatSpread,
    &in::deckSpread,
    &in::ratioSpread,
    &in::bushWallLeast,
    &in::skirtWebObjects,
    &in::skirtWebForbids,
    &in::skirtOutShare,
    &in::rodLinerLeast,
    &in::rodEndsDifference,
};

std::span<const Input* const> numbered() {
  int number = 0;
  for (const Input* input : kTable) input->number = number++;
  return kTable;
}

}  // namespace

std::span<const Input* const> inputs() {
  static const std::span<const Input* const> table = numbered();
  return table;
}

}  // namespace strokewright::model

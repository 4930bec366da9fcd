#pragma once
/// The described inputs of an engine, in page order.

#include <span>

#include "core/describe/input.h"

namespace strokewright::describe {
class Evaluation;
}

namespace strokewright::model {

/// All of them, numbered.
std::span<const describe::Input* const> inputs();

enum class Cycle { FourStroke, TwoStroke };
enum class Ignition { Spark, Compression };
enum class Use { Road, FastRoad, Trial, Hill, Race, Record, Stationary };
enum class Side { TowardsThrust, AwayFromThrust };
enum class HeightTakenTo { LinerTop, BlockFace };
enum class StackDriver { SquishGap, DeckClearance, CompressionRatio };
enum class CrownSense { Takes, Adds };
enum class PlatesInStack { OneForAll, OneForEach };
enum class GasketsInStack { SameInAll, Mixed };
enum class StackOrder { Squish, Ratio, SquishSpread, RatioSpread };
/// How the squish gap came to be known.
enum class SquishKnownBy { FromDimensions, Solder, DialGauge };
enum class CrankEnd { OutputEnd, FreeEnd };
enum class Rotation { Clockwise, Anticlockwise };
enum class CaseMaterial { Aluminium, Iron, Magnesium };
enum class SmallEnd { PinInRod, Bush, NeedleCage };

/// The number by which an entry holds this answer to a choice.
template <typename Answer>
constexpr double answer(Answer which) {
  return static_cast<double>(which);
}

/// Said to be a two-stroke; what asks waits for the cycle.
bool twoStroke(describe::Reader& read);

/// Cylinder axes were entered that do not all point the same way: a V, an opposed or a radial
/// engine. What lies across one row of barrels does not lie across these.
bool severalBanks(describe::Reader& read);
bool ofOneBank(describe::Reader& one, describe::Reader& other);
/// Why what lies across one row of barrels means nothing there.
inline constexpr std::string_view kEachBankByItself =
    "each bank has its own: enter one bank as an engine of its own for it";

/// The number this cylinder goes by in the workshop; while none stands, its place as entered.
int numberOfCylinder(describe::Reader& read);
int numberOfCylinder(const describe::Evaluation& evaluation, int engine, int cylinder);

}  // namespace strokewright::model

namespace strokewright::model::in {

using describe::Input;

// Layout and purpose
extern const Input cylinderCount, cycle, ignition, use, classLimit;
// Throws and firing
extern const Input viewedFrom, rotation, firstStandsAt, throwAhead, cylinderAxis, cylinderNumber,
    firingOrder, firesLater;
// Bore, throw, rod, piston
extern const Input bore, crankThrow, stroke, rodLength, compressionHeight, cylinderOffset,
    cylinderOffsetSide, pinOffset, pinOffsetSide;
// Deck and stack
extern const Input seatHeight, barrelHeight, deckHeight, heightTakenTo, linerProud, spacer,
    baseGasket, secondBaseGasket, thirdBaseGasket, headGasket, headGasketBore, headGasketVolume,
    headGasketTaper, headRecess, crownRise, stackDriver, wantedSquish, wantedDeckClearance,
    wantedCompressionRatio;
// Volumes
extern const Input chamberVolume, crownVolume, crownVolumeSense, creviceVolume, inletClosing,
    inletClosingLift;
// Volumes from the burette, ports
extern const Input crownFillDepth, crownFill, wholeVolume, plugHoleVolume, crankcaseVolume,
    exhaustPortTop, transferPortTop;
// Compression: what is wanted, what can be cut
extern const Input ambientPressure, crankingExponent, crankingPressureRead, chamberFaceArea,
    headLand, headLandLeast, crownThickness, crownCutArea, crownLeftShare, ratioLeast, ratioMost;
// What may go into the stack, and the plate
extern const Input platesInStack, gasketsInStack, baseGasketsLeast, baseGasketsMost,
    squishLeastAtWorst, stackOrder, plateBore, plateLength, plateWidth, plateTolerance;
// Survey of the case
extern const Input measuredDeckClearance, cylinderPitch, cylinderPosition, seatAcross,
    seatAcrossWidth, seatSlopeMost, caseMeasuredWarmer;
// The gap when it runs
extern const Input squishKnownBy, measuredSquish, mainClearance, bigEndClearance,
    gudgeonPinClearance, rodModulus, caseMaterial, caseExpansion, rodExpansion, crankExpansion,
    pistonExpansion, caseWarming, rodWarming, crankWarming, pistonWarming, runningSquishEstimate,
    runningSquishLeast;
// Fits
extern const Input gudgeonPinDiameter, smallEndBore, smallEndKind, bigEndPinDiameter,
    bigEndEyeDiameter, bigEndWidth;
// Masses
extern const Input pistonMass, ringSetMass, gudgeonPinMass, circlipMass, smallEndBearingMass,
    rodSmallEndMass, rodBigEndMass, rodMass, bigEndCageMass, crankpinMass, balanceFactor;
// Limits and speeds
extern const Input ringWidth, rodLeastSection, rodStressLimit, meanPistonSpeedLimit,
    ringFlutterConstant, inletValveCount, inletValveDiameter, inletFlowCoefficient, soundSpeed,
    breathingLimit, speedFactorLimit, wantedSpeed, provenSpeed, overRevShare;
// Going round
extern const Input skirtLength, counterweightRadius, linerBottomHeight, linerLength, rodHalfWidth;
// Limits behind the objections
extern const Input rodRatioLow, rodRatioLimit, rodRatioHigh, rodLoadRatioLimit, squishLeast,
    squishMost, spacerLeast, spacerMost, seatSpread, deckSpread, ratioSpread, bushWallLeast,
    skirtWebObjects, skirtWebForbids, skirtOutShare, rodLinerLeast, rodEndsDifference;

}  // namespace strokewright::model::in

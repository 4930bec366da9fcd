#include "ui/drawings/cylinder.h"

#include <algorithm>

#include "core/clearance/results.h"
#include "core/deck/results.h"
#include "core/describe/refusal.h"
#include "core/describe/wording.h"
#include "core/model/inputs.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::Input;
using describe::State;

namespace in = model::in;

class CylinderReader {
 public:
  CylinderReader(const assess::Assessment& assessment, int engine, int cylinder)
      : assessment_(assessment),
        evaluation_(assessment.evaluation()),
        engine_(engine),
        cylinder_(std::clamp(cylinder, 0, evaluation_.cylinders(engine) - 1)),
        proportion_(proportion()) {}

  Cylinder read() {
    readMechanism();
    readStack();
    readRest();
    return std::move(drawn_);
  }

 private:
  bool stands(const Input& input) const {
    return evaluation_.inputStands(engine_, input, cylinder_);
  }
  double value(const Input& input) const {
    return evaluation_.inputValue(engine_, input, cylinder_);
  }
  template <typename Answer>
  bool answers(const Input& input, Answer answer) const {
    return stands(input) && static_cast<int>(value(input)) == static_cast<int>(answer);
  }
  std::optional<double> result(const describe::Result& it) const {
    const describe::Cell& cell = assessment_(engine_, it, cylinder_);
    return cell.state == State::Value ? std::optional(cell.value) : std::nullopt;
  }

  /// How large this engine is, beside the typical one.
  double proportion() const {
    for (const Input* input : {&in::bore, &in::stroke, &in::crankThrow, &in::rodLength}) {
      if (stands(*input) && value(*input) > 0.0) return value(*input) / input->typical;
    }
    return 1.0;
  }

  /// The entry, or what is assumed for it: in proportion, and said.
  Measure measure(const Input& input) {
    if (stands(input)) return {value(input), true, &input};
    drawn_.notGiven.append(inSentence(fromCore(input.label)));
    return {input.typical * proportion_, false, &input};
  }

  /// The entry, or nothing: a part that is not there, or of no consequence for the drawing.
  Measure orNothing(const Input& input) const {
    return stands(input) ? Measure{value(input), true, &input} : Measure{0.0, false, &input};
  }

  void readMechanism() {
    drawn_.bore = measure(in::bore);
    const bool byStroke = !stands(in::crankThrow) && stands(in::stroke);
    drawn_.throwRadius =
        byStroke ? Measure{value(in::stroke) / 2.0, true, &in::stroke} : measure(in::crankThrow);
    drawn_.rodLength = measure(in::rodLength);
    drawn_.compressionHeight = measure(in::compressionHeight);
    drawn_.boreAxis = signedOffset(in::cylinderOffset, in::cylinderOffsetSide);
    drawn_.mechanism = {.crankRadius = drawn_.throwRadius,
                        .rodLength = drawn_.rodLength,
                        .offset = drawn_.boreAxis + signedOffset(in::pinOffset, in::pinOffsetSide)};
    drawn_.twoStroke = answers(in::cycle, model::Cycle::TwoStroke);
    drawn_.compressionIgnition = answers(in::ignition, model::Ignition::Compression);
  }

  double signedOffset(const Input& offset, const Input& side) const {
    if (!stands(offset)) return 0.0;
    return answers(side, model::Side::TowardsThrust) ? -value(offset) : value(offset);
  }

  void readStack() {
    drawn_.direct = evaluation_.inputGiven(engine_, in::deckHeight, cylinder_) &&
                    !evaluation_.inputGiven(engine_, in::seatHeight, cylinder_);
    if (drawn_.direct) {
      drawn_.directDeck = measure(in::deckHeight);
    } else {
      drawn_.seat = measure(in::seatHeight);
      drawn_.barrel = measure(in::barrelHeight);
      drawn_.baseGaskets = {orNothing(in::baseGasket), orNothing(in::secondBaseGasket),
                            orNothing(in::thirdBaseGasket)};
    }
    drawn_.spacer = {result(out::spacerInStack).value_or(0.0),
                     result(out::spacerInStack).has_value(), &in::spacer};
    drawn_.spacerToMake = !stands(in::spacer);
    if (answers(in::heightTakenTo, model::HeightTakenTo::BlockFace)) {
      drawn_.linerProud = orNothing(in::linerProud);
    }
    drawn_.headGasket = orNothing(in::headGasket);
    drawn_.headGasketBore = stands(in::headGasketBore)
                                ? Measure{value(in::headGasketBore), true, &in::headGasketBore}
                                : Measure{drawn_.bore, false, &in::headGasketBore};
    drawn_.headRecess = orNothing(in::headRecess);
    drawn_.crownRise = orNothing(in::crownRise);
    drawn_.deckHeight = result(out::deckHeight).value_or(assumedDeck());
    drawn_.deckClearance = result(out::deckClearance);
    drawn_.squishGap = result(out::squishGap);
    drawn_.wanted = wanted();
  }

  /// The crown comes flush where the deck is not known.
  double assumedDeck() const {
    const double reach = drawn_.mechanism.crankRadius + drawn_.mechanism.rodLength;
    return reach + drawn_.compressionHeight;
  }

  const Input* wanted() const {
    if (answers(in::stackDriver, model::StackDriver::DeckClearance)) {
      return &in::wantedDeckClearance;
    }
    if (answers(in::stackDriver, model::StackDriver::CompressionRatio)) {
      return &in::wantedCompressionRatio;
    }
    return &in::wantedSquish;
  }

  void readRest() {
    drawn_.gudgeonPin = measure(in::gudgeonPinDiameter);
    drawn_.smallEnd = stands(in::smallEndBore)
                          ? Measure{value(in::smallEndBore), true, &in::smallEndBore}
                          : drawn_.gudgeonPin;
    drawn_.crankpin = measure(in::bigEndPinDiameter);
    drawn_.bigEndEye = measure(in::bigEndEyeDiameter);
    drawn_.skirt = measure(in::skirtLength);
    drawn_.counterweight = measure(in::counterweightRadius);
    drawn_.rodHalfWidth = measure(in::rodHalfWidth);
    drawn_.ringWidth = measure(in::ringWidth);
    readLinerBottom();
    drawn_.skirtToWeb = result(out::skirtToWeb);
    drawn_.skirtOut = result(out::skirtOut);
    if (stands(in::chamberVolume)) {
      drawn_.chamberVolume = value(in::chamberVolume);
    } else {
      drawn_.notGiven.append(inSentence(fromCore(in::chamberVolume.label)));
      drawn_.chamberVolume = in::chamberVolume.typical * proportion_ * proportion_ * proportion_;
    }
    if (stands(in::crownVolume)) {
      const bool adds = answers(in::crownVolumeSense, model::CrownSense::Adds);
      drawn_.crownVolume = adds ? -value(in::crownVolume) : value(in::crownVolume);
    }
  }

  void readLinerBottom() {
    if (stands(in::linerBottomHeight)) {
      drawn_.linerBottom = value(in::linerBottomHeight);
    } else if (stands(in::linerLength)) {
      drawn_.linerBottom = drawn_.deckHeight - value(in::linerLength);
    } else {
      drawn_.notGiven.append(inSentence(fromCore(in::linerBottomHeight.label)));
      drawn_.linerBottom = in::linerBottomHeight.typical * proportion_;
      return;
    }
    drawn_.linerBottomGiven = true;
  }

  const assess::Assessment& assessment_;
  const describe::Evaluation& evaluation_;
  int engine_;
  int cylinder_;
  double proportion_;
  Cylinder drawn_;
};

}  // namespace

int engineToDraw(const model::Project& project, int engine) {
  const int count = static_cast<int>(project.engines.size());
  if (engine >= 0 && engine < count) return engine;
  if (project.target() >= 0) return project.target();
  return count > 0 ? 0 : -1;
}

CylinderOrWhyNot cylinderToDraw(const assess::Assessment& assessment, const units::Style& style,
                                int engine, int cylinder) {
  const int number = engineToDraw(assessment.project(), engine);
  if (number < 0) return {std::nullopt, QStringLiteral("There is no engine yet.")};
  Cylinder drawn = CylinderReader(assessment, number, cylinder).read();
  drawn.number = model::numberOfCylinder(assessment.evaluation(), number, cylinder);
  try {
    motion::check(drawn.mechanism);
  } catch (const describe::Refusal& refusal) {
    const describe::Sentence sentence{refusal.sentence(),
                                      {describe::Quantity{refusal.kind(), refusal.value()},
                                       describe::Quantity{refusal.kind(), refusal.limit()}}};
    return {std::nullopt, fromCore(word(sentence, style))};
  }
  return {std::move(drawn), {}};
}

}  // namespace strokewright::ui

#include "ui/drawings/crank.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/firing/results.h"
#include "core/model/inputs.h"
#include "core/survey/results.h"
#include "ui/document/taste.h"
#include "ui/drawings/cylinder.h"

namespace strokewright::ui {
namespace {

namespace in = model::in;

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kPitchOfBore = 1.25;  // of cylinders whose places nobody gave

class CrankReader {
 public:
  CrankReader(const assess::Assessment& assessment, const units::Style& style, int engine)
      : assessment_(assessment),
        evaluation_(assessment.evaluation()),
        style_(style),
        engine_(engine),
        cylinders_(evaluation_.cylinders(engine)) {}

  Crank read() {
    for (int i = 0; i < cylinders_; ++i) {
      if (cylinders_ > 1 && !evaluation_.inputStands(engine_, in::throwAhead, i)) {
        return {.figure = {},
                .whyNot = QStringLiteral("The crank is drawn once every cylinder has its throw.")};
      }
    }
    placed_ = standsEverywhere(out::cylinderPosition);
    phased_ = standsEverywhere(out::lobeBehindFirst);
    for (int i = 0; i < cylinders_; ++i) {
      const CylinderOrWhyNot drawn = cylinderToDraw(assessment_, style_, engine_, i);
      if (!drawn.cylinder) return {.figure = {}, .whyNot = drawn.whyNot};
      crank_.figure.cylinders.push_back(cylinder(*drawn.cylinder, i));
    }
    if (!known_ && !evaluation_.inputGiven(engine_, in::cylinderCount)) {
      return {.figure = {},
              .whyNot = QStringLiteral("The crank is drawn once the number of cylinders or a "
                                       "measure of crank, rod or piston is entered.")};
    }
    if (!placed_ && cylinders_ > 1) assume(in::cylinderPitch);
    look();
    if (phased_) putCamshafts();
    return std::move(crank_);
  }

 private:
  bool standsEverywhere(const describe::Result& result) const {
    for (int i = 0; i < cylinders_; ++i) {
      if (assessment_(engine_, result, i).state != describe::State::Value) return false;
    }
    return true;
  }
  double value(const describe::Input& input, int cylinder) const {
    return evaluation_.inputValue(engine_, input, cylinder);
  }

  void assume(const describe::Input& input) {
    const QString name = inSentence(fromCore(input.label));
    if (!crank_.notGiven.contains(name)) crank_.notGiven.append(name);
  }

  QString name(int place) const {
    return evaluation_.inputStands(engine_, in::cylinderNumber, place)
               ? QString::number(value(in::cylinderNumber, place), 'f', 0)
               : QStringLiteral("?");
  }

  FigureCylinder cylinder(const Cylinder& it, int place) {
    for (const Measure* measure : {&it.bore, &it.throwRadius, &it.rodLength, &it.compressionHeight,
                                   &it.gudgeonPin, &it.crankpin, &it.skirt, &it.rodHalfWidth}) {
      known_ = known_ || measure->given;
      if (!measure->given) assume(*measure->input);
    }
    if (!evaluation_.inputStands(engine_, in::cylinderAxis, place)) assume(in::cylinderAxis);
    FigureCylinder one{.ahead = cylinders_ > 1 ? value(in::throwAhead, place) : 0.0,
                       .axis = value(in::cylinderAxis, place),
                       .along = 0.0,
                       .mechanism = it.mechanism,
                       .bore = it.bore,
                       .compressionHeight = it.compressionHeight,
                       .skirt = it.skirt,
                       .crankpin = it.crankpin,
                       .gudgeonPin = it.gudgeonPin,
                       .rodWidth = 2.0 * it.rodHalfWidth,
                       .name = name(place),
                       .lobe = {}};
    one.along = placed_ ? assessment_(engine_, out::cylinderPosition, place).value
                        : assumedPlace(crank_.figure, one);
    return one;
  }

  /// Where the cylinders stand that nobody placed: one behind the other, those of different banks
  /// beside each other.
  static double assumedPlace(const CrankFigure& figure, const FigureCylinder& next) {
    const auto inBank = std::ranges::count_if(figure.cylinders, [&](const FigureCylinder& one) {
      return std::abs(one.axis - next.axis) < kDegree;
    });
    const bool sameBank =
        figure.cylinders.empty() || std::abs(figure.cylinders.front().axis - next.axis) < kDegree;
    return kPitchOfBore * next.bore * static_cast<double>(inBank) +
           (sameBank ? 0.0 : next.rodWidth);
  }

  /// From which end, and so what stands in front.
  void look() {
    const firing::Seen seen = firing::seenOf(evaluation_, engine_);
    crank_.figure.clockwise = seen.clockwise;
    crank_.figure.senseSaid = seen.rotationSaid;
    crank_.seenFrom = fromCore(seen.words());
    crank_.seenBehind = fromCore(seen.wordsFromBehind());
    auto& all = crank_.figure.cylinders;
    const auto [least, most] = std::ranges::minmax(all, {}, &FigureCylinder::along);
    const double front = least.along;
    const double back = most.along;
    const bool said = evaluation_.inputStands(engine_, in::firstStandsAt);
    const bool fromOutputEnd = at(in::viewedFrom, model::CrankEnd::OutputEnd);
    const bool risesFromFreeEnd =
        said ? at(in::firstStandsAt, model::CrankEnd::FreeEnd) : lowestStandsBefore(front, back);
    for (FigureCylinder& one : all) {
      one.along = fromOutputEnd == risesFromFreeEnd ? back - one.along : one.along - front;
    }
    if (cylinders_ < 2) return;
    const auto atFreeEnd = fromOutputEnd
                               ? std::ranges::max_element(all, {}, &FigureCylinder::along)
                               : std::ranges::min_element(all, {}, &FigureCylinder::along);
    crank_.atFreeEnd = (said ? QStringLiteral("Cylinder %1 stands at the free end")
                             : QStringLiteral("Cylinder %1 is taken to stand at the free end"))
                           .arg(atFreeEnd->name);
    crank_.freeEndInFront = !fromOutputEnd;
  }

  bool at(const describe::Input& input, model::CrankEnd end) const {
    return evaluation_.inputStands(engine_, input) && value(input, 0) == model::answer(end);
  }

  /// The lowest number, in the nearer half from where positions begin.
  bool lowestStandsBefore(double begin, double end) const {
    int lowest = 0;
    for (int i = 1; i < cylinders_; ++i) {
      if (value(in::cylinderNumber, i) < value(in::cylinderNumber, lowest)) lowest = i;
    }
    return crank_.figure.cylinders[static_cast<std::size_t>(lowest)].along <= 0.5 * (begin + end);
  }

  /// The lobe of the cylinder that fires first points away from it as it fires; the others are as
  /// much ahead on the camshaft of their own bank as they are computed to be.
  void putCamshafts() {
    auto& all = crank_.figure.cylinders;
    const auto of = [&](const describe::Result& result, int place) {
      return assessment_(engine_, result, place).value;
    };
    int first = 0;
    for (int i = 1; i < cylinders_; ++i) {
      if (of(out::firesAfterFirst, i) < of(out::firesAfterFirst, first)) first = i;
    }
    const double fires =
        firing::within(topOf(all[static_cast<std::size_t>(first)]), 2.0 * std::numbers::pi);
    bool inLine = true;
    for (int i = 0; i < cylinders_; ++i) {
      FigureCylinder& one = all[static_cast<std::size_t>(i)];
      one.lobe = of(out::lobeBehindFirst, i) - 0.5 * fires;
      inLine = inLine && std::abs(one.axis - all.front().axis) < kDegree;
    }
    crank_.figure.camshaft = inLine ? QStringLiteral("camshaft (place assumed)")
                                    : QStringLiteral("camshaft of each bank (place assumed)");
  }

  const assess::Assessment& assessment_;
  const describe::Evaluation& evaluation_;
  const units::Style& style_;
  int engine_;
  int cylinders_;
  bool placed_ = false;
  bool phased_ = false;
  bool known_ = false;  ///< any measure was entered
  Crank crank_;
};

}  // namespace

QString inFront(const Crank& crank, bool behind) {
  if (crank.atFreeEnd.isEmpty()) return {};
  return (crank.freeEndInFront == behind ? QStringLiteral("%1: farthest away")
                                         : QStringLiteral("%1: in front"))
      .arg(crank.atFreeEnd);
}

Crank crankToDraw(const assess::Assessment& assessment, const units::Style& style, int engine) {
  if (engine < 0) return {.figure = {}, .whyNot = QStringLiteral("There is no engine yet.")};
  return CrankReader(assessment, style, engine).read();
}

}  // namespace strokewright::ui

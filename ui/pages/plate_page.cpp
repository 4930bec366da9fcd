#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <vector>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/describe/finding.h"
#include "core/model/inputs.h"
#include "core/model/lists.h"
#include "core/plate/outline.h"
#include "core/plate/results.h"
#include "core/plate/taper.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/plate_view.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/put_spacer.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("PlatePage", text); }

/// "0.85 to 0.96 mm" over all cylinders. @pre known()
QString range(const Desk& desk, const describe::Result& result) {
  const describe::Evaluation& evaluation = desk.document.evaluation();
  double least = HUGE_VAL;
  double most = -HUGE_VAL;
  for (int i = 0; i < evaluation.cylinders(desk.subject()); ++i) {
    const double value = desk.document.assessment()(desk.subject(), result, i).value;
    least = std::min(least, value);
    most = std::max(most, value);
  }
  const QString upTo = desk.taste.value(result, most);
  if (desk.taste.value(result, least) == upTo) return upTo;
  return tr("%1 to %2").arg(desk.taste.number(result.kind, least, result.decimals), upTo);
}

/// "leaves squish gaps of 0.90 mm and ratios of 11.2"; empty where either is not known.
QString leaves(const Desk& desk, const describe::Result& squish, const describe::Result& ratio) {
  const int engine = desk.subject();
  if (!known(desk, engine, squish) || !known(desk, engine, ratio)) return {};
  return tr("leaves squish gaps of %1 and ratios of %2")
      .arg(range(desk, squish), range(desk, ratio));
}

/// Where the thicknesses hold and what a mill is set by; empty where the plate is not tapered, or
/// nobody knows yet where it ends.
QString taper(const Desk& desk) {
  const auto ends = desk.document.evaluation().tabulated(desk.subject(), out::taperedPlateEnds);
  if (ends.state != describe::State::Value) return {};
  const auto end = [&](Eigen::Index at) {
    return tr("%1 at the end at cylinder %2")
        .arg(desk.taste.shown(units::Kind::FineLength, ends.rows["thickness_m"].numbers[at]))
        .arg(ends.rows["cylinder"].numbers[at]);
  };
  constexpr double kStraightedge = 0.1;  // [m]
  const double slope = std::abs(ends.rows["slope"].numbers[0]);
  return tr("at the cylinder axes; %1, %2: %3 in %4 (%5)")
      .arg(end(0), end(1), desk.taste.shown(units::Kind::FineLength, slope * kStraightedge, 3),
           desk.taste.shown(units::Kind::Length, kStraightedge),
           desk.taste.shown(units::Kind::Share, slope, 3));
}

bool oneForEach(const Desk& desk) {
  const int engine = desk.subject();
  if (engine < 0) return false;
  const describe::Evaluation& evaluation = desk.document.assessment().evaluation();
  return evaluation.inputValue(engine, in::platesInStack) ==
         static_cast<double>(model::PlatesInStack::OneForEach);
}

/// A plate for each cylinder as entered, or to make; else the flat one. Of the whole plate,
/// whatever cylinder is shown elsewhere.
Answer answer(const Desk& shown) {
  const Desk desk(shown.document, shown.taste);
  const bool each = oneForEach(desk);
  const bool entered =
      desk.subject() >= 0 && desk.document.entry(desk.subject(), in::spacer).known();
  const describe::Result& result = each || entered ? out::spacerInStack : out::flatSpacer;
  Answer said = answerBy(desk, result);
  if (said.number.isEmpty()) return said;
  if (each || entered) {
    const bool flat = desk.document.assessment().sameInAll(desk.subject(), result);
    said.sentence = each   ? entered ? tr("a plate for each cylinder, as entered")
                                     : tr("a plate for each cylinder, to make")
                      : flat ? tr("one flat plate under all barrels, as entered")
                           : tr("one tapered plate under all barrels, as entered");
    said.further = joined({taper(desk), leaves(desk, out::squishGap, out::compressionRatio)});
  } else {
    said.sentence = tr("one flat plate under all barrels");
    said.further = leaves(desk, out::squishWithFlat, out::ratioWithFlat);
  }
  if (!entered)
    said.further = joined({said.further, roundedOff(desk, thicknessesShown(desk, result))});
  sayWherePlatesAreNone(said, desk, result);
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new PlateView(desk.document, desk.taste, parent);
}

/// The kind of plate on that row goes into the stack: its thicknesses, and whether it is one piece.
void putPlates(Desk& desk, const describe::Tabulated& plates, int row) {
  const std::string& kind = plates.rows["plate"].words[static_cast<std::size_t>(row)];
  std::vector<double> thicknesses;
  for (std::size_t i = 0; i < plates.rows.size(); ++i) {
    if (plates.rows["plate"].words[i] == kind) {
      thicknesses.push_back(plates.rows["thickness_m"].numbers[static_cast<Eigen::Index>(i)]);
    }
  }
  const auto pieces =
      kind == "one for each" ? model::PlatesInStack::OneForEach : model::PlatesInStack::OneForAll;
  describe::Mend stack = describe::takeAs(in::platesInStack, model::answer(pieces));
  stack.entries.emplace_back(&in::spacer, spacerText(desk, thicknesses).toStdString());
  stack.computed = true;
  desk.document.take(desk.subject(), stack, tr("plate"));
}

}  // namespace

PageDescription platePage() {
  return {
      .key = QStringLiteral("plate"),
      .name = tr("Plate"),
      .question = tr("What does the plate look like?"),
      .entries = {{tr("Outline"),
                   {&in::platesInStack, &in::plateBore, &in::plateLength, &in::plateWidth,
                    &in::plateTolerance}},
                  {tr("Where the cylinders stand"), {&in::cylinderPitch, &in::cylinderPosition}},
                  {{}, {&in::spacer}}},
      .results = {&out::spacerToMake, &out::flatSpacer, &out::squishWithFlat, &out::ratioWithFlat,
                  &out::taperAtFirst, &out::taperAlong, &out::taperedSpacer, &out::squishWithTaper,
                  &out::ratioWithTaper},
      .decides = {&out::flatSpacer},
      .answer = &answer,
      .picture = &picture,
      .tables = {{.table = &out::platesCompared, .take = &putPlates, .tab = tr("Kinds of plate")}},
      .lists = {&model::list::plateHoles}};
}

}  // namespace strokewright::ui

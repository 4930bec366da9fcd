#include <QCoreApplication>

#include "core/assess/entry_rules.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/what_if_view.h"

namespace strokewright::ui {

namespace {

using describe::Input;

QString tr(const char* text) { return QCoreApplication::translate("WhatIfPage", text); }

/// What the answer rests on unasked, or that it would be unusual.
QString further(const Desk& desk, const WhatIfPlace& place, const assess::Solution& found) {
  const WhatIf& asked = desk.whatIf();
  const auto follows =
      assess::whatFollows(desk.document.evaluation(), place.engine, *asked.result, place.cylinder,
                          found, *asked.input, place.inputCylinder);
  if (follows) {
    return desk.taste.sentence(*follows);
  }
  const describe::Limits& usual = asked.input->usual;
  if (!found.value || usual.holds(*found.value)) {
    return {};
  }
  return *found.value > usual.most
             ? tr("Unusual: at most %1 is usual.").arg(desk.taste.value(*asked.input, usual.most))
             : tr("Unusual: at least %1 is usual.")
                   .arg(desk.taste.value(*asked.input, usual.least));
}

/// There is no answer: why, and how near it can come.
QString nearest(const Desk& desk, const assess::Solution& found) {
  const WhatIf& asked = desk.whatIf();
  const QString result = inSentence(desk.taste.label(*asked.result));
  const QString input = inSentence(desk.taste.label(*asked.input));
  const QString reached = desk.taste.value(*asked.result, found.reached);
  if (found.still) {
    return tr("The %1 stays at %2, whatever the %3.").arg(result, reached, input);
  }
  if (found.waits) {
    const auto waits = desk.document.assessment().waitsFor(*found.waits);
    if (!waits.empty()) {
      return tr("With any other %1 the %2 waits for the %3.")
          .arg(input, result, inSentence(desk.taste.label(*waits.front().input)));
    }
  }
  const QString wanted = desk.taste.value(*asked.result, *asked.wanted);
  const QString at = desk.taste.value(*asked.input, found.nearest);
  if (found.everywhere) {
    return tr("Nothing possible for the %1 makes the %2 %3: nearest is %4, where it is %5.")
        .arg(input, result, wanted, at, reached);
  }
  return tr("Nothing from %6 to %7 for the %1 makes the %2 %3: nearest is %4, where it is %5.")
      .arg(input, result, wanted, at, reached, desk.taste.value(*asked.input, found.from),
           desk.taste.value(*asked.input, found.to));
}

/// Why what stands where the wanted value is asked for is no number.
QString unread(const Desk& desk) {
  const WhatIf& asked = desk.whatIf();
  const Input wanted{.key = asked.result->key,
                     .label = asked.result->name,
                     .symbol = asked.result->symbol,
                     .kind = asked.result->kind};
  describe::Entry entry;
  entry.text = asked.wantedTyped.toStdString();
  return desk.taste.sentence(assess::whyUnknown(wanted, entry));
}

Answer answer(const Desk& desk) {
  const WhatIf& asked = desk.whatIf();
  const WhatIfPlace place = placeOf(desk);
  if (place.engine < 0) {
    return unanswered(desk, place.engine, *asked.result);
  }
  const describe::Cell& now =
      desk.document.assessment()(place.engine, *asked.result, place.cylinder);
  if (now.state != describe::State::Value) {
    return unanswered(desk, place.engine, *asked.result);
  }
  Answer said;
  for (const QString& typed : {asked.resultTyped, asked.inputTyped}) {
    if (typed.isEmpty()) continue;
    said.sentence = (typed == asked.resultTyped
                         ? tr("“%1” names no single result that has a number: choose one.")
                         : tr("“%1” names no single entry that moves it: choose one."))
                        .arg(typed);
    return said;
  }
  if (!asked.wantedTyped.isEmpty()) {
    said.sentence = unread(desk);
    return said;
  }
  said.result = asked.result;
  const QString result = inSentence(desk.taste.label(*asked.result));
  if (!reaches(desk)) {
    said.number = desk.taste.value(*asked.result, now.value);
    said.sentence = tr("is the %1 now. The %2 does not reach it: choose below what is changed.")
                        .arg(result, inSentence(desk.taste.label(*asked.input)));
    return said;
  }
  const std::optional<assess::Solution> found = solved(desk);
  if (!found) {
    said.number = desk.taste.value(*asked.result, now.value);
    said.sentence = tr("is the %1 now. Say below what it should be.").arg(result);
    return said;
  }
  said.further = further(desk, place, *found);
  if (!found->value) {
    said.sentence = nearest(desk, *found);
    return said;
  }
  if (!canTakeWhatIf(desk)) {
    said.number = desk.taste.value(*asked.result, now.value);
    said.sentence = tr("is the %1 now, as wanted: the %2 stays.")
                        .arg(result, inSentence(desk.taste.label(*asked.input)));
    return said;
  }
  said.number = desk.taste.value(*asked.input, *found->value);
  said.sentence = tr("for the %1: the %2 is then %3 instead of %4")
                      .arg(inSentence(desk.taste.label(*asked.input)), result,
                           desk.taste.value(*asked.result, found->reached),
                           desk.taste.value(*asked.result, now.value));
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) { return new WhatIfView(desk, parent); }

}  // namespace

PageDescription whatIfPage() {
  return {.key = QStringLiteral("what_if"),
          .name = tr("What if"),
          .question = tr("What would it have to be?"),
          .needed = [](const Desk& desk) { return desk.whatIf().wanted.has_value(); },
          .answer = &answer,
          .picture = &picture,
          .deed = {.says = tr("take it (Ctrl+Enter)"),
                   .possible = &canTakeWhatIf,
                   .act = &takeWhatIf,
                   .whyNot = tr("nothing is found to take")}};
}

}  // namespace strokewright::ui

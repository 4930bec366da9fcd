#include "ui/pages/answering.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/describe/tabulated.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/widgets/result_label.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;
using describe::State;

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Answer", text); }

/// More numbers than these are shown as a range.
constexpr std::size_t kMostInARow = 4;

int cylindersOf(const Desk& desk, int engine, const describe::Result& result) {
  return result.per == describe::Per::Engine
             ? 1
             : desk.document.assessment().evaluation().cylinders(engine);
}

/// The cells a reader sees: of the cylinder shown, or of all; one where they are equal.
std::vector<const describe::Cell*> cells(const Desk& desk, int engine,
                                         const describe::Result& result) {
  const assess::Assessment& assessment = desk.document.assessment();
  const int count = cylindersOf(desk, engine, result);
  const bool one = desk.cylinder() >= 0 && desk.cylinder() < count;
  if (one || assessment.sameInAll(engine, result)) {
    return {&assessment(engine, result, one ? desk.cylinder() : 0)};
  }
  std::vector<const describe::Cell*> all;
  for (int cylinder = 0; cylinder < count; ++cylinder) {
    all.push_back(&assessment(engine, result, cylinder));
  }
  return all;
}

QString withoutEngine() { return tr("There is no engine yet. Add a target in the menu Engines."); }

/// What it waits for, or why there is none.
void sayWhyNone(Answer& answer, const Desk& desk, int engine, const QString& name, State state,
                const describe::Frame& notes) {
  const assess::Assessment& assessment = desk.document.assessment();
  if (state == State::Refused) {
    answer.sentence = desk.taste.sentence(assessment.evaluation().refusal(notes));
    return;
  }
  if (state == State::None) {
    answer.sentence = fromCore(notes.none);
    return;
  }
  const auto waits = assessment.waitsFor(notes);
  if (waits.empty()) {
    return;
  }
  answer.unlocks = waits.front().input;
  answer.unlocksOf = waits.front().donors ? desk.donor() : engine;
  const QString first = inSentence(desk.taste.label(*waits.front().input));
  const QString whose =
      fromCore(desk.document.project().engines[static_cast<std::size_t>(answer.unlocksOf)].name);
  answer.sentence = whose.isEmpty() ? tr("%1 waits for the %2.").arg(name, first)
                                    : tr("%1 waits for the %2 of %3.").arg(name, first, whose);
  if (waits.size() > 1) {
    answer.further = QCoreApplication::translate("Answer", "and for %n more", nullptr,
                                                 static_cast<int>(waits.size()) - 1);
  }
}

}  // namespace

bool known(const Desk& desk, int engine, const describe::Result& result) {
  if (engine < 0) {
    return false;
  }
  for (int cylinder = 0; cylinder < cylindersOf(desk, engine, result); ++cylinder) {
    if (desk.document.assessment()(engine, result, cylinder).state != State::Value) {
      return false;
    }
  }
  return true;
}

QString figures(const Desk& desk, int engine, const describe::Result& result) {
  const Taste& taste = desk.taste;
  const auto shown = cells(desk, engine, result);
  if (shown.size() == 1) {
    return taste.value(result, shown.front()->value);
  }
  const auto less = [](const describe::Cell* a, const describe::Cell* b) {
    return a->value < b->value;
  };
  if (shown.size() > kMostInARow) {
    const auto [least, most] = std::minmax_element(shown.begin(), shown.end(), less);
    if (taste.value(result, (*least)->value) == taste.value(result, (*most)->value)) {
      return taste.value(result, (*most)->value);
    }
    return taste.number(result.kind, (*least)->value, result.decimals) + u" … "_s +
           taste.value(result, (*most)->value);
  }
  QStringList whole;
  for (const describe::Cell* cell : shown) {
    whole += taste.value(result, cell->value);
  }
  if (whole.count(whole.front()) == whole.size()) {
    return whole.front();
  }
  QStringList row;
  for (const describe::Cell* cell : shown) {
    row += cell == shown.back() ? taste.value(result, cell->value)
                                : taste.number(result.kind, cell->value, result.decimals);
  }
  return row.join(u" · "_s);
}

QString plusMinus(const Desk& desk, int engine, const describe::Result& result) {
  double likely = 0.0;
  double worst = 0.0;
  for (const describe::Cell* cell : cells(desk, engine, result)) {
    likely = std::max(likely, cell->likely);
    worst = std::max(worst, cell->worst);
  }
  const QString likelyText = plusMinusText(desk.taste, result, likely);
  const QString worstText = plusMinusText(desk.taste, result, worst);
  QStringList lines;
  if (!likelyText.isEmpty()) {
    lines += tr("%1 likely").arg(likelyText);
  }
  if (!worstText.isEmpty()) {
    lines += tr("%1 worst case").arg(worstText);
  }
  return lines.join(u'\n');
}

QString besideDonor(const Desk& desk, const describe::Result& result) {
  const int donor = desk.donor();
  const int subject = desk.subject();
  if (donor < 0 || donor == subject || !known(desk, donor, result) ||
      !known(desk, subject, result)) {
    return {};
  }
  const auto mine = cells(desk, subject, result);
  const auto his = cells(desk, donor, result);
  const QString figure = tr("donor %1").arg(figures(desk, donor, result));
  if (mine.size() > 1 || his.size() > 1) {
    return figure;
  }
  return tr("%1, difference %2")
      .arg(figure,
           desk.taste.difference(result.kind, result.step(his.front()->value, mine.front()->value),
                                 result.decimals));
}

Answer unanswered(const Desk& desk, int engine, const describe::Result& result) {
  Answer answer;
  answer.result = &result;
  if (engine < 0) {
    answer.sentence = withoutEngine();
    return answer;
  }
  const assess::Assessment& assessment = desk.document.assessment();
  int cylinder = 0;
  while (cylinder + 1 < cylindersOf(desk, engine, result) &&
         assessment(engine, result, cylinder).state == State::Value) {
    ++cylinder;
  }
  const describe::Cell& cell = assessment(engine, result, cylinder);
  sayWhyNone(answer, desk, engine, desk.taste.label(result), cell.state, cell.notes);
  return answer;
}

Answer unanswered(const Desk& desk, int engine, const describe::Table& table) {
  Answer answer;
  if (engine < 0) {
    answer.sentence = withoutEngine();
    return answer;
  }
  const describe::Tabulated filled = desk.document.evaluation().tabulated(engine, table);
  sayWhyNone(answer, desk, engine, desk.taste.inTerms(fromCore(table.name)), filled.state,
             filled.notes);
  return answer;
}

Answer answerBy(const Desk& desk, const describe::Result& result) {
  const int engine = desk.subject();
  if (!known(desk, engine, result)) {
    return unanswered(desk, engine, result);
  }
  Answer answer;
  answer.result = &result;
  answer.number = figures(desk, engine, result);
  answer.plusMinus = plusMinus(desk, engine, result);
  answer.further = besideDonor(desk, result);
  return answer;
}

QString joined(const QStringList& parts) {
  QStringList said = parts;
  said.removeAll(QString());
  return said.join(u" · "_s);
}

}  // namespace strokewright::ui

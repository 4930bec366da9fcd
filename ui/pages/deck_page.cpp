#include <QCoreApplication>
#include <QStringList>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/answering.h"
#include "ui/pages/desk.h"
#include "ui/pages/drawing_pane.h"
#include "ui/pages/put_spacer.h"

namespace strokewright::ui {

namespace {

namespace in = model::in;

QString tr(const char* text) { return QCoreApplication::translate("DeckPage", text); }

/// ", which leaves a squish gap of 0.10 mm": a ratio is not bought with the gap unseen.
QString leavesGap(const Desk& desk, int engine) {
  return known(desk, engine, out::squishWithSpacerToMake)
             ? tr(", which leaves a squish gap of %1")
                   .arg(figures(desk, engine, out::squishWithSpacerToMake))
             : QString();
}

/// "for a squish gap of 0.90 mm".
QString wanted(const Desk& desk, int engine) {
  const describe::Evaluation& evaluation = desk.document.assessment().evaluation();
  const auto figure = [&](const describe::Input& input) {
    return desk.taste.value(input, evaluation.inputValue(engine, input));
  };
  const double driver = evaluation.inputValue(engine, in::stackDriver);
  switch (static_cast<model::StackDriver>(static_cast<int>(driver))) {
    case model::StackDriver::SquishGap:
      return tr("for a squish gap of %1").arg(figure(in::wantedSquish));
    case model::StackDriver::DeckClearance:
      return tr("for a deck clearance of %1%2")
          .arg(figure(in::wantedDeckClearance), leavesGap(desk, engine));
    case model::StackDriver::CompressionRatio:
      return tr("for a compression ratio of %1%2")
          .arg(figure(in::wantedCompressionRatio), leavesGap(desk, engine));
  }
  return {};
}

/// What stands in the stack now, and what it gives.
QString fitted(const Desk& desk, int engine) {
  const describe::Entry& entry = desk.document.entry(engine, in::spacer);
  QStringList words = {entry.known() ? tr("with the spacer entered")
                                     : tr("with the spacer to make")};
  if (known(desk, engine, out::squishGap)) {
    words += tr("squish gap %1").arg(figures(desk, engine, out::squishGap));
  }
  if (known(desk, engine, out::compressionRatio)) {
    words += tr("compression ratio %1").arg(figures(desk, engine, out::compressionRatio));
  }
  return joined(words);
}

Answer answer(const Desk& desk) {
  Answer said = answerBy(desk, out::spacerToMake);
  const int engine = desk.subject();
  if (said.number.isEmpty()) {
    return said;
  }
  const bool one = desk.document.assessment().sameInAll(engine, out::spacerToMake);
  const bool all = desk.cylinder() < 0;
  said.sentence =
      one ? wanted(desk, engine)
      : all
          ? tr("%1, cylinder by cylinder").arg(wanted(desk, engine))
          : tr("%1 in cylinder %2")
                .arg(wanted(desk, engine))
                .arg(model::numberOfCylinder(desk.document.evaluation(), engine, desk.cylinder()));
  said.further = joined({fitted(desk, engine), roundedOff(desk, spacersToMake(desk))});
  const QString forWhat = said.sentence;
  if (sayWherePlatesAreNone(said, desk, out::spacerToMake)) {
    said.sentence = joined({said.sentence, forWhat});
    said.further = fitted(desk, engine);
  }
  return said;
}

QWidget* picture(Desk& desk, QWidget* parent) {
  return new DrawingPane(desk, DrawingPane::Shows::SectionAndStack, 0, parent);
}

}  // namespace

PageDescription deckPage() {
  return {
      .key = QStringLiteral("deck"),
      .name = tr("Deck"),
      .question = tr("How thick is the spacer?"),
      .entries = {{tr("Wanted"),
                   {&in::stackDriver, &in::wantedSquish, &in::wantedDeckClearance,
                    &in::wantedCompressionRatio}},
                  {tr("Stack"),
                   {&in::spacer, &in::seatHeight, &in::barrelHeight, &in::deckHeight,
                    &in::heightTakenTo, &in::linerProud, &in::baseGasket, &in::secondBaseGasket,
                    &in::thirdBaseGasket, &in::headGasket, &in::headRecess, &in::crownRise}},
                  {tr("Crank and piston"),
                   {&in::crankThrow, &in::stroke, &in::rodLength, &in::compressionHeight}},
                  {tr("Limits behind the objections"),
                   {&in::squishLeast, &in::squishMost, &in::spacerLeast, &in::spacerMost,
                    &in::seatSpread, &in::deckSpread}}},
      .results = {&out::spacerToMake, &out::spacerInStack, &out::squishGap,
                  &out::squishWithSpacerToMake, &out::compressionRatio, &out::deckClearance,
                  &out::protrusionWithoutSpacer, &out::ratioPerTenth, &out::deckClearanceSpread,
                  &out::deckHeight, &out::heightWithoutSpacer, &out::crownHeight, &out::bareGap,
                  &out::headMoved},
      .decides = {&out::spacerToMake, &out::squishGap},
      .answer = &answer,
      .picture = &picture,
      .deed = {.says = tr("put into the target"), .possible = &canPutSpacer, .act = &putSpacer}};
}

}  // namespace strokewright::ui

#include "ui/widgets/entry_words.h"

#include <QStringList>
#include <algorithm>
#include <array>
#include <limits>
#include <vector>

#include "core/assess/entry_rules.h"
#include "core/model/entry_text.h"
#include "core/model/inputs.h"
#include "core/units/parse.h"
#include "ui/document/entry_text.h"
#include "ui/document/taste.h"

namespace strokewright::ui {
namespace {

using describe::Entry;
using describe::Finding;
using describe::Input;
using describe::Limits;
using units::Heed;
using units::Kind;

QString tr(const char* text) { return QObject::tr(text); }

/// "= 98.12; 98.20 mm"; of several readings their mean.
QString equalsText(const Taste& taste, const Input& input, Entry entry) {
  entry.readings.clear();
  const QString text = QStringLiteral("= ") + valuesText(input, entry, taste.style(), Digits::Seen);
  const QString unit = taste.unit(input.kind);
  return unit.isEmpty() ? text : text + QChar(u'\u00A0') + unit;
}

QString typicalLine(const Taste& taste, const Input& input) {
  // Numbers that name something are not more typical one than the other.
  if (input.kind == Kind::Choice || (input.kind == Kind::Count && input.list)) return {};
  return tr("Typical: %1.").arg(taste.value(input, input.typical));
}

QString usualLine(const Taste& taste, const Input& input) {
  constexpr double kNone = std::numeric_limits<double>::infinity();
  const Limits& usual = input.usual;
  const bool below = usual.least > -kNone;
  const bool above = usual.most < kNone;
  if (below && above) {
    return tr("Usual: %1 to %2.")
        .arg(taste.number(input.kind, usual.least), taste.value(input, usual.most));
  }
  if (below) return tr("Usual: at least %1.").arg(taste.value(input, usual.least));
  if (above) return tr("Usual: at most %1.").arg(taste.value(input, usual.most));
  return {};
}

QString valueLine(const Taste& taste, const Input& input, const Entry& entry) {
  if (!entry.known() || input.kind == Kind::Choice) return {};
  const QString line = equalsText(taste, input, entry);
  const QString other = taste.inOtherSystem(input.kind, entry.values.front());
  return other.isEmpty() ? line : line + QStringLiteral(" (%1)").arg(other);
}

QString accuracyLine(const Taste& taste, const Input& input) {
  if (input.plusMinus <= 0.0) return {};
  return tr("By %1: ± %2.")
      .arg(taste.inTerms(fromCore(input.instrument)), taste.shown(input.kind, input.plusMinus, 3));
}

QString shapeLine(const Entry& entry) {
  if (entry.shape == describe::Shape::Normal) return {};
  return tr("Errors within its ±: %1.").arg(shapeText(entry.shape));
}

/// How several are typed.
QString listLine(const Taste& taste, const Input& input) {
  if (!input.list || input.kind == Kind::Choice || input.kind == Kind::Count) return {};
  const QString number = taste.number(input.kind, input.typical);
  const QString typed =
      input.kind == Kind::Volume
          ? tr("Several cylinders: %1; %1. Several readings of one: %1 | %1; a reading may be a "
               "step, 0 to %1.")
          : tr("Several cylinders: %1; %1. Several readings of one: %1 | %1.");
  return typed.arg(number) + QChar(u' ') +
         tr("A block copied from a table is taken too, a row for each cylinder.");
}

QString waitingLine(const Document& document, int engine, const Input& input) {
  const int waiting = document.assessment().waiting(engine, input);
  if (waiting == 0) return {};
  return waiting == 1 ? tr("One result waits for it.") : tr("%1 results wait for it.").arg(waiting);
}

/// The entry is the first that the finding is about, and the reader need be told.
bool speaksOf(const Document& document, const Finding& finding, const EntryPlace& place) {
  return !finding.about.empty() && finding.about.front() == place.input &&
         finding.list == place.list && finding.item == place.item &&
         !assess::goesWithoutSaying(finding, document.taste().style());
}

/// Those about an entry, the heaviest of each engine first. What lies in a list of the project
/// every engine may have something against.
std::vector<const Finding*> findingsAbout(const Document& document, const EntryPlace& place) {
  std::vector<const Finding*> findings;
  const int engines = static_cast<int>(document.project().engines.size());
  const bool ofAll = place.engine < 0;
  const int last = ofAll ? engines : std::min(place.engine + 1, engines);
  for (int engine = ofAll ? 0 : place.engine; engine < last; ++engine) {
    for (const Finding& finding : document.assessment().findings(engine)) {
      if (speaksOf(document, finding, place)) findings.push_back(&finding);
    }
  }
  return findings;
}

QStringList findingLines(const Document& document, const EntryPlace& place) {
  QStringList lines;
  for (const Finding* finding : findingsAbout(document, place)) {
    lines += fromCore(describe::weightWord(finding->weight)) + QStringLiteral(": ") +
             findingText(document, *finding);
  }
  lines.removeDuplicates();
  return lines;
}

}  // namespace

QString ofItsCylinder(const Document& document, const Finding& finding, const QString& said) {
  if (finding.cylinder < 0) return said;
  const int number =
      model::numberOfCylinder(document.assessment().evaluation(), finding.engine, finding.cylinder);
  return tr("Cylinder %1: %2").arg(number).arg(said);
}

QString findingText(const Document& document, const Finding& finding) {
  const Taste& taste = document.taste();
  const QString says = ofItsCylinder(document, finding, taste.sentence(finding.says));
  if (finding.hint.pattern.empty()) return says;
  return says + QChar(u' ') + taste.sentence(finding.hint);
}

QString entryEcho(const Document& document, const EntryPlace& place) {
  const Entry& entry = document.entry(place);
  const Input& input = *place.input;
  if (!entry.known() || entry.text.empty()) return {};
  const Taste& taste = document.taste();
  if (entry.unit != taste.style().unit(input.kind)) return {};
  const units::Parsed read = units::parse(input.kind, model::withSemicolons(input, entry.text),
                                          taste.style().group[input.kind]);
  constexpr std::array kHeeds{Heed::Fraction, Heed::OtherUnit, Heed::Step, Heed::Mean};
  const bool says = std::ranges::find_first_of(read.heeds, kHeeds) != read.heeds.end();
  return says ? equalsText(taste, input, entry) : QString();
}

QString entryDefault(const Document& document, const EntryPlace& place) {
  const Input& input = *place.input;
  if (!input.standing.exists()) return {};
  const QString unit = document.taste().unit(input.kind);
  const auto bare = [&](double value) {
    QString text = document.taste().value(input, value);
    if (text.endsWith(unit)) text.chop(unit.size());
    return text.trimmed();
  };
  if (place.list != nullptr) {
    return tr("%1 (default)").arg(bare(input.standing.value.value_or(input.typical)));
  }
  const describe::Evaluation& evaluation = document.assessment().evaluation();
  QStringList each;
  for (int i = 0; i < evaluation.cylinders(place.engine); ++i) {
    each += bare(evaluation.inputValue(place.engine, input, i));
  }
  const bool alike = each.count(each.front()) == each.size();
  return tr("%1 (default)").arg(alike ? each.front() : each.join(QStringLiteral("; ")));
}

QString entryName(const Document& document, const EntryPlace& place) {
  const Taste& taste = document.taste();
  QStringList parts{taste.label(*place.input)};
  if (place.list != nullptr) {
    parts +=
        taste.inTerms(fromCore(place.list->item)) + QChar(u' ') + QString::number(place.item + 1);
  }
  if (place.engine >= 0) parts += document.engineName(place.engine);
  const QString unit = taste.unit(place.input->kind);
  if (!unit.isEmpty()) parts += unit;
  return parts.join(QStringLiteral(", "));
}

QString entryTip(const Document& document, const EntryPlace& place) {
  const Taste& taste = document.taste();
  const Entry& entry = document.entry(place);
  const Input& input = *place.input;
  QStringList lines = findingLines(document, place);
  lines += valueLine(taste, input, entry);
  lines += originText(entry);
  lines += shapeLine(entry);
  lines += fromCore(entry.note);
  lines += taste.inTerms(fromCore(input.measure));
  lines += typicalLine(taste, input) + QChar(u' ') + usualLine(taste, input);
  lines += accuracyLine(taste, input);
  lines += listLine(taste, input);
  if (!input.synonyms.empty()) lines += tr("Also: %1.").arg(fromCore(input.synonyms));
  if (input.standing.exists() && !entry.known()) {
    lines += tr("Default: %1.").arg(taste.inTerms(fromCore(input.standing.origin)));
  }
  if (place.list == nullptr) lines += waitingLine(document, place.engine, input);
  lines.removeIf([](const QString& line) { return line.trimmed().isEmpty(); });
  return lines.join(QChar(u'\n'));
}

QString originText(const Entry& entry) {
  QStringList parts;
  if (entry.origin != describe::Origin::NotSaid) {
    parts += fromCore(describe::originLabel(entry.origin));
  }
  for (const std::string& part : {entry.instrument, entry.date}) {
    if (!part.empty()) parts += fromCore(part);
  }
  return parts.join(QStringLiteral(", "));
}

QString shapeText(describe::Shape shape) {
  switch (shape) {
    case describe::Shape::Rectangular:
      return tr("anywhere within it alike (rectangular)");
    case describe::Shape::Triangular:
      return tr("the middle likelier than the ends (triangular)");
    case describe::Shape::Normal:
      break;
  }
  return tr("most near the middle, 19 in 20 within it (normal)");
}

QString originMark(describe::Origin origin) {
  switch (origin) {
    case describe::Origin::Measured:
      return tr("m");
    case describe::Origin::MakersBook:
      return tr("b");
    case describe::Origin::Catalogue:
      return tr("c");
    case describe::Origin::Assumed:
      return tr("a");
    case describe::Origin::Computed:
      return QStringLiteral("=");
    case describe::Origin::NotSaid:
      break;
  }
  return {};
}

QString originKey() {
  using describe::Origin;
  QStringList meanings;
  for (const Origin origin : {Origin::Measured, Origin::MakersBook, Origin::Catalogue,
                              Origin::Assumed, Origin::Computed}) {
    meanings += originMark(origin) + QChar(u'\u00A0') +
                fromCore(describe::originLabel(origin)).replace(u' ', QChar(u'\u00A0'));
  }
  return meanings.join(QStringLiteral(" · "));
}

const Finding* findingAbout(const Document& document, const EntryPlace& place) {
  const std::vector<const Finding*> findings = findingsAbout(document, place);
  const auto heaviest = std::ranges::max_element(findings, {}, &Finding::weight);
  return heaviest == findings.end() ? nullptr : *heaviest;
}

QString tipFrom(const QString& plainLines) {
  return QStringLiteral("<p>%1</p>")
      .arg(plainLines.toHtmlEscaped().replace(QChar(u'\n'), QStringLiteral("<br>")));
}

}  // namespace strokewright::ui

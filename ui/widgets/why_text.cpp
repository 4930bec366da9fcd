#include "ui/widgets/why_text.h"

#include <QRegularExpression>
#include <algorithm>

#include "core/model/inputs.h"
#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/result_label.h"

namespace strokewright::ui {
namespace {

using describe::Cell;
using describe::Contributor;
using describe::Evaluation;
using describe::Input;
using describe::Result;
using describe::State;

using Symbols = std::vector<std::pair<QString, QString>>;

QString tr(const char* text) { return QObject::tr(text); }

QString inputLink(const Input& input, int engine) {
  return QStringLiteral("input:%1@%2").arg(fromCore(input.key)).arg(engine);
}

QString resultLink(const Result& result, int engine, int cylinder) {
  return QStringLiteral("result:%1@%2@%3").arg(fromCore(result.key)).arg(engine).arg(cylinder);
}

QString paragraph(const QString& plain) {
  return plain.isEmpty() ? QString() : QStringLiteral("<p>%1</p>").arg(plain.toHtmlEscaped());
}

QString titled(const QString& title, const QString& plain) {
  if (plain.isEmpty()) return {};
  return QStringLiteral("<p><b>%1</b> %2</p>").arg(title.toHtmlEscaped(), plain.toHtmlEscaped());
}

QString row(const QString& symbol, const QString& link, const QString& label, const QString& value,
            const QString& from) {
  return QStringLiteral(
             "<tr><td>%1&nbsp;&nbsp;</td><td><a href=\"%2\">%3</a>&nbsp;&nbsp;</td>"
             "<td align=\"right\">%4&nbsp;&nbsp;</td><td>%5</td></tr>")
      .arg(symbol.toHtmlEscaped(), link, label.toHtmlEscaped(), value.toHtmlEscaped(),
           from.toHtmlEscaped());
}

/// A formula with numbers in the place of symbols.
struct Filled {
  QString text;
  int put = 0;   ///< numbers
  int left = 0;  ///< words that stayed, π apart

  bool whole() const { return put > 0 && left == 0; }
};

/// Numbers stand in the sum alone: what explains it behind a comma or semicolon, "N in rpm", speaks
/// of the symbols.
Filled filled(const QString& formula, const Symbols& symbols) {
  static const QRegularExpression word(QStringLiteral("\\p{L}[\\p{L}\\p{M}\\p{Nd}_]*(,\\p{L}+)?"));
  static const QRegularExpression explained(QStringLiteral("[,;] (?!or )"));
  const qsizetype sum = formula.indexOf(QChar(u'=')) + 1;
  const qsizetype remark = formula.indexOf(explained, sum);
  const qsizetype end = remark < 0 ? formula.size() : remark;
  Filled done;
  qsizetype taken = 0;
  for (auto words = word.globalMatch(formula, sum); words.hasNext();) {
    const QRegularExpressionMatch match = words.next();
    const auto found = std::ranges::find(symbols, match.captured(), &Symbols::value_type::first);
    if (found != symbols.end() && match.capturedStart() < end) {
      done.text += formula.mid(taken, match.capturedStart() - taken);
      done.text += QStringLiteral("(%1)").arg(found->second);
      taken = match.capturedEnd();
      ++done.put;
    } else if (match.captured() != QStringLiteral("π")) {
      ++done.left;
    }
  }
  done.text += formula.mid(taken);
  return done;
}

/// One question and what answers it.
class Working {
 public:
  Working(Document& document, int engine, const Result& result, int cylinder)
      : document_(document),
        taste_(document.taste()),
        engine_(engine),
        result_(result),
        cylinder_(std::clamp(cylinder, 0, document.evaluation().cylinders(engine) - 1)),
        cell_(document.assessment()(engine, result, cylinder_)),
        read_(document.evaluation().working(engine, result, cylinder_)) {}

  QString text() {
    return heading() + paragraph(answer()) + formula() + numbers() +
           titled(tr("Source:"), fromCore(result_.source)) +
           titled(tr("Valid for:"), taste_.inTerms(fromCore(result_.valid))) + contributors();
  }

 private:
  int numberOf(int engine, int cylinder) const {
    return model::numberOfCylinder(document_.assessment().evaluation(), engine, cylinder);
  }

  QString heading() const {
    QString about = document_.engineName(engine_);
    if (result_.per == describe::Per::Cylinder && document_.evaluation().cylinders(engine_) > 1) {
      about = tr("%1, cylinder %2").arg(about).arg(numberOf(engine_, cylinder_));
    }
    return QStringLiteral("<h3>%1</h3><p>%2</p>")
        .arg(taste_.label(result_).toHtmlEscaped(), about.toHtmlEscaped());
  }

  QString answer() const {
    switch (cell_.state) {
      case State::Waits:
        return waits();
      case State::Refused:
        return taste_.sentence(document_.evaluation().refusal(cell_));
      case State::None:
        return tr("Does not apply: %1").arg(taste_.inTerms(fromCore(cell_.notes.none)));
      case State::Value:
        break;
    }
    const QString value = taste_.value(result_, cell_.value);
    const QString likely = plusMinusText(taste_, result_, cell_.likely);
    const QString worst = plusMinusText(taste_, result_, cell_.worst);
    if (worst.isEmpty()) return value;
    if (likely.isEmpty()) return tr("%1, %2 worst case").arg(value, worst);
    return tr("%1, %2 likely, %3 worst case").arg(value, likely, worst);
  }

  QString waits() const {
    QStringList names;
    for (const auto& wait : document_.assessment().waitsFor(engine_, result_, cylinder_)) {
      const QString label = inSentence(taste_.label(*wait.input));
      names += wait.donors ? tr("the donor's %1").arg(label) : label;
    }
    return tr("Waits for %1.").arg(names.join(QStringLiteral(", ")));
  }

  QString formula() const {
    FormulaUsed used = formulaUsed(fromCore(result_.formula), symbols());
    if (used.filled == used.plain) return paragraph(used.plain);
    if (used.whole && cell_.state == State::Value) {
      used.filled += QStringLiteral(" = ") + taste_.value(result_, cell_.value);
    }
    return paragraph(used.plain) + paragraph(used.filled);
  }

  bool stands(const Input& input) const {
    return document_.evaluation().inputStands(engine_, input, cylinder_);
  }

  QString valueOf(const Input& input) const {
    if (!stands(input)) return QStringLiteral("–");
    return taste_.value(input, document_.evaluation().inputValue(engine_, input, cylinder_));
  }

  QString valueOf(const Result& result) const {
    const Cell& cell = document_.assessment()(engine_, result, cylinder_);
    return cell.state == State::Value ? taste_.value(result, cell.value) : QStringLiteral("–");
  }

  QString fromOf(const Input& input) const {
    if (document_.evaluation().inputGiven(engine_, input, cylinder_)) {
      return originText(document_.entry(engine_, input));
    }
    if (!stands(input)) return tr("not entered");
    return tr("default, %1").arg(taste_.inTerms(fromCore(input.standing.origin)));
  }

  Symbols symbols() const {
    Symbols all;
    for (const Input* input : read_.inputs) {
      if (stands(*input)) all.emplace_back(fromCore(input->symbol), valueOf(*input));
    }
    for (const Result* result : read_.results) {
      all.emplace_back(fromCore(result->symbol), valueOf(*result));
    }
    std::erase_if(all, [](const auto& symbol) {
      return symbol.first.isEmpty() || symbol.second == QStringLiteral("–");
    });
    return all;
  }

  QString numbers() const {
    QString rows;
    for (const Input* input : read_.inputs) {
      rows += row(fromCore(input->symbol), inputLink(*input, engine_), taste_.label(*input),
                  valueOf(*input), fromOf(*input));
    }
    for (const Result* result : read_.results) {
      rows += row(fromCore(result->symbol), resultLink(*result, engine_, cylinder_),
                  taste_.label(*result), valueOf(*result), {});
    }
    return rows.isEmpty() ? QString() : QStringLiteral("<table>%1</table>").arg(rows);
  }

  QString contributorRow(const Contributor& part) const {
    const int engine = part.donors ? document_.project().referenceDonor : engine_;
    QString label = taste_.label(*part.input);
    if (part.donors) label = tr("%1 of the donor").arg(label);
    if (part.cylinder >= 0)
      label = tr("%1, cylinder %2").arg(label).arg(numberOf(engine, part.cylinder));
    return row({}, inputLink(*part.input, engine), label, shareText(taste_, result_, part.share),
               {});
  }

  QString contributors() {
    if (cell_.state != State::Value) return {};
    QString rows;
    for (const Contributor& part :
         document_.evaluation().contributors(engine_, result_, cylinder_)) {
      rows += contributorRow(part);
    }
    const QString without = titled(tr("Carry no ±:"), withoutPlusMinus());
    if (rows.isEmpty()) return without;
    return QStringLiteral("<p><b>%1</b></p><table>%2</table>")
               .arg(tr("What its ± is made of, the largest first").toHtmlEscaped(), rows) +
           without;
  }

  QString withoutPlusMinus() const {
    QStringList names;
    for (const Input* input : document_.evaluation().catalogue().inputs()) {
      const bool measurable = input->plusMinus > 0.0;
      if (!measurable || !cell_.notes.read.own[static_cast<std::size_t>(input->number)]) {
        continue;
      }
      const describe::Entry& entry = document_.entry(engine_, *input);
      if (entry.known() && !entry.plusMinus) names += inSentence(taste_.label(*input));
    }
    return names.join(QStringLiteral(", "));
  }

  Document& document_;
  const Taste& taste_;
  int engine_;
  const Result& result_;
  int cylinder_;
  const Cell& cell_;
  describe::Working read_;
};

}  // namespace

QString formulaWithNumbers(const QString& formula, const Symbols& symbols) {
  return filled(formula, symbols).text;
}

FormulaUsed formulaUsed(const QString& formula, const Symbols& symbols) {
  static const QString mark = QStringLiteral("; ");
  static const QString other = QStringLiteral("or ");
  QStringList remarks = formula.split(mark);
  QStringList ways{remarks.takeFirst()};
  const QString head = ways.front().left(ways.front().indexOf(QChar(u'=')) + 1);
  while (!remarks.isEmpty() && remarks.front().startsWith(other)) {
    const QString way = remarks.takeFirst().mid(other.size());
    ways += head.isEmpty() ? way : head + QChar(u' ') + way;
  }
  QString used;
  Filled most;
  for (const QString& way : ways) {
    const Filled tried = filled(way, symbols);
    if (!tried.whole() || (most.whole() && tried.put <= most.put)) continue;
    used = way;
    most = tried;
  }
  if (most.whole()) return {(QStringList{used} + remarks).join(mark), most.text, true};
  return {formula, filled(formula, symbols).text, false};
}

QString whyText(Document& document, int engine, const Result& result, int cylinder) {
  return Working(document, engine, result, cylinder).text();
}

}  // namespace strokewright::ui

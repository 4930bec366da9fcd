#include "ui/widgets/origin_dialog.h"

#include <QComboBox>
#include <QDate>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>

#include "ui/document/taste.h"
#include "ui/widgets/entry_words.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {
namespace {

using describe::Origin;
using describe::Shape;

constexpr Origin kOrigins[] = {Origin::NotSaid,   Origin::Measured, Origin::MakersBook,
                               Origin::Catalogue, Origin::Assumed,  Origin::Computed};

constexpr Shape kShapes[] = {Shape::Normal, Shape::Rectangular, Shape::Triangular};

}  // namespace

OriginDialog::OriginDialog(const Document& document, const EntryPlace& place, QWidget* parent)
    : QDialog(parent),
      origin_(new QComboBox(this)),
      instrument_(new QLineEdit(this)),
      shape_(new QComboBox(this)),
      date_(new QLineEdit(this)),
      noDate_(new QLabel(this)),
      note_(new QPlainTextEdit(this)) {
  const QString subject = document.subject(place);
  setWindowTitle(subject.front().toUpper() + subject.mid(1));
  const describe::Entry& entry = document.entry(place);
  for (const Origin origin : kOrigins) {
    origin_->addItem(fromCore(describe::originLabel(origin)), static_cast<int>(origin));
  }
  origin_->setCurrentIndex(origin_->findData(static_cast<int>(entry.origin)));
  for (const Shape shape : kShapes) {
    shape_->addItem(shapeText(shape), static_cast<int>(shape));
  }
  shape_->setCurrentIndex(shape_->findData(static_cast<int>(entry.shape)));
  instrument_->setText(fromCore(entry.instrument));
  instrument_->setPlaceholderText(fromCore(place.input->instrument));
  date_->setText(fromCore(entry.date));
  date_->setPlaceholderText(tr("year-month-day"));
  date_->setMinimumWidth(18 * fontMetrics().averageCharWidth());
  QPalette spoken;
  spoken.setColor(QPalette::WindowText, ink::objects(palette()));
  noDate_->setPalette(spoken);
  connect(date_, &QLineEdit::textChanged, this, &OriginDialog::judgeDate);
  judgeDate();
  note_->setPlainText(fromCore(entry.note));
  note_->setTabChangesFocus(true);

  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* rows = new QFormLayout(this);
  rows->addRow(tr("&Where from"), origin_);
  rows->addRow(tr("&Measured with, or source"), instrument_);
  rows->addRow(tr("&Errors within its ±"), shape_);
  auto* date = new QHBoxLayout;
  date->addWidget(date_, 1);
  date->addWidget(noDate_);
  rows->addRow(tr("&Date"), date);
  qobject_cast<QLabel*>(rows->labelForField(date))->setBuddy(date_);
  rows->addRow(tr("&Note"), note_);
  rows->addRow(buttons);
}

/// What cannot be read stays as it was typed, as in a number field.
void OriginDialog::judgeDate() {
  const QString typed = date_->text().trimmed();
  const bool read =
      typed.isEmpty() || QDate::fromString(typed, QStringLiteral("yyyy-MM-dd")).isValid();
  noDate_->setText(read ? QString() : tr("! no date; as in 2026-05-31"));
  noDate_->setVisible(!read);
  date_->setAccessibleDescription(noDate_->text());
}

describe::Entry OriginDialog::answer() const {
  describe::Entry entry;
  entry.origin = static_cast<Origin>(origin_->currentData().toInt());
  entry.shape = static_cast<Shape>(shape_->currentData().toInt());
  entry.instrument = instrument_->text().trimmed().toStdString();
  entry.date = date_->text().trimmed().toStdString();
  entry.note = note_->toPlainText().trimmed().toStdString();
  return entry;
}

}  // namespace strokewright::ui

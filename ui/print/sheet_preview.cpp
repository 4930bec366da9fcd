#include "ui/print/sheet_preview.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QFileDialog>
#include <QLabel>
#include <QPaintEvent>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/drawings/cylinder.h"

namespace strokewright::ui {

/// The page, fitted. It is painted anew only when project, paper or size have changed.
class SheetPicture final : public QWidget {
 public:
  SheetPicture(const Document& document, const Taste& taste, QWidget* parent)
      : QWidget(parent), document_(document), taste_(taste) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setMinimumSize(fontMetrics().height() * 12, fontMetrics().height() * 16);
  }

  void show(const SheetOrder& order, QPageSize::PageSizeId paper) {
    order_ = order;
    paper_ = paper;
    image_ = {};
    update();
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    const QSizeF page = QPageSize(paper_).size(QPageSize::Millimeter);
    const double zoom = std::min(width() / page.width(), height() / page.height());
    const double ratio = devicePixelRatioF();
    const int pixels = std::max(1, static_cast<int>(std::floor(page.width() * zoom * ratio)));
    if (image_.width() != pixels) {
      image_ = sheetPicture(document_.assessment(), taste_.style(), order_, paper_, pixels);
    }
    const QSizeF size = QSizeF(image_.size()) / ratio;
    const QPointF corner((width() - size.width()) / 2.0, (height() - size.height()) / 2.0);
    QPainter painter(this);
    painter.drawImage(QRectF(corner, size), image_);
  }

 private:
  const Document& document_;
  const Taste& taste_;
  SheetOrder order_;
  QPageSize::PageSizeId paper_ = QPageSize::A4;
  QImage image_;
};

SheetPreview::SheetPreview(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent),
      document_(document),
      taste_(taste),
      picture_(new SheetPicture(document, taste, this)),
      paper_(new QComboBox(this)) {
  paper_->addItem(tr("A4"), QPageSize::A4);
  paper_->addItem(tr("Letter"), QPageSize::Letter);
  paper_->setCurrentIndex(paper_->findData(defaultPaper()));
  paper_->setAccessibleName(tr("Paper"));
  auto* paperLabel = new QLabel(tr("Pa&per"), this);
  paperLabel->setBuddy(paper_);
  auto* printButton = new QPushButton(tr("Prin&t…"), this);
  auto* saveButton = new QPushButton(tr("Save as P&DF…"), this);

  auto* bar = new QHBoxLayout;
  bar->addWidget(paperLabel);
  bar->addWidget(paper_);
  bar->addStretch();
  bar->addWidget(printButton);
  bar->addWidget(saveButton);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addLayout(bar);
  layout->addWidget(picture_, 1);

  picture_->setAccessibleName(tr("Preview of the spec sheet"));
  connect(paper_, &QComboBox::currentIndexChanged, this, &SheetPreview::refresh);
  connect(printButton, &QPushButton::clicked, this, &SheetPreview::print);
  connect(saveButton, &QPushButton::clicked, this, &SheetPreview::savePdf);
  connect(&document, &Document::projectChanged, this, &SheetPreview::refresh);
  connect(&document, &Document::fileChanged, this, &SheetPreview::refresh);  // its name
  connect(&taste, &Taste::changed, this, &SheetPreview::refresh);
  refresh();
}

void SheetPreview::setEngine(int engine) {
  engine_ = engine;
  refresh();
}

void SheetPreview::print() {
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageSize(QPageSize(paper()));
  QPrintDialog dialog(&printer, this);
  dialog.setWindowTitle(tr("Print the spec sheet"));
  if (dialog.exec() != QDialog::Accepted) return;
  QString error;
  const bool done = printSheet(document_.assessment(), taste_.style(), order(), printer, &error);
  Q_EMIT said(done ? tr("The spec sheet went to the printer.") : error);
}

void SheetPreview::savePdf() {
  const QString path = QFileDialog::getSaveFileName(this, tr("Save the spec sheet"),
                                                    suggestedPath(), tr("PDF (*.pdf)"));
  if (path.isEmpty()) return;
  QString error;
  const bool done =
      writeSheetPdf(document_.assessment(), taste_.style(), order(), paper(), path, &error);
  Q_EMIT said(done ? tr("The spec sheet is in %1.").arg(path) : error);
}

QPageSize::PageSizeId SheetPreview::paper() const {
  return static_cast<QPageSize::PageSizeId>(paper_->currentData().toInt());
}

/// Beside the project file, under the engine's name.
QString SheetPreview::suggestedPath() const {
  const model::Project& project = document_.project();
  const int engine = engineToDraw(project, engine_);
  QString name = engine >= 0 ? fromCore(project.engines[static_cast<std::size_t>(engine)].name)
                             : document_.shownName();
  name.replace(QLatin1Char('/'), QLatin1Char('-'));
  const QString folder = document_.path().section(QLatin1Char('/'), 0, -2);
  return (folder.isEmpty() ? QString() : folder + QLatin1Char('/')) + name + QStringLiteral(".pdf");
}

SheetOrder SheetPreview::order() const {
  return {.engine = engine_, .projectName = document_.shownName(), .terms = taste_.terms()};
}

void SheetPreview::refresh() { picture_->show(order(), paper()); }

}  // namespace strokewright::ui

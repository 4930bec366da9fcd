#include "ui/print/sheet_preview.h"

#include <QBoxLayout>
#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QPaintEvent>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QRegularExpression>
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

  /// @returns the paper it takes.
  QPageLayout show(const SheetOrder& order, QPageSize::PageSizeId paper) {
    order_ = order;
    paper_ = paper;
    page_ = sheetPaper(document_.assessment(), taste_.style(), order, paper);
    image_ = {};
    update();
    return page_;
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    const QSizeF page = page_.fullRect(QPageLayout::Millimeter).size();
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
  QPageLayout page_;
  QImage image_;
};

SheetPreview::SheetPreview(Document& document, Taste& taste, QWidget* parent)
    : QWidget(parent),
      document_(document),
      taste_(taste),
      picture_(new SheetPicture(document, taste, this)),
      paper_(new QComboBox(this)),
      kind_(new QComboBox(this)),
      needs_(new QLabel(this)),
      save_(new QPushButton(this)) {
  for (const sheet::SheetName& name : sheet::sheetNames()) {
    kind_->addItem(fromCore(name.name), static_cast<int>(name.kind));
  }
  kind_->setAccessibleName(tr("Sheet"));
  auto* kindLabel = new QLabel(tr("&Sheet"), this);
  kindLabel->setBuddy(kind_);
  paper_->addItem(tr("A4"), QPageSize::A4);
  paper_->addItem(tr("Letter"), QPageSize::Letter);
  paper_->setCurrentIndex(paper_->findData(defaultPaper()));
  paper_->setAccessibleName(tr("Paper"));
  auto* paperLabel = new QLabel(tr("Pa&per"), this);
  paperLabel->setBuddy(paper_);
  auto* printButton = new QPushButton(tr("Prin&t…"), this);

  auto* bar = new QHBoxLayout;
  bar->addWidget(kindLabel);
  bar->addWidget(kind_);
  bar->addWidget(paperLabel);
  bar->addWidget(paper_);
  bar->addWidget(needs_);
  bar->addStretch();
  bar->addWidget(printButton);
  bar->addWidget(save_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addLayout(bar);
  layout->addWidget(picture_, 1);

  setTabOrder(kind_, paper_);
  setTabOrder(paper_, printButton);
  setTabOrder(printButton, save_);
  connect(kind_, &QComboBox::currentIndexChanged, this, [this] {
    refresh();
    Q_EMIT kindChosen(kind());
  });
  connect(paper_, &QComboBox::currentIndexChanged, this, &SheetPreview::refresh);
  connect(printButton, &QPushButton::clicked, this, &SheetPreview::print);
  connect(save_, &QPushButton::clicked, this, &SheetPreview::savePdf);
  connect(&document, &Document::projectChanged, this, &SheetPreview::refresh);
  connect(&document, &Document::fileChanged, this, &SheetPreview::refresh);  // its name
  connect(&taste, &Taste::changed, this, &SheetPreview::refresh);
  refresh();
}

void SheetPreview::setEngine(int engine) {
  engine_ = engine;
  refresh();
}

void SheetPreview::setKind(sheet::SheetKind kind) {
  kind_->setCurrentIndex(kind_->findData(static_cast<int>(kind)));
}

void SheetPreview::print() {
  QPrinter printer(QPrinter::HighResolution);
  printer.setPageSize(QPageSize(paper()));
  QPrintDialog dialog(&printer, this);
  dialog.setWindowTitle(tr("Print the sheet"));
  if (dialog.exec() != QDialog::Accepted) return;
  QString error;
  const bool done = printSheet(document_.assessment(), taste_.style(), order(), printer, &error);
  Q_EMIT said(done ? tr("The sheet went to the printer.") : error);
}

void SheetPreview::savePdf() {
  QStringList formats{tr("PDF (*.pdf)")};
  if (kind() == sheet::SheetKind::Plate) formats << tr("SVG (*.svg)") << tr("DXF (*.dxf)");
  QString format;
  QString path = QFileDialog::getSaveFileName(this, tr("Save the sheet"), suggestedPath(),
                                              formats.join(QStringLiteral(";;")), &format);
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += QLatin1Char('.') + format.left(3).toLower();
  QString error;
  const bool done =
      writeSheetFile(document_.assessment(), taste_.style(), order(), paper(), path, &error);
  if (!done) {
    Q_EMIT said(error);
    return;
  }
  const QString forbids = whatForbids(document_.assessment(), taste_.style(), order());
  Q_EMIT said(
      forbids.isEmpty()
          ? tr("The sheet is in %1.").arg(path)
          : tr("The sheet is in %1, but must not leave for the bench. %2").arg(path, forbids));
}

sheet::SheetKind SheetPreview::kind() const {
  return static_cast<sheet::SheetKind>(kind_->currentData().toInt());
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
  if (kind() != sheet::SheetKind::Spec) name += QLatin1Char(' ') + kind_->currentText();
  static const QRegularExpression unfit(QStringLiteral(" *[/:] *"));
  name.replace(unfit, QStringLiteral("-"));
  const QString folder = document_.path().section(QLatin1Char('/'), 0, -2);
  return (folder.isEmpty() ? QString() : folder + QLatin1Char('/')) + name + QStringLiteral(".pdf");
}

SheetOrder SheetPreview::order() const {
  return {.engine = engine_,
          .projectName = document_.shownName(),
          .terms = taste_.terms(),
          .kind = kind()};
}

void SheetPreview::refresh() {
  const bool plate = kind() == sheet::SheetKind::Plate;
  save_->setText(plate ? tr("Save as P&DF, SVG, DXF…") : tr("Save as P&DF…"));
  picture_->setAccessibleName(tr("Preview: %1").arg(kind_->currentText()));
  const QPageLayout taken = picture_->show(order(), paper());
  const bool lying = taken.orientation() == QPageLayout::Landscape;
  const QString name = taken.pageSize().name().section(u' ', 0, 0);
  needs_->setText(lying ? tr("needs %1, landscape").arg(name) : tr("needs %1").arg(name));
  needs_->setVisible(lying || taken.pageSize().id() != paper());
}

}  // namespace strokewright::ui

#include "ui/pages/way_through.h"

#include <QPainter>
#include <QStyledItemDelegate>

#include "ui/document/document.h"
#include "ui/pages/comparison.h"
#include "ui/pages/desk.h"
#include "ui/pages/standing.h"
#include "ui/plots/engines_shown.h"
#include "ui/widgets/ink.h"

namespace strokewright::ui {

using namespace Qt::StringLiterals;

namespace {

enum Role { kStandingRole = Qt::UserRole, kStateRole };

constexpr int kMark = 12;    ///< [px] across a station's mark
constexpr int kMargin = 20;  ///< [px] to the route

/// A station: the route, its mark, the name, and the state in words.
class StationDelegate final : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
    return {0, 2 * option.fontMetrics.height() + 8};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QPalette& palette = option.palette;
    const bool here = (option.state & QStyle::State_Selected) != 0;
    if (here) {
      painter->fillRect(option.rect, palette.color(QPalette::Window));
      painter->fillRect(QRect(option.rect.topLeft(), QSize(3, option.rect.height())),
                        ink::accent(palette));
    }
    const QPoint middle(option.rect.left() + kMargin, option.rect.center().y());
    painter->setPen(ink::rule(palette));
    const bool last = index.row() + 1 == index.model()->rowCount();
    painter->drawLine(middle.x(), index.row() == 0 ? middle.y() : option.rect.top(), middle.x(),
                      last ? middle.y() : option.rect.bottom() + 1);
    const auto standing = static_cast<Standing>(index.data(kStandingRole).toInt());
    paintMark(*painter, middle, standing, here, palette);
    paintWords(*painter, option, index, standing, here);
    painter->restore();
  }

 private:
  static void paintMark(QPainter& painter, QPoint middle, Standing standing, bool here,
                        const QPalette& palette) {
    const QRect mark(middle - QPoint(kMark / 2, kMark / 2), QSize(kMark, kMark));
    const QColor line = here ? ink::accent(palette) : ink::text(palette);
    painter.setPen(QPen(line, here ? 2.5 : 1.5));
    painter.setBrush(standing == Standing::Settled ? line : palette.color(QPalette::Base));
    if (standing == Standing::Forbidden) {
      painter.drawRect(mark);
      painter.drawLine(mark.topLeft(), mark.bottomRight());
      painter.drawLine(mark.bottomLeft(), mark.topRight());
      return;
    }
    painter.drawEllipse(mark);
    if (standing == Standing::ObjectedTo) {
      painter.drawLine(mark.bottomLeft(), mark.topRight());
    }
  }

  static void paintWords(QPainter& painter, const QStyleOptionViewItem& option,
                         const QModelIndex& index, Standing standing, bool here) {
    const QPalette& palette = option.palette;
    const int left = option.rect.left() + 2 * kMargin;
    const int line = option.fontMetrics.height();
    const int top = option.rect.center().y() - line;
    const QRect first(left, top, option.rect.right() - left - 4, line);
    QFont font = option.font;
    font.setBold(here);
    painter.setFont(font);
    painter.setPen(ink::text(palette));
    painter.drawText(first, Qt::AlignVCenter, index.data().toString());
    painter.setFont(option.font);
    painter.setPen(standing == Standing::Forbidden    ? ink::forbids(palette)
                   : standing == Standing::ObjectedTo ? ink::objects(palette)
                                                      : ink::muted(palette));
    painter.drawText(first.translated(0, line), Qt::AlignVCenter,
                     index.data(kStateRole).toString());
    if ((option.state & QStyle::State_HasFocus) != 0) {
      painter.setPen(QPen(ink::accent(palette), 1, Qt::DotLine));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(option.rect.adjusted(4, 1, -2, -2));
    }
  }
};

}  // namespace

WayThrough::WayThrough(Desk& desk, QWidget* parent) : QListWidget(parent), desk_(desk) {
  setFrameShape(QFrame::NoFrame);
  setAccessibleName(tr("The way through"));
  setItemDelegate(new StationDelegate(this));
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setUniformItemSizes(true);
  setMouseTracking(false);
  viewport()->setAutoFillBackground(false);
  for (const PageDescription& page : pages()) {
    new QListWidgetItem(page.name, this);
  }
  connect(&desk_.document, &Document::projectChanged, this, &WayThrough::refresh);
  connect(&desk_, &Desk::whatIfAsked, this, &WayThrough::refresh);
  refresh();
}

void WayThrough::refresh() {
  for (int row = 0; row < count(); ++row) {
    const PageDescription& page = pages()[static_cast<std::size_t>(row)];
    const PageState state = stateOf(desk_, page);
    const QString words = stateText(state);
    if (item(row)->data(kStateRole).toString() != words) {
      item(row)->setData(kStandingRole, static_cast<int>(state.standing));
      item(row)->setData(kStateRole, words);
      item(row)->setData(Qt::AccessibleTextRole, page.name + u", "_s + words);
      item(row)->setToolTip(page.question);
    }
  }
}

QSize WayThrough::sizeHint() const {
  const QString widest = stateText({Standing::ObjectedTo, 10});
  return {2 * kMargin + fontMetrics().horizontalAdvance(widest) + 20,
          count() * (2 * fontMetrics().height() + 8)};
}

QSize WayThrough::minimumSizeHint() const {
  return {sizeHint().width(), 3 * (2 * fontMetrics().height() + 8)};
}

EngineKey::EngineKey(Desk& desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  connect(&desk_.document, &Document::projectChanged, this, &EngineKey::refresh);
  refresh();
}

void EngineKey::refresh() {
  QStringList names;
  for (const int engine : columnsOf(desk_)) {
    names += partText(desk_, engine) + u' ' + engineName(desk_, engine);
  }
  if (names == names_) {
    return;
  }
  const bool resized = names.size() != names_.size();
  names_ = names;
  setAccessibleName(tr("Engines: %1").arg(names_.join(u", "_s)));
  setToolTip(names_.join(u'\n'));
  if (resized) {
    updateGeometry();
  }
  update();
}

QSize EngineKey::sizeHint() const {
  return {0, static_cast<int>(names_.size()) * (fontMetrics().height() + 4) + 12};
}

void EngineKey::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  const int line = fontMetrics().height() + 4;
  int top = 4;
  for (const int engine : columnsOf(desk_)) {
    const int middle = top + line / 2;
    painter.setPen(QPen(ink::text(palette()), 2, lineOf(desk_.document.project(), engine)));
    painter.drawLine(12, middle, 52, middle);
    painter.setPen(ink::muted(palette()));
    const QRect words(60, top, width() - 64, line);
    painter.drawText(
        words, Qt::AlignVCenter,
        fontMetrics().elidedText(engineName(desk_, engine), Qt::ElideRight, words.width()));
    top += line;
  }
}

}  // namespace strokewright::ui

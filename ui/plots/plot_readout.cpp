#include "ui/plots/plot_readout.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace strokewright::ui {
namespace {

/// A name that has one line where there is room, and as many as its words where there is not.
class Name final : public QLabel {
 public:
  using QLabel::QLabel;
  QSize sizeHint() const override {
    return {fontMetrics().size(0, text()).width(), QLabel::sizeHint().height()};
  }
};

constexpr QChar kJoiner(0x2060);

/// A unit stays whole: "m/s²".
QString unparted(QString heading) {
  return heading.replace(QStringLiteral("/"), QStringLiteral("/") + kJoiner);
}

}  // namespace

PlotReadout::PlotReadout(QWidget* parent)
    : QWidget(parent), grid_(new QGridLayout), remark_(new QLabel(this)) {
  auto* const column = new QVBoxLayout(this);
  column->setContentsMargins(0, 4, 0, 0);
  column->setSpacing(4);
  grid_->setHorizontalSpacing(12);
  grid_->setVerticalSpacing(2);
  column->addLayout(grid_);
  remark_->setWordWrap(true);
  remark_->setForegroundRole(QPalette::WindowText);
  remark_->hide();
  column->addWidget(remark_);
}

void PlotReadout::put(int row, int column, const QString& text) {
  const auto r = static_cast<std::size_t>(row);
  const auto c = static_cast<std::size_t>(column);
  if (cells_.size() <= r) cells_.resize(r + 1);
  while (cells_[r].size() <= c) {
    const int at = static_cast<int>(cells_[r].size());
    auto* const label = row > 0 && at == 0 ? new Name(this) : new QLabel(this);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(row == 0 || at == 0);  // they may be longer than the figures beside them
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setAlignment((at == 0 ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    grid_->addWidget(label, row, at);
    cells_[r].push_back(label);
  }
  cells_[r][c]->setText(row == 0 ? unparted(text) : text);
  cells_[r][c]->show();
}

void PlotReadout::show(const QStringList& headings, const std::vector<QStringList>& rows) {
  for (int c = 0; c < headings.size(); ++c) put(0, c, headings[c]);
  for (int r = 0; r < static_cast<int>(rows.size()); ++r) {
    const QStringList& row = rows[static_cast<std::size_t>(r)];
    for (int c = 0; c < row.size(); ++c) put(r + 1, c, row[c]);
  }
  for (std::size_t r = 0; r < cells_.size(); ++r) {
    const std::size_t shown = r > rows.size() ? 0 : static_cast<std::size_t>(headings.size());
    for (std::size_t c = shown; c < cells_[r].size(); ++c) cells_[r][c]->hide();
  }
  grid_->setColumnStretch(static_cast<int>(headings.size()), 1);
}

void PlotReadout::setRemark(const QString& remark) {
  remark_->setText(remark);
  remark_->setVisible(!remark.isEmpty());
}

bool PlotReadout::leaves(int lines, const QSize& room) const {
  return room.height() - heightForWidth(room.width()) >= lines * fontMetrics().lineSpacing();
}

QString PlotReadout::text() const {
  QStringList lines;
  for (const std::vector<QLabel*>& row : cells_) {
    QStringList fields;
    for (const QLabel* const cell : row) {
      if (!cell->isHidden()) fields << cell->text().remove(kJoiner);
    }
    if (!fields.isEmpty()) lines << fields.join(u'\t');
  }
  if (!remark_->isHidden()) lines << remark_->text();
  return lines.join(u'\n');
}

}  // namespace strokewright::ui

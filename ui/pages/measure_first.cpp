#include "ui/pages/measure_first.h"

#include <QGridLayout>
#include <QLabel>
#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <utility>

#include "core/compression/results.h"
#include "core/deck/results.h"
#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/taste.h"
#include "ui/pages/desk.h"
#include "ui/pages/link_button.h"
#include "ui/plots/refresher.h"

namespace strokewright::ui {

using describe::Result;

namespace {

constexpr std::size_t kMost = 6;  // entries named
constexpr std::array<const Result*, 2> kResults = {&out::squishGap, &out::compressionRatio};
constexpr int kDecimals = 3;

/// An entry and its share in each ± [SI].
struct Share {
  const describe::Input* input;
  bool donors;
  std::array<double, kResults.size()> of{};
  double weight = 0.0;  ///< the larger of its shares, each as a part of the whole
};

/// The largest first.
std::vector<Share> sharesOf(Document& document, int engine, int cylinder) {
  std::vector<Share> shares;
  for (std::size_t i = 0; i < kResults.size(); ++i) {
    const double likely = document.assessment()(engine, *kResults[i], cylinder).likely;
    for (const describe::Contributor& each :
         document.evaluation().contributors(engine, *kResults[i], cylinder)) {
      auto found = std::ranges::find_if(shares, [&](const Share& share) {
        return share.input == each.input && share.donors == each.donors;
      });
      if (found == shares.end()) {
        found = shares.insert(found, {.input = each.input, .donors = each.donors});
      }
      found->of[i] = std::hypot(found->of[i], each.share);
      if (likely > 0.0) found->weight = std::max(found->weight, found->of[i] / likely);
    }
  }
  std::ranges::stable_sort(shares, std::greater{}, &Share::weight);
  if (shares.size() > kMost) shares.resize(kMost);
  return shares;
}

}  // namespace

MeasureFirst::MeasureFirst(Desk& desk, std::function<CylinderShown()> which, QWidget* parent)
    : QWidget(parent),
      desk_(desk),
      which_(std::move(which)),
      refresher_(new Refresher(desk.document, desk.taste, *this, [this] { refresh(); })),
      grid_(new QGridLayout(this)),
      none_(new QuietLabel(tr("No entry behind gap and ratio carries a ±."), this)) {
  grid_->setContentsMargins(0, 8, 0, 0);
  grid_->setHorizontalSpacing(8);
  grid_->setVerticalSpacing(2);
  for (const QString& head :
       {tr("Measure this first"), tr("its share in ± of the gap"), tr("left without it"),
        tr("in ± of the ratio"), tr("left without it")}) {
    auto* label = new QuietLabel(head, this);
    label->setWordWrap(true);
    label->setAlignment((heads_.empty() ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignBottom);
    grid_->addWidget(label, 0, static_cast<int>(heads_.size()));
    heads_.push_back(label);
  }
  grid_->addWidget(none_, 1, 0, 1, static_cast<int>(heads_.size()));
  grid_->setColumnStretch(static_cast<int>(heads_.size()), 1);
}

void MeasureFirst::changed() { refresher_->changed(); }

void MeasureFirst::addRow() {
  const std::size_t place = rows_.size();
  Row row{.entry = new LinkButton({}, this), .numbers = {}};
  const int line = static_cast<int>(place) + 2;
  grid_->addWidget(row.entry, line, 0, Qt::AlignLeft);
  for (std::size_t i = 1; i < heads_.size(); ++i) {
    auto* number = new QLabel(this);
    number->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    grid_->addWidget(number, line, static_cast<int>(i));
    row.numbers.push_back(number);
  }
  connect(row.entry, &QAbstractButton::clicked, this,
          [this, place] { Q_EMIT desk_.entryAsked(rows_[place].engine, rows_[place].input); });
  rows_.push_back(std::move(row));
}

void MeasureFirst::refresh() {
  const auto [engine, cylinder] = which_();
  const std::vector<Share> shares =
      engine < 0 ? std::vector<Share>() : sharesOf(desk_.document, engine, cylinder);
  const describe::Evaluation& evaluation = desk_.document.evaluation();
  const bool several = engine >= 0 && evaluation.cylinders(engine) > 1;
  say(*heads_.front(), several ? tr("Measure this first, cylinder %1")
                                     .arg(model::numberOfCylinder(evaluation, engine, cylinder))
                               : tr("Measure this first"));
  none_->setVisible(shares.empty());
  while (rows_.size() < shares.size()) addRow();
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    Row& row = rows_[r];
    const bool seen = r < shares.size();
    row.entry->setVisible(seen);
    for (QLabel* number : row.numbers) number->setVisible(seen);
    if (!seen) continue;
    const Share& share = shares[r];
    row.input = share.input;
    row.engine = share.donors ? desk_.donor() : engine;
    const QString name = desk_.taste.label(*share.input);
    row.entry->setText(share.donors ? tr("%1 of the donor").arg(name) : name);
    row.entry->setAccessibleName(row.entry->text());
    for (std::size_t i = 0; i < kResults.size(); ++i) {
      const double likely = desk_.document.assessment()(engine, *kResults[i], cylinder).likely;
      const double left = std::sqrt(std::max(0.0, likely * likely - share.of[i] * share.of[i]));
      const auto shown = [&](double si) {
        return tr("± %1").arg(desk_.taste.number(kResults[i]->kind, si, kDecimals));
      };
      const bool has = share.of[i] > 0.0;
      say(*row.numbers[2 * i], has ? shown(share.of[i]) : QString());
      say(*row.numbers[2 * i + 1], has ? shown(left) : QString());
    }
  }
}

QString MeasureFirst::text() const {
  QStringList lines;
  for (const Row& row : rows_) {
    if (row.entry->isHidden()) continue;
    QStringList fields{row.entry->text()};
    for (const QLabel* number : row.numbers) fields += number->text();
    lines += fields.join(u'\t');
  }
  return lines.join(u'\n');
}

}  // namespace strokewright::ui

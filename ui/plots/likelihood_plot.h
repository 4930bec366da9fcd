#pragma once
/// How likely each gap and each ratio is, and a check of it by sampling.

#include <QWidget>
#include <functional>
#include <memory>

#include "ui/plots/likelihood_scene.h"

namespace strokewright::ui {

class Document;
class Taste;

/// Histograms of squish gap and compression ratio for one cylinder, the chances of a gap that is
/// too small, and the command that samples a million engines beside them. What was sampled stays
/// after an edit, and says that it is older.
class LikelihoodPlot final : public QWidget {
  Q_OBJECT

 public:
  /// @param which says whose numbers are shown, asked at every refresh.
  LikelihoodPlot(Document& document, Taste& taste, std::function<CylinderShown()> which,
                 QWidget* parent = nullptr);
  ~LikelihoodPlot() override;

  /// After a change that neither project nor taste tells: another cylinder.
  void refresh();
  /// Puts more words under its own.
  void addBelow(QWidget* widget);

  void sample();  ///< begins, or gives up what is under way
  bool sampling() const;
  QString readout() const;  ///< what the strip says, as plain text

 Q_SIGNALS:
  void sampled();

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strokewright::ui

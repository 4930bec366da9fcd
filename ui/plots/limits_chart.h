#pragma once
/// What stops it first: every limit on the revs as a bar, donor beside target.

#include <QWidget>
#include <memory>

namespace strokewright::ui {

class Document;
class Taste;

/// One bar for each limit, the lowest heavier and named; the wanted revs as a line. Breathing
/// stands apart, because it costs power and not safety. Limits that wait for entries are named.
/// Where there is little height the bars have it, and the words are the tip of the plot.
class LimitsChart final : public QWidget {
  Q_OBJECT

 public:
  LimitsChart(Document& document, Taste& taste, QWidget* parent = nullptr);
  ~LimitsChart() override;

  QString readout() const;  ///< what the strip says, as plain text

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  class Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace strokewright::ui

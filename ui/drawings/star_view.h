#pragma once
/// The throws of the engine in question as a star, and when it fires beside the donor.

#include <QWidget>
#include <functional>

namespace strokewright::ui {

class Document;
class Taste;

/// Shows what is known, or says what is missing. Follows the document, the taste, the palette and
/// the font.
class StarView final : public QWidget {
  Q_OBJECT

 public:
  /// @param which engine is shown, asked at every repaint; -1: none
  StarView(Document& document, Taste& taste, std::function<int()> which, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  Document& document_;
  Taste& taste_;
  std::function<int()> which_;
};

}  // namespace strokewright::ui

#pragma once
/// The spacer plate of an engine on the screen, as large as there is room.

#include <QWidget>

namespace strokewright::ui {

class Document;
class Taste;

/// Shows the plate of the target, or says why it cannot be drawn. Follows the document, the taste,
/// the palette and the font.
class PlateView final : public QWidget {
  Q_OBJECT

 public:
  PlateView(Document& document, Taste& taste, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  Document& document_;
  Taste& taste_;
};

}  // namespace strokewright::ui

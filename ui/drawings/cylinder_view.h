#pragma once
/// What the drawings of one cylinder have in common.

#include <QWidget>

#include "ui/drawings/cylinder.h"
#include "ui/drawings/drafting.h"

namespace strokewright::ui {

class Document;
class Taste;

/// Shows one cylinder of one engine, or says why it cannot be drawn. Follows the document, the
/// taste, the palette and the font.
class CylinderView : public QWidget {
  Q_OBJECT

 public:
  void setCylinder(int cylinder);  ///< counted from 0
  void setEngine(int engine);      ///< index into the project; -1: the target

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  /// @param least, liked [lines of text] the size of the view
  CylinderView(Document& document, Taste& taste, QSize least, QSize liked, QWidget* parent);

  virtual void draw(Drafting& draft, const Cylinder& cylinder) = 0;
  virtual QString inWords(const Cylinder& cylinder) const = 0;

  /// Draws anew and tells those who cannot see it. The last thing a constructor does.
  void describe();
  /// The place of a text at the foot, wrapped, and what it leaves above it.
  QRect footBox(const QString& text) const;
  QRectF aboveFoot(const QRect& foot) const;
  int cylinder() const { return cylinder_; }
  const Taste& taste() const { return taste_; }

  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  CylinderOrWhyNot cylinderNow() const;

  Document& document_;
  Taste& taste_;
  QSize least_;
  QSize liked_;
  int cylinder_ = 0;
  int engine_ = -1;
};

}  // namespace strokewright::ui

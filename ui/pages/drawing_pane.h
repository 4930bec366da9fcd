#pragma once
/// The drawings of a page with what chooses their engine, cylinder and crank angle.

#include <QWidget>

class QComboBox;
class QLabel;
class QSlider;
class QSplitter;

namespace strokewright::ui {

class Desk;
class SectionView;
class StackView;

/// A dimension of the stack that is pressed leads to its entry; the entry that has the focus or the
/// pointer lights up in the stack, and the other way round. Where both have no room beside each
/// other one chooses; at first the stack is shown, which the page is about.
class DrawingPane final : public QWidget {
  Q_OBJECT

 public:
  enum class Shows { Section, Clearances, SectionAndStack };
  /// @param degrees [°] crank angle at first, 0 to 360.
  DrawingPane(Desk& desk, Shows shows, int degrees, QWidget* parent = nullptr);

  QSize minimumSizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void addStack(QSplitter& side);
  void arrange();
  void refresh();
  void fillEngines();
  void fillCylinders();
  void turn(int degrees);
  int engine() const;

  Desk& desk_;
  QComboBox* engine_;
  QComboBox* cylinder_;
  QLabel* cylinderLabel_;
  QComboBox* drawing_;  ///< stack or section, where there is no room for both
  SectionView* section_;
  StackView* stack_ = nullptr;
  QWidget* crank_;  ///< slider and angle: of the section alone
  QSlider* slider_;
  QLabel* angle_;
};

}  // namespace strokewright::ui

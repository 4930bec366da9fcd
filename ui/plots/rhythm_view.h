#pragma once
/// The orders in the rhythm of the firings, and the rhythm to be listened to.

#include <QTemporaryDir>
#include <QWidget>
#include <functional>
#include <optional>

class QBoxLayout;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace strokewright::ui {

class Document;
class Refresher;
class SceneView;
class Taste;

/// Bars of the orders, and below them which engine is heard at which speed, in two lines where
/// there is no room for one. The sound is a plain pulse for each firing, and the view says that it
/// is no more.
class RhythmView final : public QWidget {
  Q_OBJECT

 public:
  /// @param which engine is in question, asked at every refresh; -1: none
  RhythmView(Document& document, Taste& taste, std::function<int()> which,
             QWidget* parent = nullptr);

  /// Writes the sound to a file of its own and hands that to the desktop's player.
  void listen();
  /// Writes the sound to a file. @returns whether it is there; what went wrong is said.
  bool saveSound(const QString& path);

  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  void said(const QString& sentence);  ///< what was done, or why it was not

 protected:
  bool event(QEvent* event) override;

 private:
  void layOut();
  void breakControls();
  void refresh();
  void fillEngines();
  int engine() const;
  QByteArray sound();
  double speed();
  std::optional<double> typedSpeed() const;
  void judgeSpeed();
  void sayProblem(const QString& problem);
  QString suchAs() const;
  void askWhere();

  Document& document_;
  Taste& taste_;
  std::function<int()> which_;
  SceneView* bars_;
  QComboBox* engine_;
  QLineEdit* speed_;
  QPushButton* listen_;
  QPushButton* save_;
  QBoxLayout* controls_;  ///< what is heard, and what is done with it
  QLabel* problem_;       ///< with the speed; hidden while there is none
  Refresher* refresher_;
  QTemporaryDir folder_;  ///< of what is played; goes with the view
  int played_ = 0;
};

}  // namespace strokewright::ui

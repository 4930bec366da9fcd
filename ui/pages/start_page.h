#pragma once
/// The first screen: a new conversion, a file, the samples, and what a crash left.

#include <QScrollArea>
#include <vector>

class QGridLayout;
class QLabel;
class QVBoxLayout;

namespace strokewright::ui {

class Taste;

/// A sample that comes with the program.
struct Sample {
  QString path;  ///< in the resources
  QString name;  ///< "Burdock 719"
  QString says;  ///< what the conversion is
};
const std::vector<Sample>& samples();

class StartPage final : public QScrollArea {
  Q_OBJECT

 public:
  explicit StartPage(Taste& taste, QWidget* parent = nullptr);

 Q_SIGNALS:
  void newAsked();
  void openAsked();
  void fileAsked(const QString& path);
  void sampleAsked(const QString& path, const QString& name);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void sizeQuestion();
  void fillRecent();
  void addSamples(QVBoxLayout& column);

  Taste& taste_;
  QLabel* question_ = nullptr;
  QGridLayout* recent_;
  QWidget* open_ = nullptr;
  QWidget* firstSample_ = nullptr;
};

}  // namespace strokewright::ui

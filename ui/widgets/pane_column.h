#pragma once
/// Parts of a page along one line, or one at a time where the line is too short.

#include <QStringList>
#include <QWidget>
#include <functional>
#include <vector>

class QSplitter;
class QTabBar;

namespace strokewright::ui {

/// Panes above or beside each other, parted by handles, while each has its least room, which no
/// handle takes from it. In a lower or narrower window one is seen at a time, chosen by tabs; how
/// the panes were parted comes back with the room.
class PaneColumn final : public QWidget {
  Q_OBJECT

 public:
  /// [px] along the line that a pane is of use with; it may change with the font and the engines.
  using Least = std::function<int()>;

  /// @param share of the length that the panes after the first have at most, until a person
  ///   parts them otherwise.
  PaneColumn(Qt::Orientation along, double share, QWidget* parent = nullptr);

  void addPane(QWidget* pane, Least least);
  /// @param lines of text that it is of use with.
  void addPane(QWidget* pane, int lines);
  /// On the tabs, a name for each pane.
  /// @param words shorter ones, for where the names have no room beside each other; empty: none
  void setNames(const QStringList& names, const QStringList& words = {});
  int count() const { return static_cast<int>(panes_.size()); }
  std::vector<QWidget*> panes() const;

  bool folded() const { return folded_; }
  /// Puts the pane that this widget stands in before the others, where only one is seen.
  void bringUp(const QWidget& inside);
  /// After what the panes need has changed.
  void fit();

  QByteArray saveState() const;  ///< as a person parted them; empty: nobody did
  /// Empty, or one that cannot be read: as at first.
  void restoreState(const QByteArray& state);

  QSize minimumSizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  struct Pane {
    QWidget* widget;
    Least least;
  };

  int along(const QSize& size) const;
  void nameTabs();
  void showPanes();
  void setLeast(const std::vector<int>& least);
  void shareOut();

  double share_;
  std::vector<Pane> panes_;
  QStringList names_;
  QStringList words_;
  int namesWidth_ = 0;  ///< [px] of the tabs with their names; 0: to be measured
  QTabBar* tabs_;
  QSplitter* splitter_;
  QByteArray parted_;  ///< by a person
  bool folded_ = false;
  bool shared_ = false;  ///< its length was shared out once
};

}  // namespace strokewright::ui

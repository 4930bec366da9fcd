#pragma once
/// What it rests on and what follows from it: rows of donor, target, variants and the difference.

#include <QWidget>
#include <vector>

#include "ui/pages/page_description.h"

class QGridLayout;
class QLabel;
class QScrollArea;

namespace strokewright::ui {

class Desk;
class DifferenceLabel;

/// The order of the columns: donors, targets, variants.
std::vector<int> columnsOf(const Desk& desk);
/// "donor", "target", "variant" of this engine, as a column's first line says it.
QString partText(const Desk& desk, int engine);
/// The engine's name, or its part where it has none.
QString engineName(const Desk& desk, int engine);

/// One list of rows under fixed column heads, entries or results. The columns are as wide in every
/// list of a page, and share the width they are given: a narrow table loses the difference before
/// it scrolls sideways. Made again only when engines come, go, or change their part.
class Comparison final : public QWidget {
  Q_OBJECT

 public:
  enum class Of { Entries, Results };
  Comparison(Desk& desk, const PageDescription& page, Of of, QWidget* parent = nullptr);

  /// Puts the focus into the field of this entry. @returns false when it has none here.
  bool focusEntry(int engine, const describe::Input& input);
  void focusFirst();

  QSize sizeHint() const override;  ///< all rows without scrolling
  int leastWidth() const;           ///< [px] that needs no scrolling sideways
  int easyWidth() const;  ///< [px] that shows the difference and breaks no word to be chosen
  QSize minimumSizeHint() const override;

 Q_SIGNALS:
  void rebuilt();  ///< new fields: the order of Tab is to be set again

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Row {
    const describe::Input* input = nullptr;
    const describe::Result* result = nullptr;
    QLabel* label = nullptr;
    QLabel* unit = nullptr;
    QWidget* difference = nullptr;
    std::vector<QWidget*> fields;  ///< one for each column
  };

  void rebuildIfNeeded();
  void rebuild();
  void addHeads();
  void addNames();
  void addGroup(const EntryGroup& group);
  void addEntry(const describe::Input& input);
  void addResult(const describe::Result& result);
  void addCaption(const QString& text);
  void addOriginKey();
  QString captionText() const;
  void setColumns(QGridLayout& grid) const;
  int widthOf(int labelDigits, int engineDigits, int differenceDigits) const;
  int differenceWidth() const;
  int widestWord() const;
  bool compares() const;
  void fitDifferences();
  int unitWidth() const;
  void reword();
  void refreshDifferences();
  void alignHeads();
  void pointAt(const describe::Input* input);

  void addLabels(Row& row, const QString& tip);

  Desk& desk_;
  const PageDescription& page_;
  Of of_;
  std::vector<int> columns_;
  std::vector<int> parts_;  ///< of the columns, to see when they change
  int comparedWith_ = -1;   ///< the reference donor the columns were made for
  int cylinder_ = -1;
  std::vector<Row> rows_;
  std::vector<QLabel*> heads_;
  QLabel* caption_ = nullptr;
  QLabel* differenceHead_ = nullptr;
  const describe::Input* pointedAt_ = nullptr;
  bool differs_ = true;  ///< there is room for the difference
  int line_ = 0;
  QWidget* head_;
  QScrollArea* scroll_;
  QWidget* body_ = nullptr;
  QGridLayout* grid_ = nullptr;
};

}  // namespace strokewright::ui

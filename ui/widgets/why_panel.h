#pragma once
/// The working of one result: how did you get that?

#include <QFrame>
#include <vector>

#include "core/describe/result.h"
#include "ui/document/document.h"

class QTextBrowser;
class QToolButton;
class QUrl;

namespace strokewright::ui {

/// Formula, the numbers put into it, source, validity, and what its ± is made of. Results named in
/// it lead to their own working, entries to their field. It follows every edit while it is shown,
/// and closes when another project opens.
class WhyPanel final : public QFrame {
  Q_OBJECT

 public:
  explicit WhyPanel(Document& document, QWidget* parent = nullptr);

  /// Opens on this result.
  void explain(int engine, const describe::Result& result, int cylinder);
  /// What it shows, as plain text.
  QString plainText() const;

  QSize sizeHint() const override;

 Q_SIGNALS:
  /// Go to the field of this entry.
  void entryAsked(int engine, const describe::Input* input);
  void closed();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void changeEvent(QEvent* event) override;
  void showEvent(QShowEvent* event) override;

 private:
  struct Question {
    int engine = 0;
    const describe::Result* result = nullptr;
    int cylinder = 0;
  };

  void refresh();
  void follow(const QUrl& link);
  void goBack();
  void closePanel();

  Document& document_;
  std::vector<Question> questions_;  ///< the last one is shown, those before lead back
  QTextBrowser* text_;
  QToolButton* back_;
};

}  // namespace strokewright::ui

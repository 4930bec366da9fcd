#include "tests/ui/recovery_child.h"

#include <QApplication>
#include <QTextStream>

#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/recovery_file.h"
#include "ui/document/taste.h"

namespace strokewright::ui {

int typeAndHang(const QString& file, const QString& text) {
  Taste taste;
  Document document(taste);
  if (file != QStringLiteral("-") && !document.open(file)) return 1;
  QObject::connect(&document.recoveryFile(), &RecoveryFile::written, &document,
                   [] { QTextStream(stdout) << "typed\n"; });
  document.type(0, model::in::bore, text);
  return QApplication::exec();
}

}  // namespace strokewright::ui

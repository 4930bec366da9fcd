#include "ui/document/whole_file.h"

#include <QSaveFile>

namespace strokewright::ui {

QString writeWhole(const QString& path, const QByteArray& content) {
  QSaveFile file(path);
  // Flushed by hand: commit() alone takes a disk that fills up at the last buffer for a success.
  const bool written = file.open(QIODevice::WriteOnly) && file.write(content) == content.size() &&
                       file.flush() && file.commit();
  return written ? QString() : file.errorString();
}

}  // namespace strokewright::ui

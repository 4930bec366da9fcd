#include "ui/document/file_stamp.h"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>

namespace strokewright::ui {

FileStamp FileStamp::of(const QString& path, const QByteArray& content) {
  const QFileInfo info(path);
  if (!info.exists()) return {};
  return {info.size(), info.lastModified().toUTC(),
          QCryptographicHash::hash(content, QCryptographicHash::Sha256)};
}

bool FileStamp::changed(const QString& path) const {
  const QFileInfo info(path);
  if (!exists() || !info.exists()) return false;
  if (info.size() == size && info.lastModified().toUTC() == modified) return false;
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return false;
  return QCryptographicHash::hash(file.readAll(), QCryptographicHash::Sha256) != hash;
}

}  // namespace strokewright::ui

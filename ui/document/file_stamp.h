#pragma once
/// How a file looked when it was read or written, to notice that somebody else wrote it since.

#include <QByteArray>
#include <QDateTime>
#include <QString>

namespace strokewright::ui {

struct FileStamp {
  qint64 size = -1;    ///< [bytes] -1: there was no file
  QDateTime modified;  ///< UTC
  QByteArray hash;     ///< SHA-256 of the content

  bool exists() const { return size >= 0; }
  /// Of a file whose content is known.
  static FileStamp of(const QString& path, const QByteArray& content);
  /// The file holds something else than it did. Time and size are looked at first; where either
  /// differs the content decides. A file that is gone or cannot be read does not count as changed.
  bool changed(const QString& path) const;
};

}  // namespace strokewright::ui

#pragma once
/// What the window's tests begin with: fresh settings, no recovery files, a document.

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QSettings>
#include <QTemporaryDir>
#include <ostream>

#include "core/model/inputs.h"
#include "ui/document/document.h"
#include "ui/document/recovery_file.h"
#include "ui/document/taste.h"

/// GoogleTest shows strings of Qt as text.
inline void PrintTo(const QString& text, std::ostream* out) { *out << text.toStdString(); }

namespace strokewright::ui {

namespace in = model::in;

class FreshSettings : public testing::Test {
 protected:
  FreshSettings() {
    QSettings().clear();
    QDir(RecoveryFile::folder()).removeRecursively();
  }
};

/// A new project: engine 0 is the donor, engine 1 the target.
class WithDocument : public FreshSettings {
 protected:
  static constexpr int kDonor = 0;
  static constexpr int kTarget = 1;

  const describe::Entry& bore() const { return document_.entry(kTarget, in::bore); }
  QString inFolder(const QString& name) const { return folder_.filePath(name); }

  static QByteArray contentOf(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }
  static void put(const QString& path, const QByteArray& content) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(content);
  }
  static QString sample(const QString& name) {
    return QStringLiteral(STROKEWRIGHT_SOURCE_DIR "/samples/") + name +
           QStringLiteral(".strokewright");
  }

  Taste taste_;
  Document document_{taste_};
  QTemporaryDir folder_;
};

}  // namespace strokewright::ui

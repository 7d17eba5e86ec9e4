// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/storage/file_header.h"

#include <QByteArray>
#include <QFile>
#include <QFileInfo>
#include <QString>

namespace outyard::storage {
namespace {

using base::message;

std::uint32_t bigEndian(const QByteArray& bytes, int at, int count) {
  std::uint32_t v = 0;
  for (int i = 0; i < count; ++i) v = (v << 8) | static_cast<unsigned char>(bytes[at + i]);
  return v;
}

}  // namespace

// Offsets: "Database File Format", sqlite.org/fileformat2.html, section 1.3.
base::Result<FileHeader> readHeader(const std::string& path) {
  const QString name = QString::fromStdString(path);
  const QFileInfo info(name);
  if (!info.exists()) return base::fail(message("storage.no_such_file", path));
  if (!info.isFile()) return base::fail(message("storage.not_a_file", path));
  QFile file(name);
  if (!file.open(QIODevice::ReadOnly)) return base::fail(message("storage.not_readable", path));
  const QByteArray bytes = file.read(100);
  if (bytes.isEmpty()) return base::fail(message("storage.empty_file", path));
  if (!bytes.startsWith(QByteArray("SQLite format 3\0", 16))) {
    return base::fail(message("storage.not_a_season", path));
  }
  if (bytes.size() < 100) return base::fail(message("storage.cut_short", path));
  FileHeader header;
  header.userVersion = static_cast<int>(bigEndian(bytes, 60, 4));
  header.applicationId = bigEndian(bytes, 68, 4);
  if (header.applicationId != kApplicationId) {
    return base::fail(message("storage.not_a_season", path));
  }
  // The size in the header is good only if it was written by the last change, and a journal left
  // by a crash may still bring back what is missing.
  const bool sizeKnown = bigEndian(bytes, 24, 4) == bigEndian(bytes, 92, 4);
  const qint64 pageSize = bigEndian(bytes, 16, 2) == 1 ? 65536 : bigEndian(bytes, 16, 2);
  const qint64 size = pageSize * static_cast<qint64>(bigEndian(bytes, 28, 4));
  const bool journal = QFileInfo(name + QStringLiteral("-journal")).size() > 0;
  if (sizeKnown && !journal && info.size() < size) {
    return base::fail(message("storage.cut_short", path));
  }
  return header;
}

}  // namespace outyard::storage

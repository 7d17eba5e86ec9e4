// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_draft.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSaveFile>
#include <algorithm>

namespace outyard::entry {
namespace {

constexpr int kFormat = 1;

QString text(const std::string& s) {
  return QString::fromStdString(s);
}

QString digest(const QString& of) {
  return QString::fromLatin1(
      QCryptographicHash::hash(of.toUtf8(), QCryptographicHash::Sha256).toHex().left(16));
}

QString codeOf(session::EntryColumn column) {
  const auto code = session::entryColumnCode(column);
  return QString::fromLatin1(code.data(), static_cast<qsizetype>(code.size()));
}

QJsonObject lineObject(const session::EntryLine& line) {
  QJsonObject cells;
  for (const auto column : session::kAllEntryColumns) {
    if (!line.at(column).empty()) cells[codeOf(column)] = text(line.at(column));
  }
  QJsonArray ticked;
  for (const auto& task : line.ticked) ticked.append(text(task.str()));
  return {{QStringLiteral("line"), line.line},
          {QStringLiteral("hive"), text(line.hive.str())},
          {QStringLiteral("cells"), cells},
          {QStringLiteral("ticked"), ticked}};
}

void fill(session::EntryLine& line, const QJsonObject& from) {
  const QJsonObject cells = from[QStringLiteral("cells")].toObject();
  for (const auto column : session::kAllEntryColumns) {
    line.at(column) = cells[codeOf(column)].toString().toStdString();
  }
  for (const auto& value : from[QStringLiteral("ticked")].toArray()) {
    const base::TaskId task{value.toString().toStdString()};
    if (std::find(line.tasks.begin(), line.tasks.end(), task) != line.tasks.end()) {
      line.ticked.insert(task);
    }
  }
}

}  // namespace

DraftFolder::DraftFolder(QString folder, const QString& seasonFile)
    : m_folder(std::move(folder)), m_season(QFileInfo(seasonFile).absoluteFilePath()) {}

QString DraftFolder::file(const base::SheetId& sheet) const {
  // Sheet numbers may hold what no file name may.
  return QDir(m_folder).filePath(
      QStringLiteral("%1-%2.json").arg(digest(m_season), digest(text(sheet.str()))));
}

bool DraftFolder::has(const base::SheetId& sheet) const {
  return !m_folder.isEmpty() && QFile::exists(file(sheet));
}

bool DraftFolder::keep(const session::EntrySheet& sheet) const {
  if (m_folder.isEmpty()) return true;
  QJsonArray lines;
  for (const auto& line : sheet.lines) {
    if (!line.blank()) lines.append(lineObject(line));
  }
  QJsonArray boosts;
  for (const auto& boost : sheet.boosts) {
    if (boost.done) boosts.append(text(boost.row.option));
  }
  if (lines.isEmpty() && boosts.isEmpty()) {
    remove(sheet.head.sheet);
    return true;
  }
  QJsonObject all{{QStringLiteral("format"), kFormat},
                  {QStringLiteral("season"), m_season},
                  {QStringLiteral("sheet"), text(sheet.head.sheet.str())},
                  {QStringLiteral("date"), text(sheet.head.date.iso())},
                  {QStringLiteral("reader"), text(sheet.head.reader)},
                  {QStringLiteral("kg_per_unit"), sheet.head.kgPerUnit},
                  {QStringLiteral("boosts"), boosts},
                  {QStringLiteral("lines"), lines}};
  if (sheet.head.from) all[QStringLiteral("from")] = text(sheet.head.from->text());
  if (sheet.head.airC) all[QStringLiteral("air_c")] = *sheet.head.airC;
  if (!QDir().mkpath(m_folder)) return false;
  QSaveFile out(file(sheet.head.sheet));
  if (!out.open(QIODevice::WriteOnly)) return false;
  out.write(QJsonDocument(all).toJson(QJsonDocument::Compact));
  return out.commit();
}

bool DraftFolder::restore(session::EntrySheet& sheet) const {
  QFile in(file(sheet.head.sheet));
  if (m_folder.isEmpty() || !in.open(QIODevice::ReadOnly)) return false;
  const QJsonObject all = QJsonDocument::fromJson(in.readAll()).object();
  if (all[QStringLiteral("format")].toInt() != kFormat ||
      all[QStringLiteral("sheet")].toString() != text(sheet.head.sheet.str())) {
    return false;
  }
  const auto date = base::Date::parse(all[QStringLiteral("date")].toString().toStdString());
  if (date) sheet.head.date = *date;
  sheet.head.reader = all[QStringLiteral("reader")].toString().toStdString();
  sheet.head.from = base::TimeOfDay::parse(all[QStringLiteral("from")].toString().toStdString());
  if (all.contains(QStringLiteral("air_c"))) {
    sheet.head.airC = all[QStringLiteral("air_c")].toDouble();
  }
  // Weights stay in the unit in which they were typed.
  const double unit = all[QStringLiteral("kg_per_unit")].toDouble();
  if (unit > 0) sheet.head.kgPerUnit = unit;
  const QJsonArray boosts = all[QStringLiteral("boosts")].toArray();
  for (auto& boost : sheet.boosts) boost.done = boosts.contains(text(boost.row.option));
  for (const auto& value : all[QStringLiteral("lines")].toArray()) {
    const QJsonObject from = value.toObject();
    for (auto& line : sheet.lines) {
      if (line.line == from[QStringLiteral("line")].toInt() && !line.entered &&
          text(line.hive.str()) == from[QStringLiteral("hive")].toString()) {
        fill(line, from);
      }
    }
  }
  return true;
}

void DraftFolder::remove(const base::SheetId& sheet) const {
  if (!m_folder.isEmpty()) QFile::remove(file(sheet));
}

}  // namespace outyard::entry

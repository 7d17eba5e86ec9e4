// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/table_out.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <stdexcept>

#include "core/base/text.h"

namespace outyard::app {
namespace {

QString csvField(const Cell& cell) {
  if (const auto* number = std::get_if<double>(&cell)) {
    return QString::fromStdString(base::shortest(*number));
  }
  const auto* text = std::get_if<std::string>(&cell);
  if (!text) return {};
  QString field = QString::fromStdString(*text);
  if (field.contains(u'"') || field.contains(u',') || field.contains(u'\n') ||
      field.contains(u'\r')) {
    field.replace(u'"', QStringLiteral("\"\""));
    field = u'"' + field + u'"';
  }
  return field;
}

}  // namespace

void TableOut::add(std::vector<Cell> row) {
  if (row.size() != m_columns.size()) throw std::logic_error("a row with missing cells");
  m_rows.push_back(std::move(row));
}

void TableOut::writeCsv(QTextStream& out) const {
  QStringList head;
  for (const auto& c : m_columns) head << QString::fromStdString(c);
  out << head.join(u',') << '\n';
  for (const auto& row : m_rows) {
    QStringList fields;
    for (const auto& cell : row) fields << csvField(cell);
    out << fields.join(u',') << '\n';
  }
}

void TableOut::writeJson(QTextStream& out) const {
  QJsonArray rows;
  for (const auto& row : m_rows) {
    QJsonObject object;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const QString name = QString::fromStdString(m_columns[i]);
      if (const auto* number = std::get_if<double>(&row[i])) {
        object[name] = *number;
      } else if (const auto* text = std::get_if<std::string>(&row[i])) {
        object[name] = QString::fromStdString(*text);
      } else {
        object[name] = QJsonValue::Null;
      }
    }
    rows.append(object);
  }
  out << QString::fromUtf8(QJsonDocument(rows).toJson(QJsonDocument::Indented));
}

}  // namespace outyard::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTextStream>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace outyard::app {

/// One cell of a printed table: nothing recorded, a number, or text.
using Cell = std::variant<std::monostate, double, std::string>;

template <class T>
Cell cell(const std::optional<T>& value) {
  if (!value) return {};
  if constexpr (std::is_arithmetic_v<T>) {
    return static_cast<double>(*value);
  } else {
    return std::string(*value);
  }
}

/// A table for standard output: CSV as RFC 4180 with LF, or JSON as a list of objects.
class TableOut {
 public:
  explicit TableOut(std::vector<std::string> columns) : m_columns(std::move(columns)) {}
  void add(std::vector<Cell> row);
  void writeCsv(QTextStream& out) const;
  void writeJson(QTextStream& out) const;

 private:
  std::vector<std::string> m_columns;
  std::vector<std::vector<Cell>> m_rows;
};

}  // namespace outyard::app

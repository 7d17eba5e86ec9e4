// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/table_reader.h"

#include <algorithm>
#include <optional>

#include "core/apiary/validate.h"
#include "core/base/text.h"
#include "core/exchange/csv.h"

namespace outyard::exchange {
namespace {

using apiary::ColumnSpec;
using apiary::TableSpec;
using apiary::Value;
using base::message;

constexpr int kUnknown = -1;

/// Ids of records are made when left out, and a comb side finds its inspection by hive and date.
bool mayBeLeftOut(const TableSpec& spec, const ColumnSpec& column) {
  if (!column.required) return true;
  if (spec.isRecord && column.name == "record") return true;
  return column.name == "inspection" &&
         (spec.id == apiary::TableId::Frames || spec.id == apiary::TableId::Seams);
}

class Reading {
 public:
  Reading(const TableSpec& spec, const std::string& fileName, std::string_view text,
          FaultList& faults, const std::vector<ImpliedColumn>& implied)
      : m_spec(spec), m_file(fileName), m_reader(text), m_faults(faults), m_implied(implied) {}

  TableFile run(std::size_t size, Ticker& ticker) {
    TableFile out;
    if (!readHeader()) {
      out.unreadable = true;
      return out;
    }
    const double whole = static_cast<double>(std::max<std::size_t>(size, 1));
    while (m_reader.next()) {
      if (!ticker.step(static_cast<double>(m_reader.position()) / whole)) break;
      readRow(out);
    }
    tellCsvFaults();
    return out;
  }

 private:
  [[nodiscard]] std::string columnName(std::size_t field) const {
    return field < m_names.size() ? m_names[field] : std::string{};
  }

  void tellCsvFaults() {
    for (; m_told < m_reader.faults().size(); ++m_told) {
      const auto& f = m_reader.faults()[m_told];
      std::string column = columnName(f.field);
      if (column.empty()) column = std::to_string(f.field + 1);
      m_faults.add(m_file, f.line, std::move(column),
                   message("exchange.at_character", f.column, f.what));
    }
  }

  bool readHeader() {
    if (!m_reader.next()) {
      tellCsvFaults();
      if (m_told == 0) m_faults.add(m_file, 1, {}, message("exchange.empty_file"));
      return false;
    }
    bool known = false, good = m_reader.sound();
    for (const auto& f : m_reader.fields()) {
      m_names.push_back(base::normalised(f.text).value_or(std::string{}));
      m_columns.push_back(isImplied(m_names.back()) ? kUnknown
                                                    : m_spec.columnIndex(m_names.back()));
      known = known || m_columns.back() != kUnknown;
    }
    tellCsvFaults();
    if (!good) return false;
    if (!known) {
      const bool semicolons = m_names.size() == 1 && m_names[0].find(';') != std::string::npos;
      m_faults.add(m_file, 1, {},
                   semicolons ? message("exchange.semicolons")
                              : message("exchange.no_header", m_spec.columns.front().name));
      return false;
    }
    for (std::size_t i = 0; i < m_names.size(); ++i) {
      if (m_columns[i] == kUnknown) {
        m_faults.add(m_file, 1, m_names[i].empty() ? std::to_string(i + 1) : m_names[i],
                     message("exchange.unknown_column", m_names[i], m_spec.name));
        good = false;
      } else if (std::find(m_columns.begin(), m_columns.begin() + static_cast<std::ptrdiff_t>(i),
                           m_columns[i]) != m_columns.begin() + static_cast<std::ptrdiff_t>(i)) {
        m_faults.add(m_file, 1, m_names[i], message("exchange.column_twice", m_names[i]));
        good = false;
      }
    }
    for (std::size_t c = 0; c < m_spec.columns.size(); ++c) {
      const auto& column = m_spec.columns[c];
      if (mayBeLeftOut(m_spec, column) || impliedValue(column.name)) continue;
      if (std::find(m_columns.begin(), m_columns.end(), static_cast<int>(c)) == m_columns.end()) {
        m_faults.add(m_file, 1, column.name, message("exchange.column_missing", column.name));
        good = false;
      }
    }
    return good;
  }

  [[nodiscard]] bool isImplied(const std::string& name) const {
    return std::any_of(m_implied.begin(), m_implied.end(),
                       [&](const ImpliedColumn& i) { return i.name == name && !i.mayBeThere; });
  }
  [[nodiscard]] const std::string* impliedValue(const std::string& name) const {
    for (const auto& i : m_implied) {
      if (i.name == name) return &i.value;
    }
    return nullptr;
  }

  void readRow(TableFile& out) {
    const auto& fields = m_reader.fields();
    const std::size_t line = m_reader.line();
    bool good = m_reader.sound();
    if (good && fields.size() == 1 && fields[0].text.empty() && m_names.size() > 1) {
      m_faults.add(m_file, line, {}, message("exchange.blank_line"));
      return;
    }
    if (good && fields.size() < m_names.size()) {
      m_faults.add(m_file, line, m_names[fields.size()],
                   message("exchange.line_short", fields.size(), m_names.size()));
      good = false;
    }
    if (good && fields.size() > m_names.size()) {
      m_faults.add(m_file, line, std::to_string(m_names.size() + 1),
                   message("exchange.line_long", fields.size(), m_names.size()));
      good = false;
    }
    FileRow row{{m_spec.id, std::vector<Value>(m_spec.columns.size())}, line};
    for (std::size_t i = 0; good && i < fields.size(); ++i) readCell(row, i, fields[i]);
    good = good && m_cellsGood;
    m_cellsGood = true;
    for (const auto& i : m_implied) {
      auto& value = row.row.values[static_cast<std::size_t>(m_spec.columnIndex(i.name))];
      if (std::holds_alternative<std::monostate>(value)) value = i.value;
    }
    if (good) {
      out.rows.push_back(std::move(row));
    } else {
      noteBroken(out);
    }
  }

  void readCell(FileRow& row, std::size_t i, const CsvField& field) {
    const auto column = static_cast<std::size_t>(m_columns[i]);
    const ColumnSpec& spec = m_spec.columns[column];
    auto value = apiary::parseValue(spec, field.text);
    if (value) {
      row.row.values[column] = std::move(*value);
      return;
    }
    const bool empty = base::normalised(field.text) == std::string{};
    if (empty && (mayBeLeftOut(m_spec, spec) || impliedValue(spec.name))) return;
    for (const auto& m : value.failure().messages) {
      m_faults.add(m_file, field.line, spec.name, m);
    }
    m_cellsGood = false;
  }

  void noteBroken(TableFile& out) const {
    for (std::size_t c = 0; c < m_spec.columns.size(); ++c) {
      if (!m_spec.columns[c].key) continue;
      const auto at = std::find(m_columns.begin(), m_columns.end(), static_cast<int>(c));
      const auto i = static_cast<std::size_t>(at - m_columns.begin());
      if (i < m_reader.fields().size()) {
        out.brokenKeys.insert(base::normalised(m_reader.fields()[i].text).value_or(std::string{}));
      }
      return;
    }
  }

  const TableSpec& m_spec;
  const std::string& m_file;
  CsvReader m_reader;
  FaultList& m_faults;
  const std::vector<ImpliedColumn>& m_implied;
  std::vector<std::string> m_names;
  std::vector<int> m_columns;  ///< index in the spec for each field
  std::size_t m_told = 0;
  bool m_cellsGood = true;
};

}  // namespace

TableFile readTable(const TableSpec& spec, const std::string& fileName, std::string_view text,
                    FaultList& faults, Ticker& ticker, const std::vector<ImpliedColumn>& implied) {
  return Reading(spec, fileName, text, faults, implied).run(text.size(), ticker);
}

}  // namespace outyard::exchange

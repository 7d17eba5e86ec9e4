// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/message.h"

/// Comma separated values as RFC 4180 has them, read strictly: what a spreadsheet would guess at
/// is a fault here, named with its line and place.
namespace outyard::exchange {

/// Longest field, in bytes.
inline constexpr std::size_t kLongestField = 64 * 1024;

struct CsvField {
  std::string_view text;  ///< without quotes; good until the next record is read
  std::size_t line = 1;   ///< where the field begins
};

struct CsvFault {
  std::size_t line = 1;
  std::size_t column = 1;  ///< character in the line, from 1
  std::size_t field = 0;   ///< which field of its record, from 0
  base::Message what;
};

/// Reads records one by one from a buffer that outlives it. A byte order mark is passed over,
/// lines end in LF or CRLF; line ends inside quotes come out as LF.
class CsvReader {
 public:
  explicit CsvReader(std::string_view bytes);
  /// Reads the next record; false at the end.
  bool next();
  [[nodiscard]] const std::vector<CsvField>& fields() const { return m_fields; }
  /// Line on which the record begins.
  [[nodiscard]] std::size_t line() const { return m_recordLine; }
  /// False when a fault lies in this record.
  [[nodiscard]] bool sound() const { return m_sound; }
  /// All faults so far. Encoding faults are told once for the whole file.
  [[nodiscard]] const std::vector<CsvFault>& faults() const { return m_faults; }
  [[nodiscard]] std::size_t position() const { return m_at; }

 private:
  void readField();
  void readQuoted(std::size_t start);
  void readPlain(std::size_t start);
  void finish(std::string_view text, std::size_t start, std::size_t line, std::size_t lineStart);
  void fault(std::size_t at, std::size_t line, std::size_t lineStart, base::Message what);
  std::size_t columnOf(std::size_t at, std::size_t lineStart);
  [[nodiscard]] bool atLineEnd() const;

  std::string_view m_bytes;
  std::size_t m_at = 0;
  std::size_t m_line = 1;
  std::size_t m_lineStart = 0;
  std::size_t m_recordLine = 1;
  // Where characters were counted last, so that many faults on one long line stay cheap.
  std::size_t m_countedLine = 0, m_countedTo = 0, m_counted = 1;
  bool m_sound = true;
  bool m_encodingTold = false;
  bool m_over = false;
  std::vector<CsvField> m_fields;
  std::deque<std::string> m_unquoted;  ///< fields that could not be taken from the buffer as is
  std::vector<CsvFault> m_faults;
};

/// Appends records to a text: LF at line ends, quotes only where needed.
class CsvWriter {
 public:
  explicit CsvWriter(std::string& out) : m_out(out) {}
  void field(std::string_view text);
  void endRecord();

 private:
  std::string& m_out;
  bool m_first = true;
};

}  // namespace outyard::exchange

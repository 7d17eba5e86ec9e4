// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/csv.h"

#include <algorithm>

#include "core/base/text.h"

namespace outyard::exchange {
namespace {

using base::message;

constexpr std::size_t kMostFaults = 10000;

bool plainAscii(std::string_view s) {
  return std::all_of(s.begin(), s.end(), [](char c) {
    const auto b = static_cast<unsigned char>(c);
    return b != 0 && b < 0x80;
  });
}

/// Position of the first byte that is not part of valid UTF-8.
std::size_t firstBadByte(std::string_view s) {
  std::size_t good = 0;
  while (good < s.size()) {
    const auto b = static_cast<unsigned char>(s[good]);
    const std::size_t length = b < 0x80 ? 1 : b < 0xE0 ? 2 : b < 0xF0 ? 3 : 4;
    if (!base::validUtf8(s.substr(good, length))) return good;
    good += length;
  }
  return good;
}

}  // namespace

CsvReader::CsvReader(std::string_view bytes) : m_bytes(bytes) {
  if (m_bytes.substr(0, 3) == "\xEF\xBB\xBF") m_at = m_lineStart = 3;
  const auto head = m_bytes.substr(0, 2);
  if (head == "\xFF\xFE" || head == "\xFE\xFF") {
    fault(0, 1, 0, message("exchange.utf16"));
    m_over = true;
  }
}

std::size_t CsvReader::columnOf(std::size_t at, std::size_t lineStart) {
  if (m_countedLine != lineStart || m_countedTo > at || m_countedTo < lineStart) {
    m_countedLine = m_countedTo = lineStart;
    m_counted = 1;
  }
  for (; m_countedTo < at && m_countedTo < m_bytes.size(); ++m_countedTo) {
    // Bytes that continue a character do not count.
    if ((static_cast<unsigned char>(m_bytes[m_countedTo]) & 0xC0U) != 0x80U) ++m_counted;
  }
  return m_counted;
}

void CsvReader::fault(std::size_t at, std::size_t line, std::size_t lineStart, base::Message what) {
  m_sound = false;
  if (m_faults.size() >= kMostFaults) {
    m_over = true;
    return;
  }
  m_faults.push_back({line, columnOf(at, lineStart), m_fields.size(), std::move(what)});
}

bool CsvReader::atLineEnd() const {
  return m_bytes[m_at] == '\n' ||
         (m_bytes[m_at] == '\r' && m_at + 1 < m_bytes.size() && m_bytes[m_at + 1] == '\n');
}

bool CsvReader::next() {
  m_fields.clear();
  m_unquoted.clear();
  m_sound = true;
  m_recordLine = m_line;
  if (m_over || m_at >= m_bytes.size()) return false;
  while (true) {
    readField();
    if (m_at >= m_bytes.size()) break;
    if (m_bytes[m_at] == ',') {
      ++m_at;
      if (m_at >= m_bytes.size()) {
        finish({}, m_at, m_line, m_lineStart);  // the file ends behind a comma
        break;
      }
      continue;
    }
    m_at += m_bytes[m_at] == '\r' ? 2 : 1;
    ++m_line;
    m_lineStart = m_at;
    break;
  }
  return true;
}

void CsvReader::readField() {
  if (m_at < m_bytes.size() && m_bytes[m_at] == '"') {
    readQuoted(m_at);
  } else {
    readPlain(m_at);
  }
}

void CsvReader::readPlain(std::size_t start) {
  bool told = false;
  while (m_at < m_bytes.size() && m_bytes[m_at] != ',' && !atLineEnd()) {
    const char c = m_bytes[m_at];
    if (!told && (c == '"' || c == '\r')) {
      fault(m_at, m_line, m_lineStart,
            c == '"' ? message("exchange.stray_quote") : message("exchange.stray_return"));
      told = true;
    }
    ++m_at;
  }
  finish(m_bytes.substr(start, m_at - start), start, m_line, m_lineStart);
}

void CsvReader::readQuoted(std::size_t start) {
  const std::size_t line = m_line, lineStart = m_lineStart;
  std::string* own = nullptr;  // made as soon as the text is not a plain piece of the buffer
  std::size_t from = ++m_at;
  const auto flush = [&](std::size_t to) {
    if (!own) own = &m_unquoted.emplace_back();
    own->append(m_bytes.substr(from, to - from));
  };
  while (true) {
    if (m_at >= m_bytes.size()) {
      fault(start, line, lineStart, message("exchange.unclosed_quote"));
      m_over = true;
      m_fields.push_back({{}, line});
      return;
    }
    const char c = m_bytes[m_at];
    if (c == '"') {
      if (m_at + 1 < m_bytes.size() && m_bytes[m_at + 1] == '"') {
        flush(m_at + 1);
        m_at += 2;
        from = m_at;
        continue;
      }
      break;
    }
    if (c == '\r' && m_at + 1 < m_bytes.size() && m_bytes[m_at + 1] == '\n') {
      flush(m_at);
      from = ++m_at;
      continue;
    }
    ++m_at;
    if (c == '\n') {
      ++m_line;
      m_lineStart = m_at;
    }
  }
  std::string_view text = m_bytes.substr(from, m_at - from);
  if (own) {
    own->append(text);
    text = *own;
  }
  ++m_at;
  if (m_at < m_bytes.size() && m_bytes[m_at] != ',' && !atLineEnd()) {
    fault(m_at, m_line, m_lineStart, message("exchange.text_after_quote"));
    while (m_at < m_bytes.size() && m_bytes[m_at] != ',' && !atLineEnd()) ++m_at;
  }
  finish(text, start, line, lineStart);
}

void CsvReader::finish(std::string_view text, std::size_t start, std::size_t line,
                       std::size_t lineStart) {
  if (text.size() > kLongestField) {
    fault(start, line, lineStart, message("exchange.field_too_long", kLongestField / 1024));
    text = {};
  } else if (!plainAscii(text)) {
    const auto nul = text.find('\0');
    const std::size_t bad = firstBadByte(text);
    if (nul != std::string_view::npos || bad < text.size()) {
      m_sound = false;
      // A file in another encoding is wrong in hundreds of places: the first one says enough.
      if (!m_encodingTold) {
        const std::size_t at = start + (m_bytes[start] == '"' ? 1 : 0) + std::min(nul, bad);
        fault(at, line, lineStart,
              nul < bad ? message("exchange.nul_byte") : message("exchange.not_utf8"));
      }
      m_encodingTold = true;
    }
  }
  m_fields.push_back({text, line});
}

void CsvWriter::field(std::string_view text) {
  if (!m_first) m_out += ',';
  m_first = false;
  if (text.find_first_of(",\"\n\r") == std::string_view::npos) {
    m_out += text;
    return;
  }
  m_out += '"';
  for (std::size_t i = 0; i < text.size(); ++i) {
    // Line ends are LF inside text too, as the reader gives them.
    if (text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n') continue;
    if (text[i] == '"') m_out += '"';
    m_out += text[i];
  }
  m_out += '"';
}

void CsvWriter::endRecord() {
  m_out += '\n';
  m_first = true;
}

}  // namespace outyard::exchange

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace outyard::base {

/// Unicode NFC, white space trimmed at both ends; nullopt when the bytes are not valid UTF-8 or
/// hold a NUL.
std::optional<std::string> normalised(std::string_view utf8);
/// True when every byte sequence is valid UTF-8.
bool validUtf8(std::string_view bytes);
/// For comparing what people type: lower case, without accents and other marks on letters, white
/// space as single blanks. Bytes that are not valid UTF-8 give an empty text.
std::string folded(std::string_view utf8);
/// Number of Unicode code points; 0 for invalid UTF-8.
std::size_t codePoints(std::string_view utf8);

/// The shortest decimal text that reads back as the same double ("0.1", "12", "1500000").
std::string shortest(double value);
/// Reads a decimal number with point as decimal sign and nothing around it; no exponent sign of
/// infinity or NaN is accepted.
std::optional<double> parseNumber(std::string_view text);
std::optional<long long> parseInteger(std::string_view text);

}  // namespace outyard::base

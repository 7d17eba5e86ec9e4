// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/document.h"

#include <charconv>
#include <set>

namespace outyard::sheet {

using base::message;

SheetDocument joined(const std::vector<YardSheet>& sheets) {
  SheetDocument all;
  for (const YardSheet& s : sheets) {
    all.pages.insert(all.pages.end(), s.document.pages.begin(), s.document.pages.end());
  }
  if (!sheets.empty()) all.title = sheets.front().document.title;
  if (sheets.size() == 1) all.sheetNumber = sheets.front().document.sheetNumber;
  return all;
}

base::Result<std::vector<std::size_t>> pageRange(std::string_view text, std::size_t pages) {
  std::set<std::size_t> chosen;
  const auto bad = [&] {
    return base::fail(
        message("sheet.pages.bad", std::string(text), static_cast<std::int64_t>(pages)));
  };
  const auto number = [](std::string_view digits) -> std::size_t {
    std::size_t n = 0;
    const auto end = std::from_chars(digits.data(), digits.data() + digits.size(), n);
    return end.ec == std::errc{} && end.ptr == digits.data() + digits.size() ? n : 0;
  };
  std::string plain;
  for (const char c : text) {
    if (c != ' ') plain += c == ';' ? ',' : c;
  }
  std::string_view rest = plain;
  while (!rest.empty()) {
    const std::string_view part = rest.substr(0, rest.find(','));
    rest.remove_prefix(std::min(rest.size(), part.size() + 1));
    if (part.empty()) continue;
    const std::size_t dash = part.find('-');
    const std::string_view head = part.substr(0, dash);
    const std::string_view tail = dash == std::string_view::npos ? head : part.substr(dash + 1);
    const std::size_t from = head.empty() ? 1 : number(head);
    const std::size_t to = tail.empty() && !head.empty() ? pages : number(tail);
    if (from < 1 || to < from || to > pages) return bad();
    for (std::size_t i = from; i <= to; ++i) chosen.insert(i - 1);
  }
  if (chosen.empty()) {
    if (!plain.empty()) return bad();
    for (std::size_t i = 0; i < pages; ++i) chosen.insert(i);
  }
  return std::vector<std::size_t>(chosen.begin(), chosen.end());
}

SheetDocument onlyPages(const SheetDocument& document, const std::vector<std::size_t>& pages) {
  SheetDocument part;
  part.sheetNumber = document.sheetNumber;
  part.title = document.title;
  for (const std::size_t i : pages) part.pages.push_back(document.pages.at(i));
  return part;
}

}  // namespace outyard::sheet

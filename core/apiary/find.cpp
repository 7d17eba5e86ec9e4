// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/find.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "core/base/text.h"

namespace outyard::apiary {

namespace {

constexpr int kJournalRank = 10;  ///< what names a thing stands before what speaks of it

std::vector<std::string> wordsOf(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
      if (!words.back().empty()) words.emplace_back();
    } else {
      words.back() += c;
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

class Finder {
 public:
  Finder(const Season& season, std::string_view query)
      : m_season(season), m_whole(base::folded(query)), m_words(wordsOf(m_whole)) {}

  [[nodiscard]] bool blank() const { return m_words.empty(); }

  /// The rank of the text, when it holds every word. `id` may be empty.
  [[nodiscard]] std::optional<int> rank(const std::string& id, const std::string& text) const {
    const std::string hay = base::folded(id + ' ' + text);
    bool begins = true;
    for (const auto& word : m_words) {
      const auto at = hay.find(word);
      if (at == std::string::npos) return std::nullopt;
      begins = begins && (at == 0 || hay.find(' ' + word) != std::string::npos);
    }
    const std::string key = base::folded(id);
    if (!key.empty() && key == m_whole) return 0;
    if (!key.empty() && key.starts_with(m_whole)) return 1;
    return begins ? 2 : 3;
  }

  void add(Found found, const std::string& id, const std::string& text, int farther = 0) {
    const auto near = rank(id, text);
    if (!near) return;
    found.rank = *near + farther;
    found.snippet = snippet(text);
    if (!found.yard && found.hive) {
      if (const Hive* hive = m_season.hive(*found.hive)) found.yard = hive->yard;
    }
    m_found.push_back(std::move(found));
  }

  std::vector<Found> take(std::size_t limit) {
    std::stable_sort(m_found.begin(), m_found.end(), [](const Found& a, const Found& b) {
      if (a.rank != b.rank) return a.rank < b.rank;
      if (a.date != b.date) return a.date > b.date;
      return std::tuple(a.kind, a.id.size(), a.id) < std::tuple(b.kind, b.id.size(), b.id);
    });
    if (m_found.size() > limit) m_found.resize(limit);
    return std::move(m_found);
  }

 private:
  /// Some words before the first hit and some behind it; the whole text when it is short.
  [[nodiscard]] std::string snippet(const std::string& text) const {
    const auto words = wordsOf(text);
    constexpr std::size_t kBefore = 5, kInAll = 18;
    std::size_t hit = 0;
    for (std::size_t i = words.size(); i-- > 0;) {
      const std::string word = base::folded(words[i]);
      for (const auto& asked : m_words) {
        if (word.find(asked) != std::string::npos) hit = i;
      }
    }
    std::size_t from = words.size() > kInAll && hit > kBefore ? hit - kBefore : 0;
    const std::size_t to = std::min(words.size(), from + kInAll);
    std::string out = from > 0 ? "… " : "";
    for (std::size_t i = from; i < to; ++i) out += (i > from ? " " : "") + words[i];
    if (to < words.size()) out += " …";
    return out;
  }

  const Season& m_season;
  std::string m_whole;
  std::vector<std::string> m_words;
  std::vector<Found> m_found;
};

void append(std::string& text, const std::string& more) {
  if (more.empty()) return;
  if (!text.empty()) text += ' ';
  text += more;
}

std::string queenText(const Queen& q) {
  std::string text = q.line;
  if (q.year) append(text, std::to_string(*q.year));
  append(text, q.mother);
  append(text, q.origin);
  if (q.marked.value_or(false)) append(text, "marked");
  if (q.clipped.value_or(false)) append(text, "clipped");
  append(text, q.notes);
  return text;
}

}  // namespace

std::vector<Found> find(const Season& season, std::string_view query, std::size_t limit) {
  Finder finder(season, query);
  if (finder.blank()) return {};
  for (const auto& [key, yard] : season.table<Yard>()) {
    Found f;
    f.kind = FoundKind::Yard;
    f.id = key;
    f.yard = yard.yard;
    finder.add(f, key, yard.name);
    f.kind = FoundKind::Note;
    finder.add(f, {}, yard.notes, kJournalRank);
    finder.add(f, {}, yard.access, kJournalRank);
  }
  for (const auto& [key, hive] : season.table<Hive>()) {
    Found f;
    f.id = key;
    f.hive = hive.hive;
    finder.add(f, key, {});
    f.kind = FoundKind::Note;
    finder.add(f, {}, hive.notes, kJournalRank);
  }
  std::map<std::string, const ColonyStay*> colonies, queens;
  const auto later = [](const ColonyStay*& last, const ColonyStay& stay) {
    if (!last || last->fromDate <= stay.fromDate) last = &stay;
  };
  for (const auto& [key, stay] : season.table<ColonyStay>()) {
    if (!season.counts(stay)) continue;
    later(colonies[stay.colony.str()], stay);
    if (stay.queen) later(queens[stay.queen->str()], stay);
  }
  for (const auto& [id, stay] : colonies) {
    // A colony that is named as its hive is found as the hive.
    if (id == stay->hive.str()) continue;
    Found f;
    f.kind = FoundKind::Colony;
    f.id = id;
    f.hive = stay->hive;
    f.colony = stay->colony;
    finder.add(f, id, stay->queen ? std::string() : stay->queenLine);
  }
  for (const auto& [id, queen] : season.table<Queen>()) {
    Found f;
    f.kind = FoundKind::Queen;
    f.id = id;
    if (const auto it = queens.find(id); it != queens.end()) {
      f.hive = it->second->hive;
      f.colony = it->second->colony;
    }
    finder.add(f, id, queenText(queen));
  }
  for (const auto& [key, look] : season.table<Inspection>()) {
    if (look.notes.empty() || !season.counts(look)) continue;
    Found f;
    f.kind = FoundKind::Note;
    f.id = key;
    f.hive = look.hive;
    f.colony = look.colony;
    f.date = look.date;
    finder.add(f, {}, look.notes, kJournalRank);
  }
  for (const auto& [key, event] : season.table<Event>()) {
    std::string text = event.detail;
    append(text, event.method);
    append(text, event.dose);
    append(text, event.batch);
    if (text.empty() || !season.counts(event)) continue;
    Found f;
    f.kind = FoundKind::Event;
    f.id = key;
    f.hive = event.hive;
    f.colony = event.colony;
    f.date = event.date;
    f.event = event.kind;
    finder.add(f, {}, text, kJournalRank);
  }
  return finder.take(limit);
}

}  // namespace outyard::apiary

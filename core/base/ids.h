// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <compare>
#include <functional>
#include <string>
#include <string_view>
#include <utility>

namespace outyard::base {

/// A tagged identifier: the text by which the season file and the exchange tables name a thing.
/// Ids of unlike things do not convert into each other. There is no null id: where an id may be
/// missing, use std::optional<Id>.
template <class Tag>
class Id {
 public:
  Id() = default;
  explicit Id(std::string text) : m_text(std::move(text)) {}
  [[nodiscard]] const std::string& str() const { return m_text; }
  /// True for the default-made id, which names nothing and never stands in a season.
  [[nodiscard]] bool blank() const { return m_text.empty(); }
  friend auto operator<=>(const Id&, const Id&) = default;

 private:
  std::string m_text;
};

using YardId = Id<struct YardTag>;
using HiveId = Id<struct HiveTag>;
using ColonyId = Id<struct ColonyTag>;
using QueenId = Id<struct QueenTag>;
using RecordId = Id<struct RecordTag>;
using TaskId = Id<struct TaskTag>;
using PlanId = Id<struct PlanTag>;
using VisitId = Id<struct VisitTag>;
using SheetId = Id<struct SheetTag>;

}  // namespace outyard::base

template <class Tag>
struct std::hash<outyard::base::Id<Tag>> {
  std::size_t operator()(const outyard::base::Id<Tag>& id) const noexcept {
    return std::hash<std::string>{}(id.str());
  }
};

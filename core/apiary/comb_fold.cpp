// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/comb_fold.h"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace outyard::apiary {
namespace {

constexpr std::string_view kHeap = "heap:";
constexpr std::string_view kLeft = "left:";

enum class Rank { Structure, Look, Combs };

struct Step {
  Date date;
  std::string entered;
  Rank rank = Rank::Structure;
  std::string lead;
  int number = 0;
  const Event* event = nullptr;
  const Inspection* look = nullptr;
  const FrameMove* move = nullptr;
};

bool before(const Step& a, const Step& b) {
  return std::tie(a.date, a.entered, a.rank, a.lead, a.number) <
         std::tie(b.date, b.entered, b.rank, b.lead, b.number);
}

bool wholeBox(const FrameMove& m) {
  return !m.slot && !m.otherSlot;
}

class Fold {
 public:
  Fold(const Season& season, const std::set<HiveId>& hives, Date day)
      : m_season(season), m_hives(hives), m_day(day) {}

  CombsState run() {
    collect();
    for (const HiveId& hive : m_hives) m_state.hives[hive].hive = hive;
    std::size_t next = 0;
    for (const Date date : m_dates) {
      for (const HiveId& hive : m_hives) firstStack(hive, date);
      for (; next < m_steps.size() && m_steps[next].date == date; ++next) apply(m_steps[next]);
      for (const HiveId& hive : m_hives) reconcile(hive, date);
    }
    for (auto& [id, hive] : m_state.hives) number(hive);
    return std::move(m_state);
  }

 private:
  void collect() {
    std::set<std::string> rowsOfBoxes;  // leads whose rows say themselves which box went where
    const auto add = [this](Date date, const std::string& entered, Rank rank,
                            const RecordId& record) -> Step& {
      auto [lead, n] = leadOf(record);
      m_dates.insert(date);
      m_steps.push_back({date, entered, rank, std::move(lead), n, nullptr, nullptr, nullptr});
      return m_steps.back();
    };
    for (const auto& [key, m] : m_season.table<FrameMove>()) {
      if (m.date > m_day || !m_season.counts(m)) continue;
      const bool ours = m_hives.count(m.hive) > 0 || (m.otherHive && m_hives.count(*m.otherHive));
      if (!ours) continue;
      if (wholeBox(m)) rowsOfBoxes.insert(leadOf(m.record).first);
      add(m.date, m.enteredAt, wholeBox(m) ? Rank::Structure : Rank::Combs, m.record).move = &m;
    }
    for (const HiveId& hive : m_hives) {
      for (const Box* b : m_season.journal<Box>(hive)) {
        if (b->date <= m_day) m_dates.insert(b->date);
      }
      for (const Event* e : m_season.journal<Event>(hive)) {
        if (e->date > m_day) break;
        if (!movesWholeStacks(e->kind) && e->kind != EventKind::Reversed) continue;
        if (rowsOfBoxes.count(e->record.str()) > 0) continue;
        add(e->date, e->enteredAt, Rank::Structure, e->record).event = e;
      }
      for (const Inspection* i : m_season.journal<Inspection>(hive)) {
        if (i->date > m_day) break;
        add(i->date, firstLook(m_season, *i).enteredAt, Rank::Look, i->record).look = i;
      }
    }
    std::stable_sort(m_steps.begin(), m_steps.end(), before);
  }

  CombBox fresh(const Box& row) const {
    CombBox box;
    const int count = row.frames.value_or(usualFrames(m_season, row.frameType));
    describe(box, row);
    if (box.role != BoxRole::Feeder) box.frames.resize(static_cast<std::size_t>(count));
    return box;
  }
  static void describe(CombBox& box, const Box& row) {
    box.frameType = row.frameType;
    box.role = row.role.value_or(BoxRole::Chamber);
    box.colony = row.colony;
    box.beneath = row.beneath.value_or(Beneath::None);
    box.countRecorded = row.frames.has_value();
  }
  static void number(HiveCombs& hive) {
    int position = 0;
    for (CombBox& box : hive.boxes) box.position = ++position;
  }

  /// The stack that a hive is set up with stands there before anything is done on that day.
  void firstStack(const HiveId& hive, Date date) {
    if (m_started.count(hive) > 0) return;
    std::vector<const Box*> rows;
    for (const Box* b : m_season.allOf<Box>(hive)) {
      if (!b->isVoid) rows.push_back(b);
    }
    const auto first = std::min_element(rows.begin(), rows.end(), [](const Box* a, const Box* b) {
      return std::tie(a->date, a->enteredAt) < std::tie(b->date, b->enteredAt);
    });
    if (first == rows.end() || (*first)->date > date) return;
    m_started.insert(hive);
    if ((*first)->date < date) return;
    const std::string lead = leadOf((*first)->record).first;
    // A stack that came by a row of its own (taken off, united, a box set on bare ground) is not
    // there before that row.
    if (lead != (*first)->record.str() && m_season.find<Event>(lead)) return;
    std::vector<const Box*> stack;
    for (const Box* b : rows) {
      if (b->date == (*first)->date && b->enteredAt == (*first)->enteredAt) stack.push_back(b);
    }
    std::sort(stack.begin(), stack.end(),
              [](const Box* a, const Box* b) { return a->position < b->position; });
    auto& boxes = m_state.hives[hive].boxes;
    for (const Box* b : stack) boxes.push_back(fresh(*b));
  }

  void apply(const Step& step) {
    if (step.look) return seen(*step.look);
    if (step.event) return joint(*step.event);
    if (wholeBox(*step.move)) return moveBox(*step.move);
    moveFrame(*step.move);
  }

  HiveCombs* ours(const std::optional<HiveId>& id) {
    if (!id) return nullptr;
    const auto it = m_state.hives.find(*id);
    return it == m_state.hives.end() ? nullptr : &it->second;
  }

  void seen(const Inspection& look) {
    HiveCombs* hive = ours(look.hive);
    if (!hive) return;
    hive->shaken.clear();  // by the next look they sit on the combs that are counted
    for (const CombSide* s : m_season.combSides(look.record)) {
      const auto box = static_cast<std::size_t>(s->box) - 1;
      const auto slot = static_cast<std::size_t>(s->slot) - 1;
      // A stack that is recorded on the same day stands there; else nobody knows of the box.
      if (box >= hive->boxes.size()) boxesOfDay(*hive, look.date);
      if (box >= hive->boxes.size()) continue;
      auto& frames = hive->boxes[box].frames;
      if (slot >= frames.size()) frames.resize(slot + 1);
      frames[slot].sides[s->side == FrameSide::A ? 0 : 1] = SideSeen{*s, look.date};
    }
  }

  /// Boxes that the day's rows have and the hive has not yet, on top.
  void boxesOfDay(HiveCombs& hive, Date date) {
    const auto rows = rowsOf(hive.hive, date);
    for (std::size_t i = hive.boxes.size(); i < rows.size(); ++i) {
      hive.boxes.push_back(fresh(*rows[i]));
    }
  }

  void joint(const Event& e) {
    HiveCombs* hive = ours(e.hive);
    HiveCombs* other = ours(e.otherHive);
    if (!hive) return;
    if (e.kind == EventKind::Reversed) return reverse(*hive, e.colony);
    if (!other) return;
    if (e.kind == EventKind::Stacked) {
      for (CombBox& box : other->boxes) box.colony = e.otherColony;
      for (CombBox& box : hive->boxes) box.colony = e.colony;
      carry(*hive, *other);
    } else if (e.kind == EventKind::United) {
      carry(*other, *hive);
      for (CombBox& box : hive->boxes) box.colony.reset();
    } else {
      // Taken off: empty boxes that stood there give way to the colony's own.
      leave(*hive, e.date);
      std::vector<CombBox> stays;
      for (CombBox& box : other->boxes) {
        (box.colony && box.colony == e.colony ? hive->boxes : stays).push_back(std::move(box));
      }
      other->boxes = std::move(stays);
      for (HiveCombs* each : {hive, other}) {
        for (CombBox& box : each->boxes) box.colony.reset();
      }
    }
  }
  static void carry(HiveCombs& from, HiveCombs& to) {
    for (CombBox& box : from.boxes) to.boxes.push_back(std::move(box));
    from.boxes.clear();
    to.shaken.insert(to.shaken.end(), from.shaken.begin(), from.shaken.end());
    from.shaken.clear();
  }
  /// Said without saying which: the chambers of the colony change their order.
  static void reverse(HiveCombs& hive, const std::optional<ColonyId>& colony) {
    std::vector<std::size_t> chambers;
    for (std::size_t i = 0; i < hive.boxes.size(); ++i) {
      const CombBox& box = hive.boxes[i];
      const bool hers = !colony || !box.colony || box.colony == colony;
      if (box.role == BoxRole::Chamber && hers) chambers.push_back(i);
    }
    for (std::size_t i = 0; i + 1 < chambers.size() - i; ++i) {
      auto& low = hive.boxes[chambers[i]];
      auto& high = hive.boxes[chambers[chambers.size() - 1 - i]];
      std::swap(low, high);
      std::swap(low.beneath, high.beneath);
    }
  }

  void leave(HiveCombs& hive, Date date) {
    for (CombBox& box : hive.boxes) toHeapUnsaid(hive.hive, date, std::move(box));
    hive.boxes.clear();
  }
  void toHeapUnsaid(const HiveId& hive, Date date, CombBox box) {
    const int n = ++m_left[{hive, date}];
    m_state.heap.push_back({leftBoxKey(hive, date, n), hive, date, true, std::move(box)});
  }

  std::optional<HeapItem> fromHeap(const std::string& key) {
    for (auto it = m_state.heap.begin(); it != m_state.heap.end(); ++it) {
      if (it->key != key) continue;
      HeapItem item = std::move(*it);
      m_state.heap.erase(it);
      return item;
    }
    return std::nullopt;
  }

  void shake(HiveCombs& from, const std::string& type, CombFrame& frame) {
    for (auto& side : frame.sides) {
      if (!side || !side->holds.beesPct) continue;
      const double pct = *side->holds.beesPct;
      side->holds.beesPct = 0;
      if (!(pct > 0)) continue;
      const auto same = std::find_if(from.shaken.begin(), from.shaken.end(),
                                     [&](const ShakenBees& s) { return s.frameType == type; });
      if (same == from.shaken.end()) {
        from.shaken.push_back({type, pct});
      } else {
        same->sidesPct += pct;
      }
    }
  }

  static CombFrame freshFrame(const FrameMove& m) {
    CombFrame frame;
    for (int i = 0; i < 2; ++i) {
      CombSide side;
      side.hive = m.hive;
      side.date = m.date;
      side.side = i == 0 ? FrameSide::A : FrameSide::B;
      side.beesPct = 0;
      if (m.detail == "drawn") {
        side.emptyPct = 100;
      } else if (m.detail == "foundation") {
        side.undrawnPct = 100;
      } else if (m.detail == "honey") {
        side.honeyPct = 100;
      } else {
        return frame;
      }
      frame.sides[static_cast<std::size_t>(i)] = SideSeen{side, m.date};
    }
    return frame;
  }

  void moveBox(const FrameMove& m) {
    CombBox box;
    if (m.otherHive) {
      HiveCombs* from = ours(m.otherHive);
      const auto at = static_cast<std::size_t>(m.otherBox.value_or(0));
      if (from && at >= 1 && at <= from->boxes.size()) {
        const auto it = from->boxes.begin() + static_cast<std::ptrdiff_t>(at) - 1;
        box = std::move(*it);
        from->boxes.erase(it);
        if (m.withBees && !*m.withBees) {
          for (CombFrame& frame : box.frames) shake(*from, box.frameType, frame);
        }
      } else if (from && !m.box) {
        return;  // there is no such box to take off
      }
    } else if (const auto key = heapKeyOf(m)) {
      if (auto item = fromHeap(*key)) box = std::move(item->box);
    } else {
      if (const Box* row = rowOfVerb(m)) box = fresh(*row);
      for (CombFrame& frame : box.frames) frame = freshFrame(m);
    }
    if (!m.box) {
      m_state.heap.push_back({m.record.str(), m.hive, m.date, true, std::move(box)});
      return;
    }
    if (HiveCombs* to = ours(m.hive)) {
      const auto at = std::min(static_cast<std::size_t>(*m.box) - 1, to->boxes.size());
      to->boxes.insert(to->boxes.begin() + static_cast<std::ptrdiff_t>(at), std::move(box));
    }
  }

  /// The box row that the same verb wrote for the place where it set the box.
  const Box* rowOfVerb(const FrameMove& m) const {
    const std::string lead = leadOf(m.record).first;
    const Box* later = nullptr;
    for (const Box* b : m_season.allOf<Box>(m.hive)) {
      if (b->date != m.date || b->isVoid || b->position != m.box) continue;
      if (leadOf(b->record).first == lead) return b;
      later = b;
    }
    return later;
  }

  void moveFrame(const FrameMove& m) {
    CombFrame frame;
    std::string type;
    BoxRole role = BoxRole::Chamber;
    if (m.otherHive) {
      HiveCombs* from = ours(m.otherHive);
      const auto at = static_cast<std::size_t>(m.otherBox.value_or(0));
      const auto slot = static_cast<std::size_t>(m.otherSlot.value_or(0));
      if (from && at >= 1 && at <= from->boxes.size()) {
        CombBox& box = from->boxes[at - 1];
        type = box.frameType;
        role = box.role;
        if (slot >= 1 && slot <= box.frames.size()) {
          const auto it = box.frames.begin() + static_cast<std::ptrdiff_t>(slot) - 1;
          frame = std::move(*it);
          box.frames.erase(it);
          if (m.withBees && !*m.withBees) shake(*from, type, frame);
        } else if (!m.box) {
          return;  // there is no such comb to take out
        }
      }
    } else if (const auto key = heapKeyOf(m)) {
      if (auto item = fromHeap(*key); item && !item->box.frames.empty()) {
        frame = std::move(item->box.frames.front());
      }
    } else {
      frame = freshFrame(m);
    }
    if (!m.box) {
      CombBox lone;
      lone.frameType = type;
      lone.role = role;
      lone.frames.push_back(std::move(frame));
      m_state.heap.push_back({m.record.str(), m.hive, m.date, false, std::move(lone)});
      return;
    }
    HiveCombs* to = ours(m.hive);
    const auto at = static_cast<std::size_t>(*m.box);
    if (!to || at > to->boxes.size()) return;
    auto& frames = to->boxes[at - 1].frames;
    const auto slot = std::min(static_cast<std::size_t>(m.slot.value_or(1)) - 1, frames.size());
    frames.insert(frames.begin() + static_cast<std::ptrdiff_t>(slot), std::move(frame));
  }

  std::vector<const Box*> rowsOf(const HiveId& hive, Date date) const {
    std::vector<const Box*> rows;
    for (const Box* b : m_season.journal<Box>(hive)) {
      if (b->date == date) rows.push_back(b);
    }
    std::sort(rows.begin(), rows.end(),
              [](const Box* a, const Box* b) { return a->position < b->position; });
    return rows;
  }

  /// The day's recorded stack is what stands there in the evening. Where it says less than the
  /// steps did, boxes of the same frames keep their order from below; what is new has unknown
  /// combs, what is missing went to the heap.
  void reconcile(const HiveId& id, Date date) {
    const auto rows = rowsOf(id, date);
    if (rows.empty()) return;
    HiveCombs& hive = m_state.hives[id];
    const auto same = [&](const CombBox& box, const Box& row) {
      if (box.frameType.empty()) return true;
      return box.frameType == row.frameType &&
             (box.role == BoxRole::Feeder) == (row.role == BoxRole::Feeder);
    };
    const std::size_t n = hive.boxes.size(), k = rows.size();
    std::vector<std::vector<int>> most(n + 1, std::vector<int>(k + 1, 0));
    for (std::size_t i = n; i-- > 0;) {
      for (std::size_t j = k; j-- > 0;) {
        most[i][j] = std::max(most[i + 1][j], most[i][j + 1]);
        if (same(hive.boxes[i], *rows[j])) {
          most[i][j] = std::max(most[i][j], most[i + 1][j + 1] + 1);
        }
      }
    }
    std::vector<CombBox> stack;
    std::size_t i = 0, j = 0;
    while (i < n || j < k) {
      if (i < n && j < k && same(hive.boxes[i], *rows[j]) && most[i][j] == most[i + 1][j + 1] + 1) {
        stack.push_back(std::move(hive.boxes[i++]));
        fit(stack.back(), *rows[j++]);
      } else if (j < k && (i == n || most[i][j + 1] >= most[i + 1][j])) {
        stack.push_back(fresh(*rows[j++]));
      } else {
        toHeapUnsaid(id, date, std::move(hive.boxes[i++]));
      }
    }
    hive.boxes = std::move(stack);
  }
  void fit(CombBox& box, const Box& row) const {
    describe(box, row);
    if (!row.frames || box.role == BoxRole::Feeder) return;
    const auto count = static_cast<std::size_t>(*row.frames);
    // Combs that nobody has seen are the first that are thought away.
    for (std::size_t i = box.frames.size(); box.frames.size() > count && i-- > 0;) {
      if (!box.frames[i].known()) {
        box.frames.erase(box.frames.begin() + static_cast<std::ptrdiff_t>(i));
      }
    }
    box.frames.resize(count);
  }

  const Season& m_season;
  const std::set<HiveId>& m_hives;
  const Date m_day;
  CombsState m_state;
  std::vector<Step> m_steps;
  std::set<Date> m_dates;
  std::set<HiveId> m_started;
  std::map<std::pair<HiveId, Date>, int> m_left;
};

}  // namespace

CombsState foldCombs(const Season& season, const std::set<HiveId>& hives, Date day) {
  return Fold(season, hives, day).run();
}

std::optional<std::string> heapKeyOf(const FrameMove& move) {
  if (move.otherHive || !std::string_view(move.detail).starts_with(kHeap)) return std::nullopt;
  return move.detail.substr(kHeap.size());
}

bool movesWholeStacks(EventKind kind) {
  return kind == EventKind::Stacked || kind == EventKind::Unstacked || kind == EventKind::United;
}

std::string leftBoxKey(const HiveId& hive, Date date, int number) {
  return std::string(kLeft) + date.iso() + ':' + std::to_string(number) + ':' + hive.str();
}

std::optional<HiveId> ownerOfLeftBox(const std::string& key) {
  if (!std::string_view(key).starts_with(kLeft)) return std::nullopt;
  const auto date = key.find(':', kLeft.size());
  if (date == std::string::npos) return std::nullopt;
  const auto number = key.find(':', date + 1);
  if (number == std::string::npos) return std::nullopt;
  return HiveId{key.substr(number + 1)};
}

}  // namespace outyard::apiary

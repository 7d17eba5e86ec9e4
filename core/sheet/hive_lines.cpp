// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/hive_lines.h"

#include <algorithm>
#include <cmath>

#include "core/sheet/walking_order.h"

namespace outyard::sheet {

namespace {

using apiary::HiveStatus;
using apiary::Method;
using apiary::VerdictCode;
using base::message;

constexpr int kExpectWithinDays = 10;  ///< older looks are not seen (common practice, no source)

/// "A" ... "Z", "AA" ...
std::string cardLetter(std::size_t index) {
  std::string letters;
  for (++index; index > 0; index = (index - 1) / 26) {
    letters.insert(letters.begin(), static_cast<char>('A' + (index - 1) % 26));
  }
  return letters;
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) {
    if (part.empty()) continue;
    if (!text.empty()) text += "\u00A0\u00B7 ";  // the dot never begins a line
    text += part;
  }
  return text;
}

/// Fills the blocks of one sheet.
class LineWriter {
 public:
  explicit LineWriter(SheetContext& context)
      : m_c(context), m_tasks(tasksOn(context.season(), context.in.date)) {}

  void write() {
    const auto walk = walkingOrder(m_c.season(), m_c.in.yard, m_c.hives, m_c.judgements);
    number(walk);
    findBoosts(walk);
    for (const apiary::HiveState* hive : walk) m_c.blocks.push_back(blockOf(*hive));
  }

 private:
  void number(const std::vector<const apiary::HiveState*>& walk) {
    int line = 0;
    for (const apiary::HiveState* hive : walk) {
      m_c.firstLine[hive->hive] = line + 1;
      line += live(*hive) ? static_cast<int>(hive->colonies.size()) : 1;
    }
  }

  static bool live(const apiary::HiveState& hive) {
    return hive.status == HiveStatus::Live && !hive.colonies.empty();
  }

  /// Chosen options with a donor, lettered in the order of their lines.
  void findBoosts(const std::vector<const apiary::HiveState*>& walk) {
    if (!m_c.in.plan) return;
    std::size_t count = 0;
    for (const apiary::HiveState* hive : walk) {
      for (const apiary::ColonyState& colony : hive->colonies) {
        const planning::BoostOption* option = m_c.in.plan->chosenFor(colony.colony);
        if (option && option->donorHive) m_letters[option->id] = cardLetter(count++);
      }
    }
  }

  HiveBlock blockOf(const apiary::HiveState& hive) {
    HiveBlock block;
    block.hive = &hive;
    if (!live(hive)) {
      block.rows.push_back(hive.status == HiveStatus::Dead ? deadRow(hive) : emptyRow(hive));
    } else {
      for (const apiary::ColonyState& colony : hive.colonies) {
        block.rows.push_back(colonyRow(hive, colony));
        addCard(block, colony);
      }
    }
    RowContent& first = block.rows.front();
    first.mark = markInput(m_c.season(), hive, m_c.judgements, m_c.in.date);
    if (m_c.in.expected) addExpected(*first.mark, hive, *m_c.in.expected);
    first.mark->entranceDeg = 180;
    first.letters = markLetters(hive, m_c.judgements);
    const apiary::Hive* row = m_c.season().hive(hive.hive);
    if (row) first.notes = row->notes;
    return block;
  }

  RowContent startRow(const apiary::HiveState& hive, RowKind kind) {
    RowContent row;
    row.kind = kind;
    row.line = static_cast<int>(m_c.lines.size()) + 1;
    row.name = hive.hive.str();
    m_c.lines.push_back({row.line, hive.hive, std::nullopt, {}});
    return row;
  }

  RowContent deadRow(const apiary::HiveState& hive) {
    RowContent row = startRow(hive, RowKind::Dead);
    row.verdict = hive.diedOn ? m_c.word(message("sheet.dead.on", shortDate(m_c, *hive.diedOn)))
                              : m_c.word(message("sheet.dead"));
    row.tasks.push_back(m_c.word(message("sheet.do.close_entrance")));
    row.details = boxesText(static_cast<int>(hive.boxes.size()));
    return row;
  }

  RowContent emptyRow(const apiary::HiveState& hive) {
    RowContent row = startRow(hive, RowKind::Empty);
    row.verdict = m_c.word(message("sheet.empty"));
    row.details = boxesText(static_cast<int>(hive.boxes.size()));
    addTasks(row, hive, nullptr);
    return row;
  }

  RowContent colonyRow(const apiary::HiveState& hive, const apiary::ColonyState& colony) {
    RowContent row = startRow(hive, RowKind::Colony);
    m_c.lines.back().colony = colony.colony;
    const strength::Judgement* judged = m_c.judgementOf(colony.colony);
    if (judged) {
      row.verdict = m_c.word({"code.verdict." + std::string(apiary::code(judged->verdict)), {}});
    }
    if (hive.stacked()) {
      const bool upper = &colony != &hive.colonies.front();
      const std::string place =
          m_c.word(upper ? message("sheet.seen.upper") : message("sheet.seen.lower"));
      row.verdict = row.verdict.empty() ? place : place + ": " + row.verdict;
    }
    const apiary::Inspection* seen = colony.lastInspection;
    row.seenOn = seen ? m_c.word(message("sheet.seen.on", shortDate(m_c, seen->date)))
                      : m_c.word(message("sheet.seen.never"));
    row.details = detailsOf(hive, colony, judged);
    row.expected = expectedOf(colony, judged);
    m_c.lines.back().expected = row.expected;
    addBoostTasks(row, colony);
    addTasks(row, hive, &colony);
    if (row.tasks.empty()) addVerdictTask(row, judged, hive, colony);
    return row;
  }

  std::string boxesText(int boxes) {
    return boxes > 0 ? m_c.word(message("sheet.seen.boxes", boxes)) : std::string();
  }

  std::string queenText(const apiary::ColonyState& colony) {
    const apiary::Inspection* seen = colony.lastInspection;
    const std::string year = colony.queenYear ? std::to_string(*colony.queenYear) : std::string();
    // Eggs say that she is there: that she was not seen matters only where none were.
    const bool sawHer = seen && seen->queenSeen.value_or(false);
    const bool missed = seen && seen->queenSeen && !*seen->queenSeen;
    const bool missing = missed && !seen->eggsSeen.value_or(false);
    if (missing && !year.empty()) return m_c.word(message("sheet.seen.queen_year_not_seen", year));
    std::vector<std::string> parts;
    if (!year.empty() && colony.queenMarked.value_or(false)) {
      parts.push_back(m_c.word(sawHer ? message("sheet.seen.queen_marked_seen", year)
                                      : message("sheet.seen.queen_marked", year)));
    } else if (!year.empty()) {
      parts.push_back(m_c.word(sawHer ? message("sheet.seen.queen_year_seen", year)
                                      : message("sheet.seen.queen_year", year)));
    } else if (sawHer) {
      parts.push_back(m_c.word(message("sheet.seen.queen")));
    }
    if (missing) parts.push_back(m_c.word(message("sheet.seen.no_queen")));
    return joined(parts);
  }

  /// As ticked, else as the combs show when they were looked at one by one.
  static std::optional<bool> eggsSeen(const apiary::Inspection& seen,
                                      const strength::Judgement* judged) {
    if (seen.eggsSeen) return seen.eggsSeen;
    if (!judged || !judged->strength || judged->strength->seenOn != seen.date) return std::nullopt;
    const auto& by = *judged->strength;
    if (by.eggCells) return by.eggCells->median > 0;
    if (by.eggCellsAtLeast.value_or(0) > 0) return true;
    return std::nullopt;
  }

  std::string broodText(const apiary::Inspection& seen, const strength::Judgement* judged) {
    std::optional<double> combs;
    if (seen.framesWithBrood) {
      combs = *seen.framesWithBrood;
    } else if (judged && judged->strength && judged->strength->framesWithBrood) {
      combs = *judged->strength->framesWithBrood;
    }
    if (combs) return m_c.word(message("sheet.seen.brood_combs", *combs));
    const double full = seen.broodFrames
                            ? *seen.broodFrames
                            : seen.sealedBroodFrames.value_or(0) + seen.openBroodFrames.value_or(0);
    const bool any = seen.broodFrames || seen.sealedBroodFrames || seen.openBroodFrames;
    return any ? m_c.word(message("sheet.seen.brood_full", oneDecimal(full))) : std::string();
  }

  std::string detailsOf(const apiary::HiveState& hive, const apiary::ColonyState& colony,
                        const strength::Judgement* judged) {
    std::vector<std::string> parts;
    const apiary::Inspection* seen = colony.lastInspection;
    const auto seams = seamsOf(colony, judged);
    if (seams) parts.push_back(m_c.word(message("sheet.seen.seams", oneDecimal(*seams))));
    parts.push_back(boxesText(static_cast<int>(hive.boxesOf(colony.colony).size())));
    parts.push_back(queenText(colony));
    if (seen) {
      parts.push_back(broodText(*seen, judged));
      if (const auto eggs = eggsSeen(*seen, judged)) {
        parts.push_back(
            m_c.word(*eggs ? message("sheet.seen.eggs") : message("sheet.seen.no_eggs")));
      }
      std::optional<double> honey = seen->honeyKg;
      if (!honey && judged && judged->strength && judged->strength->honeyKg) {
        honey = judged->strength->honeyKg->median;
      }
      if (honey) {
        parts.push_back(m_c.word(message("sheet.seen.stores", massText(m_c, *honey))));
      }
    }
    parts.push_back(treatmentText(hive.hive));
    return joined(parts);
  }

  std::string treatmentText(const base::HiveId& hive) {
    const apiary::Event* last = nullptr;
    for (const apiary::Event* e : m_c.season().journal<apiary::Event>(hive)) {
      if (e->kind == apiary::EventKind::Treated && e->date <= m_c.in.date) last = e;
    }
    if (!last) return {};
    constexpr std::size_t kMethodLetters = 14;
    return last->method.empty()
               ? m_c.word(message("sheet.seen.treated", shortDate(m_c, last->date)))
               : m_c.word(message("sheet.seen.treated_with", shortDate(m_c, last->date),
                                  shortened(last->method, kMethodLetters)));
  }

  static std::optional<double> seamsOf(const apiary::ColonyState& colony,
                                       const strength::Judgement* judged) {
    if (judged && judged->strength && judged->strength->seams) return judged->strength->seams;
    return colony.lastInspection ? colony.lastInspection->seams : std::nullopt;
  }

  /// What the forecast expects a look to find, in whole seams and combs.
  std::optional<std::string> forecastOf(const apiary::ColonyState& colony) {
    if (!m_c.in.expected) return std::nullopt;
    const auto found = m_c.in.expected->find(colony.colony);
    if (found == m_c.in.expected->end()) return std::nullopt;
    const auto range = [](strength::WholeRange whole) {
      return whole.low == whole.high
                 ? std::to_string(whole.low)
                 : std::to_string(whole.low) + "\u2013" + std::to_string(whole.high);
    };
    const auto one = [](strength::WholeRange whole) { return whole.low == 1 && whole.high == 1; };
    const auto seams = found->second.seams.whole(), combs = found->second.combs.whole();
    const base::Message seamsText = one(seams) ? message("sheet.expected.one_seam")
                                               : message("sheet.expected.many_seams", range(seams));
    if (combs.high == 0) return m_c.word(message("sheet.expected.look_no_brood", seamsText));
    const base::Message combsText = one(combs) ? message("sheet.expected.one_comb")
                                               : message("sheet.expected.many_combs", range(combs));
    return m_c.word(message("sheet.expected.look", seamsText, combsText));
  }

  /// Without a forecast: what was seen, with the error of a look, and only while it is
  /// fresh. One seam, one comb either way is what two readers differ by (common practice, no
  /// source).
  std::string expectedOf(const apiary::ColonyState& colony, const strength::Judgement* judged) {
    if (const auto forecast = forecastOf(colony)) return *forecast;
    const apiary::Inspection* seen = colony.lastInspection;
    if (!seen || m_c.in.date - seen->date > kExpectWithinDays) return {};
    const auto seams = seamsOf(colony, judged);
    if (!seams) return {};
    const int low = std::max(0, static_cast<int>(std::floor(*seams - 1)));
    const int high = static_cast<int>(std::ceil(*seams + 1));
    const int days = m_c.in.date - seen->date;
    if (!seen->framesWithBrood) {
      return m_c.word(message("sheet.expected.seams", days, low, high));
    }
    const int brood = *seen->framesWithBrood;
    return m_c.word(
        message("sheet.expected.brood", days, low, high, std::max(0, brood - 1), brood + 1));
  }

  void addBoostTasks(RowContent& row, const apiary::ColonyState& colony) {
    const planning::BoostPlan* plan = m_c.in.plan;
    if (!plan) return;
    if (const planning::BoostOption* own = plan->chosenFor(colony.colony)) {
      const auto letter = m_letters.find(own->id);
      if (own->method != Method::Leave) {
        row.tasks.push_back(
            optionText(m_c, *own, letter == m_letters.end() ? std::string() : letter->second));
      }
    }
    for (const std::string& id : plan->chosen) {
      const planning::BoostOption* gift = plan->option(id);
      if (!gift || gift->donorColony != colony.colony) continue;
      const auto letter = m_letters.find(id);
      const std::string receiver = hiveReference(m_c, gift->hive);
      row.tasks.push_back(letter == m_letters.end()
                              ? m_c.word(message("sheet.do.donor", receiver))
                              : m_c.word(message("sheet.do.donor_card", receiver, letter->second)));
    }
  }

  void addTasks(RowContent& row, const apiary::HiveState& hive, const apiary::ColonyState* colony) {
    for (const apiary::Task* task : m_tasks) {
      if (task->hive != hive.hive) continue;
      if (colony && task->colony && *task->colony != colony->colony) continue;
      // a task without a colony stands on the first line of its hive
      if (colony && !task->colony && colony != &hive.colonies.front()) continue;
      const planning::BoostOption* own =
          m_c.in.plan && colony ? m_c.in.plan->chosenFor(colony->colony) : nullptr;
      if (own && task->method == own->method) continue;  // already said by the plan
      row.tasks.push_back(taskText(m_c, *task));
    }
  }

  void addVerdictTask(RowContent& row, const strength::Judgement* judged,
                      const apiary::HiveState& hive, const apiary::ColonyState& colony) {
    if (isSuspect(hive, m_c.judgements)) {
      row.tasks.push_back(m_c.word(message("sheet.do.suspect")));
      return;
    }
    if (!judged) return;
    switch (judged->verdict) {
      case VerdictCode::Strong: {
        const auto seams = seamsOf(colony, judged);
        // bees on 7 to 8 of 10 combs want the next box (common practice, no source)
        if (seams && *seams >= 7) row.tasks.push_back(m_c.word(message("sheet.do.add_room")));
        break;
      }
      case VerdictCode::QueenSuspect:
      case VerdictCode::Queenless:
        row.tasks.push_back(m_c.word(message("sheet.do.find_eggs")));
        break;
      case VerdictCode::DroneLayer:
      case VerdictCode::LayingWorkers:
        row.tasks.push_back(m_c.word(message("sheet.do.drone_brood")));
        break;
      case VerdictCode::TooEarly:
      case VerdictCode::NotEnoughSeen:
        row.tasks.push_back(m_c.word(message("sheet.do.look_fully")));
        break;
      case VerdictCode::TooSmall:
        row.tasks.push_back(m_c.word(message("sheet.do.too_small")));
        break;
      case VerdictCode::Sick:
      case VerdictCode::SmallSound:
      case VerdictCode::Fair:
        break;
    }
  }

  void addCard(HiveBlock& block, const apiary::ColonyState& colony) {
    const planning::BoostPlan* plan = m_c.in.plan;
    const planning::BoostOption* option = plan ? plan->chosenFor(colony.colony) : nullptr;
    if (!option || !option->donorHive) return;
    CardEntry card;
    card.letter = m_letters.at(option->id);
    card.option = option;
    const std::string weak = hiveReference(m_c, option->hive);
    std::string pair =
        m_c.word(message("sheet.card.pair", card.letter, weak, optionText(m_c, *option, {})));
    if (option->gain.high > 0) {
      const auto thousands = [](double bees) { return oneDecimal(bees / 1000); };
      pair += ". " + m_c.word(message("sheet.card.gain", weak, thousands(option->gain.low),
                                      thousands(option->gain.high)));
    }
    card.lines.push_back(pair);
    for (const base::Message& caution : option->cautions) {
      if (!general(caution)) card.lines.push_back(m_c.word(caution));
    }
    const strength::Judgement* judged = m_c.judgementOf(colony.colony);
    if (judged && judged->daysSinceSeen.value_or(0) > kExpectWithinDays) {
      card.lines.push_back(m_c.word(message("sheet.card.stale", weak, *judged->daysSinceSeen)));
    }
    if (option->method == Method::Stack) {
      card.lines.push_back(m_c.word(message("sheet.card.no_eggs", weak)));
    }
    const planning::BoostOption* second = plan->secondBest(colony.colony);
    card.lines.push_back(second && second->method != Method::Leave
                             ? m_c.word(message("sheet.card.plan_b", optionText(m_c, *second, {})))
                             : m_c.word(message("sheet.card.no_plan_b")));
    block.cards.push_back(std::move(card));
  }

  /// Cautions that the guide of the method or the head of the sheet prints anyway.
  static bool general(const base::Message& caution) {
    return caution.key.starts_with("planning.caution.");
  }

  SheetContext& m_c;
  std::vector<const apiary::Task*> m_tasks;
  std::map<std::string, std::string> m_letters;  ///< of chosen options, by id
};

}  // namespace

SheetContext::SheetContext(const YardSheetInput& input,
                           const std::vector<strength::Judgement>& judged)
    : in(input), judgements(judged), hives(apiary::yardOn(*input.season, input.yard, input.date)) {
  LineWriter(*this).write();
}

const strength::Judgement* SheetContext::judgementOf(const base::ColonyId& colony) const {
  for (const strength::Judgement& j : judgements) {
    if (j.colony == colony) return &j;
  }
  return nullptr;
}

}  // namespace outyard::sheet

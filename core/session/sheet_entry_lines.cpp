// SPDX-License-Identifier: GPL-3.0-or-later
// What was typed on one line, as records.
#include <algorithm>

#include "core/session/sheet_entry_parts.h"

namespace outyard::session {

using apiary::Event;
using apiary::EventKind;
using apiary::Inspection;
using base::message;

namespace {

bool notOpened(const EntryLine& line) {
  return line.at(EntryColumn::Seams) == ".";
}
bool glanced(const EntryLine& line) {
  return line.at(EntryColumn::Seams) == "=";
}

/// The box that is looked into from above: the top chamber of the colony.
int topBox(const apiary::Season& season, const EntryLine& line, Date date) {
  const apiary::HiveState state = apiary::hiveOn(season, line.hive, date);
  int top = 1;
  const auto own = line.colony ? state.boxesOf(*line.colony) : state.boxes;
  for (const BoxState& box : own) {
    if (box.role == apiary::BoxRole::Chamber) top = std::max(top, box.position);
  }
  return top;
}

/// Reads the lines of one sheet whose cells are without fault.
class Reader {
 public:
  Reader(const apiary::Season& season, const EntryHead& head, const Wording& word,
         EntryReading& out)
      : m_season(season), m_head(head), m_word(word), m_out(out) {}

  void read(const EntryLine& line) {
    switch (line.form()) {
      case LineKind::Dead:
        return addDead(line);
      case LineKind::Empty:
        return addEmpty(line);
      case LineKind::Colony:
      case LineKind::Blank:
        break;
    }
    if (notOpened(line) || onlyWords(line)) {
      if (notOpened(line) || !line.at(EntryColumn::NotDone).empty()) ++m_out.report.notOpened;
      addNote(line, {});
      return;
    }
    addLook(line);
  }

 private:
  static bool onlyWords(const EntryLine& line) {
    return std::all_of(line.typed.begin(), line.typed.begin() + kColonyColumns,
                       [&](const std::string& text) {
                         return text.empty() || &text == &line.at(EntryColumn::NotDone) ||
                                &text == &line.at(EntryColumn::Note);
                       });
  }

  void addNote(const EntryLine& line, std::string detail) {
    Event note;
    note.kind = EventKind::Note;
    note.date = m_head.date;
    note.time = m_head.from;
    note.hive = line.hive;
    if (line.kind == LineKind::Colony) note.colony = line.colony;
    note.sheet = m_head.sheet;
    note.detail = std::move(detail);
    if (!line.at(EntryColumn::NotDone).empty()) {
      append(note.detail, m_word(message("session.entry.not_done", line.at(EntryColumn::NotDone))));
    }
    append(note.detail, line.at(EntryColumn::Note));
    if (note.detail.empty()) return;
    m_out.notes.push_back(note);
    ++m_out.report.notes;
  }

  [[nodiscard]] std::string causeText(const std::string& key) const {
    if (key == "s") return m_word(message("session.entry.cause_starved"));
    if (key == "q") return m_word(message("session.entry.cause_queenless"));
    if (key == "m") return m_word(message("session.entry.cause_mites"));
    return m_word(message("session.entry.cause_unknown"));
  }
  [[nodiscard]] std::string combsText(const std::string& key) const {
    const std::string day = m_head.date.iso();
    if (key == "s") return m_word(message("session.entry.combs_stored", day));
    if (key == "m") return m_word(message("session.entry.combs_melted", day));
    if (key == "b") return m_word(message("session.entry.combs_burnt", day));
    return m_word(message("session.entry.combs_left", day));
  }

  void addDead(const EntryLine& line) {
    const std::string& cause = line.at(EntryColumn::Cause);
    const std::string& combs = line.at(EntryColumn::Combs);
    const std::string& closed = line.at(EntryColumn::Closed);
    if (cause == ".") {
      ++m_out.report.notOpened;
      return addNote(line, {});
    }
    DeadLine dead;
    dead.hive = line.hive;
    if (line.foundDead()) {
      DeathFound found;
      found.hive = line.hive;
      found.colony = line.colony.value_or(ColonyId{line.hive.str()});
      found.date = m_head.date;
      if (!cause.empty()) found.cause = causeText(cause);
      found.detail = causeText(cause);
      if (!combs.empty()) append(found.detail, combsText(combs));
      found.sheet = m_head.sheet;
      dead.found = std::move(found);
      m_out.report.deaths.push_back(line.hive);
    } else if (!cause.empty() || !combs.empty()) {
      dead.said = said(line, cause, combs);
      m_out.report.deathSaid.push_back(line.hive);
    }
    if (combs == "s" || combs == "m" || combs == "b") addCleared(line, cause, combs, dead);
    if (dead.found || dead.said || dead.combs) m_out.dead.push_back(std::move(dead));
    std::string note;
    if (closed == "y") note = m_word(message("session.entry.closed"));
    if (closed == "n") note = m_word(message("session.entry.not_closed"));
    addNote(line, std::move(note));
  }

  /// What was known before stays said, unless it is said anew.
  [[nodiscard]] DeathSaid said(const EntryLine& line, const std::string& cause,
                               const std::string& combs) const {
    DeathSaid out;
    out.hive = line.hive;
    out.date = m_head.date;
    out.sheet = m_head.sheet;
    const Event* old = deathOf(m_season, line.hive, m_head.date);
    const std::string before = old ? old->detail : std::string();
    if (cause.empty()) {
      out.detail = before;
    } else {
      out.cause = causeText(cause);
      out.detail = out.cause;
    }
    if (!combs.empty()) append(out.detail, combsText(combs));
    if (!cause.empty() && !before.empty()) {
      append(out.detail, m_word(message("session.entry.said_before", before)));
    }
    return out;
  }

  void addCleared(const EntryLine& line, const std::string& cause, const std::string& combs,
                  DeadLine& dead) {
    CombsCleared cleared;
    cleared.hive = line.hive;
    cleared.date = m_head.date;
    cleared.fate = combs == "s"   ? CombsFate::Stored
                   : combs == "m" ? CombsFate::Melted
                                  : CombsFate::Burnt;
    // Starved or queenless combs are clean; with mites the combs are clean too, the bees were not
    // (common practice, no source).
    cleared.usable = cause == "s" || cause == "q" || cause == "m";
    cleared.detail = combsText(combs);
    cleared.sheet = m_head.sheet;
    if (cleared.fate == CombsFate::Stored && !cleared.usable) {
      m_out.report.keepApart.push_back(line.hive);
    }
    dead.combs = std::move(cleared);
    m_out.report.cleared.push_back(line.hive);
  }

  void addEmpty(const EntryLine& line) {
    const std::string& bees = line.at(EntryColumn::BeesIn);
    std::string note;
    if (bees == "y") {
      m_out.newcomers.push_back(movedIn(m_season, line));
      m_out.report.beesIn.push_back(line.hive);
    } else if (bees == "n") {
      note = m_word(message("session.entry.no_bees_in"));
    } else if (bees == ".") {
      ++m_out.report.notOpened;
    }
    addNote(line, std::move(note));
  }

  void addLook(const EntryLine& line) {
    Inspection i;
    i.hive = line.hive;
    i.colony = line.colony;
    i.date = m_head.date;
    i.time = m_head.from;
    i.airC = m_head.airC;
    i.reader = m_head.reader;
    i.sheet = m_head.sheet;
    i.line = line.line;
    InspectionEntry entry;
    addSeams(line, i, entry);
    const std::string& brood = line.at(EntryColumn::Brood);
    if (const auto figure = typedFigure(brood)) {
      i.framesWithBrood = static_cast<int>(figure->value);
      if (figure->atLeast) {
        append(i.notes, m_word(message("session.entry.brood_at_least", *i.framesWithBrood)));
      }
    }
    if (const auto& eggs = line.at(EntryColumn::Eggs); !eggs.empty()) i.eggsSeen = eggs == "y";
    addQueen(line.at(EntryColumn::Queen), i);
    addCells(line.at(EntryColumn::Cells), i);
    if (const auto& stores = line.at(EntryColumn::Stores); !stores.empty()) {
      i.storesLevel = stores == "l"   ? apiary::StoresLevel::Low
                      : stores == "m" ? apiary::StoresLevel::Medium
                                      : apiary::StoresLevel::Heavy;
    }
    if (const auto weight = typedFigure(line.at(EntryColumn::Weight))) {
      i.weightKg = weight->value * m_head.kgPerUnit;
    }
    if (line.at(EntryColumn::Sick) == "y") {
      i.disease = apiary::Disease::Other;
      m_out.report.sick.emplace_back(line.line, line.hive);
    }
    if (const auto& temper = line.at(EntryColumn::Temper); !temper.empty()) {
      i.temper = temper.front() - '0';
    }
    if (const auto& drones = line.at(EntryColumn::Drones); !drones.empty()) {
      i.dronesSeen = drones == "y";
    }
    if (const auto& why = line.at(EntryColumn::NotDone); !why.empty()) {
      append(i.notes, m_word(message("session.entry.not_done", why)));
    }
    append(i.notes, line.at(EntryColumn::Note));
    entry.inspection = std::move(i);
    m_out.inspections.push_back(std::move(entry));
    ++m_out.report.looks;
  }

  void addSeams(const EntryLine& line, Inspection& i, InspectionEntry& entry) {
    const std::string& text = line.at(EntryColumn::Seams);
    if (glanced(line)) {
      // The middle of what the reader had on paper; the forecast itself is never fed back.
      const ExpectedRange range = readExpected(line.expected).seams.value();
      i.seams = (range.low + range.high) / 2.0;
      i.seamsView = apiary::SeamsView::Above;
      i.glance = apiary::Glance::AboutRight;
      ++m_out.report.glances;
      return;
    }
    const auto figure = typedFigure(text);
    if (!figure) return;
    i.seams = figure->value;
    i.seamsView = apiary::SeamsView::Above;
    if (!figure->atLeast) return;
    apiary::SeamCount count;
    count.box = topBox(m_season, line, m_head.date);
    count.fromAbove = figure->value;
    count.atLeast = true;
    entry.seams.push_back(count);
  }

  void addQueen(const std::string& queen, Inspection& i) {
    if (queen.empty()) return;
    i.queenSeen = !isDash(queen);
    if (queen == "m") append(i.notes, m_word(message("session.entry.queen_marked")));
    if (queen == "u") append(i.notes, m_word(message("session.entry.queen_unmarked")));
    if (queen == "v") append(i.notes, m_word(message("session.entry.queen_virgin")));
  }

  static void addCells(const std::string& cells, Inspection& i) {
    if (cells == "0") i.queenCells = 0;
    if (cells == "u") i.cellKind = apiary::CellKind::Cups;
    if (cells == "c") i.cellKind = apiary::CellKind::Charged;
    if (cells == "s") i.cellKind = apiary::CellKind::Sealed;
  }

  const apiary::Season& m_season;
  const EntryHead& m_head;
  const Wording& m_word;
  EntryReading& m_out;
};

}  // namespace

void append(std::string& text, const std::string& more) {
  if (more.empty()) return;
  if (!text.empty()) text += "; ";
  text += more;
}

void readLine(const apiary::Season& season, const EntryHead& head, const EntryLine& line,
              const Wording& word, EntryReading& out) {
  Reader(season, head, word, out).read(line);
}

}  // namespace outyard::session

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/sheet_entry_dialog.h"

#include <QDateEdit>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>
#include <QTreeWidget>
#include <algorithm>
#include <map>
#include <tuple>
#include <vector>

#include "core/base/text.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/entry/entry_model.h"
#include "ui/entry/entry_table.h"
#include "ui/entry/entry_words.h"

namespace outyard::entry {
namespace {

constexpr double kLeastAirC = -60, kMostAirC = 60;  // as the inspections table

QString text(const std::string& s) {
  return QString::fromStdString(s);
}

}  // namespace

SheetEntryDialog::SheetEntryDialog(widgets::SeasonHub& hub, const QString& draftFolder,
                                   QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_units(adapt::Units::from(hub.settings())),
      m_drafts(draftFolder, hub.path()),
      m_model(new EntryModel(hub, this)),
      m_delay(new QTimer(this)) {
  setObjectName(QStringLiteral("sheetEntry"));
  setWindowTitle(tr("Enter a sheet"));
  setWindowFlag(Qt::WindowMaximizeButtonHint);
  build();
  constexpr int kKeepDelayMs = 400;
  m_delay->setSingleShot(true);
  m_delay->setInterval(kKeepDelayMs);
  connect(m_delay, &QTimer::timeout, this, [this] { keepDraft(); });
  connect(m_model, &EntryModel::edited, this, [this] {
    m_delay->start();
    showCount();
  });
  connect(m_model, &EntryModel::said, this, &SheetEntryDialog::say);
  connect(m_table, &EntryTable::said, this, &SheetEntryDialog::say);
  connect(m_table, &EntryTable::cursorMoved, this, &SheetEntryDialog::showCell);
  connect(m_table, &EntryTable::commitAsked, this, &SheetEntryDialog::commit);
  fillList();
  resize(1280, 760);
  m_number->setFocus();
}

SheetEntryDialog::~SheetEntryDialog() = default;

QString SheetEntryDialog::yardName(const base::YardId& yard) const {
  const auto* row = m_hub.season().yard(yard);
  return text(row && !row->name.empty() ? row->name : yard.str());
}

void SheetEntryDialog::fillList() {
  m_list->clear();
  std::vector<const apiary::SheetRow*> sheets;
  for (const auto& [key, row] : m_hub.season().table<apiary::SheetRow>()) sheets.push_back(&row);
  std::stable_sort(sheets.begin(), sheets.end(), [](const auto* a, const auto* b) {
    return std::tuple(b->date, b->madeAt) < std::tuple(a->date, a->madeAt);
  });
  std::map<base::SheetId, int> lines, typed;
  for (const auto& [key, line] : m_hub.season().table<apiary::SheetLine>()) ++lines[line.sheet];
  for (const auto& [key, look] : m_hub.season().table<apiary::Inspection>()) {
    const bool ofLine = look.sheet && look.line && *look.line <= lines[*look.sheet];
    if (ofLine && m_hub.season().counts(look)) ++typed[*look.sheet];
  }
  for (const auto* row : sheets) {
    const bool entered = session::sheetEntered(m_hub.season(), row->sheet);
    const bool draft = m_drafts.has(row->sheet);
    const QString state = draft     ? tr("half entered")
                          : entered ? tr("entered")
                                    : tr("not entered yet");
    auto* item = new QTreeWidgetItem(
        m_list, {text(row->sheet.str()), yardName(row->yard), adapt::dateText(row->date),
                 tr("%1 of %2").arg(typed[row->sheet]).arg(lines[row->sheet]), state});
    item->setSizeHint(0, {0, fontMetrics().lineSpacing() + 8});
    if (!entered || draft) {
      QFont bold = font();
      bold.setBold(true);
      for (int column = 0; column < 5; ++column) item->setFont(column, bold);
    }
  }
  for (int column = 0; column < 5; ++column) m_list->resizeColumnToContents(column);
  for (int column = 0; column < 4; ++column) {
    m_list->setColumnWidth(column, m_list->columnWidth(column) + 24);
  }
  if (m_list->topLevelItemCount() > 0) m_list->setCurrentItem(m_list->topLevelItem(0));
  const bool none = sheets.empty();
  m_empty->setVisible(none);
  m_list->setVisible(!none);
  m_open->setEnabled(!none);
}

bool SheetEntryDialog::openSheet(const QString& number) {
  const QString wanted = number.trimmed();
  std::vector<base::SheetId> ending;
  for (const auto& [key, row] : m_hub.season().table<apiary::SheetRow>()) {
    const QString id = text(row.sheet.str());
    if (id.compare(wanted, Qt::CaseInsensitive) == 0) {
      begin(row.sheet);
      return true;
    }
    if (!wanted.isEmpty() && id.endsWith(wanted, Qt::CaseInsensitive)) {
      ending.push_back(row.sheet);
    }
  }
  if (ending.size() == 1) {
    begin(ending.front());
    return true;
  }
  m_choiceSay->setText(
      wanted.isEmpty()
          ? tr("Type the number at the foot of the sheet, or scan its code.")
          : tr("No single sheet of this season is numbered %1. Type its whole number, as at the "
               "foot of each page, or choose it in the list.")
                .arg(wanted));
  return false;
}

void SheetEntryDialog::begin(const base::SheetId& id) {
  auto sheet = session::blankEntry(m_hub.season(), id);
  if (!sheet) return;
  sheet->head.kgPerUnit = m_units.massFrom(1).value;
  const bool drafted = m_drafts.restore(*sheet);
  m_title->setText(
      tr("Sheet %1 · %2 · %3")
          .arg(text(id.str()), yardName(sheet->yard), adapt::dateText(sheet->head.date)));
  m_date->setDate(adapt::toQDate(sheet->head.date));
  m_reader->setText(text(sheet->head.reader));
  m_from->setText(sheet->head.from ? text(sheet->head.from->text()) : QString());
  m_air->setText(sheet->head.airC
                     ? QString::number(m_units.shown(base::Temperature{*sheet->head.airC}), 'g', 4)
                     : QString());
  m_model->setSheet(std::move(*sheet));
  m_over->setVisible(drafted);
  m_pages->setCurrentIndex(1);
  m_table->fitColumns();
  m_table->toFirstOpen();
  showCount();
  const auto& lines = m_model->sheet().lines;
  const bool entered =
      std::any_of(lines.begin(), lines.end(), [](const auto& l) { return l.entered; });
  if (drafted) {
    say(tr("Half entered before: it goes on where you stopped."));
  } else if (entered) {
    say(tr("Lines in grey were entered before; correct those in the journal of their hive."));
  } else if (lines.empty()) {
    say(tr("No lines are kept with this sheet: record its hives one by one on the Hive page."));
  } else {
    say({});
  }
  if (drafted || entered) {
    m_table->setFocus();
  } else {
    m_reader->setFocus();
  }
}

void SheetEntryDialog::startOver() {
  const base::SheetId id = m_model->sheet().head.sheet;
  if (anythingTyped() &&
      !m_hub.dialogs().question(
          this, tr("Start over"),
          tr("Everything typed on sheet %1 so far is thrown away.").arg(text(id.str())),
          tr("Start over"))) {
    return;
  }
  m_delay->stop();
  m_drafts.remove(id);
  begin(id);
}

void SheetEntryDialog::backToChoice() {
  keepDraft();
  fillList();
  m_choiceSay->clear();
  m_number->clear();
  m_pages->setCurrentIndex(0);
  m_number->setFocus();
}

void SheetEntryDialog::say(const QString& sentence) {
  m_say->setText(sentence);
}

void SheetEntryDialog::showCell(const QModelIndex& index) {
  if (!index.isValid()) return;
  const auto column = m_model->cellAt(index);
  QString keys;
  if (column) {
    keys = columnKeys(*column);
  } else if (index.column() < EntryModel::kFirstTask) {
    keys = tr("Nothing is typed here: go to the cells at the right");
  } else if (m_model->isBoost(index)) {
    keys =
        tr("Boost that was printed and not accepted: Space ticks it as done the way it is "
           "printed; it is accepted and recorded on this day");
  } else {
    keys = tr("Task: Space ticks it off");
  }
  // In large type the hive's number may lie outside the window.
  const auto& line = m_model->line(index.row());
  const QString hive = text(line.name());
  m_keys->setText(hive.isEmpty() ? tr("Line %1. %2").arg(line.line).arg(keys)
                                 : tr("Line %1, %2. %3").arg(line.line).arg(hive, keys));
}

void SheetEntryDialog::showCount() {
  int typed = 0, open = 0;
  for (const auto& line : m_model->sheet().lines) {
    if (line.entered) continue;
    const bool touched = !m_model->sheet().untouched(line);
    if (touched) ++typed;
    // A blank line that stays blank is not missing.
    if (touched || line.kind != session::LineKind::Blank) ++open;
  }
  m_count->setText(tr("%1 of %2 lines typed").arg(typed).arg(open));
  m_record->setEnabled(typed > 0);
}

bool SheetEntryDialog::anythingTyped() const {
  const auto& lines = m_model->sheet().lines;
  return std::any_of(lines.begin(), lines.end(),
                     [this](const auto& l) { return !m_model->sheet().untouched(l); });
}

QString SheetEntryDialog::readHead() {
  session::EntryHead head = m_model->sheet().head;
  QString wrong;
  head.date = adapt::fromQDate(m_date->date());
  head.reader = m_reader->text().trimmed().toStdString();
  head.from.reset();
  head.airC.reset();
  if (const QString from = m_from->text().trimmed(); !from.isEmpty()) {
    head.from = session::readTime(from.toStdString());
    if (!head.from) {
      wrong = tr("From: write the hour as 9:30, or leave it empty.");
      m_wrongField = m_from;
    }
  }
  if (QString air = m_air->text().trimmed(); !air.isEmpty()) {
    const auto number = base::parseNumber(air.replace(u',', u'.').toStdString());
    if (number) head.airC = m_units.temperatureFrom(*number).value;
    if (!head.airC || *head.airC < kLeastAirC || *head.airC > kMostAirC) {
      head.airC.reset();
      m_wrongField = m_air;
      wrong = tr("Air: write %1 to %2, or leave it empty.")
                  .arg(m_units.text(base::Temperature{kLeastAirC}),
                       m_units.text(base::Temperature{kMostAirC}));
    }
  }
  m_model->setHead(head);
  return wrong;
}

bool SheetEntryDialog::keepDraft() {
  m_delay->stop();
  if (m_pages->currentIndex() != 1) return true;
  static_cast<void>(readHead());  // what is wrong in the head is said when the sheet is recorded
  if (m_drafts.keep(m_model->sheet())) return true;
  say(tr("What is typed could not be kept as a draft: the disk refused %1. Record the sheet before "
         "you leave.")
          .arg(m_drafts.file(m_model->sheet().head.sheet)));
  return false;
}

bool SheetEntryDialog::commit() {
  if (m_pages->currentIndex() != 1) return false;
  const QString wrong = readHead();
  if (!wrong.isEmpty()) {
    say(wrong);
    m_wrongField->setFocus();
    return false;
  }
  keepDraft();
  const auto reading = session::readSheet(m_hub.season(), m_model->sheet(), adapt::wordsUtf8);
  if (!reading.faults.empty()) {
    const auto& first = reading.faults.front();
    const auto& lines = m_model->sheet().lines;
    const auto at = std::find_if(lines.begin(), lines.end(),
                                 [&](const auto& l) { return l.line == first.line; });
    // A line found dead has other cells where the seams were.
    const int column = first.column == session::EntryColumn::Seams && at->foundDead()
                           ? EntryModel::columnOf(session::EntryColumn::Cause)
                           : EntryModel::columnOf(first.column);
    m_table->goTo(static_cast<int>(at - lines.begin()), column);
    m_table->setFocus();
    const int more = static_cast<int>(reading.faults.size()) - 1;
    const QString sentence = adapt::words(first.what);
    say(more > 0 ? tr("%1. And %n more to put right.", nullptr, more).arg(sentence) : sentence);
    return false;
  }
  if (!m_hub.execute(session::enterSheet(reading), this)) return false;
  m_delay->stop();
  m_drafts.remove(reading.head.sheet);
  m_hub.dialogs().inform(this, tr("Sheet %1 is entered").arg(text(reading.head.sheet.str())),
                         reportText(m_hub.season(), reading, m_units));
  accept();
  return true;
}

void SheetEntryDialog::reject() {
  const bool kept = keepDraft();
  const bool lost = m_pages->currentIndex() == 1 && anythingTyped() &&
                    (!kept || !m_drafts.has(m_model->sheet().head.sheet));
  if (lost && !m_hub.dialogs().question(this, tr("Leave the sheet"),
                                        tr("What is typed cannot be kept and will be lost."),
                                        tr("Leave"))) {
    return;
  }
  QDialog::reject();
}

void SheetEntryDialog::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && event->modifiers().testFlag(Qt::ControlModifier)) {
    commit();
    return;
  }
  if (enter) return;  // never closes the dialog: Enter belongs to the fields
  QDialog::keyPressEvent(event);
}

}  // namespace outyard::entry

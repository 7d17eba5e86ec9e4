// SPDX-License-Identifier: GPL-3.0-or-later
// The two pages of the dialog: which sheet, and its lines.
#include <QCompleter>
#include <QDateEdit>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QTreeWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/entry/entry_model.h"
#include "ui/entry/entry_table.h"
#include "ui/entry/entry_words.h"
#include "ui/entry/sheet_entry_dialog.h"

namespace outyard::entry {
namespace {

constexpr int kUsualWidth = 1240;  ///< of the dialog's lines of words

QPushButton* button(const QString& text, const char* name) {
  auto* made = new QPushButton(text);
  made->setObjectName(QLatin1String(name));
  made->setAutoDefault(false);  // Enter belongs to the fields
  return made;
}

QLineEdit* lineEdit(const QString& name, const char* objectName, const QString& hint) {
  auto* made = new QLineEdit;
  made->setObjectName(QLatin1String(objectName));
  made->setAccessibleName(name);
  made->setPlaceholderText(hint);
  made->setToolTip(hint);
  return made;
}

QLabel* labelFor(const QString& text, QWidget* buddy) {
  auto* made = new QLabel(text);
  made->setBuddy(buddy);
  return made;
}

QLabel* sentence(const char* name, bool strong) {
  auto* made = new QLabel;
  made->setObjectName(QLatin1String(name));
  made->setWordWrap(true);
  made->setTextFormat(Qt::PlainText);
  QFont font = made->font();
  font.setBold(strong);
  made->setFont(font);
  // Room from the start, so that the table does not jump.
  made->setMinimumHeight(made->fontMetrics().lineSpacing() * (strong ? 2 : 1));
  made->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  return made;
}

}  // namespace

void SheetEntryDialog::build() {
  m_pages = new QStackedWidget;
  m_pages->addWidget(makeChoice());
  m_pages->addWidget(makeEntry());
  auto* all = new QVBoxLayout(this);
  all->addWidget(m_pages);
}

QWidget* SheetEntryDialog::makeChoice() {
  auto* page = new QWidget;
  auto* layout = new QVBoxLayout(page);
  m_number = lineEdit(tr("Number of the sheet"), "entryNumber",
                      tr("type or scan it, then Enter; or only its end"));
  m_number->setClearButtonEnabled(true);
  auto* row = new QHBoxLayout;
  row->addWidget(labelFor(tr("&Number at the foot of the sheet"), m_number));
  row->addWidget(m_number, 1);
  layout->addLayout(row);
  m_choiceSay = sentence("entryChoiceSay", true);
  layout->addWidget(m_choiceSay);
  m_list = new QTreeWidget;
  m_list->setObjectName(QStringLiteral("entryList"));
  m_list->setAccessibleName(tr("Printed sheets, newest first"));
  m_list->setHeaderLabels({tr("Sheet"), tr("Yard"), tr("Day"), tr("Lines entered"), tr("State")});
  m_list->setRootIsDecorated(false);
  m_list->setAllColumnsShowFocus(true);
  layout->addWidget(labelFor(tr("&Printed sheets, newest first"), m_list));
  layout->addWidget(m_list, 1);
  m_empty = new QLabel(
      tr("No sheet was printed in this season yet. Print one in the File menu: its number and its "
         "lines are kept, and after the round they are typed back in here."));
  m_empty->setObjectName(QStringLiteral("entryEmpty"));
  m_empty->setWordWrap(true);
  m_empty->setAlignment(Qt::AlignCenter);
  layout->addWidget(m_empty, 1);
  auto* bottom = new QHBoxLayout;
  bottom->addStretch(1);
  m_open = button(tr("&Enter this sheet"), "entryOpen");
  auto* close = button(tr("Close"), "entryChoiceClose");
  bottom->addWidget(m_open);
  bottom->addWidget(close);
  layout->addLayout(bottom);
  const auto openChosen = [this] {
    if (const auto* item = m_list->currentItem()) openSheet(item->text(0));
  };
  connect(m_number, &QLineEdit::returnPressed, this, [this] { openSheet(m_number->text()); });
  connect(m_list, &QTreeWidget::itemActivated, this, openChosen);
  connect(m_open, &QPushButton::clicked, this, openChosen);
  connect(close, &QPushButton::clicked, this, &SheetEntryDialog::reject);
  return page;
}

void SheetEntryDialog::makeHead(QHBoxLayout& row) {
  m_date = new QDateEdit;
  m_date->setObjectName(QStringLiteral("entryDate"));
  m_date->setAccessibleName(tr("Day of the visit"));
  m_date->setToolTip(tr("Day of the visit: all records get this day"));
  m_date->setDisplayFormat(QStringLiteral("d MMM yyyy"));
  m_date->setCalendarPopup(true);
  m_reader = lineEdit(tr("Who looked"), "entryReader", tr("name or initials"));
  QStringList readers;
  for (const auto& [key, look] : m_hub.season().table<apiary::Inspection>()) {
    const QString reader = QString::fromStdString(look.reader);
    if (!reader.isEmpty() && !readers.contains(reader)) readers << reader;
  }
  auto* known = new QCompleter(readers, m_reader);
  known->setCaseSensitivity(Qt::CaseInsensitive);
  m_reader->setCompleter(known);
  m_from = lineEdit(tr("From"), "entryFrom", tr("9:30"));
  m_air = lineEdit(tr("Air temperature in %1").arg(m_units.temperatureUnit()), "entryAir",
                   m_units.temperatureUnit());
  const int narrow = fontMetrics().horizontalAdvance(QStringLiteral("00:00 000"));
  m_from->setMaximumWidth(narrow);
  m_air->setMaximumWidth(narrow);
  row.addWidget(labelFor(tr("&Day"), m_date));
  row.addWidget(m_date);
  row.addWidget(labelFor(tr("&Who looked"), m_reader));
  row.addWidget(m_reader, 1);
  row.addWidget(labelFor(tr("&From"), m_from));
  row.addWidget(m_from);
  row.addWidget(labelFor(tr("&Air (%1)").arg(m_units.temperatureUnit()), m_air));
  row.addWidget(m_air);
  connect(m_reader, &QLineEdit::returnPressed, this, [this] { m_from->setFocus(); });
  connect(m_from, &QLineEdit::returnPressed, this, [this] { m_air->setFocus(); });
  connect(m_air, &QLineEdit::returnPressed, this, [this] { m_table->setFocus(); });
  for (auto* field : {m_reader, m_from, m_air}) {
    connect(field, &QLineEdit::editingFinished, this, [this] {
      say(readHead());
      // As it was understood.
      const auto& from = m_model->sheet().head.from;
      if (from) m_from->setText(QString::fromStdString(from->text()));
    });
  }
}

QWidget* SheetEntryDialog::makeEntry() {
  auto* page = new QWidget;
  auto* layout = new QVBoxLayout(page);
  auto* head = new QHBoxLayout;
  m_title = new QLabel;
  m_title->setObjectName(QStringLiteral("entryTitle"));
  m_title->setTextFormat(Qt::PlainText);
  QFont strong = m_title->font();
  strong.setBold(true);
  m_title->setFont(strong);
  head->addWidget(m_title);
  head->addSpacing(18);
  makeHead(*head);
  layout->addLayout(head);
  m_table = new EntryTable(*m_model);
  layout->addWidget(m_table, 1);
  m_keys = sentence("entryKeys", false);
  // In large type some of these take two lines: room for them from the start.
  int longest = 0;
  for (const auto column : session::kAllEntryColumns) {
    longest = std::max(longest, m_keys->fontMetrics().horizontalAdvance(columnKeys(column)));
  }
  const int before = m_keys->fontMetrics().horizontalAdvance(QStringLiteral("Line 00, 00000000. "));
  if (before + longest > kUsualWidth) {
    m_keys->setMinimumHeight(m_keys->fontMetrics().lineSpacing() * 2);
  }
  layout->addWidget(m_keys);
  m_say = sentence("entrySay", true);
  layout->addWidget(m_say);
  auto* help = new QLabel(
      tr("Space leaves a cell empty and goes on, Enter goes to the next line, \" copies from the "
         "line above, Backspace takes back, x in the seams = found dead, ! = look again, ? = to be "
         "put right."));
  help->setWordWrap(true);
  help->setForegroundRole(QPalette::PlaceholderText);
  layout->addWidget(help);
  auto* bottom = new QHBoxLayout;
  m_count = new QLabel;
  m_count->setObjectName(QStringLiteral("entryCount"));
  bottom->addWidget(m_count);
  bottom->addStretch(1);
  auto* other = button(tr("&Other sheet"), "entryOther");
  m_over = button(tr("&Start over"), "entryOver");
  m_record = button(tr("&Record the sheet"), "entryRecord");
  m_record->setToolTip(tr("All lines as one step that can be undone (Ctrl+Enter)"));
  auto* close = button(tr("&Leave, keep what is typed"), "entryClose");
  for (auto* b : {other, m_over, close, m_record}) bottom->addWidget(b);
  layout->addLayout(bottom);
  connect(other, &QPushButton::clicked, this, &SheetEntryDialog::backToChoice);
  connect(m_over, &QPushButton::clicked, this, &SheetEntryDialog::startOver);
  connect(m_record, &QPushButton::clicked, this, &SheetEntryDialog::commit);
  connect(close, &QPushButton::clicked, this, &SheetEntryDialog::reject);
  return page;
}

}  // namespace outyard::entry

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/list_file.h"

#include <QAbstractItemView>
#include <QKeySequence>
#include <QMenu>
#include <QRegularExpression>

#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/widgets/list_pages.h"
#include "ui/widgets/session_model.h"

namespace outyard::widgets {

ListFile::ListFile(SeasonHub& hub, QAbstractItemView* view, Words title, Words note, Menu menu)
    : QObject(view), m_hub(hub), m_view(view), m_title(std::move(title)), m_note(std::move(note)) {
  m_pdf = new QAction(tr("Save list as PDF…"), this);
  m_pdf->setObjectName(QStringLiteral("listPdf"));
  m_pdf->setToolTip(tr("Write the list as it stands here, sorted and filtered, on pages to print"));
  m_csv = new QAction(tr("Save list as CSV…"), this);
  m_csv->setObjectName(QStringLiteral("listCsv"));
  m_csv->setToolTip(tr("Write the list as it stands here as a table for a spreadsheet"));
  m_pdf->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_L));
  m_csv->setShortcut(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_V));
  for (auto* action : actions()) action->setShortcutContext(Qt::WidgetShortcut);
  connect(m_pdf, &QAction::triggered, this, &ListFile::savePdf);
  connect(m_csv, &QAction::triggered, this, &ListFile::saveCsv);
  view->addActions(actions());
  if (menu == Menu::OfActions) view->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void ListFile::addTo(QMenu& menu) const {
  menu.addSeparator();
  menu.addActions(actions());
}

void ListFile::setLists(Lists lists) {
  m_lists = std::move(lists);
}

void ListFile::setName(const QString& what) {
  m_pdf->setText(tr("Save %1 as PDF…").arg(what));
  m_csv->setText(tr("Save %1 as CSV…").arg(what));
}

void ListFile::dropKeys() {
  for (auto* action : actions()) action->setShortcut({});
}

std::vector<ListTable> ListFile::lists() const {
  std::vector<ListTable> out;
  if (m_lists) out = m_lists();
  if (!m_lists || out.empty()) out = {listOf(*m_view, {})};
  if (out.front().title.isEmpty() && m_title) out.front().title = m_title();
  if (out.front().note.isEmpty() && m_note) out.front().note = m_note();
  for (auto& list : out) {
    if (list.date.isEmpty()) list.date = adapt::dateText(m_hub.workingDate());
  }
  return out;
}

ListTable ListFile::list() const {
  return lists().front();
}

QString ListFile::ask(const QString& heading, const QString& filter, const QString& suffix) const {
  static const QRegularExpression kNotInNames(QStringLiteral("[^\\w.-]+"),
                                              QRegularExpression::UseUnicodePropertiesOption);
  QString name = (m_title ? m_title() : list().title).toLower();
  name.replace(kNotInNames, QStringLiteral("-"));
  name = name.left(60) + QLatin1Char('-') + QString::fromStdString(m_hub.workingDate().iso());
  QString path = m_hub.dialogs().saveFile(m_view->window(), heading, filter, name + suffix);
  if (!path.isEmpty() && !path.endsWith(suffix, Qt::CaseInsensitive)) path += suffix;
  return path;
}

void ListFile::tell(const QString& problem) const {
  if (problem.isEmpty()) return;
  m_hub.dialogs().failure(m_view->window(), tr("The list was not saved"), problem);
}

void ListFile::savePdf() {
  const QString path = ask(tr("Save list as PDF"), tr("PDF pages (*.pdf)"), QStringLiteral(".pdf"));
  if (path.isEmpty()) return;
  tell(writeListPdf(lists(), m_hub.settings().get(adapt::desk::kLetterPaper), path));
}

void ListFile::saveCsv() {
  const QString path = ask(tr("Save list as CSV"), tr("Tables (*.csv)"), QStringLiteral(".csv"));
  if (path.isEmpty()) return;
  tell(writeListCsv(list(), path));
}

}  // namespace outyard::widgets

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/list_file.h"

#include <QAbstractItemView>
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
  connect(m_pdf, &QAction::triggered, this, &ListFile::savePdf);
  connect(m_csv, &QAction::triggered, this, &ListFile::saveCsv);
  view->addActions(actions());
  if (menu == Menu::OfActions) view->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void ListFile::addTo(QMenu& menu) const {
  menu.addSeparator();
  menu.addActions(actions());
}

ListTable ListFile::list() const {
  ListTable list = listOf(*m_view, m_title ? m_title() : QString());
  if (m_note) list.note = m_note();
  list.date = adapt::dateText(m_hub.workingDate());
  return list;
}

QString ListFile::ask(const QString& heading, const QString& filter, const QString& suffix) const {
  static const QRegularExpression kNotInNames(QStringLiteral("[^\\w.-]+"),
                                              QRegularExpression::UseUnicodePropertiesOption);
  QString name = (m_title ? m_title() : QString()).toLower();
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
  tell(writeListPdf({list()}, m_hub.settings().get(adapt::desk::kLetterPaper), path));
}

void ListFile::saveCsv() {
  const QString path = ask(tr("Save list as CSV"), tr("Tables (*.csv)"), QStringLiteral(".csv"));
  if (path.isEmpty()) return;
  tell(writeListCsv(list(), path));
}

}  // namespace outyard::widgets

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAction>
#include <QList>
#include <QObject>
#include <functional>
#include <vector>

#include "ui/widgets/list_table.h"

class QAbstractItemView;
class QMenu;

namespace outyard::widgets {

class SeasonHub;

/// "Save list as PDF…" and "Save list as CSV…" of one list on the screen. Made once for each view:
///
///   m_file = new widgets::ListFile(hub, table, [this] { return tr("Hives of %1").arg(yard()); });
///
/// Both come into the view's context menu, and have keys while the view has the keyboard; a view
/// that shows a menu of its own says Menu::Own and calls addTo(menu) there. A place appends
/// actions() to its menuActions().
class ListFile : public QObject {
  Q_OBJECT
 public:
  using Words = std::function<QString()>;
  using Lists = std::function<std::vector<ListTable>()>;
  enum class Menu { OfActions, Own };
  /// `title` heads the page and names the file; `note`, below it, says how the list was narrowed
  /// down. Both are asked for when a list is saved. Lives as long as the view.
  ListFile(SeasonHub& hub, QAbstractItemView* view, Words title, Words note = {},
           Menu menu = Menu::OfActions);

  /// What is saved where the view itself is drawn freely: the PDF takes all of the lists, the CSV
  /// the first. Title and note of the first are those of this file unless it has its own.
  void setLists(Lists lists);
  /// "Save hives at risk as PDF…", where several lists stand in one menu.
  void setName(const QString& what);
  /// Without keys, where another list of the same view has them.
  void dropKeys();

  [[nodiscard]] QAction* pdfAction() const { return m_pdf; }
  [[nodiscard]] QAction* csvAction() const { return m_csv; }
  [[nodiscard]] QList<QAction*> actions() const { return {m_pdf, m_csv}; }
  /// Both, after a line.
  void addTo(::QMenu& menu) const;
  /// The list as it stands, with title, note and date.
  [[nodiscard]] ListTable list() const;

 public Q_SLOTS:
  /// Ask where to, then write; what goes wrong is said.
  void savePdf();
  void saveCsv();

 private:
  [[nodiscard]] std::vector<ListTable> lists() const;
  [[nodiscard]] QString ask(const QString& heading, const QString& filter,
                            const QString& suffix) const;
  void tell(const QString& problem) const;

  SeasonHub& m_hub;
  QAbstractItemView* m_view;
  Words m_title, m_note;
  Lists m_lists;
  QAction* m_pdf;
  QAction* m_csv;
};

}  // namespace outyard::widgets

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <algorithm>

#include "ui/entry/entry_model.h"
#include "ui/entry/entry_words.h"
#include "ui/widgets/theme.h"

namespace outyard::entry {

using session::EntryColumn;

namespace {

/// The style draws grid and tick boxes in a shade of the window's colour, which is lost on a dark
/// ground: they get a lighter one there.
constexpr QRgb kDarkGrid = 0xff5f6867, kDarkBox = 0xffa9b3b2;

class CellDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

 protected:
  void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
    QStyledItemDelegate::initStyleOption(option, index);
    if (widgets::isDark(option->palette)) {
      option->palette.setColor(QPalette::Window, QColor(kDarkBox));
    }
  }
};

}  // namespace

EntryTable::EntryTable(EntryModel& model, QWidget* parent) : QTableView(parent), m_model(model) {
  setModel(&model);
  setObjectName(QStringLiteral("entryTable"));
  setAccessibleName(tr("Lines of the sheet"));
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::EditKeyPressed |
                  QAbstractItemView::DoubleClicked);
  setTabKeyNavigation(true);
  setWordWrap(true);
  setAlternatingRowColors(true);  // the eye stays on its line
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(fontMetrics().lineSpacing() * 2 + 6);
  horizontalHeader()->setHighlightSections(false);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setItemDelegate(new CellDelegate(this));
  if (widgets::isDark(palette())) {
    QPalette lighter;
    lighter.setColor(QPalette::Window, QColor(kDarkGrid));
    setPalette(lighter);
  }
  connect(&model, &EntryModel::modelReset, this, &EntryTable::spanAll);
  connect(&model, &EntryModel::reshaped, this, &EntryTable::spanAll);
}

void EntryTable::spanAll() {
  clearSpans();
  for (int row = 0; row < m_model.rowCount(); ++row) {
    for (const EntryColumn column : session::columnsOf(m_model.line(row).form())) {
      const int wide = EntryModel::spanOf(column);
      if (wide > 1) setSpan(row, EntryModel::columnOf(column), 1, wide);
    }
  }
}

void EntryTable::fitColumns() {
  const auto wide = [&](const QString& text) { return fontMetrics().horizontalAdvance(text) + 18; };
  for (int column = 0; column < m_model.columnCount(); ++column) {
    const QString head = m_model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    int width = wide(head);
    if (column == EntryModel::kHive) {
      width = std::max(width, wide(tr("new hive …")));
      for (int row = 0; row < m_model.rowCount(); ++row) {
        width = std::max(width, wide(m_model.index(row, column).data().toString()));
      }
      width = std::min(width, wide(QStringLiteral("0000000000000000")));
    } else if (column == EntryModel::kExpected) {
      width = wide(tr("10–12 seams, brood"));  // wraps after it
    } else if (const auto entry = EntryModel::entryColumn(column)) {
      const bool words = *entry == EntryColumn::NotDone || *entry == EntryColumn::Note;
      if (words) width = wide(QStringLiteral("a dozen letters"));
      if (*entry == EntryColumn::Cells) width = wide(tr("charged"));
      // Over two of these lie the answers of a dead hive.
      const bool half = *entry == EntryColumn::Seams || *entry == EntryColumn::Brood ||
                        *entry == EntryColumn::Stores;
      if (half) width = std::max(width, wide(tr("cause: queenless ?")) / 2);
      if (*entry == EntryColumn::Weight) width = wide(QStringLiteral("000.0"));
    } else if (column >= EntryModel::kFirstTask) {
      for (int row = 0; row < m_model.rowCount(); ++row) {
        const QString task = m_model.index(row, column).data().toString();
        // Two lines of words beside the box.
        width = std::max(width, std::min(wide(task), wide(task.left(task.size() / 2)) + 60));
      }
    }
    setColumnWidth(column, width);
  }
  widenNote();
}

/// Room that is left over goes to the free line.
void EntryTable::widenNote() {
  const int note = EntryModel::columnOf(EntryColumn::Note);
  const int others = horizontalHeader()->length() - columnWidth(note);
  const int least = fontMetrics().horizontalAdvance(QStringLiteral("a dozen letters")) + 18;
  setColumnWidth(note, std::max(least, viewport()->width() - others));
}

void EntryTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  widenNote();
}

void EntryTable::goTo(int row, int column) {
  const QModelIndex to = m_model.index(row, column);
  if (!to.isValid()) return;
  setCurrentIndex(to);
  // Hive and what is expected come back into sight as soon as there is room for them.
  const int right = horizontalHeader()->sectionPosition(column) + columnWidth(column);
  if (right <= viewport()->width()) horizontalScrollBar()->setValue(0);
  scrollTo(to);
}

void EntryTable::toFirstOpen() {
  int first = -1;
  for (int row = 0; row < m_model.rowCount(); ++row) {
    const int column = m_model.firstOpen(row);
    if (column < 0) continue;
    if (first < 0) first = row;
    if (m_model.sheet().untouched(m_model.line(row))) return goTo(row, column);
  }
  if (first >= 0) goTo(first, m_model.firstOpen(first));
}

void EntryTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  Q_EMIT cursorMoved(current);
}

void EntryTable::keyPressEvent(QKeyEvent* event) {
  // What an open editor leaves over (its Enter) has been heard by its delegate.
  if (state() == QAbstractItemView::EditingState) {
    event->accept();
    return;
  }
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && event->modifiers().testFlag(Qt::ControlModifier)) {
    Q_EMIT commitAsked();
    return;
  }
  if (enter) return nextLine();
  if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) {
    QTableView::keyPressEvent(event);
    return;
  }
  if (event->key() == Qt::Key_Backspace) return backspace();
  if (event->key() == Qt::Key_Delete) return write({});
  const QString text = event->text();
  if (text.size() == 1 && text[0].isPrint() && takeKey(text[0])) return;
  QTableView::keyPressEvent(event);
}

bool EntryTable::takeKey(QChar key) {
  const QModelIndex at = currentIndex();
  if (!at.isValid()) return false;
  if (at.column() >= EntryModel::kFirstTask) {
    if (key != u' ') return true;
    const bool ticked = at.data(Qt::CheckStateRole).toInt() == Qt::Checked;
    m_model.setData(at, ticked ? Qt::Unchecked : Qt::Checked, Qt::CheckStateRole);
    return true;
  }
  const auto column = m_model.cellAt(at);
  if (column && key == u'"') {
    copyFromAbove();
    return true;
  }
  if (!column || !m_model.open(at)) {
    Q_EMIT said(m_model.whyNot(at, QString(key)));
    return true;
  }
  if (!takesOneKey(*column)) {
    if (key != u' ' || !m_model.typed(at).isEmpty()) return false;  // the editor opens
    moveOn();
    return true;
  }
  if (key == u' ') {
    moveOn();
    return true;
  }
  const auto text = oneKey(*column, key);
  if (!text) {
    Q_EMIT said(tr("The key \"%1\" means nothing here. %2").arg(key).arg(columnKeys(*column)));
    return true;
  }
  const QString why = m_model.whyNot(at, *text);
  if (!why.isEmpty()) {
    Q_EMIT said(why);
    return true;
  }
  goOnAfter(*text);
  return true;
}

void EntryTable::write(const QString& text) {
  const QModelIndex at = currentIndex();
  if (m_model.cellAt(at)) m_model.setData(at, text, Qt::EditRole);
}

void EntryTable::goOnAfter(const QString& text) {
  const QModelIndex at = currentIndex();
  const auto before = m_model.cellAt(at);
  write(text);
  if (m_model.cellAt(at) != before) {
    Q_EMIT cursorMoved(at);  // found dead: the same place asks for the cause now
  } else if (text == u"." || text == u"=") {
    nextLine();  // nothing more to say about most of these
  } else {
    moveOn();
  }
}

void EntryTable::copyFromAbove() {
  const QModelIndex at = currentIndex();
  const QModelIndex above = at.siblingAtRow(at.row() - 1);
  // Another kind of line has other cells at that place.
  const bool same = above.isValid() && m_model.cellAt(above) == m_model.cellAt(at);
  const QString text = same ? m_model.typed(above) : QString();
  if (text.isEmpty()) {
    Q_EMIT said(tr("Nothing stands above to copy."));
    return;
  }
  const QString why = m_model.whyNot(at, text);
  if (!why.isEmpty()) {
    Q_EMIT said(why);
    return;
  }
  goOnAfter(text);
}

void EntryTable::backspace() {
  const QModelIndex at = currentIndex();
  if (!m_model.typed(at).isEmpty()) return write({});
  if (m_model.cellAt(at) == EntryColumn::Cause && m_model.takeBackDeath(at.row())) {
    Q_EMIT cursorMoved(at);
    return;
  }
  moveBack();
}

void EntryTable::moveOn() {
  const QModelIndex at = currentIndex();
  for (int column = at.column() + 1; column < m_model.columnCount(); ++column) {
    if (m_model.open(at.siblingAtColumn(column))) return goTo(at.row(), column);
  }
  nextLine();
}

void EntryTable::moveBack() {
  const QModelIndex at = currentIndex();
  for (int column = at.column() - 1; column >= 0; --column) {
    if (m_model.open(at.siblingAtColumn(column))) return goTo(at.row(), column);
  }
  for (int row = at.row() - 1; row >= 0; --row) {
    const int first = m_model.firstOpen(row);
    if (first < 0 || first >= EntryModel::kFirstTask) continue;
    // To where the hand was: the last cell filled there.
    int last = first;
    for (int column = first; column < EntryModel::kFirstTask; ++column) {
      if (!m_model.typed(m_model.index(row, column)).isEmpty()) last = column;
    }
    return goTo(row, last);
  }
}

void EntryTable::nextLine() {
  for (int row = currentIndex().row() + 1; row < m_model.rowCount(); ++row) {
    const int first = m_model.firstOpen(row);
    if (first < 0) continue;
    const bool blank = m_model.line(row).kind == session::LineKind::Blank;
    const bool wasBlank = m_model.line(currentIndex().row()).kind == session::LineKind::Blank;
    goTo(row, first);
    if (blank && !wasBlank) {
      Q_EMIT said(
          tr("All printed lines are done. Hives that were not on the list go on these lines; "
             "Ctrl+Enter records the sheet."));
    }
    return;
  }
  Q_EMIT said(tr("That was the last line. Ctrl+Enter records the sheet."));
}

void EntryTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
  // Tab and Enter go on as everywhere in this table, and open no other editor.
  QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
  switch (hint) {
    case QAbstractItemDelegate::SubmitModelCache: {
      // A figure lies in the middle of a line, words at its end.
      const auto column = m_model.cellAt(currentIndex());
      const bool words = column == EntryColumn::NotDone || column == EntryColumn::Note;
      return words ? nextLine() : moveOn();
    }
    case QAbstractItemDelegate::EditNextItem:
      return moveOn();
    case QAbstractItemDelegate::EditPreviousItem:
      return moveBack();
    default:
      break;
  }
}

}  // namespace outyard::entry

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTableView>

namespace outyard::entry {

class EntryModel;

/// The table under the hand that types: one key fills a cell and the cursor goes on; Enter goes to
/// the next line, the double quote copies from above, Backspace takes back.
class EntryTable : public QTableView {
  Q_OBJECT
 public:
  explicit EntryTable(EntryModel& model, QWidget* parent = nullptr);
  /// The first cell of the first line on which nothing is typed.
  void toFirstOpen();
  void goTo(int row, int column);
  void fitColumns();

 Q_SIGNALS:
  void said(const QString& sentence);
  void cursorMoved(const QModelIndex& index);
  void commitAsked();

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  bool takeKey(QChar key);
  void write(const QString& text);
  /// Writes, and goes to where the next answer is typed.
  void goOnAfter(const QString& text);
  void spanAll();
  void copyFromAbove();
  void backspace();
  void moveOn();
  void moveBack();
  void nextLine();
  void widenNote();

  EntryModel& m_model;
};

}  // namespace outyard::entry

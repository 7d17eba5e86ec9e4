// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "ui/adapt/units.h"
#include "ui/entry/entry_draft.h"
#include "ui/widgets/session_model.h"

class QDateEdit;
class QHBoxLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTimer;
class QTreeWidget;

namespace outyard::entry {

class EntryModel;
class EntryTable;

/// Types a printed yard sheet back in: choose it by its number (typed, or scanned: the code on the
/// paper is the number alone), then line by line in the paper's order. What is half typed is kept
/// as a draft; the whole sheet is recorded as one undo step.
class SheetEntryDialog : public QDialog {
  Q_OBJECT
 public:
  /// `draftFolder` holds the half-entered sheets; empty keeps none.
  SheetEntryDialog(widgets::SeasonHub& hub, const QString& draftFolder, QWidget* parent = nullptr);
  ~SheetEntryDialog() override;

  /// Opens the sheet of that number, in any case, or the only one that ends so; false when there
  /// is none.
  bool openSheet(const QString& number);
  /// Records the sheet; false when something must be put right first.
  bool commit();
  void reject() override;

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void build();
  QWidget* makeChoice();
  QWidget* makeEntry();
  void makeHead(QHBoxLayout& row);
  void fillList();
  void begin(const base::SheetId& id);
  void startOver();
  void backToChoice();
  void say(const QString& sentence);
  void showCell(const QModelIndex& index);
  void showCount();
  /// Reads the fields of the head; a sentence on what is wrong in m_wrongField, else empty.
  QString readHead();
  bool keepDraft();
  [[nodiscard]] bool anythingTyped() const;
  [[nodiscard]] QString yardName(const base::YardId& yard) const;

  widgets::SeasonHub& m_hub;
  adapt::Units m_units;
  DraftFolder m_drafts;
  EntryModel* m_model = nullptr;
  QStackedWidget* m_pages = nullptr;
  QLineEdit *m_number = nullptr, *m_reader = nullptr, *m_from = nullptr, *m_air = nullptr;
  QLineEdit* m_wrongField = nullptr;
  QDateEdit* m_date = nullptr;
  QTreeWidget* m_list = nullptr;
  QLabel *m_empty = nullptr, *m_choiceSay = nullptr, *m_title = nullptr, *m_keys = nullptr,
         *m_say = nullptr, *m_count = nullptr;
  QPushButton *m_record = nullptr, *m_over = nullptr, *m_open = nullptr;
  EntryTable* m_table = nullptr;
  QTimer* m_delay = nullptr;
};

}  // namespace outyard::entry

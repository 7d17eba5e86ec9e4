// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QSortFilterProxyModel>
#include <QString>
#include <QWidget>

class QLabel;
class QLineEdit;

namespace outyard::widgets {
class ListFile;
class SeasonHub;
}  // namespace outyard::widgets

namespace outyard::yards {

class HiveTable;

/// Sorts hive numbers as people count (TR-2 before TR-10) and keeps the hives in whose texts every
/// word of the filter is found.
class HiveFilter : public QSortFilterProxyModel {
  Q_OBJECT
 public:
  /// The role under which the model gives all the words of a row.
  HiveFilter(int wordsRole, int sortRole, QObject* parent);
  void setWords(const QString& words);
  [[nodiscard]] const QString& words() const { return m_words; }

 protected:
  [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override;
  [[nodiscard]] bool lessThan(const QModelIndex& left, const QModelIndex& right) const override;

 private:
  int m_wordsRole;
  QString m_words;
};

/// The table of hives under its filter line; the filter is kept in the desk's settings.
class FilteredHives : public QWidget {
  Q_OBJECT
 public:
  FilteredHives(widgets::SeasonHub& hub, HiveTable* table, QWidget* parent = nullptr);
  /// How many of the yard's hives are shown.
  void refreshCount();
  /// "Save list as …".
  [[nodiscard]] const widgets::ListFile& file() const { return *m_file; }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  widgets::SeasonHub& m_hub;
  HiveTable* m_table;
  QLineEdit* m_filter;
  QLabel* m_count;
  widgets::ListFile* m_file;
};

}  // namespace outyard::yards

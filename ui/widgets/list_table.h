// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QByteArray>
#include <QString>
#include <QStringList>
#include <Qt>
#include <vector>

class QAbstractItemModel;
class QAbstractItemView;

namespace outyard::widgets {

/// A model that shows a rounded figure may give the full one for CSV under this role.
inline constexpr int kListValueRole = Qt::UserRole + 770;

/// A list as text, as it stands on the screen: what is written to a PDF or a CSV.
struct ListTable {
  struct Line {
    QStringList cells;   ///< as shown
    QStringList values;  ///< for CSV: the full figure where the model has one, else as shown
    bool strong = false;
  };
  QString title;  ///< "Hives of North meadow"
  QString note;   ///< below the title: what the list is of, or how it was narrowed down
  QString date;   ///< right of the title
  QStringList head;
  std::vector<bool> right;  ///< columns of figures, set at the right
  std::vector<Line> lines;
};

/// All rows and columns of a model, in its order; rows below a row are indented under it.
ListTable listOf(const QAbstractItemModel& model, const QString& title);
/// What a view shows: its sorted and filtered rows that are not hidden, and its columns in the
/// order in which they stand.
ListTable listOf(const QAbstractItemView& view, const QString& title);

/// RFC 4180: commas, CRLF, a field in quotes where it must be. UTF-8 with the mark by which
/// spreadsheets know it. The first line names the columns.
QByteArray listCsv(const ListTable& list);

}  // namespace outyard::widgets

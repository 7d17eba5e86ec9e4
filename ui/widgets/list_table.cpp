// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/list_table.h"

#include <QAbstractItemView>
#include <QCoreApplication>
#include <QFont>
#include <QHeaderView>
#include <QTableView>
#include <QTreeView>
#include <algorithm>
#include <functional>

namespace outyard::widgets {

namespace {

QString text(const char* source) {
  return QCoreApplication::translate("outyard::widgets::ListTable", source);
}

QString headOf(const QAbstractItemModel& model, int column) {
  QString head = model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().trimmed();
  // A column that shows a picture or a mark alone is named in its tip.
  if (head.isEmpty()) {
    head = model.headerData(column, Qt::Horizontal, Qt::AccessibleTextRole).toString().trimmed();
  }
  if (head.isEmpty()) {
    head = model.headerData(column, Qt::Horizontal, Qt::ToolTipRole).toString().trimmed();
  }
  return head;
}

QString shownText(const QModelIndex& index) {
  QString shown = index.data(Qt::DisplayRole).toString();
  const QVariant check = index.data(Qt::CheckStateRole);
  if (shown.isEmpty() && check.isValid()) {
    shown = check.toInt() == Qt::Checked ? text("yes") : text("no");
  }
  return shown;
}

bool isRight(const QModelIndex& index) {
  const QVariant alignment = index.data(Qt::TextAlignmentRole);
  return alignment.isValid() && (alignment.toInt() & Qt::AlignRight) != 0;
}

struct Gather {
  const QAbstractItemModel& model;
  std::vector<int> columns;
  std::function<bool(int row, const QModelIndex& parent)> hidden;
  ListTable& list;

  void rows(const QModelIndex& parent, int depth) {
    for (int row = 0; row < model.rowCount(parent); ++row) {
      if (hidden && hidden(row, parent)) continue;
      ListTable::Line line;
      for (std::size_t i = 0; i < columns.size(); ++i) {
        const QModelIndex index = model.index(row, columns[i], parent);
        QString shown = shownText(index);
        const QVariant value = index.data(kListValueRole);
        line.values << (value.isValid() ? value.toString() : shown);
        if (i == 0 && depth > 0) shown.prepend(QString(4 * depth, QChar::Nbsp));
        line.cells << shown;
        if (isRight(index)) list.right[i] = true;
        if (i == 0) {
          const QVariant font = index.data(Qt::FontRole);
          line.strong = font.isValid() && font.value<QFont>().bold();
        }
      }
      list.lines.push_back(std::move(line));
      const QModelIndex first = model.index(row, 0, parent);
      if (model.hasChildren(first)) rows(first, depth + 1);
    }
  }
};

ListTable gather(const QAbstractItemModel& model, std::vector<int> columns, const QString& title,
                 std::function<bool(int, const QModelIndex&)> hidden, const QModelIndex& root) {
  ListTable list;
  list.title = title;
  for (const int column : columns) list.head << headOf(model, column);
  list.right.assign(columns.size(), false);
  Gather{model, std::move(columns), std::move(hidden), list}.rows(root, 0);
  return list;
}

std::vector<int> allColumns(const QAbstractItemModel& model) {
  std::vector<int> columns;
  for (int i = 0; i < model.columnCount(); ++i) columns.push_back(i);
  return columns;
}

/// Columns of a view that can be seen, from left to right.
std::vector<int> columnsOf(const QAbstractItemModel& model, const QHeaderView& header) {
  std::vector<int> columns = allColumns(model);
  std::erase_if(columns, [&](int column) { return header.isSectionHidden(column); });
  std::sort(columns.begin(), columns.end(),
            [&](int a, int b) { return header.visualIndex(a) < header.visualIndex(b); });
  return columns;
}

QString csvField(const QString& field) {
  static const QString kNeedQuotes = QStringLiteral(",\"\r\n");
  const bool quote =
      std::any_of(field.begin(), field.end(), [](QChar c) { return kNeedQuotes.contains(c); }) ||
      field.startsWith(QChar::Space) || field.endsWith(QChar::Space);
  if (!quote) return field;
  QString doubled = field;
  doubled.replace(QLatin1Char('"'), QStringLiteral("\"\""));
  return QLatin1Char('"') + doubled + QLatin1Char('"');
}

QString csvLine(const QStringList& fields) {
  QStringList out;
  for (const QString& field : fields) out << csvField(field);
  return out.join(QLatin1Char(',')) + QStringLiteral("\r\n");
}

}  // namespace

ListTable listOf(const QAbstractItemModel& model, const QString& title) {
  return gather(model, allColumns(model), title, {}, {});
}

ListTable listOf(const QAbstractItemView& view, const QString& title) {
  const QAbstractItemModel* model = view.model();
  if (!model) return {title, {}, {}, {}, {}, {}};
  if (const auto* table = qobject_cast<const QTableView*>(&view)) {
    return gather(
        *model, columnsOf(*model, *table->horizontalHeader()), title,
        [table](int row, const QModelIndex&) { return table->isRowHidden(row); }, view.rootIndex());
  }
  if (const auto* tree = qobject_cast<const QTreeView*>(&view)) {
    return gather(
        *model, columnsOf(*model, *tree->header()), title,
        [tree](int row, const QModelIndex& parent) { return tree->isRowHidden(row, parent); },
        view.rootIndex());
  }
  return gather(*model, allColumns(*model), title, {}, view.rootIndex());
}

QByteArray listCsv(const ListTable& list) {
  QString out = csvLine(list.head);
  for (const auto& line : list.lines) out += csvLine(line.values);
  return QByteArrayLiteral("\xef\xbb\xbf") + out.toUtf8();
}

}  // namespace outyard::widgets

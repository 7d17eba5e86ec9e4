// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/hive_filter.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>

#include "core/sheet/walking_order.h"
#include "ui/widgets/list_file.h"
#include "ui/widgets/session_model.h"
#include "ui/yards/hive_table.h"

namespace outyard::yards {

HiveFilter::HiveFilter(int wordsRole, int sortRole, QObject* parent)
    : QSortFilterProxyModel(parent), m_wordsRole(wordsRole) {
  setSortRole(sortRole);
}

void HiveFilter::setWords(const QString& words) {
  m_words = words.simplified();
  invalidateFilter();
}

bool HiveFilter::filterAcceptsRow(int row, const QModelIndex& parent) const {
  if (m_words.isEmpty()) return true;
  const QString all =
      sourceModel()->data(sourceModel()->index(row, 0, parent), m_wordsRole).toString();
  const auto words = m_words.split(u' ');
  return std::all_of(words.begin(), words.end(),
                     [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

bool HiveFilter::lessThan(const QModelIndex& left, const QModelIndex& right) const {
  const QVariant a = left.data(sortRole()), b = right.data(sortRole());
  if (a.userType() != QMetaType::QString) return QSortFilterProxyModel::lessThan(left, right);
  return sheet::naturalLess(a.toString().toLower().toStdString(),
                            b.toString().toLower().toStdString());
}

FilteredHives::FilteredHives(widgets::SeasonHub& hub, HiveTable* table, QWidget* parent)
    : QWidget(parent), m_hub(hub), m_table(table), m_filter(new QLineEdit), m_count(new QLabel) {
  m_filter->setObjectName(QStringLiteral("hiveFilter"));
  m_filter->setPlaceholderText(tr("number, queen line, letter, judgement, task"));
  m_filter->setAccessibleName(tr("Show only hives with these words"));
  m_filter->setToolTip(
      tr("Hives in whose texts every word is found: part of the number, the "
         "queen's line, what a letter means, the judgement (\"weak\", "
         "\"queenless\"), a task. Esc shows all again."));
  m_filter->setClearButtonEnabled(true);
  m_filter->installEventFilter(this);
  m_count->setObjectName(QStringLiteral("hiveFilterCount"));
  auto* label = new QLabel(tr("Sho&w only"));
  label->setBuddy(m_filter);
  auto* line = new QHBoxLayout;
  line->setContentsMargins(0, 0, 0, 0);
  line->addWidget(label);
  line->addWidget(m_filter, 1);
  line->addWidget(m_count);
  auto* all = new QVBoxLayout(this);
  all->setContentsMargins(0, 0, 0, 0);
  all->addLayout(line);
  all->addWidget(m_table, 1);
  setFocusProxy(m_table);
  m_file = new widgets::ListFile(
      hub, m_table,
      [this] {
        const auto yard = m_hub.selection().yard;
        const auto* row = yard ? m_hub.season().yard(*yard) : nullptr;
        if (!row) return tr("Hives");
        return tr("Hives of %1")
            .arg(QString::fromStdString(row->name.empty() ? row->yard.str() : row->name));
      },
      [this] {
        return m_filter->text().trimmed().isEmpty()
                   ? QString()
                   : tr("Only those with: %1").arg(m_filter->text().trimmed());
      },
      widgets::ListFile::Menu::Own);
  connect(m_filter, &QLineEdit::textChanged, this, [this](const QString& text) {
    m_hub.settings().set(adapt::desk::kYardsFilter, text);
    m_table->setFilter(text);
    refreshCount();
  });
  m_filter->setText(hub.settings().get(adapt::desk::kYardsFilter));
  connect(&m_table->hives(), &QAbstractItemModel::modelReset, this, &FilteredHives::refreshCount);
  refreshCount();
}

void FilteredHives::refreshCount() {
  const int all = m_table->hives().rowCount();
  const int shown = m_table->model()->rowCount();
  m_count->setText(tr("%1 of %2 hives").arg(shown).arg(all));
}

bool FilteredHives::eventFilter(QObject* watched, QEvent* event) {
  if (watched == m_filter && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Escape && !m_filter->text().isEmpty()) {
      m_filter->clear();
      return true;
    }
    if (key == Qt::Key_Down || key == Qt::Key_Return) {
      m_table->setFocus();
      if (!m_table->currentIndex().isValid()) m_table->selectRow(0);
      return true;
    }
  }
  return QWidget::eventFilter(watched, event);
}

}  // namespace outyard::yards

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/find_everywhere.h"

#include <QCoreApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "ui/adapt/words.h"
#include "ui/widgets/list_file.h"

namespace outyard::main_window {

using apiary::FoundKind;

namespace {

constexpr int kLimit = 60;

QString kindOf(FoundKind kind) {
  switch (kind) {
    case FoundKind::Hive:
      return FindEverywhere::tr("Hive");
    case FoundKind::Yard:
      return FindEverywhere::tr("Yard");
    case FoundKind::Queen:
      return FindEverywhere::tr("Queen");
    case FoundKind::Colony:
      return FindEverywhere::tr("Colony");
    case FoundKind::Note:
      return FindEverywhere::tr("Note");
    case FoundKind::Event:
      return FindEverywhere::tr("Event");
  }
  return {};
}

QString plain(const std::string& text) {
  return QString::fromStdString(text);
}

QString nameOf(const apiary::Found& f) {
  if (f.kind == FoundKind::Note || f.kind == FoundKind::Event) {
    return f.hive ? plain(f.hive->str()) : f.yard ? plain(f.yard->str()) : QString();
  }
  return plain(f.id);
}

}  // namespace

FindEverywhere::FindEverywhere(widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent), m_hub(hub) {
  setObjectName(QStringLiteral("findEverywhere"));
  setWindowTitle(tr("Find"));
  resize(760, 420);
  auto* layout = new QVBoxLayout(this);
  m_line = new QLineEdit;
  m_line->setObjectName(QStringLiteral("findLine"));
  m_line->setPlaceholderText(tr("Hive, yard, queen, colony, or words from your notes"));
  m_line->setAccessibleName(tr("Words to find"));
  m_line->setClearButtonEnabled(true);
  m_line->installEventFilter(this);
  m_list = new QTreeWidget;
  m_list->setObjectName(QStringLiteral("findList"));
  m_list->setAccessibleName(tr("What was found"));
  m_list->setHeaderLabels({tr("Kind"), tr("Name"), tr("Yard"), tr("Day"), tr("Text")});
  m_list->setRootIsDecorated(false);
  m_list->setUniformRowHeights(true);
  m_list->setAlternatingRowColors(true);
  m_list->header()->setStretchLastSection(true);
  new widgets::ListFile(m_hub, m_list, [this] { return tr("Found: %1").arg(m_line->text()); });
  m_count = new QLabel;
  m_count->setObjectName(QStringLiteral("findCount"));
  m_count->setWordWrap(true);
  layout->addWidget(m_line);
  layout->addWidget(m_list, 1);
  layout->addWidget(m_count);
  connect(m_line, &QLineEdit::textChanged, this, [this] { refresh(); });
  connect(m_list, &QTreeWidget::itemActivated, this, [this] { accept(); });
  refresh();
  m_line->setFocus();
}

const apiary::Found* FindEverywhere::chosen() const {
  const int row = m_list->indexOfTopLevelItem(m_list->currentItem());
  return row < 0 ? nullptr : &m_found[static_cast<std::size_t>(row)];
}

bool FindEverywhere::eventFilter(QObject* watched, QEvent* event) {
  if (watched == m_line && event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Up || key == Qt::Key_Down || key == Qt::Key_PageUp ||
        key == Qt::Key_PageDown) {
      QCoreApplication::sendEvent(m_list, event);
      return true;
    }
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
      if (m_list->currentItem()) accept();
      return true;
    }
  }
  return QDialog::eventFilter(watched, event);
}

void FindEverywhere::refresh() {
  m_found = apiary::find(m_hub.season(), m_line->text().toStdString(), kLimit);
  m_list->clear();
  QList<QTreeWidgetItem*> items;
  for (const auto& f : m_found) {
    auto* item =
        new QTreeWidgetItem({kindOf(f.kind), nameOf(f), f.yard ? plain(f.yard->str()) : QString(),
                             f.date ? adapt::dateText(*f.date) : QString(), plain(f.snippet)});
    item->setToolTip(4, plain(f.snippet));
    items.push_back(item);
  }
  m_list->addTopLevelItems(items);
  for (int column = 0; column < 4; ++column) m_list->resizeColumnToContents(column);
  if (!items.isEmpty()) m_list->setCurrentItem(items.front());
  const auto count = static_cast<int>(m_found.size());
  if (m_line->text().trimmed().isEmpty()) {
    m_count->setText(tr("Type a few letters. Case and accents do not count; all words must fit."));
  } else if (count == 0) {
    m_count->setText(tr("Nothing found. Try fewer words, or only the beginning of a word."));
  } else if (count == kLimit) {
    m_count->setText(
        tr("The nearest %1. Type more to narrow it down. Enter goes there.").arg(count));
  } else {
    m_count->setText(tr("%1 found. Enter goes there.").arg(count));
  }
}

}  // namespace outyard::main_window

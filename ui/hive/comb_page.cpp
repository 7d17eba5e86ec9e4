// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/comb_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QVBoxLayout>
#include <map>

#include "core/strength/frame_table.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/comb_model.h"
#include "ui/hive/oval_entry.h"

namespace outyard::hive {

CombPage::CombPage(CombModel& model, bool inches, QWidget* parent)
    : QWidget(parent), m_model(model) {
  auto* all = new QHBoxLayout(this);
  m_table = new QTableView(this);
  m_table->setObjectName(QStringLiteral("combs"));
  m_table->setAccessibleName(tr("Comb sides, per cent of each face"));
  m_table->setModel(&m_model);
  m_table->setSelectionBehavior(QAbstractItemView::SelectItems);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                           QAbstractItemView::EditKeyPressed);
  m_table->setTabKeyNavigation(false);
  m_table->verticalHeader()->hide();
  m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
  m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  all->addWidget(m_table, 1);

  auto* right = new QVBoxLayout;
  auto* hint = new QLabel(tr("Per cent of each face on the left, the side in eighths here: a "
                             "letter fills one, Shift and the letter the "
                             "whole side. Slot 1 is left, standing behind the hive; side a faces "
                             "slot 1. A side left alone is not recorded."),
                          this);
  hint->setWordWrap(true);
  right->addWidget(hint);
  m_face = new CombFaceEdit(m_model, this);
  m_face->setFixedSize(260, 170);
  right->addWidget(m_face);
  auto* legend = new ContentLegend(true, this);
  legend->setFixedWidth(260);
  right->addWidget(legend);
  const auto next = [this](int row) {
    if (row + 1 < m_model.rowCount()) {
      m_table->setCurrentIndex(m_model.index(row + 1, m_table->currentIndex().column()));
    }
  };
  addButton(tr("Copy side a to b"), QKeySequence(Qt::CTRL | Qt::Key_D), QStringLiteral("copySide"),
            *right, [this](int row) { m_model.copyToOtherSide(row); });
  addButton(
      tr("Same for the rest of the box"), QKeySequence(Qt::CTRL | Qt::Key_B),
      QStringLiteral("fillBox"), *right, [this](int row) {
        const int filled = m_model.fillBox(row);
        Q_EMIT said(filled == 1
                        ? tr("One more side of the box is filled in like this one.")
                        : tr("%1 more sides of the box are filled in like this one.").arg(filled));
      });
  addButton(tr("Clear this side"), QKeySequence(Qt::CTRL | Qt::Key_Backspace),
            QStringLiteral("clearSide"), *right, [this](int row) { m_model.clearSide(row); });
  addButton(tr("Next side"), QKeySequence(Qt::CTRL | Qt::Key_N), QStringLiteral("nextSide"), *right,
            next);
  m_oval = new OvalEntry(m_model, inches, this);
  m_oval->setFixedWidth(260);
  right->addWidget(m_oval);
  addButton(tr("Fill in the oval"), QKeySequence(Qt::CTRL | Qt::Key_L), QStringLiteral("fillOval"),
            *right, [this](int) { Q_EMIT said(m_oval->fillIn()); });
  right->addStretch();
  all->addLayout(right);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& current) {
            m_face->setRow(current.isValid() ? current.row() : -1);
            m_oval->setRow(current.isValid() ? current.row() : -1);
          });
  connect(m_face, &CombFaceEdit::sideFilled, this, [next, this] { next(m_face->row()); });
}

void CombPage::addButton(const QString& text, const QKeySequence& key, const QString& name,
                         QVBoxLayout& to, const std::function<void(int)>& what) {
  auto* button = new QPushButton(
      QStringLiteral("%1  (%2)").arg(text, key.toString(QKeySequence::NativeText)), this);
  button->setObjectName(name);
  button->setAccessibleName(text);
  button->setAutoDefault(false);
  button->setShortcut(key);
  connect(button, &QPushButton::clicked, this, [this, what] {
    const int row = m_table->currentIndex().row();
    if (row >= 0) {
      what(row);
    } else {
      Q_EMIT said(tr("Choose a comb side in the table first."));
    }
  });
  to.addWidget(button);
}

void CombPage::choose(int row) {
  m_table->setCurrentIndex(m_model.index(row, CombModel::kFirstContent));
}

void CombPage::setAreas(const apiary::Season& season, const std::vector<apiary::BoxState>& boxes) {
  std::map<int, double> areas;
  for (const auto& box : boxes) {
    if (const auto f = strength::figuresFor(season, box.frameType)) {
      areas[box.position] = f->combCm2;
    }
  }
  m_oval->setAreas(std::move(areas));
}

void CombPage::takeFocus() {
  m_table->setFocus();
}

}  // namespace outyard::hive

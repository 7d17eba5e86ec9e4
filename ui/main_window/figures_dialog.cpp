// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/figures_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSortFilterProxyModel>
#include <QTableView>
#include <QVBoxLayout>

#include "ui/main_window/figures_model.h"
#include "ui/widgets/list_file.h"

namespace outyard::main_window {
namespace {

/// Rows of one group that hold every word in any column.
class Filter : public QSortFilterProxyModel {
 public:
  using QSortFilterProxyModel::QSortFilterProxyModel;
  void show(const QString& group, const QString& words) {
    m_group = group;
    m_words = words.split(u' ', Qt::SkipEmptyParts);
    invalidateFilter();
  }

 protected:
  bool filterAcceptsRow(int row, const QModelIndex&) const override {
    const auto* model = static_cast<const FiguresModel*>(sourceModel());
    const FigureRow& r = model->row(row);
    if (!m_group.isEmpty() && r.group != m_group) return false;
    const QString all = r.group + u' ' + r.name + u' ' + r.unit + u' ' + r.source;
    for (const QString& word : m_words) {
      if (!all.contains(word, Qt::CaseInsensitive)) return false;
    }
    return true;
  }

 private:
  QString m_group;
  QStringList m_words;
};

}  // namespace

FiguresDialog::FiguresDialog(widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_model(new FiguresModel(hub, this)),
      m_shown(new Filter(this)),
      m_group(new QComboBox),
      m_filter(new QLineEdit),
      m_table(new QTableView),
      m_say(new QLabel),
      m_back(new QPushButton(tr("&Take back to shipped"))) {
  setWindowTitle(tr("Figures of this outfit"));
  m_shown->setSourceModel(m_model);
  m_group->setObjectName(QStringLiteral("figureGroup"));
  m_group->setAccessibleName(tr("Figures of"));
  m_group->addItem(tr("all figures"), QString());
  for (const QString& group : m_model->groups()) m_group->addItem(group, group);
  m_filter->setObjectName(QStringLiteral("figureFilter"));
  m_filter->setPlaceholderText(tr("words of the figure, its unit or source"));
  m_filter->setClearButtonEnabled(true);
  m_filter->setAccessibleName(tr("Words to look for"));
  m_table->setObjectName(QStringLiteral("figureTable"));
  m_table->setAccessibleName(tr("Figures with value, range, unit and source"));
  m_table->setModel(m_shown);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setSelectionMode(QAbstractItemView::SingleSelection);
  m_table->setAlternatingRowColors(true);
  m_table->setTabKeyNavigation(false);
  new widgets::ListFile(
      m_hub, m_table, [] { return tr("Figures"); },
      [this] { return tr("%1 %2").arg(m_group->currentText(), m_filter->text()).trimmed(); });
  m_table->verticalHeader()->setVisible(false);
  m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  m_table->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                           QAbstractItemView::AnyKeyPressed);
  const int em = fontMetrics().averageCharWidth();
  const int widths[] = {21, 38, 10, 10, 16, 18};
  for (int i = 0; i < 6; ++i) m_table->setColumnWidth(i, widths[i] * em);
  m_table->horizontalHeader()->setStretchLastSection(true);
  m_table->setWordWrap(false);
  m_say->setObjectName(QStringLiteral("figureSay"));
  m_say->setWordWrap(true);
  m_say->setMinimumHeight(3 * fontMetrics().height());
  m_say->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  m_back->setObjectName(QStringLiteral("figureBack"));
  auto* add = new QPushButton(tr("&New frame type…"));
  add->setObjectName(QStringLiteral("figureAdd"));
  auto* box = new QDialogButtonBox(QDialogButtonBox::Close);
  box->addButton(m_back, QDialogButtonBox::ActionRole);
  box->addButton(add, QDialogButtonBox::ActionRole);
  for (auto* button : box->buttons()) static_cast<QPushButton*>(button)->setAutoDefault(false);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::accept);

  auto* head = new QHBoxLayout;
  head->addWidget(m_group);
  head->addWidget(m_filter, 1);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(head);
  layout->addWidget(m_table, 1);
  layout->addWidget(m_say);
  layout->addWidget(box);
  resize(1080, 680);

  const auto filter = [this] {
    static_cast<Filter*>(m_shown)->show(m_group->currentData().toString(), m_filter->text());
    showRow();
  };
  connect(m_group, &QComboBox::currentIndexChanged, this, filter);
  connect(m_filter, &QLineEdit::textChanged, this, filter);
  connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          &FiguresDialog::showRow);
  connect(m_model, &FiguresModel::refused, m_say, &QLabel::setText);
  connect(m_model, &QAbstractItemModel::modelReset, this, &FiguresDialog::showRow);
  connect(m_back, &QPushButton::clicked, this, &FiguresDialog::takeBack);
  connect(add, &QPushButton::clicked, this, &FiguresDialog::addType);
  m_filter->setFocus();
  showRow();
}

void FiguresDialog::showRow() {
  const QModelIndex index = m_shown->mapToSource(m_table->currentIndex());
  if (!index.isValid()) {
    m_back->setEnabled(false);
    m_say->setText(m_shown->rowCount() == 0
                       ? tr("No figure holds these words.")
                       : tr("Figures in bold are your own. Double click a value, or press F2, to "
                            "change it; it is kept in the season file and can be undone."));
    return;
  }
  const FigureRow& row = m_model->row(index.row());
  m_back->setEnabled(row.own.has_value() && row.hasShipped);
  m_say->setText(tr("%1 (%2). Source: %3")
                     .arg(row.name, row.unit.isEmpty() ? tr("no unit") : row.unit,
                          row.source.isEmpty() ? tr("not said") : row.source));
}

void FiguresDialog::takeBack() {
  const QModelIndex index = m_shown->mapToSource(m_table->currentIndex());
  if (index.isValid()) m_model->reset(index.row());
}

void FiguresDialog::addType() {
  QDialog ask(this);
  ask.setWindowTitle(tr("New frame type"));
  auto* name = new QLineEdit;
  name->setObjectName(QStringLiteral("frameTypeName"));
  name->setPlaceholderText(tr("for instance long hive"));
  auto* label = new QLabel(tr("&Name of the frame type"));
  label->setBuddy(name);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  connect(box, &QDialogButtonBox::accepted, &ask, &QDialog::accept);
  connect(box, &QDialogButtonBox::rejected, &ask, &QDialog::reject);
  auto* layout = new QVBoxLayout(&ask);
  layout->addWidget(label);
  layout->addWidget(name);
  layout->addWidget(box);
  if (!m_hub.dialogs().run(ask)) return;
  if (m_model->addFrameType(name->text())) m_filter->setText(name->text().trimmed());
}

}  // namespace outyard::main_window

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/flows_dialog.h"

#include <QDateEdit>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QListWidget>
#include <QLocale>
#include <QPainter>
#include <QPushButton>
#include <QTableWidget>
#include <algorithm>

#include "core/forecast/drivers.h"
#include "ui/adapt/system_clock.h"

namespace outyard::yards {
namespace {

/// Days of the year are shown as dates of a year without a leap day.
constexpr int kYear = 2025;
constexpr double kNotGiven = -0.5;
enum Column { kFrom, kTo, kNectar, kPollen, kColumns };

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}
QDate dateOf(int day) {
  return QDate(kYear, 1, 1).addDays(std::clamp(day, 1, 365) - 1);
}

bool holds(const apiary::Flow& f, int day) {
  return f.fromDay <= f.toDay ? day >= f.fromDay && day <= f.toDay
                              : day >= f.fromDay || day <= f.toDay;
}

}  // namespace

std::vector<apiary::Flow> usualFlows(const base::YardId& yard, double latitude) {
  std::vector<apiary::Flow> out;
  const apiary::Season none;
  for (int day = 1; day <= 365; ++day) {
    const auto now = forecast::flowOn(none, yard, latitude, day);
    if (!out.empty() && out.back().nectar == now.nectar && out.back().pollen == now.pollen) {
      out.back().toDay = day;
      continue;
    }
    apiary::Flow f;
    f.yard = yard;
    f.fromDay = f.toDay = day;
    f.nectar = now.nectar;
    f.pollen = now.pollen;
    out.push_back(f);
  }
  std::erase_if(out, [](const apiary::Flow& f) { return *f.nectar <= 0 && *f.pollen <= 0; });
  return out;
}

// --- the strip ----------------------------------------------------------------------------------

FlowStrip::FlowStrip(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("flowStrip"));
  setAccessibleName(tr("Flows over the year"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FlowStrip::setFlows(std::vector<apiary::Flow> flows) {
  m_flows = std::move(flows);
  setAccessibleDescription(
      tr("%n flow(s); the table holds the same", nullptr, static_cast<int>(m_flows.size())));
  update();
}

void FlowStrip::paintEvent(QPaintEvent*) {
  QPainter p(this);
  p.setRenderHint(QPainter::Antialiasing, false);
  const QPalette& colours = palette();
  const int foot = fontMetrics().height() + 4;
  const QRectF field(0.5, 0.5, width() - 1, height() - foot - 1);
  p.fillRect(field, colours.base());
  const double perDay = field.width() / 365.0;
  const double top = field.height() - 6;
  for (int day = 1; day <= 365; ++day) {
    double nectar = 0, pollen = 0;
    for (const auto& f : m_flows) {
      if (!holds(f, day)) continue;
      nectar = std::max(nectar, f.nectar.value_or(0));
      pollen = std::max(pollen, f.pollen.value_or(0));
    }
    const QRectF bar(field.left() + (day - 1) * perDay, field.bottom() - top * nectar / 3,
                     perDay + 0.6, top * nectar / 3);
    p.fillRect(bar, colours.highlight());
    const double edge = field.bottom() - top * pollen / 3;
    if (pollen > 0) {
      p.fillRect(QRectF(bar.left(), edge - 1.5, perDay + 0.6, 3), colours.text());
    }
  }
  p.setPen(colours.color(QPalette::Mid));
  p.drawRect(field);
  for (int month = 1; month <= 12; ++month) {
    const double x = field.left() + (QDate(kYear, month, 1).dayOfYear() - 1) * perDay;
    p.setPen(colours.color(QPalette::Mid));
    if (month > 1) p.drawLine(QPointF(x, field.top()), QPointF(x, field.bottom()));
    p.setPen(colours.color(QPalette::WindowText));
    p.drawText(QRectF(x + 2, field.bottom() + 2, field.width() / 12, foot), Qt::AlignLeft,
               QLocale().monthName(month, QLocale::ShortFormat));
  }
}

// --- the dialog ---------------------------------------------------------------------------------

FlowsDialog::FlowsDialog(widgets::SeasonHub& hub, base::YardId yard, QWidget* parent)
    : NewDialog(hub, tr("Keep the flows of %1").arg(qs(yard.str())), parent),
      m_yard(std::move(yard)),
      m_table(new QTableWidget(0, kColumns)),
      m_others(new QListWidget),
      m_strip(new FlowStrip),
      m_remove(new QPushButton(tr("Ta&ke out"))) {
  m_table->setObjectName(QStringLiteral("flowTable"));
  m_table->setAccessibleName(tr("Flows"));
  m_table->setHorizontalHeaderLabels(
      {tr("From"), tr("To"), tr("Nectar, 0 to 3"), tr("Pollen, 0 to 3")});
  m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  m_table->verticalHeader()->setVisible(false);
  m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_table->setMinimumHeight(230);
  m_table->setMinimumWidth(520);

  auto* buttons = new QHBoxLayout;
  auto* add = new QPushButton(tr("&Add flow"));
  auto* usual = new QPushButton(tr("&Usual for this latitude"));
  add->setObjectName(QStringLiteral("flowAdd"));
  usual->setObjectName(QStringLiteral("flowUsual"));
  m_remove->setObjectName(QStringLiteral("flowRemove"));
  usual->setToolTip(tr("Fills in what serves a yard without a calendar of its own"));
  for (auto* button : {add, m_remove, usual}) {
    button->setAutoDefault(false);
    buttons->addWidget(button);
  }
  buttons->addStretch(1);

  m_others->setObjectName(QStringLiteral("flowOthers"));
  m_others->setAccessibleName(tr("Keep them for these yards too"));
  m_others->setMaximumHeight(92);
  for (const auto& [key, other] : hub.season().table<apiary::Yard>()) {
    if (other.yard == m_yard) continue;
    auto* item = new QListWidgetItem(qs(other.name.empty() ? other.yard.str() : other.name));
    item->setData(Qt::UserRole, qs(other.yard.str()));
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsUserCheckable | Qt::ItemIsSelectable);
    item->setCheckState(Qt::Unchecked);
    m_others->addItem(item);
  }
  connect(add, &QPushButton::clicked, this, [this] {
    apiary::Flow f;
    f.yard = m_yard;
    const auto now = flows();
    f.fromDay = now.empty() ? 100 : now.back().toDay % 365 + 1;
    f.toDay = std::min(365, f.fromDay + 20);
    f.nectar = 1;
    f.pollen = 1;
    addRow(f);
    changedRows();
    m_table->cellWidget(m_table->rowCount() - 1, kFrom)->setFocus();
  });
  connect(m_remove, &QPushButton::clicked, this, [this] {
    if (m_table->currentRow() < 0) return;
    m_table->removeRow(m_table->currentRow());
    changedRows();
  });
  connect(usual, &QPushButton::clicked, this, [this] {
    const auto* row = m_hub.season().yard(m_yard);
    fill(usualFlows(m_yard, row && row->latitude ? *row->latitude : 45));
  });
  connect(m_others, &QListWidget::itemChanged, this, [this] { refresh(); });
  connect(m_table, &QTableWidget::currentCellChanged, this,
          [this] { m_remove->setEnabled(m_table->currentRow() >= 0); });

  std::vector<apiary::Flow> now;
  for (const auto& [key, f] : hub.season().table<apiary::Flow>()) {
    if (f.yard == m_yard) now.push_back(f);
  }
  auto* form = new QFormLayout;
  form->setRowWrapPolicy(QFormLayout::WrapAllRows);
  form->addRow(m_strip);
  form->addRow(m_table);
  form->addRow(buttons);
  if (m_others->count() > 0) form->addRow(tr("Keep them for these yards &too"), m_others);
  fill(now);
  finish(form, tr("Bars are nectar, the dark line is pollen: 0 none, 3 strong. Where two flows "
                  "overlap the stronger one counts. A flow may run over New Year. Without any, the "
                  "forecast takes what is usual for the latitude."));
}

void FlowsDialog::addRow(const apiary::Flow& flow) {
  const int row = m_table->rowCount();
  m_table->insertRow(row);
  for (const auto& [column, day] : {std::pair{kFrom, flow.fromDay}, std::pair{kTo, flow.toDay}}) {
    auto* date = new QDateEdit(dateOf(day));
    date->setDisplayFormat(QStringLiteral("d MMM"));
    date->setDateRange(QDate(kYear, 1, 1), QDate(kYear, 12, 31));
    date->setWrapping(true);
    date->setFrame(false);
    connect(date, &QDateEdit::dateChanged, this, [this] { changedRows(); });
    m_table->setCellWidget(row, column, date);
  }
  for (const auto& [column, value] :
       {std::pair{kNectar, flow.nectar}, std::pair{kPollen, flow.pollen}}) {
    auto* strength = new QDoubleSpinBox;
    strength->setRange(kNotGiven, 3);
    strength->setSingleStep(0.5);
    strength->setDecimals(1);
    strength->setSpecialValueText(tr("not given"));
    strength->setFrame(false);
    strength->setValue(value.value_or(kNotGiven));
    connect(strength, &QDoubleSpinBox::valueChanged, this, [this] { changedRows(); });
    m_table->setCellWidget(row, column, strength);
  }
}

void FlowsDialog::fill(const std::vector<apiary::Flow>& given) {
  auto sorted = given;
  std::sort(sorted.begin(), sorted.end(),
            [](const auto& a, const auto& b) { return a.fromDay < b.fromDay; });
  m_table->setRowCount(0);
  for (const auto& f : sorted) addRow(f);
  m_table->setCurrentCell(-1, -1);
  changedRows();
}

void FlowsDialog::nameRows() {
  const QStringList names{tr("Flow %1, from"), tr("Flow %1, to"), tr("Flow %1, nectar"),
                          tr("Flow %1, pollen")};
  for (int row = 0; row < m_table->rowCount(); ++row) {
    for (int column = 0; column < kColumns; ++column) {
      m_table->cellWidget(row, column)->setAccessibleName(names[column].arg(row + 1));
    }
  }
}

void FlowsDialog::changedRows() {
  nameRows();
  m_strip->setFlows(flows());
  m_remove->setEnabled(m_table->currentRow() >= 0);
  if (layout()) refresh();
}

std::vector<apiary::Flow> FlowsDialog::flows() const {
  std::vector<apiary::Flow> out;
  for (int row = 0; row < m_table->rowCount(); ++row) {
    // A row that is being put in has not all of its fields yet.
    const auto* from = qobject_cast<QDateEdit*>(m_table->cellWidget(row, kFrom));
    const auto* to = qobject_cast<QDateEdit*>(m_table->cellWidget(row, kTo));
    const auto* nectar = qobject_cast<QDoubleSpinBox*>(m_table->cellWidget(row, kNectar));
    const auto* pollen = qobject_cast<QDoubleSpinBox*>(m_table->cellWidget(row, kPollen));
    if (!from || !to || !nectar || !pollen) continue;
    apiary::Flow f;
    f.yard = m_yard;
    f.fromDay = from->date().dayOfYear();
    f.toDay = to->date().dayOfYear();
    if (nectar->value() >= 0) f.nectar = nectar->value();
    if (pollen->value() >= 0) f.pollen = pollen->value();
    out.push_back(f);
  }
  return out;
}

session::CommandPtr FlowsDialog::command() const {
  std::vector<base::YardId> yards{m_yard};
  for (int i = 0; i < m_others->count(); ++i) {
    const auto* item = m_others->item(i);
    if (item->checkState() != Qt::Checked) continue;
    yards.emplace_back(item->data(Qt::UserRole).toString().toStdString());
  }
  return session::setFlows(yards, flows());
}

}  // namespace outyard::yards

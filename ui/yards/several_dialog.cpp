// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/several_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <algorithm>
#include <limits>

#include "ui/adapt/system_clock.h"
#include "ui/yards/arrange.h"
#include "ui/yards/dialog_parts.h"
#include "ui/yards/move_caution.h"

namespace outyard::yards {
namespace {

constexpr double kMostM = 500;
/// Where the first of them comes to stand in a yard that was not drawn on.
constexpr double kCornerM = 1;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

SeveralDialog::SeveralDialog(widgets::SeasonHub& hub, std::vector<session::Spot> spots,
                             const base::YardId& to, QWidget* parent)
    : NewDialog(hub, tr("Move %1 hives").arg(spots.size()), parent),
      m_spots(std::move(spots)),
      m_date(dateField(hub.workingDate(), "severalDate")),
      m_yard(new QComboBox),
      m_does(noteLabel("severalDoes")),
      m_caution(noteLabel("severalCaution")) {
  m_west = m_south = std::numeric_limits<double>::max();
  QStringList names;
  for (const auto& spot : m_spots) {
    m_west = std::min(m_west, spot.xM);
    m_south = std::min(m_south, spot.yM);
    names << qs(spot.hive.str());
    if (const auto* hive = hub.hive(spot.hive)) m_drawnIn = hive->yard;
  }
  const bool here = m_drawnIn == to;
  m_x = lengthField("severalX", here ? m_west : kCornerM, -kMostM, kMostM);
  m_y = lengthField("severalY", here ? m_south : kCornerM, -kMostM, kMostM);
  m_yard->setObjectName(QStringLiteral("severalYard"));
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    m_yard->addItem(qs(yard.name.empty() ? yard.yard.str() : yard.name), qs(yard.yard.str()));
  }
  m_yard->setCurrentIndex(m_yard->findData(qs(to.str())));
  auto* which = noteLabel("severalHives");
  which->setText(names.join(QStringLiteral(", ")));
  auto* form = new QFormLayout;
  form->addRow(tr("Hives"), which);
  form->addRow(tr("&Date"), m_date);
  form->addRow(tr("&To yard"), m_yard);
  form->addRow(tr("Westmost, from the &west edge"), m_x);
  form->addRow(tr("Southmost, from the &south edge"), m_y);
  form->addRow(m_does);
  form->addRow(m_caution);
  connect(m_date, &QDateEdit::dateChanged, this, [this] { refresh(); });
  finish(form, tr("They keep their places to each other and the way they face."));
}

base::YardId SeveralDialog::yard() const {
  return base::YardId{m_yard->currentData().toString().toStdString()};
}

base::Date SeveralDialog::date() const {
  return adapt::fromQDate(m_date->date());
}

std::vector<session::Spot> SeveralDialog::spots() const {
  auto spots = m_spots;
  const double east = metresOr(*m_x, m_west) - m_west, north = metresOr(*m_y, m_south) - m_south;
  for (auto& spot : spots) {
    spot.xM += east;
    spot.yM += north;
    if (yard() != m_drawnIn) spot.stand.clear();
  }
  return offTheirStands(m_hub.season(), yard(), std::move(spots));
}

QString SeveralDialog::whyNotYet() const {
  const bool later = date() > m_hub.workingDate();
  m_does->setText(later ? tr("This day is still to come: a task is planned for each hive, nothing "
                             "is recorded.")
                        : tr("Recorded in the journal of each hive as moved on this day."));
  m_caution->setText(moveCaution(m_hub, spots(), yard(), date()));
  return {};
}

session::CommandPtr SeveralDialog::command() const {
  if (date() <= m_hub.workingDate()) return session::moveHives(spots(), yard(), date());
  std::vector<session::HiveStep> steps;
  for (const auto& spot : m_spots) {
    apiary::Task task;
    task.kind = std::string(apiary::code(apiary::EventKind::Moved));
    task.yard = m_drawnIn;
    task.hive = spot.hive;
    task.plannedOn = date();
    task.why = tr("to %1").arg(m_yard->currentText()).toStdString();
    steps.push_back({spot.hive, session::addTask(task)});
  }
  return session::together(base::message("session.title.plan_moves", m_spots.size(), yard().str()),
                           std::move(steps));
}

}  // namespace outyard::yards

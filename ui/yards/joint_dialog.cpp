// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/joint_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>

#include "core/planning/boost.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"
#include "ui/yards/dialog_parts.h"

namespace outyard::yards {
namespace {

using apiary::Beneath;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

apiary::Method methodOf(Joint joint) {
  switch (joint) {
    case Joint::SetOver:
      return apiary::Method::Stack;
    case Joint::Unite:
      return apiary::Method::Unite;
    case Joint::Swap:
      return apiary::Method::ChangePlaces;
  }
  return apiary::Method::Leave;
}

apiary::EventKind eventOf(Joint joint) {
  switch (joint) {
    case Joint::SetOver:
      return apiary::EventKind::Stacked;
    case Joint::Unite:
      return apiary::EventKind::United;
    case Joint::Swap:
      return apiary::EventKind::PlacesChanged;
  }
  return apiary::EventKind::Note;
}

enum QueenChoice { TargetQueenStays, CarriedQueenStays };

}  // namespace

session::CommandPtr jointCommand(Joint joint, const base::HiveId& carried,
                                 const base::HiveId& target, base::Date date) {
  switch (joint) {
    case Joint::SetOver: {
      session::Stacking stacking;
      stacking.weakHive = carried;
      stacking.donorHive = target;
      stacking.date = date;
      return session::stackOver(stacking);
    }
    case Joint::Unite: {
      session::Uniting uniting;
      uniting.staysHive = target;
      uniting.goesHive = carried;
      uniting.date = date;
      return session::unite(uniting);
    }
    case Joint::Swap:
      break;
  }
  return session::swapStands(carried, target, date);
}

QString whyNoJoint(const widgets::SeasonHub& hub, const base::HiveId& carried,
                   const base::HiveId& target) {
  QString first;
  for (const Joint joint : {Joint::SetOver, Joint::Unite, Joint::Swap}) {
    const QString why = hub.whyNot(*jointCommand(joint, carried, target, hub.workingDate()));
    if (why.isEmpty()) return {};
    if (first.isEmpty()) first = why;
  }
  return first;
}

JointDialog::JointDialog(widgets::SeasonHub& hub, base::HiveId carried,
                         std::optional<base::HiveId> target, Joint joint, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_carried(std::move(carried)),
      m_target(new QComboBox),
      m_between(new QComboBox),
      m_queen(new QComboBox),
      m_setOver(new QRadioButton),
      m_unite(new QRadioButton),
      m_swap(new QRadioButton),
      m_paper(new QCheckBox(tr("A sheet of paper between, a few slits"))),
      m_date(dateField(hub.workingDate(), "jointDate")),
      m_does(noteLabel("jointDoes")),
      m_guide(noteLabel("jointGuide")),
      m_why(noteLabel("jointWhy")),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  m_target->setObjectName(QStringLiteral("jointTarget"));
  m_between->setObjectName(QStringLiteral("jointBetween"));
  m_queen->setObjectName(QStringLiteral("jointQueen"));
  m_setOver->setObjectName(QStringLiteral("jointSetOver"));
  m_unite->setObjectName(QStringLiteral("jointUnite"));
  m_swap->setObjectName(QStringLiteral("jointSwap"));
  m_paper->setObjectName(QStringLiteral("jointPaper"));
  m_paper->setChecked(true);
  const auto here = apiary::hiveOn(hub.season(), m_carried, hub.workingDate());
  for (const auto& other : apiary::yardOn(hub.season(), here.yard, hub.workingDate())) {
    if (other.hive == m_carried || other.status != apiary::HiveStatus::Live) continue;
    m_target->addItem(qs(other.hive.str()), qs(other.hive.str()));
  }
  if (target && m_target->findData(qs(target->str())) < 0) {
    m_target->addItem(qs(target->str()), qs(target->str()));
  }
  if (target) m_target->setCurrentIndex(m_target->findData(qs(target->str())));
  for (const Beneath between : {Beneath::Excluder, Beneath::DoubleScreen, Beneath::Board}) {
    m_between->addItem(widgets::codeText("beneath", apiary::code(between)),
                       static_cast<int>(between));
  }
  (joint == Joint::SetOver ? m_setOver
   : joint == Joint::Unite ? m_unite
                           : m_swap)
      ->setChecked(true);

  auto* form = new QFormLayout;
  form->addRow(tr("&With"), m_target);
  form->addRow(tr("&Date"), m_date);
  auto* details = new QFormLayout;
  details->addRow(tr("&Between them"), m_between);
  details->addRow(QString(), m_paper);
  details->addRow(tr("&Queen that stays"), m_queen);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(m_setOver);
  layout->addWidget(m_unite);
  layout->addWidget(m_swap);
  layout->addLayout(details);
  layout->addWidget(m_guide);
  layout->addWidget(m_does);
  layout->addWidget(m_why);
  layout->addStretch(1);
  layout->addWidget(m_buttons);
  nameButtons(*m_buttons, tr("Record"));
  connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  for (auto* radio : {m_setOver, m_unite, m_swap}) {
    connect(radio, &QRadioButton::toggled, this, [this](bool on) {
      if (on) refresh();
    });
  }
  for (auto* combo : {m_target, m_between, m_queen}) {
    connect(combo, &QComboBox::currentIndexChanged, this, [this] { refresh(); });
  }
  connect(m_paper, &QCheckBox::toggled, this, [this] { refresh(); });
  connect(m_date, &QDateEdit::dateChanged, this, [this] { refresh(); });
  setMinimumWidth(500);
  refresh();
}

base::HiveId JointDialog::target() const {
  return base::HiveId{m_target->currentData().toString().toStdString()};
}

base::Date JointDialog::date() const {
  return adapt::fromQDate(m_date->date());
}

Joint JointDialog::joint() const {
  if (m_unite->isChecked()) return Joint::Unite;
  return m_swap->isChecked() ? Joint::Swap : Joint::SetOver;
}

std::optional<base::QueenId> JointDialog::queenOf(const base::HiveId& hive) const {
  const auto state = apiary::hiveOn(m_hub.season(), hive, date());
  return state.colonies.empty() ? std::nullopt : state.colonies.front().queen;
}

session::CommandPtr JointDialog::taskFor(Joint joint) const {
  apiary::Task task;
  task.kind = std::string(apiary::code(eventOf(joint)));
  task.method = methodOf(joint);
  task.yard = apiary::hiveOn(m_hub.season(), m_carried, m_hub.workingDate()).yard;
  // As in the event: for a union the hive that stays comes first.
  task.hive = joint == Joint::Unite ? target() : m_carried;
  task.otherHive = joint == Joint::Unite ? m_carried : target();
  task.plannedOn = date();
  return session::addTask(task);
}

session::CommandPtr JointDialog::command(Joint joint) const {
  if (date() > m_hub.workingDate()) return taskFor(joint);
  if (joint == Joint::SetOver) {
    session::Stacking stacking;
    stacking.weakHive = m_carried;
    stacking.donorHive = target();
    stacking.date = date();
    stacking.between = static_cast<Beneath>(m_between->currentData().toInt());
    stacking.paper = m_paper->isChecked();
    return session::stackOver(stacking);
  }
  if (joint == Joint::Unite) {
    session::Uniting uniting;
    uniting.staysHive = target();
    uniting.goesHive = m_carried;
    uniting.date = date();
    uniting.queenOfGoingStays = m_queen->currentData().toInt() == CarriedQueenStays;
    uniting.queenRemoved = queenOf(uniting.queenOfGoingStays ? target() : m_carried);
    return session::unite(uniting);
  }
  return session::swapStands(m_carried, target(), date());
}

session::CommandPtr JointDialog::command() const {
  return command(joint());
}

QString JointDialog::guide(Joint joint) const {
  const auto guide = planning::methodGuide(methodOf(joint));
  QStringList parts;
  const auto list = [&parts](const QString& head, const std::vector<base::Message>& messages) {
    if (messages.empty()) return;
    parts << head;
    for (const auto& message : messages) parts << QStringLiteral("• ") + adapt::words(message);
  };
  list(tr("Needs"), guide.needs);
  list(tr("Cautions"), guide.cautions);
  return parts.join(u'\n');
}

void JointDialog::refresh() {
  const QString a = qs(m_carried.str());
  const QString b = qs(target().str());
  setWindowTitle(b.isEmpty() ? tr("%1 with another hive").arg(a) : tr("%1 and %2").arg(a, b));
  m_setOver->setText(tr("&Set %1 over %2, both queens kept").arg(a, b));
  m_unite->setText(tr("&Unite %1 into %2, one queen kept").arg(a, b));
  m_swap->setText(tr("S&wap the stands of %1 and %2").arg(a, b));
  {
    const QSignalBlocker quiet(m_queen);
    const int kept = std::max(0, m_queen->currentIndex());
    m_queen->clear();
    m_queen->addItem(tr("the queen of %1").arg(b), TargetQueenStays);
    m_queen->addItem(tr("the queen of %1").arg(a), CarriedQueenStays);
    m_queen->setCurrentIndex(kept);
  }
  const Joint chosen = joint();
  m_between->setEnabled(chosen == Joint::SetOver);
  m_paper->setEnabled(chosen == Joint::SetOver);
  m_queen->setEnabled(chosen == Joint::Unite);
  QString why = b.isEmpty() ? tr("No other live hive stands in this yard.") : QString();
  if (why.isEmpty()) {
    // Each choice says for itself why it cannot be made; the chosen one says it below too.
    const std::pair<Joint, QRadioButton*> choices[] = {
        {Joint::SetOver, m_setOver}, {Joint::Unite, m_unite}, {Joint::Swap, m_swap}};
    for (const auto& [each, radio] : choices) {
      const QString reason = m_hub.whyNot(*command(each));
      radio->setToolTip(reason);
      radio->setEnabled(reason.isEmpty() || each == chosen);
      if (each == chosen) why = reason;
    }
  }
  const bool later = date() > m_hub.workingDate();
  showNote(*m_guide, guide(chosen));
  m_does->setText(later ? tr("This day is still to come: a task is planned, nothing is recorded.")
                        : tr("Recorded in the journal on this day; Undo takes it back."));
  showNote(*m_why, why);
  auto* ok = m_buttons->button(QDialogButtonBox::Ok);
  ok->setEnabled(why.isEmpty());
  ok->setText(later ? tr("Plan it") : tr("Record"));
  fitHeight(*this);
}

}  // namespace outyard::yards

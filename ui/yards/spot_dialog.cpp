// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/spot_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/adapt/system_clock.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/yards/dialog_parts.h"
#include "ui/yards/move_caution.h"

namespace outyard::yards {
namespace {

constexpr double kMostM = 500;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QDoubleSpinBox* metresField(const adapt::Units& units, const char* name) {
  auto* field = new QDoubleSpinBox;
  field->setObjectName(QLatin1String(name));
  field->setDecimals(2);
  field->setRange(-units.shown(base::Length{kMostM}), units.shown(base::Length{kMostM}));
  field->setSuffix(u' ' + units.lengthUnit());
  field->setSingleStep(0.1);
  return field;
}

}  // namespace

SpotDialog::SpotDialog(widgets::SeasonHub& hub, Kind kind, session::Spot spot, base::YardId to,
                       QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_kind(kind),
      m_start(std::move(spot)),
      m_yard(new QComboBox),
      m_stand(new QComboBox),
      m_date(dateField(hub.workingDate(), "moveDate")),
      m_does(noteLabel("moveDoes")),
      m_caution(noteLabel("moveCaution")),
      m_why(noteLabel("moveWhy")),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  const auto units = adapt::Units::from(hub.settings());
  const QString name = qs(m_start.hive.str());
  const bool move = kind == Kind::Move;
  setWindowTitle(move ? tr("Move %1").arg(name) : tr("Correct the place of %1").arg(name));
  m_yard->setObjectName(QStringLiteral("moveYard"));
  m_stand->setObjectName(QStringLiteral("moveStand"));
  m_x = metresField(units, "moveX");
  m_y = metresField(units, "moveY");
  m_entrance = new QDoubleSpinBox;
  m_entrance->setObjectName(QStringLiteral("moveEntrance"));
  m_entrance->setRange(-1, 359);
  m_entrance->setDecimals(0);
  m_entrance->setSingleStep(15);
  m_entrance->setWrapping(true);
  m_entrance->setSuffix(QStringLiteral("°"));
  m_entrance->setSpecialValueText(tr("as it is"));
  m_entrance->setToolTip(tr("Clockwise from north: 90 east, 180 south"));

  const auto now = apiary::hiveOn(hub.season(), m_start.hive, hub.workingDate());
  m_from = now.yard;
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    m_yard->addItem(qs(yard.name.empty() ? yard.yard.str() : yard.name), qs(yard.yard.str()));
  }
  m_yard->setCurrentIndex(m_yard->findData(qs(to.str())));
  m_x->setValue(units.shown(base::Length{m_start.xM}));
  m_y->setValue(units.shown(base::Length{m_start.yM}));
  m_entrance->setValue(m_start.entranceDeg.value_or(-1));
  fillStands();

  auto* form = new QFormLayout;
  if (move) {
    form->addRow(tr("&Date"), m_date);
    form->addRow(tr("&To yard"), m_yard);
  } else {
    m_date->hide();
    m_yard->hide();
    m_date->setParent(this);
    m_yard->setParent(this);
  }
  form->addRow(tr("&From the west edge"), m_x);
  form->addRow(tr("From the &south edge"), m_y);
  form->addRow(tr("&Entrance faces"), m_entrance);
  form->addRow(tr("On s&tand"), m_stand);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(m_does);
  layout->addWidget(m_caution);
  layout->addWidget(m_why);
  layout->addStretch(1);
  layout->addWidget(m_buttons);
  nameButtons(*m_buttons, move ? tr("Move") : tr("Correct the drawing"));
  connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_yard, &QComboBox::currentIndexChanged, this, [this] {
    fillStands();
    refresh();
  });
  connect(m_date, &QDateEdit::dateChanged, this, [this] { refresh(); });
  connect(m_stand, &QComboBox::currentIndexChanged, this, [this] { refresh(); });
  for (auto* field : {m_x, m_y, m_entrance}) {
    connect(field, &QDoubleSpinBox::valueChanged, this, [this] { refresh(); });
  }
  setMinimumWidth(430);
  refresh();
}

void SpotDialog::fillStands() {
  const QSignalBlocker quiet(m_stand);
  m_stand->clear();
  m_stand->addItem(tr("none"), QString());
  for (const auto& [key, stand] : m_hub.season().table<apiary::Stand>()) {
    if (stand.yard == yard()) m_stand->addItem(qs(stand.stand), qs(stand.stand));
  }
  m_stand->setCurrentIndex(std::max(0, m_stand->findData(qs(m_start.stand))));
}

base::YardId SpotDialog::yard() const {
  return base::YardId{m_yard->currentData().toString().toStdString()};
}

base::Date SpotDialog::date() const {
  return adapt::fromQDate(m_date->date());
}

session::Spot SpotDialog::spot() const {
  const auto units = adapt::Units::from(m_hub.settings());
  session::Spot spot;
  spot.hive = m_start.hive;
  spot.xM = units.lengthFrom(m_x->value()).value;
  spot.yM = units.lengthFrom(m_y->value()).value;
  if (m_entrance->value() >= 0) spot.entranceDeg = m_entrance->value();
  spot.stand = m_stand->currentData().toString().toStdString();
  return spot;
}

session::CommandPtr SpotDialog::command() const {
  if (m_kind == Kind::Correct) return session::arrange({spot()});
  if (date() > m_hub.workingDate()) {
    apiary::Task task;
    task.kind = std::string(apiary::code(apiary::EventKind::Moved));
    task.yard = m_from;
    task.hive = m_start.hive;
    task.plannedOn = date();
    const QString target = m_yard->currentText();
    task.why = tr("to %1").arg(target).toStdString();
    return session::addTask(task);
  }
  return session::moveHives({spot()}, yard(), date());
}

QString SpotDialog::caution() const {
  return moveCaution(m_hub, {spot()}, yard(), date());
}

void SpotDialog::refresh() {
  const bool later = m_kind == Kind::Move && date() > m_hub.workingDate();
  if (m_kind == Kind::Correct) {
    m_does->setText(tr("No hive was carried: only the drawing changes."));
  } else {
    m_does->setText(later ? tr("This day is still to come: a task is planned, nothing is recorded.")
                          : tr("Recorded in the journal as moved on this day."));
  }
  showNote(*m_caution, m_kind == Kind::Move ? caution() : QString());
  const QString why = m_hub.whyNot(*command());
  showNote(*m_why, why);
  m_buttons->button(QDialogButtonBox::Ok)->setEnabled(why.isEmpty());
  m_buttons->button(QDialogButtonBox::Ok)
      ->setText(later                  ? tr("Plan the move")
                : m_kind == Kind::Move ? tr("Move")
                                       : tr("Correct the drawing"));
  fitHeight(*this);
}

}  // namespace outyard::yards

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/new_dialogs.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QRegularExpression>
#include <QSpinBox>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/apiary/validate.h"
#include "core/strength/frame_table.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/units.h"
#include "ui/widgets/hive_facts.h"
#include "ui/yards/dialog_parts.h"

namespace outyard::yards {
namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::string trimmed(const QLineEdit& field) {
  return field.text().trimmed().toStdString();
}

/// A number typed with the locale's or a plain decimal sign; no group separators, since "1.500"
/// could be either.
std::optional<double> typedNumber(const QLineEdit& field) {
  const QString text = field.text().trimmed();
  if (text.isEmpty()) return std::nullopt;
  QLocale locale;
  locale.setNumberOptions(QLocale::RejectGroupSeparator);
  bool ok = false;
  double number = locale.toDouble(text, &ok);
  if (!ok) number = QLocale::c().toDouble(text, &ok);
  return ok ? std::optional<double>(number) : std::nullopt;
}

bool unreadable(const QLineEdit& field) {
  return !field.text().trimmed().isEmpty() && !typedNumber(field);
}

}  // namespace

NewDialog::NewDialog(widgets::SeasonHub& hub, const QString& title, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_why(noteLabel("newWhy")),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  setWindowTitle(title);
}

void NewDialog::finish(QFormLayout* form, const QString& note) {
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  if (!note.isEmpty()) {
    auto* label = noteLabel("newNote");
    label->setText(note);
    layout->addWidget(label);
  }
  layout->addWidget(m_why);
  layout->addStretch(1);
  layout->addWidget(m_buttons);
  nameButtons(*m_buttons, windowTitle());
  connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  for (auto* field : findChildren<QLineEdit*>()) {
    connect(field, &QLineEdit::textChanged, this, [this] { refresh(); });
  }
  for (auto* field : findChildren<QDoubleSpinBox*>()) {
    connect(field, &QDoubleSpinBox::valueChanged, this, [this] { refresh(); });
  }
  for (auto* field : findChildren<QComboBox*>()) {
    connect(field, &QComboBox::currentIndexChanged, this, [this] { refresh(); });
  }
  setMinimumWidth(420);
  refresh();
}

void NewDialog::refresh() {
  QString why;
  for (const auto* field : findChildren<QLineEdit*>()) {
    if (field->property("number").toBool() && unreadable(*field)) {
      why = tr("%1: write a number such as 44.25.").arg(field->accessibleName());
    }
  }
  if (why.isEmpty()) why = whyNotYet();
  if (why.isEmpty()) why = m_hub.whyNot(*command());
  showNote(*m_why, why);
  m_buttons->button(QDialogButtonBox::Ok)->setEnabled(why.isEmpty());
  fitHeight(*this);
}

QLineEdit* NewDialog::textField(const char* objectName) const {
  auto* field = new QLineEdit;
  field->setObjectName(QLatin1String(objectName));
  return field;
}

QDoubleSpinBox* NewDialog::lengthField(const char* objectName, double metres, double least,
                                       double most) const {
  const auto units = adapt::Units::from(m_hub.settings());
  auto* field = new QDoubleSpinBox;
  field->setObjectName(QLatin1String(objectName));
  field->setDecimals(1);
  field->setRange(units.shown(base::Length{least}), units.shown(base::Length{most}));
  field->setSuffix(u' ' + units.lengthUnit());
  field->setValue(units.shown(base::Length{metres}));
  return field;
}

double NewDialog::metres(const QDoubleSpinBox& field) const {
  return adapt::Units::from(m_hub.settings()).lengthFrom(field.value()).value;
}

double NewDialog::metresOr(const QDoubleSpinBox& field, double wasM) const {
  const double shown = adapt::Units::from(m_hub.settings()).shown(base::Length{wasM});
  const double halfStep = 0.5 * std::pow(10, -field.decimals());
  return std::abs(field.value() - shown) <= halfStep * 1.0001 ? wasM : metres(field);
}

// --- yard ---------------------------------------------------------------------------------------

YardDialog::YardDialog(widgets::SeasonHub& hub, const apiary::Yard* yard, QWidget* parent)
    : NewDialog(hub, yard ? tr("Change yard") : tr("Add yard"), parent),
      m_yard(yard ? *yard : apiary::Yard{}),
      m_new(!yard),
      m_id(textField("yardId")),
      m_name(textField("yardName")),
      m_access(textField("yardAccess")),
      m_latitude(textField("yardLatitude")),
      m_longitude(textField("yardLongitude")),
      m_width(lengthField("yardWidth", m_yard.widthM.value_or(40), 1, 2000)),
      m_length(lengthField("yardLength", m_yard.lengthM.value_or(30), 1, 2000)),
      m_north(new QDoubleSpinBox) {
  m_north->setObjectName(QStringLiteral("yardNorth"));
  m_north->setRange(0, 359);
  m_north->setDecimals(0);
  m_north->setSuffix(QStringLiteral("°"));
  m_north->setValue(m_yard.northDeg.value_or(0));
  m_north->setToolTip(tr("Where north points on the drawing: 0 up, 90 to the right"));
  m_id->setText(qs(m_yard.yard.str()));
  m_id->setEnabled(m_new);
  m_id->setPlaceholderText(tr("short, for instance TR"));
  m_name->setText(qs(m_yard.name));
  m_access->setText(qs(m_yard.access));
  m_access->setPlaceholderText(tr("gate, key, whom to call"));
  for (auto* field : {m_latitude, m_longitude}) field->setProperty("number", true);
  m_latitude->setAccessibleName(tr("Latitude"));
  m_longitude->setAccessibleName(tr("Longitude"));
  const auto degrees = [](const std::optional<double>& value) {
    return value ? QLocale().toString(*value, 'f', 5) : QString();
  };
  m_latitude->setText(degrees(m_yard.latitude));
  m_longitude->setText(degrees(m_yard.longitude));
  auto* form = new QFormLayout;
  form->addRow(tr("Short &name"), m_id);
  form->addRow(tr("&Full name"), m_name);
  form->addRow(tr("&Access"), m_access);
  form->addRow(tr("&Latitude, degrees north"), m_latitude);
  form->addRow(tr("L&ongitude, degrees east"), m_longitude);
  form->addRow(tr("Ground, &width"), m_width);
  form->addRow(tr("Ground, &depth"), m_length);
  form->addRow(tr("&North points to"), m_north);
  finish(form, tr("Latitude and longitude serve weather and distances; they may stay empty."));
}

session::CommandPtr YardDialog::command() const {
  apiary::Yard yard = m_yard;
  yard.yard = base::YardId{trimmed(*m_id)};
  yard.name = trimmed(*m_name);
  yard.access = trimmed(*m_access);
  yard.latitude = typedNumber(*m_latitude);
  yard.longitude = typedNumber(*m_longitude);
  yard.widthM = metres(*m_width);
  yard.lengthM = metres(*m_length);
  yard.northDeg = m_north->value();
  return m_new ? session::addYard(yard) : session::editYard(yard);
}

// --- hive ---------------------------------------------------------------------------------------

QString HiveDialog::nextNumber(const apiary::Season& season, const base::YardId& yard) {
  static const QRegularExpression kEnd(QStringLiteral("^(.*?)(\\d+)$"));
  QString stem = qs(yard.str()) + u'-';
  int digits = 2, most = 0;
  for (const auto& [key, hive] : season.table<apiary::Hive>()) {
    if (hive.yard != yard) continue;
    const auto match = kEnd.match(qs(hive.hive.str()));
    if (!match.hasMatch() || match.captured(2).toInt() < most) continue;
    stem = match.captured(1);
    digits = static_cast<int>(match.captured(2).size());
    most = match.captured(2).toInt();
  }
  QString number;
  do {
    number = stem + QString::number(++most).rightJustified(digits, u'0');
  } while (season.hive(base::HiveId{number.toStdString()}));
  return number;
}

HiveDialog::HiveDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM,
                       const QString& stand, QWidget* parent)
    : NewDialog(hub, tr("Add hive"), parent),
      m_yard(std::move(yard)),
      m_number(textField("hiveNumber")),
      m_from(dateField(hub.workingDate(), "hiveFrom")),
      m_type(new QComboBox),
      m_stand(new QComboBox),
      m_chambers(new QSpinBox),
      m_frames(new QSpinBox),
      m_entrance(new QSpinBox),
      m_x(lengthField("hiveX", placeM.x(), -500, 500)),
      m_y(lengthField("hiveY", placeM.y(), -500, 500)) {
  m_number->setText(nextNumber(hub.season(), m_yard));
  m_type->setObjectName(QStringLiteral("hiveType"));
  for (const auto type : apiary::shippedFrameTypes()) {
    m_type->addItem(widgets::codeText("frame_type", type), qs(std::string(type)));
  }
  for (const auto& [key, own] : hub.season().table<apiary::FrameType>()) {
    if (m_type->findData(qs(own.frameType)) < 0) {
      m_type->addItem(qs(own.name.empty() ? own.frameType : own.name), qs(own.frameType));
    }
  }
  // The outfit's usual box: what its other hives stand on.
  std::map<std::string, int> used;
  for (const auto& [key, box] : hub.season().table<apiary::Box>()) {
    if (box.position == 1) ++used[box.frameType];
  }
  const auto usual = std::max_element(
      used.begin(), used.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  if (usual != used.end()) {
    m_type->setCurrentIndex(std::max(0, m_type->findData(qs(usual->first))));
  }
  m_chambers->setObjectName(QStringLiteral("hiveChambers"));
  m_chambers->setRange(1, 4);
  m_frames->setObjectName(QStringLiteral("hiveFrames"));
  m_frames->setRange(1, 24);
  m_entrance->setObjectName(QStringLiteral("hiveEntrance"));
  m_entrance->setRange(0, 359);
  m_entrance->setSuffix(QStringLiteral("°"));
  m_entrance->setValue(180);
  m_entrance->setToolTip(tr("Clockwise from north: 90 east, 180 south"));
  m_stand->setObjectName(QStringLiteral("hiveStand"));
  m_stand->addItem(tr("none"), QString());
  for (const auto& [key, each] : hub.season().table<apiary::Stand>()) {
    if (each.yard == m_yard) m_stand->addItem(qs(each.stand), qs(each.stand));
  }
  m_stand->setCurrentIndex(std::max(0, m_stand->findData(stand)));
  const auto setFrames = [this] {
    const auto figures =
        strength::figuresFor(m_hub.season(), m_type->currentData().toString().toStdString());
    if (figures) m_frames->setValue(figures->framesPerBox);
  };
  setFrames();
  connect(m_type, &QComboBox::currentIndexChanged, this, setFrames);
  connect(m_from, &QDateEdit::dateChanged, this, [this] { refresh(); });
  auto* form = new QFormLayout;
  form->addRow(tr("&Number"), m_number);
  form->addRow(tr("&Stands there since"), m_from);
  form->addRow(tr("&Boxes"), m_type);
  form->addRow(tr("&Chambers"), m_chambers);
  form->addRow(tr("&Frames in each"), m_frames);
  form->addRow(tr("From the &west edge"), m_x);
  form->addRow(tr("From the s&outh edge"), m_y);
  form->addRow(tr("&Entrance faces"), m_entrance);
  form->addRow(tr("On s&tand"), m_stand);
  finish(form,
         tr("The hive is empty until its first inspection, which names its colony after it."));
}

session::CommandPtr HiveDialog::command() const {
  apiary::Hive hive;
  hive.hive = base::HiveId{trimmed(*m_number)};
  hive.yard = m_yard;
  hive.xM = metres(*m_x);
  hive.yM = metres(*m_y);
  hive.entranceDeg = m_entrance->value();
  hive.stand = m_stand->currentData().toString().toStdString();
  std::vector<apiary::BoxState> boxes;
  for (int position = 1; position <= m_chambers->value(); ++position) {
    apiary::BoxState box;
    box.position = position;
    box.frameType = m_type->currentData().toString().toStdString();
    box.frames = m_frames->value();
    boxes.push_back(box);
  }
  return session::addHive(hive, adapt::fromQDate(m_from->date()), boxes);
}

// --- stand --------------------------------------------------------------------------------------

namespace {

apiary::Stand newStand(const apiary::Season& season, base::YardId yard, QPointF placeM) {
  apiary::Stand stand;
  stand.yard = std::move(yard);
  stand.kind = apiary::StandKind::Stand;
  stand.xM = placeM.x();
  stand.yM = placeM.y();
  const auto taken = [&](const QString& name) {
    for (const auto& [key, each] : season.table<apiary::Stand>()) {
      if (each.yard == stand.yard && qs(each.stand) == name) return true;
    }
    return false;
  };
  int number = 1;
  //: A stand's short name on the map, S1, S2, ...
  while (taken(StandDialog::tr("S%1").arg(number))) ++number;
  stand.stand = StandDialog::tr("S%1").arg(number).toStdString();
  return stand;
}

}  // namespace

StandDialog::StandDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM,
                         QWidget* parent)
    : StandDialog(hub, newStand(hub.season(), std::move(yard), placeM), true, parent) {}

StandDialog::StandDialog(widgets::SeasonHub& hub, const apiary::Stand& stand, QWidget* parent)
    : StandDialog(hub, stand, false, parent) {}

StandDialog::StandDialog(widgets::SeasonHub& hub, apiary::Stand stand, bool isNew, QWidget* parent)
    : NewDialog(hub, isNew ? tr("Add stand") : tr("Change stand %1").arg(qs(stand.stand)), parent),
      m_stand(std::move(stand)),
      m_new(isNew),
      m_name(textField("standName")),
      m_kind(new QComboBox),
      m_angle(new QSpinBox),
      m_x(lengthField("standX", m_stand.xM, -500, 500)),
      m_y(lengthField("standY", m_stand.yM, -500, 500)) {
  m_name->setText(qs(m_stand.stand));
  m_name->setEnabled(m_new);
  m_kind->setObjectName(QStringLiteral("standKind"));
  for (const auto kind : {apiary::StandKind::Stand, apiary::StandKind::PalletOfTwo,
                          apiary::StandKind::PalletOfFour}) {
    m_kind->addItem(widgets::codeText("stand", apiary::code(kind)), static_cast<int>(kind));
  }
  m_kind->setCurrentIndex(
      m_kind->findData(static_cast<int>(m_stand.kind.value_or(apiary::StandKind::Stand))));
  m_angle->setObjectName(QStringLiteral("standAngle"));
  m_angle->setRange(0, 359);
  m_angle->setSuffix(QStringLiteral("°"));
  m_angle->setValue(static_cast<int>(m_stand.angleDeg.value_or(0)));
  m_angle->setToolTip(tr("Turned clockwise on the drawing"));
  auto* form = new QFormLayout;
  form->addRow(tr("&Name"), m_name);
  form->addRow(tr("&Kind"), m_kind);
  form->addRow(tr("From the &west edge"), m_x);
  form->addRow(tr("From the &south edge"), m_y);
  form->addRow(tr("&Turned by"), m_angle);
  finish(form, m_new ? QString()
                     : tr("The hives on it go and turn with it. Only the drawing changes: no move "
                          "is recorded."));
}

session::CommandPtr StandDialog::command() const {
  apiary::Stand stand = m_stand;
  stand.stand = trimmed(*m_name);
  stand.xM = metresOr(*m_x, m_stand.xM);
  stand.yM = metresOr(*m_y, m_stand.yM);
  if (m_angle->value() != static_cast<int>(m_stand.angleDeg.value_or(0))) {
    stand.angleDeg = m_angle->value();
  }
  stand.kind = static_cast<apiary::StandKind>(m_kind->currentData().toInt());
  return m_new ? session::addStand(stand) : session::arrangeStand(stand);
}

}  // namespace outyard::yards

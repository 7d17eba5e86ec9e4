// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/tool_dialogs.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QLineEdit>
#include <algorithm>
#include <cmath>

#include "ui/adapt/units.h"
#include "ui/yards/map_ruler.h"

namespace outyard::yards {
namespace {

constexpr double kMostM = 1000;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

}  // namespace

// --- a yard's layout ----------------------------------------------------------------------------

LayoutDialog::LayoutDialog(widgets::SeasonHub& hub, base::YardId from, QWidget* parent)
    : NewDialog(hub, tr("Copy layout of %1").arg(qs(from.str())), parent),
      m_from(std::move(from)),
      m_to(new QComboBox),
      m_id(textField("layoutId")),
      m_name(textField("layoutName")),
      m_stands(new QCheckBox(tr("Stan&ds and pallets"))),
      m_features(new QCheckBox(tr("&Gate, truck place, water, fences and picture"))),
      m_form(new QFormLayout) {
  m_to->setObjectName(QStringLiteral("layoutTo"));
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    if (yard.yard == m_from) continue;
    m_to->addItem(qs(yard.name.empty() ? yard.yard.str() : yard.name), qs(yard.yard.str()));
  }
  m_to->addItem(tr("a new yard"), QString());
  m_id->setPlaceholderText(tr("short, for instance TR"));
  m_stands->setObjectName(QStringLiteral("layoutStands"));
  m_features->setObjectName(QStringLiteral("layoutFeatures"));
  const auto& stands = hub.season().table<apiary::Stand>();
  const auto& features = hub.season().table<apiary::Feature>();
  const auto ofYard = [this](const auto& row) { return row.second.yard == m_from; };
  m_stands->setChecked(std::any_of(stands.begin(), stands.end(), ofYard));
  m_features->setChecked(std::any_of(features.begin(), features.end(), ofYard));
  m_form->addRow(tr("&To"), m_to);
  m_form->addRow(tr("Short &name"), m_id);
  m_form->addRow(tr("&Full name"), m_name);
  m_form->addRow(tr("Copy"), m_stands);
  m_form->addRow(QString(), m_features);
  for (auto* box : {m_stands, m_features}) {
    connect(box, &QCheckBox::toggled, this, [this] { refresh(); });
  }
  finish(m_form, tr("They come to the same distances from the west and south edge. Hives stay; "
                    "what stands there already stays too."));
}

bool LayoutDialog::isNew() const {
  return m_to->currentData().toString().isEmpty();
}

base::YardId LayoutDialog::to() const {
  const QString id = isNew() ? m_id->text().trimmed() : m_to->currentData().toString();
  return base::YardId{id.toStdString()};
}

QString LayoutDialog::whyNotYet() const {
  m_form->setRowVisible(m_id, isNew());
  m_form->setRowVisible(m_name, isNew());
  if (isNew() && m_id->text().trimmed().isEmpty()) return tr("Give the new yard a short name.");
  return {};
}

session::CommandPtr LayoutDialog::command() const {
  session::LayoutCopy copy;
  copy.from = m_from;
  copy.to = to();
  copy.stands = m_stands->isChecked();
  copy.features = m_features->isChecked();
  if (isNew()) {
    copy.newYard.emplace();
    copy.newYard->yard = copy.to;
    copy.newYard->name = m_name->text().trimmed().toStdString();
  }
  return session::copyLayout(copy);
}

// --- a picture's scale --------------------------------------------------------------------------

ScaleDialog::ScaleDialog(widgets::SeasonHub& hub, apiary::Feature picture, QPointF fromM,
                         QPointF toM, QWidget* parent)
    : NewDialog(hub, tr("Scale the picture"), parent),
      m_picture(std::move(picture)),
      m_at(fromM),
      m_drawnM(std::hypot(toM.x() - fromM.x(), toM.y() - fromM.y())),
      m_true(lengthField("scaleTrue", m_drawnM, kLeastScaleM, kMostM)) {
  m_true->setDecimals(2);
  m_true->setValue(adapt::Units::from(hub.settings()).shown(base::Length{m_drawnM}));
  m_true->setToolTip(tr("As paced out or measured on the ground"));
  auto* form = new QFormLayout;
  form->addRow(tr("The two points are truly &apart"), m_true);
  finish(form, tr("On the drawing they are %1 apart now. The picture grows or shrinks about the "
                  "first point; hives and stands stay.")
                   .arg(distanceText(m_drawnM, adapt::Units::from(hub.settings()))));
}

session::CommandPtr ScaleDialog::command() const {
  apiary::Feature picture = m_picture;
  const double factor = metresOr(*m_true, m_drawnM) / m_drawnM;
  const auto scaled = [factor](double value, double about) {
    return about + (value - about) * factor;
  };
  picture.xM = scaled(picture.xM, m_at.x());
  picture.yM = scaled(picture.yM, m_at.y());
  if (picture.x2M) picture.x2M = scaled(*picture.x2M, m_at.x());
  if (picture.y2M) picture.y2M = scaled(*picture.y2M, m_at.y());
  return session::editFeature(picture);
}

}  // namespace outyard::yards

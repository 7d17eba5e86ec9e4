// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/facing_dialog.h"

#include <QDoubleSpinBox>
#include <QFormLayout>

#include "ui/yards/arrange.h"
#include "ui/yards/yard_map.h"

namespace outyard::yards {
namespace {

constexpr double kSouthDeg = 180, kMostDeg = 359;

}  // namespace

FacingDialog::FacingDialog(widgets::SeasonHub& hub, std::vector<session::Spot> spots,
                           QWidget* parent)
    : NewDialog(hub, tr("Turn entrances"), parent),
      m_spots(std::move(spots)),
      m_degrees(new QDoubleSpinBox) {
  m_degrees->setObjectName(QStringLiteral("facingDegrees"));
  m_degrees->setDecimals(0);
  m_degrees->setRange(0, kMostDeg);
  m_degrees->setSingleStep(kTurnStepDeg);
  m_degrees->setWrapping(true);
  m_degrees->setSuffix(QStringLiteral("°"));
  m_degrees->setValue(m_spots.empty() ? kSouthDeg
                                      : m_spots.front().entranceDeg.value_or(kSouthDeg));
  m_degrees->setToolTip(tr("Clockwise from north: 90 east, 180 south"));
  auto* form = new QFormLayout;
  form->addRow(tr("&Entrances face"), m_degrees);
  finish(form, tr("%n hives: the drawing is corrected, no move is recorded.", nullptr,
                  static_cast<int>(m_spots.size())));
}

session::CommandPtr FacingDialog::command() const {
  return session::arrange(facing(m_spots, m_degrees->value()));
}

}  // namespace outyard::yards

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/usable_bar.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "core/planning/boost_figures.h"
#include "core/planning/usable_purpose.h"
#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

namespace outyard::pairs {
namespace {

using planning::UsablePurpose;

QString named(std::string_view key) {
  if (key == "flow") return UsableBar::tr("a flow");
  if (key == "supers") return UsableBar::tr("supers at once");
  if (key == "divide") return UsableBar::tr("dividing");
  if (key == "orchard") return UsableBar::tr("hire to an orchard");
  return UsableBar::tr("hire to a field");
}

/// Halves where there are halves: "4 combs", "4.5 seams".
class HalfSpin : public QDoubleSpinBox {
 public:
  using QDoubleSpinBox::QDoubleSpinBox;
  [[nodiscard]] QString textFromValue(double value) const override {
    return locale().toString(value, 'g', 3);
  }
};

QDoubleSpinBox* spin(QWidget* parent, const QString& name, const QString& label) {
  auto* box = new HalfSpin(parent);
  box->setObjectName(name);
  box->setAccessibleName(label);
  box->setRange(0, 30);
  box->setDecimals(1);
  box->setSingleStep(0.5);
  // The plan is worked out when the number stands, not at each of its digits.
  box->setKeyboardTracking(false);
  return box;
}

}  // namespace

UsableBar::UsableBar(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_purpose(new QComboBox(this)),
      m_seams(spin(this, QStringLiteral("usableSeams"), tr("Seams of a usable colony"))),
      m_combs(
          spin(this, QStringLiteral("usableCombs"), tr("Combs with brood of a usable colony"))) {
  setObjectName(QStringLiteral("usableBar"));
  auto* line = new QHBoxLayout(this);
  line->setContentsMargins(0, 0, 0, 0);
  auto* label = new QLabel(tr("Useful &for"), this);
  label->setBuddy(m_purpose);
  m_purpose->setObjectName(QStringLiteral("usablePurpose"));
  m_purpose->setAccessibleName(tr("Useful for"));
  for (const UsablePurpose& p : planning::usablePurposes()) m_purpose->addItem(named(p.key));
  m_purpose->addItem(tr("own measure"));
  m_seams->setSuffix(tr(" seams"));
  m_combs->setPrefix(tr("brood on "));
  m_combs->setSuffix(tr(" combs"));
  for (auto* w : std::initializer_list<QWidget*>{label, m_purpose, m_seams, m_combs}) {
    line->addWidget(w);
  }
  line->addStretch();
  const QString tip =
      tr("A colony counts as usable on the day in “Useful by” when it shows so many seams and "
         "brood on so many combs. The plan makes the most of such colonies.");
  for (auto* w : std::initializer_list<QWidget*>{m_purpose, m_seams, m_combs}) w->setToolTip(tip);
  connect(m_purpose, &QComboBox::activated, this, &UsableBar::choose);
  const auto own = [this] { keep(m_seams->value(), m_combs->value(), tr("set in the window")); };
  connect(m_seams, &QDoubleSpinBox::valueChanged, this, own);
  connect(m_combs, &QDoubleSpinBox::valueChanged, this, own);
  connect(&m_hub, &widgets::SeasonHub::changed, this, [this] { fill(); });
  connect(&m_hub, &widgets::SeasonHub::seasonReplaced, this, [this] { fill(); });
  fill();
}

void UsableBar::fill() {
  setEnabled(m_hub.isOpen());
  std::vector<base::Message> notes;
  const auto figures = planning::boostFigures(m_hub.season(), notes);
  const QSignalBlocker a(m_seams), b(m_combs), c(m_purpose);
  m_seams->setValue(figures.usableSeams);
  m_combs->setValue(figures.usableBroodCombs);
  const auto all = planning::usablePurposes();
  const auto* purpose = planning::purposeOf(figures.usableSeams, figures.usableBroodCombs);
  m_purpose->setCurrentIndex(
      static_cast<int>(purpose ? purpose - all.data() : static_cast<std::ptrdiff_t>(all.size())));
}

void UsableBar::choose(int index) {
  const auto all = planning::usablePurposes();
  if (index < 0 || index >= static_cast<int>(all.size())) {
    m_seams->setFocus();
    m_seams->selectAll();
    return;
  }
  const UsablePurpose& p = all[static_cast<std::size_t>(index)];
  keep(p.seams, p.broodCombs,
       QString::fromUtf8(p.source.data(), static_cast<int>(p.source.size())));
}

void UsableBar::keep(double seams, double combs, const QString& source) {
  std::vector<base::Message> notes;
  const auto now = planning::boostFigures(m_hub.season(), notes);
  if (now.usableSeams == seams && now.usableBroodCombs == combs) return;
  if (!m_hub.execute(session::nameUsable(seams, combs, source.toStdString()), this)) fill();
}

}  // namespace outyard::pairs

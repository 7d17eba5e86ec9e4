// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/oval_entry.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <cmath>

#include "core/base/text.h"
#include "core/strength/measures.h"
#include "ui/hive/comb_model.h"

namespace outyard::hive {
namespace {

std::optional<double> numberIn(const QLineEdit& field) {
  QString text = field.text().trimmed();
  text.replace(u',', u'.');
  const auto value = base::parseNumber(text.toStdString());
  return value && *value > 0 ? value : std::nullopt;
}

}  // namespace

OvalEntry::OvalEntry(CombModel& model, bool inches, QWidget* parent)
    : QWidget(parent), m_model(model), m_cmPerUnit(inches ? 2.54 : 1) {
  const QString unit = inches ? tr("in") : tr("cm");
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  const auto addField = [&](const QString& label, const QString& name, int column) {
    auto* edit = new QLineEdit(this);
    edit->setObjectName(name);
    edit->setAccessibleName(label);
    edit->setMaximumWidth(7 * fontMetrics().averageCharWidth());
    edit->setToolTip(tr("Greatest measure of the patch, in %1").arg(unit));
    auto* text = new QLabel(label, this);
    text->setBuddy(edit);
    grid->addWidget(text, 0, column);
    grid->addWidget(edit, 0, column + 1);
    connect(edit, &QLineEdit::textChanged, this, &OvalEntry::refresh);
    return edit;
  };
  m_length = addField(tr("O&val, %1").arg(unit), QStringLiteral("ovalLength"), 0);
  m_height = addField(tr("by"), QStringLiteral("ovalHeight"), 2);
  m_length->setAccessibleName(tr("Length of the oval patch, %1").arg(unit));
  m_height->setAccessibleName(tr("Height of the oval patch, %1").arg(unit));
  m_what = new QComboBox(this);
  m_what->setObjectName(QStringLiteral("ovalWhat"));
  m_what->setAccessibleName(tr("What the oval patch holds"));
  int chosen = 0;
  for (int k = 0; k < kContentCount; ++k) {
    const Content& content = combContents()[static_cast<std::size_t>(k)];
    m_what->addItem(contentName(content), k);
    if (content.share == &apiary::CombSide::sealedPct) chosen = k;
  }
  m_what->setCurrentIndex(chosen);
  grid->addWidget(m_what, 1, 0, 1, 4);
  m_gives = new QLabel(this);
  m_gives->setObjectName(QStringLiteral("ovalGives"));
  m_gives->setWordWrap(true);
  grid->addWidget(m_gives, 2, 0, 1, 4);
  refresh();
}

void OvalEntry::setAreas(std::map<int, double> areas) {
  m_areas = std::move(areas);
  refresh();
}

void OvalEntry::setRow(int row) {
  m_row = row;
  refresh();
}

std::optional<double> OvalEntry::areaCm2() const {
  const auto length = numberIn(*m_length), height = numberIn(*m_height);
  if (!length || !height) return std::nullopt;
  return strength::ellipseArea(*length * m_cmPerUnit, *height * m_cmPerUnit);
}

std::optional<double> OvalEntry::faceCm2() const {
  if (m_row < 0 || m_row >= m_model.rowCount()) return std::nullopt;
  const auto found = m_areas.find(m_model.side(m_row).box);
  return found == m_areas.end() ? std::nullopt : std::optional(found->second);
}

std::optional<double> OvalEntry::percent() const {
  const auto area = areaCm2(), face = faceCm2();
  if (!area || !face || *area > *face) return std::nullopt;
  return std::max(1.0, std::round(100 * *area / *face));
}

void OvalEntry::refresh() {
  const auto area = areaCm2(), face = faceCm2();
  if (!area) {
    m_gives->setText(tr("Greatest length and height of a patch give its share of the face."));
  } else if (!face) {
    m_gives->setText(tr("Choose a comb side of a box whose frame type is known."));
  } else if (*area > *face) {
    m_gives->setText(
        tr("Larger than the face (%1 cm²): measure again.").arg(QLocale().toString(*face, 'f', 0)));
  } else {
    m_gives->setText(tr("%1 cm², %2 % of the face.")
                         .arg(QLocale().toString(*area, 'f', 0),
                              QLocale().toString(percent().value_or(0), 'f', 0)));
  }
}

QString OvalEntry::fillIn() {
  const auto share = percent();
  if (!share) return m_gives->text();
  const int content = m_what->currentData().toInt();
  m_model.setData(m_model.index(m_row, CombModel::kFirstContent + content), *share, Qt::EditRole);
  const auto area = areaCm2();
  m_length->clear();
  m_height->clear();
  return tr("%1: an oval of %2 cm² is %3 % of this side.")
      .arg(m_what->currentText(), QLocale().toString(area.value_or(0), 'f', 0),
           QLocale().toString(*share, 'f', 0));
}

}  // namespace outyard::hive

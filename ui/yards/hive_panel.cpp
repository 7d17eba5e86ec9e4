// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/hive_panel.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/widgets/stack_view.h"
#include "ui/yards/map_items.h"

namespace outyard::yards {
namespace {

QLabel* wrapped(const QString& text) {
  auto* label = new QLabel(text);
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  label->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Minimum);
  return label;
}

}  // namespace

HivePanel::HivePanel(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_number(new QLabel),
      m_letters(new QLabel),
      m_status(new QLabel),
      m_stack(new widgets::StackView),
      m_scroll(new QScrollArea),
      m_open(new QPushButton(tr("Open hive"))),
      m_inspect(new QPushButton(tr("Enter inspection"))),
      m_setOver(new QPushButton(tr("Set over…"))) {
  setObjectName(QStringLiteral("hivePanel"));
  setAccessibleName(tr("The chosen hive"));
  QFont big = font();
  big.setPointSizeF(big.pointSizeF() * 1.5);
  big.setBold(true);
  m_number->setFont(big);
  m_number->setObjectName(QStringLiteral("panelNumber"));
  m_status->setWordWrap(true);
  m_status->setObjectName(QStringLiteral("panelStatus"));
  m_open->setObjectName(QStringLiteral("panelOpen"));
  m_inspect->setObjectName(QStringLiteral("panelInspect"));
  m_setOver->setObjectName(QStringLiteral("panelSetOver"));
  auto* head = new QHBoxLayout;
  head->addWidget(m_number);
  head->addWidget(m_letters);
  head->addStretch(1);
  m_scroll->setWidgetResizable(true);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_scroll->setFocusPolicy(Qt::StrongFocus);
  auto* buttons = new QGridLayout;
  buttons->setSpacing(6);
  buttons->addWidget(m_inspect, 0, 0, 1, 2);
  buttons->addWidget(m_open, 1, 0);
  buttons->addWidget(m_setOver, 1, 1);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(6);
  layout->addLayout(head);
  layout->addWidget(m_status);
  layout->addWidget(m_stack);
  layout->addWidget(m_scroll, 1);
  layout->addLayout(buttons);
  connect(m_open, &QPushButton::clicked, this, &HivePanel::openAsked);
  connect(m_inspect, &QPushButton::clicked, this, &HivePanel::inspectionAsked);
  connect(m_setOver, &QPushButton::clicked, this, &HivePanel::setOverAsked);
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, [this] { refresh(); });
  refresh();
}

void HivePanel::clearFacts() {
  m_facts = new QWidget;
  m_factsLayout = new QVBoxLayout(m_facts);
  m_factsLayout->setContentsMargins(0, 0, 6, 0);
  m_factsLayout->setSpacing(4);
  m_scroll->setWidget(m_facts);  // the one before is deleted
}

void HivePanel::addHeading(const QString& text) {
  auto* label = wrapped(text);
  QFont bold = label->font();
  bold.setBold(true);
  label->setFont(bold);
  label->setContentsMargins(0, 6, 0, 0);
  m_factsLayout->addWidget(label);
}

void HivePanel::addLine(const QString& name, const QString& value) {
  if (value.isEmpty()) return;
  auto* row = new QHBoxLayout;
  auto* left = new QLabel(name);
  left->setMinimumWidth(fontMetrics().horizontalAdvance(tr("Planned work")) + 6);
  left->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  left->setForegroundRole(QPalette::PlaceholderText);
  auto* right = wrapped(value);
  right->setAccessibleName(QStringLiteral("%1: %2").arg(name, value));
  row->addWidget(left);
  row->addWidget(right, 1);
  m_factsLayout->addLayout(row);
}

void HivePanel::addText(const QString& text, const char* objectName) {
  auto* label = wrapped(text);
  label->setObjectName(QLatin1String(objectName));
  m_factsLayout->addWidget(label);
}

void HivePanel::addBullets(const QStringList& lines) {
  for (const QString& line : lines) {
    auto* row = new QHBoxLayout;
    row->setSpacing(6);
    auto* dot = new QLabel(QStringLiteral("•"));
    dot->setAlignment(Qt::AlignTop);
    row->addWidget(dot);
    row->addWidget(wrapped(line), 1);
    m_factsLayout->addLayout(row);
  }
}

void HivePanel::showColony(const widgets::ColonyFacts& facts, bool alone) {
  if (!alone) addHeading(facts.name);
  if (!facts.judgement.isEmpty()) {
    addHeading(tr("Judged %1").arg(facts.judgement));
    addBullets(facts.evidence);
    if (!facts.overruled.isEmpty()) addText(facts.overruled, "panelOverruled");
    if (!facts.wouldChange.isEmpty()) {
      addText(tr("Would change it:"), "panelWouldChange");
      addBullets(facts.wouldChange);
    }
  }
  if (!facts.healthBar.isEmpty()) addText(facts.healthBar, "panelHealth");
  m_factsLayout->addSpacing(4);
  addLine(tr("Seams"), facts.seams.isEmpty() ? tr("not recorded") : facts.seams);
  addLine(tr("Bees"), facts.bees.isEmpty() ? tr("not recorded") : facts.bees);
  addLine(tr("Brood"), facts.brood);
  addLine(tr("Stores"), facts.stores);
  addLine(tr("Queen"), facts.queen);
  addLine(tr("Last look"), facts.lastLook);
}

void HivePanel::refresh() {
  const auto chosen = m_hub.selection().hive;
  const auto* hive = chosen ? m_hub.hive(*chosen) : nullptr;
  clearFacts();
  for (auto* button : {m_open, m_inspect, m_setOver}) button->setEnabled(hive != nullptr);
  m_letters->clear();
  if (!hive) {
    m_number->setText(tr("No hive chosen"));
    m_status->setText(m_hub.isOpen()
                          ? tr("Click a hive on the map, or press Tab there.")
                          : tr("Open a season in the File menu, or look at the sample first."));
    m_stack->clear();
    m_stack->hide();
    m_factsLayout->addStretch(1);
    return;
  }
  const auto facts = widgets::hiveFacts(m_hub, *hive);
  m_number->setText(facts.number);
  if (!facts.letters.isEmpty()) {
    const double width = lettersWidth(facts.letters, font()) + 2;
    const double ratio = devicePixelRatioF();
    QPixmap pixmap(QSizeF(width * ratio, 18 * ratio).toSize());
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    paintLetters(painter, {1, 9}, facts.letters, palette(), font());
    painter.end();
    m_letters->setPixmap(pixmap);
    m_letters->setToolTip(facts.meanings);
    m_letters->setAccessibleName(facts.meanings);
  }
  QStringList status{facts.status};
  if (!facts.stand.isEmpty()) status << tr("stand %1").arg(facts.stand);
  status << facts.boxes;
  m_status->setText(status.join(QStringLiteral(" · ")));
  m_stack->show();
  m_stack->setDrawing(sheet::stackDrawing(m_hub.season(), *hive, m_hub.shownDate()),
                      tr("%1: %2").arg(facts.number, facts.boxes));
  for (const auto& colony : facts.colonies) showColony(colony, facts.colonies.size() == 1);
  if (!facts.tasks.isEmpty()) {
    addHeading(tr("Planned work"));
    addBullets(facts.tasks);
  }
  m_factsLayout->addStretch(1);
}

}  // namespace outyard::yards

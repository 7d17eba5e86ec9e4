// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/hive_panel.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "ui/widgets/stack_view.h"
#include "ui/yards/map_items.h"

namespace outyard::yards {
namespace {

QString heading(const QString& text) {
  return QStringLiteral("<p style='margin:8px 0 2px 0'><b>%1</b></p>").arg(text.toHtmlEscaped());
}

QString paragraph(const QString& text) {
  if (text.isEmpty()) return {};
  return QStringLiteral("<p style='margin:4px 0 2px 0'>%1</p>").arg(text.toHtmlEscaped());
}

QString bullets(const QStringList& lines) {
  QString items;
  for (const QString& line : lines) {
    items += QStringLiteral("<li>%1</li>").arg(line.toHtmlEscaped());
  }
  return lines.isEmpty() ? QString()
                         : QStringLiteral(
                               "<ul style='margin:0 0 0 14px; "
                               "-qt-list-indent:0'>%1</ul>")
                               .arg(items);
}

}  // namespace

HivePanel::HivePanel(widgets::SeasonHub& hub, QWidget* parent)
    : QWidget(parent),
      m_hub(hub),
      m_number(new QLabel),
      m_letters(new QLabel),
      m_status(new QLabel),
      m_stack(new widgets::StackView),
      m_facts(new QTextBrowser),
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
  m_facts->setObjectName(QStringLiteral("panelFacts"));
  m_facts->setAccessibleName(tr("What is known of the hive"));
  m_facts->setFrameShape(QFrame::NoFrame);
  m_facts->viewport()->setAutoFillBackground(false);
  m_facts->document()->setDocumentMargin(0);
  m_facts->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
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
  layout->addWidget(m_facts, 1);
  layout->addLayout(buttons);
  connect(m_open, &QPushButton::clicked, this, &HivePanel::openAsked);
  connect(m_inspect, &QPushButton::clicked, this, &HivePanel::inspectionAsked);
  connect(m_setOver, &QPushButton::clicked, this, &HivePanel::setOverAsked);
  connect(&m_hub, &widgets::SeasonHub::selectionChanged, this, [this] { refresh(); });
  refresh();
}

QString HivePanel::html(const widgets::HiveFacts& facts) const {
  const QString faint = palette().color(QPalette::PlaceholderText).name();
  QString page;
  for (const auto& colony : facts.colonies) {
    if (facts.colonies.size() > 1) page += heading(colony.name);
    if (!colony.judgement.isEmpty()) {
      page += heading(tr("Judged %1").arg(colony.judgement)) + bullets(colony.evidence);
      page += paragraph(colony.overruled);
      if (!colony.wouldChange.isEmpty()) {
        page += paragraph(tr("Would change it:")) + bullets(colony.wouldChange);
      }
    }
    page += paragraph(colony.healthBar);
    const QString unknown = tr("not recorded");
    const std::pair<QString, QString> lines[] = {
        {tr("Seams"), colony.seams.isEmpty() ? unknown : colony.seams},
        {tr("Bees"), colony.bees.isEmpty() ? unknown : colony.bees},
        {tr("Brood"), colony.brood},
        {tr("Stores"), colony.stores},
        {tr("Queen"), colony.queen},
        {tr("Last look"), colony.lastLook},
        {tr("Expected"), colony.expected.isEmpty()
                             ? QString()
                             : tr("%1, %2").arg(colony.expected, colony.expectedBrood)}};
    page += QStringLiteral("<table style='margin-top:8px' cellspacing='0' cellpadding='1'>");
    for (const auto& [name, value] : lines) {
      if (value.isEmpty()) continue;
      page += QStringLiteral("<tr><td width='70' style='color:%1'>%2</td><td>%3</td></tr>")
                  .arg(faint, name.toHtmlEscaped(), value.toHtmlEscaped());
    }
    page += QStringLiteral("</table>");
  }
  if (!facts.tasks.isEmpty()) page += heading(tr("Planned work")) + bullets(facts.tasks);
  return page;
}

void HivePanel::refresh() {
  const auto chosen = m_hub.selection().hive;
  const auto* hive = chosen ? m_hub.hive(*chosen) : nullptr;
  for (auto* button : {m_open, m_inspect, m_setOver}) button->setEnabled(hive != nullptr);
  m_letters->clear();
  if (!hive) {
    m_number->setText(tr("No hive chosen"));
    m_status->setText(m_hub.isOpen()
                          ? tr("Click a hive on the map, or press Tab there.")
                          : tr("Open a season in the File menu, or look at the sample first."));
    m_stack->clear();
    m_stack->hide();
    m_facts->clear();
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
  m_facts->setHtml(html(facts));
}

}  // namespace outyard::yards

// SPDX-License-Identifier: GPL-3.0-or-later
// Tools of the place of yards: measure, the picture of the ground, several hives at once, the
// layout of a yard in another one, the map alone as a file or on paper.
#include <QAction>
#include <QActionGroup>
#include <QLabel>
#include <QMenu>
#include <QPrintDialog>
#include <QPrinter>
#include <algorithm>
#include <cmath>

#include "ui/yards/map_file.h"
#include "ui/yards/several_dialog.h"
#include "ui/yards/tool_dialogs.h"
#include "ui/yards/yard_map.h"
#include "ui/yards/yards_place.h"

namespace outyard::yards {
namespace {

std::vector<apiary::Feature> picturesOf(const apiary::Season& season, const base::YardId& yard) {
  std::vector<apiary::Feature> pictures;
  for (const auto& [key, feature] : season.table<apiary::Feature>()) {
    const bool picture = feature.kind == apiary::FeatureKind::Picture && feature.x2M && feature.y2M;
    if (feature.yard == yard && picture) pictures.push_back(feature);
  }
  return pictures;
}

bool covers(const apiary::Feature& picture, QPointF atM) {
  const QPointF one(picture.xM, picture.yM), other(*picture.x2M, *picture.y2M);
  return QRectF(one, other).normalized().contains(atM);
}

}  // namespace

void YardsPlace::makeToolActions() {
  const auto make = [this](const QString& text, const char* name, const QKeySequence& keys,
                           auto slot) {
    auto* action = new QAction(text, this);
    action->setObjectName(QLatin1String(name));
    if (!keys.isEmpty()) {
      action->setShortcut(keys);
      action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    }
    addAction(action);
    connect(action, &QAction::triggered, this, slot);
    return action;
  };
  m_measure = make(tr("&Measure a distance"), "measure", QKeySequence(Qt::CTRL | Qt::Key_D),
                   [this](bool on) {
                     m_scaling = false;
                     m_map->setMeasuring(on);
                   });
  m_measure->setCheckable(true);
  m_measure->setToolTip(tr("Measure from point to point, by clicks or keys (Ctrl+D)"));
  connect(m_map, &YardMap::measured, this, &YardsPlace::scalePicture);
  connect(m_map, &YardMap::measuringStopped, this, [this] {
    m_scaling = false;
    m_measure->setChecked(false);
  });

  m_pictureMenu = new QMenu(tr("&Picture of the ground"), this);
  m_pictureMenu->setToolTipsVisible(true);
  const int now = m_hub.settings().get(adapt::desk::kGroundPicturePercent);
  m_map->setPicturePercent(std::clamp(now, 0, 100));
  auto* levels = new QActionGroup(this);
  const std::pair<QString, int> kLevels[] = {
      {tr("&Full"), 100}, {tr("&Pale"), 60}, {tr("&Faint"), 30}, {tr("&Hidden"), 0}};
  for (const auto& [text, percent] : kLevels) {
    auto* action = m_pictureMenu->addAction(text);
    action->setObjectName(QStringLiteral("picture%1").arg(percent));
    action->setCheckable(true);
    action->setChecked(percent == now);
    levels->addAction(action);
    connect(action, &QAction::triggered, this, [this, percent = percent] {
      m_hub.settings().set(adapt::desk::kGroundPicturePercent, percent);
      m_map->setPicturePercent(percent);
    });
  }
  m_pictureMenu->addSeparator();
  m_scalePicture = make(tr("&Scale the picture by two points…"), "scalePicture", {}, [this] {
    showAsTable(false);
    m_measure->setChecked(true);
    m_map->setMeasuring(true);
    m_scaling = true;
    m_hint->setText(
        tr("Scale: click two points of the picture whose distance you know, or go "
           "there with the arrow keys and press Return. Esc ends."));
  });
  m_pictureMenu->addAction(m_scalePicture);

  m_copyLayout =
      make(tr("Copy la&yout to another yard…"), "copyLayout", {}, [this] { copyLayout(); });
  m_saveMap = make(tr("Sa&ve the map alone…"), "saveMap", {}, [this] { saveMap(); });
  m_saveMap->setStatusTip(tr("As PDF, SVG or PNG"));
  m_printMap = make(tr("Prin&t the map alone…"), "printMap", {}, [this] { printMap(); });
}

void YardsPlace::refreshToolActions() {
  const auto yard = m_hub.selection().yard;
  const bool any = m_hub.isOpen() && yard;
  for (auto* action : {m_measure, m_copyLayout, m_saveMap, m_printMap}) action->setEnabled(any);
  const bool pictures = any && !picturesOf(m_hub.season(), *yard).empty();
  m_scalePicture->setEnabled(pictures);
  m_scalePicture->setToolTip(
      pictures ? QString() : tr("No picture lies under this yard: add one as a feature first."));
}

void YardsPlace::scalePicture(QPointF fromM, QPointF toM) {
  const auto yard = m_hub.selection().yard;
  if (!m_scaling || !yard) return;
  const auto pictures = picturesOf(m_hub.season(), *yard);
  if (pictures.empty()) return;
  if (std::hypot(toM.x() - fromM.x(), toM.y() - fromM.y()) < kLeastScaleM) {
    m_hint->setText(tr("The two points are too near to each other: choose two farther apart."));
    return;
  }
  const auto beneath = std::find_if(pictures.begin(), pictures.end(),
                                    [&](const auto& each) { return covers(each, fromM); });
  ScaleDialog dialog(m_hub, beneath == pictures.end() ? pictures.front() : *beneath, fromM, toM,
                     this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
  m_map->setMeasuring(false);
}

void YardsPlace::askSeveral(const std::vector<session::Spot>& spots, const base::YardId& to) {
  if (spots.empty()) return;
  SeveralDialog dialog(m_hub, spots, to, this);
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void YardsPlace::copyLayout() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  LayoutDialog dialog(m_hub, *yard, this);
  if (!m_hub.dialogs().run(dialog)) return;
  const auto to = dialog.to();
  if (m_hub.execute(dialog.command(), this)) m_hub.selectYard(to);
}

void YardsPlace::saveMap() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  const QString file = m_hub.dialogs().saveFile(
      this, tr("Save the map"), tr("PDF (*.pdf);;SVG (*.svg);;PNG picture (*.png)"),
      tr("map %1.pdf").arg(QString::fromStdString(yard->str())));
  if (file.isEmpty()) return;
  const QString why = writeMap(m_hub, *yard, file);
  if (!why.isEmpty()) m_hub.dialogs().failure(this, tr("The map was not saved"), why);
}

void YardsPlace::printMap() {
  const auto yard = m_hub.selection().yard;
  if (!yard) return;
  // Made only now: a printer object asks the print server, which can be slow.
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(m_map->accessibleName());
  printer.setPageOrientation(QPageLayout::Landscape);
  QPrintDialog dialog(&printer, this);
  if (m_hub.dialogs().run(dialog)) printMapTo(m_hub, *yard, printer);
}

}  // namespace outyard::yards

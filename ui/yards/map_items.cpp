// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/map_items.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>
#include <QWidget>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/widgets/theme.h"

namespace outyard::yards {
namespace {

using apiary::FeatureKind;
using apiary::StandKind;
using sheet::Ink;
using widgets::inkColour;

struct Map {
  Q_DECLARE_TR_FUNCTIONS(YardMap)
};

/// Footprints in metres: a stand for one hive and pallets of the usual 1.2 m (common practice, no
/// source).
QSizeF standSize(const std::optional<StandKind>& kind) {
  switch (kind.value_or(StandKind::Stand)) {
    case StandKind::Stand:
      return {0.6, 0.6};
    case StandKind::PalletOfTwo:
      return {1.2, 0.6};
    case StandKind::PalletOfFour:
      return {1.2, 1.2};
  }
  return {0.6, 0.6};
}

QPen cosmetic(const QColor& colour, double width, Qt::PenStyle style = Qt::SolidLine) {
  QPen pen(colour, width, style);
  pen.setCosmetic(true);
  return pen;
}

constexpr double kLetterPx = 13;
constexpr double kLabelGapPx = 3;

QColor letterColour(QChar letter, const QPalette& palette) {
  if (letter == u'S' || letter == u'Q') return inkColour(palette, Ink::Alarm);
  if (letter == u'B' || letter == u'W') return inkColour(palette, Ink::Warning);
  if (letter == u'N') return inkColour(palette, Ink::FaintText);
  return inkColour(palette, Ink::Accent);
}

QColor readableOn(const QColor& ground) {
  const double luma = 0.299 * ground.redF() + 0.587 * ground.greenF() + 0.114 * ground.blueF();
  return luma > 0.5 ? QColor(0x14, 0x18, 0x18) : QColor(Qt::white);
}

}  // namespace

double lettersWidth(const QString& letters, const QFont& /*font*/) {
  return letters.isEmpty() ? 0 : static_cast<double>(letters.size()) * (kLetterPx + 2) - 2;
}

double paintLetters(QPainter& painter, QPointF leftMiddle, const QString& letters,
                    const QPalette& palette, const QFont& font) {
  QFont bold = font;
  bold.setBold(true);
  bold.setPixelSize(10);
  painter.save();
  painter.setFont(bold);
  double x = leftMiddle.x();
  for (const QChar letter : letters) {
    const QRectF box(x, leftMiddle.y() - kLetterPx / 2, kLetterPx, kLetterPx);
    const QColor fill = letterColour(letter, palette);
    painter.setPen(QPen(palette.color(QPalette::WindowText), 0.8));
    painter.setBrush(fill);
    painter.drawRoundedRect(box, 2.5, 2.5);
    painter.setPen(readableOn(fill));
    painter.drawText(box, Qt::AlignCenter, QString(letter));
    x += kLetterPx + 2;
  }
  painter.restore();
  return x - leftMiddle.x();
}

// --- ground, stands, features ------------------------------------------------------------------

void GroundItem::setGround(const QRectF& metres, const QPalette& palette) {
  prepareGeometryChange();
  m_rect = metres;
  m_palette = palette;
}

void GroundItem::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                       QWidget* /*widget*/) {
  painter->setPen(cosmetic(inkColour(m_palette, Ink::FaintLine), 1));
  painter->setBrush(inkColour(m_palette, Ink::Ground));
  painter->drawRect(m_rect);
}

std::vector<QPointF> standSlots(const apiary::Stand& stand) {
  std::vector<QPointF> places;
  switch (stand.kind.value_or(StandKind::Stand)) {
    case StandKind::Stand:
      places = {{0, 0}};
      break;
    case StandKind::PalletOfTwo:
      places = {{-0.3, 0}, {0.3, 0}};
      break;
    case StandKind::PalletOfFour:
      places = {{-0.3, -0.3}, {0.3, -0.3}, {-0.3, 0.3}, {0.3, 0.3}};
      break;
  }
  const double turn = stand.angleDeg.value_or(0) * std::numbers::pi / 180;
  for (auto& p : places) {
    p = {p.x() * std::cos(turn) - p.y() * std::sin(turn) + stand.xM,
         p.x() * std::sin(turn) + p.y() * std::cos(turn) - stand.yM};
  }
  return places;
}

void StandItem::setStand(const apiary::Stand& stand, double pxPerMetre, const QPalette& palette) {
  prepareGeometryChange();
  m_palette = palette;
  QSizeF size = standSize(stand.kind);
  const double grow = std::max(1.0, kLeastMarkPx * 0.9 / pxPerMetre / size.height());
  size *= grow;
  m_rect = QRectF(-size.width() / 2, -size.height() / 2, size.width(), size.height());
  setPos(stand.xM, -stand.yM);
  setRotation(stand.angleDeg.value_or(0));
  setToolTip(QString::fromStdString(stand.stand));
}

void StandItem::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                      QWidget* /*widget*/) {
  painter->setPen(cosmetic(inkColour(m_palette, Ink::FaintLine), 1));
  painter->setBrush(inkColour(m_palette, Ink::Stand));
  const double radius = m_rect.height() * 0.08;
  painter->drawRoundedRect(m_rect, radius, radius);
}

void FeatureItem::setFeature(const apiary::Feature& feature, const QString& picturesFolder,
                             const QPalette& palette, const QFont& font) {
  prepareGeometryChange();
  m_feature = feature;
  m_palette = palette;
  m_font = font;
  const QPointF far(feature.x2M.value_or(feature.xM) - feature.xM,
                    -(feature.y2M.value_or(feature.yM) - feature.yM));
  setPos(feature.xM, -feature.yM);
  setZValue(0.2);
  setFlag(ItemIgnoresTransformations, false);
  if (feature.kind == FeatureKind::Picture) {
    const QString file = picturesFolder + u'/' + QString::fromStdString(feature.file);
    if (file != m_pictureFile) {
      m_pictureFile = file;
      m_picture = QPixmap(file);
    }
    m_rect = QRectF(QPointF(), far).normalized();
    setZValue(-0.5);
  } else if (feature.kind == FeatureKind::Fence) {
    m_rect = QRectF(QPointF(), far).normalized().adjusted(-0.2, -0.2, 0.2, 0.2);
  } else {
    setFlag(ItemIgnoresTransformations);
    m_rect = QRectF(-60, -14, 120, 44);
  }
  setToolTip(QString::fromStdString(feature.notes));
}

void FeatureItem::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                        QWidget* /*widget*/) {
  painter->setRenderHint(QPainter::Antialiasing);
  if (m_feature.kind == FeatureKind::Picture) {
    if (!m_picture.isNull()) painter->drawPixmap(m_rect, m_picture, m_picture.rect());
  } else if (m_feature.kind == FeatureKind::Fence) {
    painter->setPen(cosmetic(inkColour(m_palette, Ink::Line), 1.6, Qt::DashDotLine));
    painter->drawLine(QPointF(), QPointF(m_feature.x2M.value_or(m_feature.xM) - m_feature.xM,
                                         -(m_feature.y2M.value_or(m_feature.yM) - m_feature.yM)));
  } else {
    paintSign(*painter);
  }
}

void FeatureItem::paintSign(QPainter& painter) const {
  const QColor line = inkColour(m_palette, Ink::FaintText);
  painter.setPen(QPen(line, 1.4));
  painter.setBrush(Qt::NoBrush);
  QString name;
  if (m_feature.kind == FeatureKind::Gate) {
    painter.drawLine(-10, -8, -10, 9);
    painter.drawLine(10, -8, 10, 9);
    painter.drawLine(-10, -4, 10, -4);
    painter.drawLine(-10, 5, 10, 5);
    painter.drawLine(-10, 5, 10, -4);
    name = Map::tr("gate");
  } else if (m_feature.kind == FeatureKind::Truck) {
    painter.drawRect(QRectF(-12, -6, 15, 10));
    painter.drawRect(QRectF(3, -2, 8, 6));
    painter.setBrush(line);
    painter.drawEllipse(QPointF(-7, 6), 2.2, 2.2);
    painter.drawEllipse(QPointF(6, 6), 2.2, 2.2);
    name = Map::tr("truck");
  } else {
    QPainterPath drop(QPointF(0, -10));
    drop.cubicTo(9, 2, 8, 9, 0, 9);
    drop.cubicTo(-8, 9, -9, 2, 0, -10);
    painter.setBrush(inkColour(m_palette, Ink::Water));
    painter.drawPath(drop);
    name = Map::tr("water");
  }
  QFont font = m_font;
  font.setPixelSize(11);
  painter.setFont(font);
  painter.setPen(inkColour(m_palette, Ink::FaintText));
  painter.drawText(QRectF(-60, 11, 120, 16), Qt::AlignHCenter | Qt::AlignTop, name);
}

// --- hives --------------------------------------------------------------------------------------

HiveItem::HiveItem(base::HiveId hive)
    : m_hive(std::move(hive)), m_number(QString::fromStdString(m_hive.str())) {
  setFlag(ItemIgnoresTransformations);
  setZValue(2);
}

void HiveItem::setLook(const widgets::Mark& mark, const QString& letters, const QPalette& palette,
                       const QFont& font) {
  prepareGeometryChange();
  m_mark = mark;
  m_letters = letters;
  m_palette = palette;
  m_font = font;
  m_font.setPixelSize(12);
  m_painted = {};
  update();
}

void HiveItem::setMarkWidth(double px) {
  if (px == m_markPx) return;
  prepareGeometryChange();
  m_markPx = px;
  m_painted = {};
}

void HiveItem::setNudge(QPointF px) {
  if (px == m_nudge) return;
  prepareGeometryChange();
  m_nudge = px;
}

void HiveItem::setChosen(bool chosen) {
  m_chosen = chosen;
  setZValue(chosen ? 3 : 2);
  update();
}

void HiveItem::setTarget(Target target) {
  m_target = target;
  update();
}

void HiveItem::setCarried(bool carried) {
  m_carried = carried;
  setOpacity(carried ? 0.6 : 1.0);
  setZValue(carried ? 5 : (m_chosen ? 3 : 2));
}

QRectF HiveItem::markRect() const {
  const double scale = m_markPx / sheet::kMarkWidthMm;
  const QRectF& mm = m_mark.boundsMm;
  return QRectF(mm.topLeft() * scale, mm.bottomRight() * scale).translated(m_nudge);
}

QRectF HiveItem::innerHalf() const {
  const QRectF mark = markRect();
  return {mark.center().x() - mark.width() / 4, mark.center().y() - mark.height() / 4,
          mark.width() / 2, mark.height() / 2};
}

QRectF HiveItem::labelRect() const {
  const QFontMetricsF metrics(m_font);
  const double letters = lettersWidth(m_letters, m_font);
  const double width =
      metrics.horizontalAdvance(m_number) + (letters > 0 ? kLabelGapPx + letters : 0) + 4;
  const QRectF mark = markRect();
  return {mark.center().x() - width / 2, mark.bottom() + 2, width,
          std::max(metrics.height(), kLetterPx + 2)};
}

QRectF HiveItem::boundingRect() const {
  const QRectF all = markRect().united(labelRect()).united(QRectF(-1, -1, 2, 2));
  return all.adjusted(-8, -8, 8, 8);
}

QPainterPath HiveItem::shape() const {
  QPainterPath path;
  path.addRect(markRect().adjusted(-2, -2, 2, 2));
  path.addRect(labelRect());
  path.setFillRule(Qt::WindingFill);
  return path;
}

void HiveItem::paintMarkAndLabel(QPainter& painter) const {
  painter.save();
  painter.translate(m_nudge);
  widgets::paintMark(painter, m_mark, m_markPx, m_palette);
  painter.restore();
  paintLabel(painter);
}

void HiveItem::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                     QWidget* widget) {
  painter->setRenderHint(QPainter::Antialiasing);
  if (std::hypot(m_nudge.x(), m_nudge.y()) > 4 && !m_carried) {
    painter->setPen(QPen(inkColour(m_palette, Ink::FaintText), 1));
    painter->drawLine(QPointF(), m_nudge);
    painter->setBrush(inkColour(m_palette, Ink::FaintText));
    painter->drawEllipse(QPointF(), 1.8, 1.8);
  }
  const QRectF mark = markRect();
  if (m_chosen) {
    painter->setPen(QPen(m_palette.color(QPalette::Highlight), 2));
    QColor wash = m_palette.color(QPalette::Highlight);
    wash.setAlphaF(0.14F);
    painter->setBrush(wash);
    painter->drawRoundedRect(mark.united(labelRect()).adjusted(-4, -4, 4, 2), 4, 4);
  }
  if (widget) {
    const double ratio = painter->device()->devicePixelRatioF();
    const QRectF area = occupied().adjusted(-2, -2, 2, 2);
    if (m_painted.isNull() || m_painted.devicePixelRatio() != ratio) {
      m_painted = QPixmap((area.size() * ratio).toSize() + QSize(1, 1));
      m_painted.setDevicePixelRatio(ratio);
      m_painted.fill(Qt::transparent);
      QPainter once(&m_painted);
      once.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
      once.translate(-area.topLeft());
      paintMarkAndLabel(once);
    }
    painter->drawPixmap(area.topLeft(), m_painted);
  } else {
    paintMarkAndLabel(*painter);  // on paper: lines, not pixels
  }
  if (m_target != Target::None) {
    const bool possible = m_target == Target::Possible;
    painter->setPen(QPen(inkColour(m_palette, possible ? Ink::Accent : Ink::Alarm), 3,
                         possible ? Qt::SolidLine : Qt::DashLine));
    painter->setBrush(Qt::NoBrush);
    painter->drawRoundedRect(mark.adjusted(-4, -4, 4, 4), 5, 5);
  }
}

void HiveItem::paintLabel(QPainter& painter) const {
  const QRectF rect = labelRect();
  painter.setFont(m_font);
  const double text = QFontMetricsF(m_font).horizontalAdvance(m_number);
  // An arrow that passes beneath does not strike the number out.
  QColor ground = inkColour(m_palette, Ink::Ground);
  ground.setAlphaF(0.8F);
  painter.setPen(Qt::NoPen);
  painter.setBrush(ground);
  painter.drawRoundedRect(rect.adjusted(0, 1, 0, -1), 3, 3);
  painter.setPen(inkColour(m_palette, Ink::Text));
  painter.drawText(rect.adjusted(2, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, m_number);
  paintLetters(painter, {rect.left() + 2 + text + kLabelGapPx, rect.center().y()}, m_letters,
               m_palette, m_font);
}

// --- arrows -------------------------------------------------------------------------------------

void ArrowLayer::setArea(const QRectF& area) {
  prepareGeometryChange();
  m_area = area;
}

void ArrowLayer::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                       QWidget* widget) {
  painter->save();
  painter->resetTransform();
  const double ratio = widget ? widget->devicePixelRatioF() : 1.0;
  painter->scale(ratio, ratio);
  painter->setRenderHint(QPainter::Antialiasing);
  m_paint(*painter);
  painter->restore();
}

// --- groups -------------------------------------------------------------------------------------

void GroupItem::setGroup(std::vector<base::HiveId> hives, const QString& letters, bool chosen,
                         const QPalette& palette, const QFont& font) {
  prepareGeometryChange();
  setFlag(ItemIgnoresTransformations);
  setZValue(chosen ? 3 : 2);
  m_hives = std::move(hives);
  m_letters = letters;
  m_chosen = chosen;
  m_palette = palette;
  m_font = font;
  m_font.setPixelSize(12);
  QStringList names;
  for (const auto& hive : m_hives) names << QString::fromStdString(hive.str());
  setToolTip(Map::tr("%1. Click to look closer.").arg(names.join(QStringLiteral(", "))));
}

QRectF GroupItem::boundingRect() const {
  const double half = std::max(46.0, lettersWidth(m_letters, m_font) / 2 + 4);
  return {-half, -24, 2 * half, 58};
}

void GroupItem::paint(QPainter* painter, const QStyleOptionGraphicsItem* /*option*/,
                      QWidget* /*widget*/) {
  painter->setRenderHint(QPainter::Antialiasing);
  const QColor wood = inkColour(m_palette, Ink::Wood);
  painter->setPen(
      QPen(m_chosen ? m_palette.color(QPalette::Highlight) : inkColour(m_palette, Ink::WoodEdge),
           m_chosen ? 2.5 : 1.2));
  painter->setBrush(wood);
  painter->drawRoundedRect(QRectF(-20, -20, 34, 26), 2, 2);
  painter->drawRoundedRect(QRectF(-15, -15, 34, 26), 2, 2);
  QFont bold = m_font;
  bold.setBold(true);
  bold.setPixelSize(14);
  painter->setFont(bold);
  painter->setPen(inkColour(m_palette, Ink::Text));
  painter->drawText(QRectF(-15, -15, 34, 26), Qt::AlignCenter, QString::number(m_hives.size()));
  painter->setFont(m_font);
  if (m_letters.isEmpty()) {
    painter->drawText(QRectF(-46, 12, 92, 18), Qt::AlignCenter, Map::tr("hives"));
  } else {
    paintLetters(*painter, {-lettersWidth(m_letters, m_font) / 2 + 2, 21}, m_letters, m_palette,
                 m_font);
  }
}

}  // namespace outyard::yards

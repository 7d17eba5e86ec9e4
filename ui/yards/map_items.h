// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QGraphicsItem>
#include <QPalette>
#include <QPixmap>
#include <QString>
#include <functional>
#include <vector>

#include "core/apiary/records.h"
#include "ui/adapt/units.h"
#include "ui/widgets/mark_painter.h"

/// Items of the yard map. The scene is in metres, x to the right, y down (so -yM). Items hold ids
/// and values, never pointers into the season.
namespace outyard::yards {

/// Marks are never smaller than this on the screen (height), nor wider than kMostMarkPx.
inline constexpr double kLeastMarkPx = 27;
inline constexpr double kMostMarkPx = 84;

/// The ground of the yard, to scale.
class GroundItem : public QGraphicsItem {
 public:
  void setGround(const QRectF& metres, const QPalette& palette);
  [[nodiscard]] QRectF boundingRect() const override { return m_rect; }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  QRectF m_rect;
  QPalette m_palette;
};

/// A stand or pallet, to scale but never smaller than the marks that it carries need.
class StandItem : public QGraphicsItem {
 public:
  void setStand(const apiary::Stand& stand, double pxPerMetre, const QPalette& palette);
  [[nodiscard]] QRectF boundingRect() const override { return m_rect; }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  QRectF m_rect;
  QPalette m_palette;
};

/// Where hives stand on a stand, in scene coordinates.
std::vector<QPointF> standSlots(const apiary::Stand& stand);

/// Gate, truck place, water (as signs of a fixed size), fence and picture of the ground (to scale).
class FeatureItem : public QGraphicsItem {
 public:
  void setFeature(const apiary::Feature& feature, const QString& picturesFolder,
                  const QPalette& palette, const QFont& font);
  [[nodiscard]] QRectF boundingRect() const override { return m_rect; }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  void paintSign(QPainter& painter) const;

  apiary::Feature m_feature;
  QPixmap m_picture;
  QString m_pictureFile;
  QRectF m_rect;
  QPalette m_palette;
  QFont m_font;
};

/// A hive: its mark seen from above, its number and the letters beside it.
class HiveItem : public QGraphicsItem {
 public:
  enum class Target { None, Possible, Refused };

  explicit HiveItem(base::HiveId hive);
  [[nodiscard]] const base::HiveId& hive() const { return m_hive; }
  [[nodiscard]] const QString& letters() const { return m_letters; }

  void setLook(const widgets::Mark& mark, const QString& letters, const QPalette& palette,
               const QFont& font);
  void setMarkWidth(double px);
  void setNudge(QPointF px);
  void setChosen(bool chosen);
  void setTarget(Target target);
  void setCarried(bool carried);

  [[nodiscard]] QPointF nudge() const { return m_nudge; }
  /// The mark alone, in pixels around the item's place.
  [[nodiscard]] QRectF markRect() const;
  /// The mark with its number and letters.
  [[nodiscard]] QRectF occupied() const { return markRect().united(labelRect()); }
  /// What a drop must hit to mean the hive itself and not the ground beside it.
  [[nodiscard]] QRectF innerHalf() const;

  [[nodiscard]] QRectF boundingRect() const override;
  [[nodiscard]] QPainterPath shape() const override;
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  [[nodiscard]] QRectF labelRect() const;
  void paintLabel(QPainter& painter) const;
  void paintMarkAndLabel(QPainter& painter) const;

  base::HiveId m_hive;
  /// Mark and label as painted last, without the nudge: hundreds of them are moved and zoomed at
  /// once. Null when it must be painted anew.
  QPixmap m_painted;
  QString m_number, m_letters;
  widgets::Mark m_mark;
  double m_markPx = 36;
  QPointF m_nudge;
  bool m_chosen = false, m_carried = false;
  Target m_target = Target::None;
  QPalette m_palette;
  QFont m_font;
};

/// Arrows between stands and hives: painted by the map, in pixels of its viewport.
class ArrowLayer : public QGraphicsItem {
 public:
  using Painter = std::function<void(QPainter&)>;
  explicit ArrowLayer(Painter paint) : m_paint(std::move(paint)) { setZValue(1); }
  void setArea(const QRectF& area);
  [[nodiscard]] QRectF boundingRect() const override { return m_area; }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  Painter m_paint;
  QRectF m_area;
};

/// Hives whose marks would cover each other at this zoom.
class GroupItem : public QGraphicsItem {
 public:
  void setGroup(std::vector<base::HiveId> hives, const QString& letters, bool chosen,
                const QPalette& palette, const QFont& font);
  [[nodiscard]] const std::vector<base::HiveId>& hives() const { return m_hives; }
  [[nodiscard]] QRectF boundingRect() const override;
  void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

 private:
  std::vector<base::HiveId> m_hives;
  QString m_letters;
  bool m_chosen = false;
  QPalette m_palette;
  QFont m_font;
};

/// Letters in small boxes from a point to the right; gives the width used.
double paintLetters(QPainter& painter, QPointF leftMiddle, const QString& letters,
                    const QPalette& palette, const QFont& font);
double lettersWidth(const QString& letters, const QFont& font);

}  // namespace outyard::yards

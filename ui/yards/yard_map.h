// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QGraphicsView>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/planning/boost.h"
#include "core/session/commands.h"
#include "ui/widgets/session_model.h"
#include "ui/yards/map_items.h"
#include "ui/yards/map_ruler.h"
#include "ui/yards/thing_dialogs.h"

namespace outyard::yards {

/// What one key step turns a hive by.
inline constexpr double kTurnStepDeg = 15;

/// An arrow of the boost plan over the map.
struct PairArrow {
  base::HiveId from, to;
  base::HiveId labelAt;  ///< the small colony
  QString label;
  bool operator==(const PairArrow&) const = default;
};
/// The chosen pairs of a plan: what goes where, and what the small colony gains.
std::vector<PairArrow> pairArrows(const planning::BoostPlan& plan);

/// The yard to scale with its hives as marks. Knows how to show, choose and drag; what a drag means
/// is asked and done by YardsPlace.
class YardMap : public QGraphicsView {
  Q_OBJECT
 public:
  explicit YardMap(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~YardMap() override;

  /// Brings the items up to date with the season, by id; positions of unchanged hives stay.
  void refresh();
  /// Shows all hives of the yard, or all its ground where none stands.
  void fit();
  void zoomBy(double factor);
  void zoomBy(double factor, QPointF about);
  void setArranging(bool arranging);
  [[nodiscard]] bool arranging() const { return m_arranging; }
  void setArrows(std::vector<PairArrow> arrows);

  /// Says why a drop of one hive onto another can come to nothing; empty when it can.
  using DropCheck = std::function<QString(const base::HiveId& carried, const base::HiveId& target)>;
  void setDropCheck(DropCheck check) { m_dropCheck = std::move(check); }

  [[nodiscard]] const HiveItem* item(const base::HiveId& hive) const;
  /// Middle of the hive's mark in the viewport.
  [[nodiscard]] QPoint markCentre(const base::HiveId& hive) const;
  [[nodiscard]] double pxPerMetre() const;
  [[nodiscard]] int groupCount() const { return static_cast<int>(m_groups.size()); }
  /// Metres of the drawing at a point of the viewport.
  [[nodiscard]] QPointF metresAt(const QPoint& viewportPoint) const;
  /// Hives in walking order, as Tab goes through them.
  [[nodiscard]] std::vector<base::HiveId> order() const;

  /// Several hives chosen together; empty while only the window's one hive is chosen.
  [[nodiscard]] const std::set<base::HiveId>& marked() const { return m_marked; }
  void setMarked(std::set<base::HiveId> hives);
  void markAll();
  /// The marked hives, or else the window's chosen one, in walking order.
  [[nodiscard]] std::vector<base::HiveId> chosenHives() const;
  /// Arrange mode on a day where the drawing can be changed.
  [[nodiscard]] bool mayArrange() const { return m_arranging && mayDrag(); }

  /// Stand or feature under a point of the viewport, a picture only when nothing lies on it.
  [[nodiscard]] std::optional<Thing> thingAt(const QPoint& point) const;
  /// The stand or feature that keys act on in Arrange mode.
  [[nodiscard]] std::optional<Thing> chosenThing() const;
  void chooseThing(std::optional<ThingId> thing);
  /// Goes on to the next stand or feature, after the last one to none.
  void chooseNextThing();

  /// The measuring line: two clicks, or the arrow keys and Return.
  void setMeasuring(bool measuring);
  [[nodiscard]] const MapRuler& ruler() const { return m_ruler; }
  [[nodiscard]] QString rulerHint() const;
  /// How much of the pictures of the ground shows through, 0 to 100.
  void setPicturePercent(int percent);

 Q_SIGNALS:
  void hiveOpened(const outyard::base::HiveId& hive);
  /// Without a hive: over the ground.
  void menuAsked(const std::optional<outyard::base::HiveId>& hive, const QPoint& viewportPoint);
  /// A drag or a key step in Arrange mode has ended here.
  void arranged(const outyard::session::Spot& spot);
  /// The same for several hives carried together.
  void arrangedAll(const std::vector<outyard::session::Spot>& spots);
  /// A key asks to turn the chosen hives, clockwise.
  void turnAsked(double degrees);
  void markedChanged();
  /// A stand or feature was carried or turned in Arrange mode: metres east and north, clockwise.
  void thingShifted(const outyard::yards::ThingId& thing, QPointF byM, double turnDeg);
  void thingChangeAsked();
  void thingRemoveAsked();
  void thingChosen();
  /// Both points of the measuring line are set (metres of the drawing).
  void measured(QPointF fromM, QPointF toM);
  void measuringStopped();
  /// A drag outside Arrange mode has ended on the ground.
  void carriedTo(const outyard::session::Spot& spot);
  void droppedOn(const outyard::base::HiveId& carried, const outyard::base::HiveId& target);
  /// Let go outside the map (over the list of yards, perhaps).
  void droppedOutside(const outyard::base::HiveId& carried, const QPoint& globalPoint);
  /// The same for several hives carried together outside Arrange mode.
  void severalCarriedTo(const std::vector<outyard::session::Spot>& spots);
  void severalDroppedOutside(const std::vector<outyard::session::Spot>& spots,
                             const QPoint& globalPoint);
  /// What the drag under way would do, or nothing: for the line below the map.
  void dragHint(const QString& text);

 protected:
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void keyReleaseEvent(QKeyEvent* event) override;
  void contextMenuEvent(QContextMenuEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void drawForeground(QPainter* painter, const QRectF& rect) override;
  bool focusNextPrevChild(bool next) override;

 private:
  struct Drag {
    base::HiveId hive;
    QPoint pressed;  ///< viewport
    QPointF grab;    ///< from the pointer to the hive's place, scene
    QPointF home;    ///< scene
    bool moving = false;
    std::optional<base::HiveId> target;
    QString refused;
    session::Spot spot;
    std::map<base::HiveId, QPointF> others;  ///< carried along, with their places, scene
  };
  /// A frame drawn over the ground to mark what lies in it, viewport.
  struct Band {
    QPoint from, to;
    bool adds = false;
  };
  struct CarriedThing {
    ThingId id;
    QPoint pressed;  ///< viewport
    QPointF from;    ///< scene
    bool moving = false;
    std::map<base::HiveId, QPointF> hives;  ///< on the stand, with their places, scene
  };
  bool takeThing(const QPoint& point);
  bool takeStandOf(const base::HiveId& hive);
  void carryThing(const QPoint& point);
  /// Without a point: called off.
  void letThingGo(std::optional<QPoint> point);
  [[nodiscard]] QGraphicsItem* itemOf(const ThingId& thing) const;
  [[nodiscard]] QRectF viewportRectOf(const Thing& thing) const;
  bool thingKey(const QKeyEvent& event);
  bool rulerKey(const QKeyEvent& event);
  void rulerMove(const QPoint& point);
  void rulerPut();
  /// The way from home, and the nearest hive that is not carried.
  [[nodiscard]] QString carriedHint() const;
  void paintTools(QPainter& painter) const;
  void updateWay();

  void refreshHives();
  void refreshStands();
  void refreshFeatures();
  void refreshGround();
  void layOut();
  void refreshChosen();
  void beginDrag();
  void dragTo(const QPoint& point);
  void endDrag(const QPoint& point);
  void cancelDrag();
  /// Scrolls only as far as is needed for the spot to be seen with its mark.
  void reveal(QPointF spot);
  void stepHive(QPointF direction);
  bool stepInOrder(int by);
  void nudgeChosen(QPointF metres);
  void openGroup(const GroupItem& group);
  void pickWithShift(const base::HiveId& hive);
  void endBand();
  void dropStaleMarks();
  void paintBand(QPainter& painter) const;
  [[nodiscard]] HiveItem* hiveAt(const QPoint& point) const;
  [[nodiscard]] GroupItem* groupAt(const QPoint& point) const;
  [[nodiscard]] bool mayDrag() const;
  [[nodiscard]] session::Spot spotFor(const base::HiveId& hive, QPointF scene, bool snap) const;
  [[nodiscard]] QRectF groundRect() const;
  [[nodiscard]] QRectF hivesRect() const;
  void paintNorth(QPainter& painter, const QRectF& area) const;
  void paintScaleBar(QPainter& painter, const QRectF& area) const;
  void paintArrows(QPainter& painter) const;
  void paintArrowLabels(QPainter& painter) const;

  widgets::SeasonHub& m_hub;
  QGraphicsScene m_scene;
  GroundItem* m_ground = nullptr;
  ArrowLayer* m_arrowLayer = nullptr;
  std::map<base::HiveId, HiveItem*> m_hives;
  std::map<std::string, StandItem*> m_stands;
  std::map<std::string, FeatureItem*> m_features;
  std::vector<GroupItem*> m_groups;
  std::map<base::HiveId, std::size_t> m_groupOf;
  std::vector<PairArrow> m_arrows;
  std::optional<base::YardId> m_yard;
  std::optional<Drag> m_drag;
  std::optional<QPoint> m_pan;
  std::set<base::HiveId> m_marked;
  std::optional<Band> m_band;
  std::optional<ThingId> m_thing;
  std::optional<CarriedThing> m_carriedThing;
  MapRuler m_ruler;
  QRect m_wayShown;  ///< where the line of a drag is painted, viewport
  int m_picturePercent = 100;
  DropCheck m_dropCheck;
  bool m_arranging = false, m_space = false, m_fitted = false, m_userZoomed = false;
};

}  // namespace outyard::yards

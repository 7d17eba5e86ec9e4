// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/planning/boost.h"
#include "core/session/commands.h"
#include "ui/widgets/place.h"
#include "ui/widgets/session_model.h"
#include "ui/yards/joint_dialog.h"
#include "ui/yards/spot_dialog.h"
#include "ui/yards/thing_dialogs.h"

class QLabel;
class QMenu;
class QSplitter;
class QStackedWidget;
class QTimer;
class QToolButton;

namespace outyard::yards {

class DateBar;
class FilteredHives;
class HivePanel;
class HiveTable;
class Legend;
class YardList;
class YardMap;

/// The yards: list on the left, map or table in the middle, the chosen hive on the right, the days
/// below. Says what a drag on the map means and does it.
class YardsPlace : public widgets::Place {
  Q_OBJECT
 public:
  explicit YardsPlace(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  ~YardsPlace() override;

  [[nodiscard]] QString title() const override;
  [[nodiscard]] QIcon icon() const override;
  void printTo(QPagedPaintDevice& device) override;
  [[nodiscard]] QImage picture() override;
  [[nodiscard]] QList<QAction*> menuActions() const override;
  /// A planned boost, union or change of places (widgets::beginFor) opens the dialog of the pair.
  void begin(const QString& task) override;
  void takeFocus() override;

  /// Arrows of the plan's chosen pairs over the map; null takes them away.
  void showPairs(const planning::BoostPlan* plan);
  void showAsTable(bool table);
  [[nodiscard]] YardMap& map() const { return *m_map; }
  [[nodiscard]] HiveTable& table() const { return *m_table; }

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void makeActions();
  void makeArrangeActions();
  void makeThingActions();
  void refreshThingActions();
  void addFeature(std::optional<QPointF> placeM);
  void runFeature(FeatureDialog& dialog);
  void askThing(bool remove);
  void changeThing(const Thing& thing);
  void shiftThing(const ThingId& id, QPointF byM, double turnDeg);
  [[nodiscard]] QString thingHint() const;
  void addThingsAt(QMenu& menu, const QPoint& globalPoint);
  void makeBulkActions();
  void askBulk();
  /// Chosen on the map, or in the table while that is shown.
  [[nodiscard]] std::vector<base::HiveId> chosenHives() const;
  void makeToolActions();
  void refreshToolActions();
  void scalePicture(QPointF fromM, QPointF toM);
  void askSeveral(const std::vector<session::Spot>& spots, const base::YardId& to);
  void copyLayout();
  void saveMap();
  void printMap();
  QWidget* makeToolRow();
  QWidget* makeCentre();
  void connectMap();
  void refresh();
  void refreshActions();
  void refreshHead();
  void showMenu(const std::optional<base::HiveId>& hive, const QPoint& globalPoint,
                std::optional<QPointF> groundM);
  void refreshArrangeActions();
  /// Why the chosen hives cannot be arranged, at least so many; empty when they can.
  [[nodiscard]] QString whyNoArrange(int least) const;
  void arrangeAll(const std::vector<session::Spot>& spots);
  void turnChosen(double degrees);
  void askFacing();
  void askJoint(const base::HiveId& hive, std::optional<base::HiveId> target, Joint joint);
  void askMove(session::Spot spot, const base::YardId& to);
  void askSpot(SpotDialog::Kind kind);
  void addYard();
  void changeYard();
  void askFlows();
  void askWeather();
  void addHive(std::optional<QPointF> placeM);
  void addStand(std::optional<QPointF> placeM);
  [[nodiscard]] std::optional<session::Spot> chosenSpot() const;
  [[nodiscard]] QPointF freePlace() const;

  widgets::SeasonHub& m_hub;
  std::optional<base::YardId> m_yard;  ///< what table and days show
  YardList* m_list = nullptr;
  YardMap* m_map = nullptr;
  HiveTable* m_table = nullptr;
  FilteredHives* m_tableSide = nullptr;
  HivePanel* m_panel = nullptr;
  DateBar* m_dates = nullptr;
  Legend* m_legend = nullptr;
  QStackedWidget* m_views = nullptr;
  QSplitter* m_splitter = nullptr;
  QLabel *m_name = nullptr, *m_hint = nullptr;
  QTimer* m_listWait = nullptr;
  QMenu* m_several = nullptr;
  QAction *m_asMap = nullptr, *m_asTable = nullptr, *m_arrange = nullptr, *m_showLegend = nullptr;
  QAction *m_zoomIn = nullptr, *m_zoomOut = nullptr, *m_fit = nullptr;
  QAction *m_addYard = nullptr, *m_changeYard = nullptr, *m_course = nullptr, *m_addHive = nullptr,
          *m_addStand = nullptr;
  QAction *m_addFeature = nullptr, *m_changeThing = nullptr, *m_removeThing = nullptr,
          *m_nextThing = nullptr, *m_measure = nullptr, *m_copyLayout = nullptr,
          *m_saveMap = nullptr, *m_printMap = nullptr, *m_scalePicture = nullptr;
  QAction *m_flows = nullptr, *m_weather = nullptr, *m_bulk = nullptr;
  QMenu* m_pictureMenu = nullptr;
  bool m_scaling = false;  ///< the next measured line scales a picture
  QAction *m_openHive = nullptr, *m_inspect = nullptr, *m_setOver = nullptr, *m_unite = nullptr,
          *m_swap = nullptr, *m_moveHive = nullptr, *m_correct = nullptr;
};

}  // namespace outyard::yards

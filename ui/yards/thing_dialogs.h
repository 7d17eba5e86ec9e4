// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "ui/yards/new_dialogs.h"

class QPushButton;

namespace outyard::yards {

/// What is drawn in a yard besides its hives.
using Thing = std::variant<apiary::Stand, apiary::Feature>;
/// A stand or feature by its key: what may be kept over a change of the season.
struct ThingId {
  bool isStand = false;
  std::string key;
  bool operator==(const ThingId&) const = default;
};

/// Gate, truck place, water, fence or picture of the ground: a new one, or the row of one that is
/// there.
class FeatureDialog : public NewDialog {
  Q_OBJECT
 public:
  FeatureDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM,
                QWidget* parent = nullptr);
  FeatureDialog(widgets::SeasonHub& hub, const apiary::Feature& feature, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;
  /// Copies a chosen picture to the folder beside the season file; a sentence when it cannot.
  [[nodiscard]] QString bringPicture() const;

 protected:
  [[nodiscard]] QString whyNotYet() const override;

 private:
  FeatureDialog(widgets::SeasonHub& hub, apiary::Feature feature, bool isNew, QWidget* parent);
  [[nodiscard]] apiary::FeatureKind kind() const;
  [[nodiscard]] bool hasTwoEnds() const;
  void chooseFile();
  void showKind();

  apiary::Feature m_feature;
  bool m_new;
  QComboBox* m_kind;
  QDoubleSpinBox *m_x, *m_y, *m_x2, *m_y2;
  QLineEdit *m_notes, *m_file;
  QPushButton* m_choose;
  QWidget* m_fileRow;
  QFormLayout* m_form;
  QString m_source;  ///< a picture that is still to be copied
};

/// Chooses a stand or feature of the yard, to change it or to take it away.
class ThingDialog : public NewDialog {
  Q_OBJECT
 public:
  enum class For { Change, Remove };
  ThingDialog(widgets::SeasonHub& hub, const base::YardId& yard, For purpose,
              const std::optional<Thing>& first, QWidget* parent = nullptr);
  /// Removal; for a change, what stands there now, so that the check can be asked.
  [[nodiscard]] session::CommandPtr command() const override;
  [[nodiscard]] Thing thing() const;

 private:
  For m_for;
  std::vector<Thing> m_things;
  QComboBox* m_which;
};

/// Stands and features of a yard, stands first.
std::vector<Thing> thingsOf(const apiary::Season& season, const base::YardId& yard);
ThingId idOf(const Thing& thing);
std::optional<Thing> findThing(const apiary::Season& season, const ThingId& id);
/// Moved east and north by metres and turned clockwise; hives go with their stand. Null when there
/// is nothing to be done (only stands turn).
session::CommandPtr shifted(const Thing& thing, QPointF byM, double turnDeg);
/// "stand S1", "gate (by the road)".
QString thingText(const Thing& thing);
session::CommandPtr removal(const Thing& thing);
/// Where pictures of the ground are kept, beside the season file; empty while it has no file.
QString picturesFolder(const widgets::SeasonHub& hub);

}  // namespace outyard::yards

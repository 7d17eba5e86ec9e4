// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QDialogButtonBox;
class QLabel;
class QRadioButton;

namespace outyard::yards {

/// What one hive dropped on another can mean: set over with an excluder, unite, swap stands.
enum class Joint { SetOver, Unite, Swap };

/// The cheapest command for a pair, to say before a drop whether anything can come of it.
session::CommandPtr jointCommand(Joint joint, const base::HiveId& carried,
                                 const base::HiveId& target, base::Date date);
/// Why none of the three can be done; empty when one can.
QString whyNoJoint(const widgets::SeasonHub& hub, const base::HiveId& carried,
                   const base::HiveId& target);

/// Asks what a drop means, with whom, when, and with what between; says what speaks against it.
class JointDialog : public QDialog {
  Q_OBJECT
 public:
  JointDialog(widgets::SeasonHub& hub, base::HiveId carried, std::optional<base::HiveId> target,
              Joint joint, QWidget* parent = nullptr);

  [[nodiscard]] Joint joint() const;
  [[nodiscard]] base::Date date() const;
  /// What the fields say: records up to the working date, a task for a later day.
  [[nodiscard]] session::CommandPtr command() const;

 private:
  void refresh();
  [[nodiscard]] session::CommandPtr command(Joint joint) const;
  [[nodiscard]] session::CommandPtr taskFor(Joint joint) const;
  [[nodiscard]] base::HiveId target() const;
  [[nodiscard]] QString guide(Joint joint) const;
  [[nodiscard]] std::optional<base::QueenId> queenOf(const base::HiveId& hive) const;

  widgets::SeasonHub& m_hub;
  base::HiveId m_carried;
  QComboBox *m_target, *m_between, *m_queen;
  QRadioButton *m_setOver, *m_unite, *m_swap;
  QCheckBox* m_paper;
  QDateEdit* m_date;
  QLabel *m_does, *m_guide, *m_why;
  QDialogButtonBox* m_buttons;
};

}  // namespace outyard::yards

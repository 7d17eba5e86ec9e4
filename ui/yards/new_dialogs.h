// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <QPointF>

#include "core/session/commands.h"
#include "ui/widgets/session_model.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QDialogButtonBox;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace outyard::yards {

/// A small form whose button is greyed, with the reason, until its command can be done.
class NewDialog : public QDialog {
  Q_OBJECT
 public:
  [[nodiscard]] virtual session::CommandPtr command() const = 0;

 protected:
  NewDialog(widgets::SeasonHub& hub, const QString& title, QWidget* parent);
  void finish(QFormLayout* form, const QString& note);
  /// What must still be said before the command can be asked for; empty when nothing.
  [[nodiscard]] virtual QString whyNotYet() const { return {}; }
  void refresh();
  [[nodiscard]] QLineEdit* textField(const char* objectName) const;
  [[nodiscard]] QDoubleSpinBox* lengthField(const char* objectName, double metres, double least,
                                            double most) const;
  [[nodiscard]] double metres(const QDoubleSpinBox& field) const;
  /// The same, but exactly what was there while the field shows just that, rounded.
  [[nodiscard]] double metresOr(const QDoubleSpinBox& field, double wasM) const;

  widgets::SeasonHub& m_hub;

 private:
  QLabel* m_why;
  QDialogButtonBox* m_buttons;
};

/// A new yard, or the row of one that is there.
class YardDialog : public NewDialog {
  Q_OBJECT
 public:
  YardDialog(widgets::SeasonHub& hub, const apiary::Yard* yard, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 private:
  apiary::Yard m_yard;
  bool m_new;
  QLineEdit *m_id, *m_name, *m_access, *m_latitude, *m_longitude;
  QDoubleSpinBox *m_width, *m_length, *m_north;
};

/// A new hive with its boxes at a place of the yard.
class HiveDialog : public NewDialog {
  Q_OBJECT
 public:
  HiveDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM, const QString& stand,
             QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;
  /// The next number of the yard: TR-12 after TR-11.
  static QString nextNumber(const apiary::Season& season, const base::YardId& yard);

 private:
  base::YardId m_yard;
  QLineEdit* m_number;
  QDateEdit* m_from;
  QComboBox *m_type, *m_stand;
  QSpinBox *m_chambers, *m_frames, *m_entrance;
  QDoubleSpinBox *m_x, *m_y;
};

/// A new stand or pallet, or the row of one that is there: its hives then go with it.
class StandDialog : public NewDialog {
  Q_OBJECT
 public:
  StandDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM,
              QWidget* parent = nullptr);
  StandDialog(widgets::SeasonHub& hub, const apiary::Stand& stand, QWidget* parent = nullptr);
  [[nodiscard]] session::CommandPtr command() const override;

 private:
  StandDialog(widgets::SeasonHub& hub, apiary::Stand stand, bool isNew, QWidget* parent);

  apiary::Stand m_stand;
  bool m_new;
  QLineEdit* m_name;
  QComboBox* m_kind;
  QSpinBox* m_angle;
  QDoubleSpinBox *m_x, *m_y;
};

}  // namespace outyard::yards

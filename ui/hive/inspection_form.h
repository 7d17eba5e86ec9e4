// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <optional>
#include <vector>

#include "core/session/commands.h"
#include "ui/adapt/units.h"
#include "ui/hive/comb_model.h"
#include "ui/hive/inspection_fields.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;
class QTabWidget;
class QTimer;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class CombPage;

/// Enters what was seen at one hive, in the order of the work. Every value may be left out, and
/// left out is not recorded. Enter goes to the next value, Ctrl+Enter records, Escape asks before
/// anything typed is lost.
class InspectionForm : public QDialog {
  Q_OBJECT
 public:
  InspectionForm(widgets::SeasonHub& hub, const base::HiveId& hive,
                 std::optional<base::ColonyId> colony, QWidget* parent = nullptr);
  ~InspectionForm() override;
  /// Fills the form from a record; recording then supersedes that one.
  void correct(const base::RecordId& old);

  /// Recording ticks the planned task off.
  void forTask(base::TaskId task) { m_task = std::move(task); }

  /// What is typed so far; values that do not stand are left out.
  [[nodiscard]] session::InspectionEntry entry() const;
  /// First sentence about what is typed; empty when all of it stands.
  [[nodiscard]] QString firstFault() const;
  [[nodiscard]] bool touched() const;

 public Q_SLOTS:
  void accept() override;
  void reject() override;

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Editor {
    const FormField* field = nullptr;
    QLineEdit* line = nullptr;
    QComboBox* choice = nullptr;
    QPlainTextEdit* notes = nullptr;
    QLabel* last = nullptr;
    QLabel* fault = nullptr;
    apiary::Value value;  ///< as it stands; not recorded while there is a fault
    QString start;        ///< text when the form was opened
  };
  QWidget* makeSummary();
  void makeEditor(Editor& editor, const FormField& field, QWidget* page);
  [[nodiscard]] static QWidget* widgetOf(const Editor& editor);
  [[nodiscard]] static QString textOf(const Editor& editor);
  static void setText(Editor& editor, const QString& text);
  void read(Editor& editor);
  void startOver();
  void showLast();
  void showStack();
  void showEstimate();
  void say(const QString& sentence);
  [[nodiscard]] std::optional<base::ColonyId> colony() const;
  [[nodiscard]] base::Date date() const;

  widgets::SeasonHub& m_hub;
  base::HiveId m_hive;
  std::optional<base::RecordId> m_old;
  std::optional<base::TaskId> m_task;
  apiary::Inspection m_base;  ///< values that the form does not show are kept from here
  std::vector<apiary::SeamCount> m_seams;
  apiary::Season m_ofHive;
  adapt::Units m_units;
  std::vector<Editor> m_editors;
  bool m_combsTouched = false;

  QTabWidget* m_pages = nullptr;
  QComboBox* m_colony = nullptr;
  CombModel* m_combs = nullptr;
  CombPage* m_combPage = nullptr;
  QLabel* m_estimate = nullptr;
  QLabel* m_status = nullptr;
  QPushButton* m_record = nullptr;
  QTimer* m_delay = nullptr;
};

}  // namespace outyard::hive

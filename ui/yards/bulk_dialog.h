// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <vector>

#include "core/session/bulk.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QDialogButtonBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QSpinBox;
class QStackedWidget;
class QTableWidget;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::yards {

/// One piece of work at the chosen hives, or at all of the yard: the list below says at which it
/// cannot be done, and why; a hive can be left out. One undo step.
class BulkDialog : public QDialog {
  Q_OBJECT
 public:
  BulkDialog(widgets::SeasonHub& hub, base::YardId yard, std::vector<base::HiveId> chosen,
             QWidget* parent = nullptr);

  /// For the hives that are ticked and can be done; null when there are none.
  [[nodiscard]] session::CommandPtr command() const;

 private:
  struct Page {
    QWidget* widget = nullptr;
    QFormLayout* form = nullptr;
  };
  struct Line {
    base::HiveId hive;
    QString why;  ///< empty = it can be done
    bool leftOut = false;
  };
  Page addPage();
  void makeBoxPage();
  void makeFeedPage();
  void makeTreatPage();
  /// One column of labels for the form and its pages.
  void alignLabels();
  void fillHives();
  void refresh();
  void showLines();
  [[nodiscard]] session::BulkWork work() const;
  [[nodiscard]] QString fieldFault() const;
  [[nodiscard]] QString caution() const;
  [[nodiscard]] QString whyNot(const base::HiveId& hive) const;
  [[nodiscard]] int doable() const;

  widgets::SeasonHub& m_hub;
  base::YardId m_yard;
  std::vector<base::HiveId> m_chosen;
  std::vector<Line> m_lines;
  bool m_filling = false;

  QComboBox *m_scope, *m_kind;
  QDateEdit* m_date;
  QStackedWidget* m_pages;
  QComboBox *m_role = nullptr, *m_type = nullptr, *m_fill = nullptr, *m_feed = nullptr,
            *m_unit = nullptr;
  QSpinBox* m_frames = nullptr;
  QCheckBox* m_under = nullptr;
  QLineEdit *m_amount = nullptr, *m_product = nullptr, *m_dose = nullptr, *m_batch = nullptr,
            *m_waiting = nullptr, *m_detail;
  QLabel *m_caution, *m_summary;
  QTableWidget* m_list;
  QDialogButtonBox* m_buttons;
};

}  // namespace outyard::yards

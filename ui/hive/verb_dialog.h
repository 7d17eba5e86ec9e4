// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/session/commands.h"

class QComboBox;
class QDateEdit;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

/// A small dialog for one piece of work at a hive: the date, what must be known, the usual caution,
/// and beneath them why it cannot be done as it stands. Its button is greyed until it can.
class VerbDialog : public QDialog {
  Q_OBJECT
 public:
  VerbDialog(widgets::SeasonHub& hub, const QString& name, const QString& title,
             const QString& caution, QWidget* parent);

  QComboBox* addChoice(const QString& name, const QString& label);
  /// A number that may be left out; `unit` stands on the label.
  QLineEdit* addNumber(const QString& name, const QString& label, double least, double most,
                       int decimals);
  QLineEdit* addText(const QString& name, const QString& label, const QString& hint = {});
  QPlainTextEdit* addNotes(const QString& name, const QString& label);
  void addSentence(const QString& text);

  [[nodiscard]] base::Date date() const;
  /// nullopt when the field is empty.
  [[nodiscard]] static std::optional<double> number(const QLineEdit* field);
  /// Makes the command from the fields; asked at every change.
  void setMaker(std::function<session::CommandPtr()> make);
  /// The command as the fields stand; after the dialog was accepted.
  [[nodiscard]] session::CommandPtr command() const { return m_make(); }

 public Q_SLOTS:
  void refresh();

 private:
  [[nodiscard]] QString fieldFault() const;

  struct NumberField {
    QLineEdit* edit = nullptr;
    QString label;
    double least = 0, most = 0;
    int decimals = 0;
  };
  widgets::SeasonHub& m_hub;
  std::function<session::CommandPtr()> m_make;
  std::vector<NumberField> m_numbers;
  QFormLayout* m_form = nullptr;
  QDateEdit* m_date = nullptr;
  QLabel* m_reason = nullptr;
  QPushButton* m_ok = nullptr;
};

}  // namespace outyard::hive

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QWidget>
#include <utility>
#include <vector>

class QHBoxLayout;
class QLabel;

namespace outyard::widgets {

class Place;

/// What a place shows while it has nothing to show: a sentence that says why, and buttons that lead
/// on. The sentence has the objectName "emptySentence", a button "first_" and its name. Buttons ask
/// the window for what they name; "yards" opens that place, "again" asks the place itself.
class EmptyPage : public QWidget {
  Q_OBJECT
 public:
  /// A button's name, by which it is asked for, and its words.
  using Button = std::pair<QString, QString>;

  explicit EmptyPage(Place& place);
  /// Comes to the front of the pages that it stands among.
  void say(const QString& sentence, const std::vector<Button>& buttons = {});
  /// Nothing is open: "sample", "new" and "open" lead on.
  void sayNoSeason();
  /// The buttons where there is no yard or no hive yet: "yards" and "tables".
  [[nodiscard]] static std::vector<Button> firstYards();
  [[nodiscard]] QString sentence() const;

 Q_SIGNALS:
  void again();

 private:
  Place& m_place;
  QLabel* m_sentence;
  QHBoxLayout* m_buttons;
};

}  // namespace outyard::widgets

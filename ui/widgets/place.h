// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QIcon>
#include <QImage>
#include <QList>
#include <QString>
#include <QWidget>
#include <functional>

class QAction;
class QKeySequence;
class QPagedPaintDevice;

namespace outyard::widgets {

/// One place of the main window (Yards, Hive, Pairs): a page with a name, an icon, and a way to
/// print or keep what it shows.
class Place : public QWidget {
  Q_OBJECT
 public:
  explicit Place(QWidget* parent = nullptr) : QWidget(parent) {}
  /// As the bar of places shows it.
  [[nodiscard]] virtual QString title() const = 0;
  [[nodiscard]] virtual QIcon icon() const = 0;
  /// Paints what the place shows on pages (black on white, never the screen's dark colours).
  virtual void printTo(QPagedPaintDevice& device) = 0;
  /// What it shows as a picture, for the clipboard or a PNG.
  [[nodiscard]] virtual QImage picture() { return grab().toImage(); }
  /// Actions that the main window lists in its menu of the place, in order.
  [[nodiscard]] virtual QList<QAction*> menuActions() const { return {}; }
  /// Where the keyboard goes when the place is opened.
  virtual void takeFocus() { setFocus(); }
  /// Begins something at once when the place is opened from another one: "inspection" in Hive.
  virtual void begin(const QString& /*task*/) {}

 Q_SIGNALS:
  /// Asks the window to open another place on the selected hive ("hive", "pairs", "yards"), and
  /// to begin something there.
  void openPlace(const QString& name, const QString& task = {});
  /// What only the window can do: "sample", "new", "open", "tables", "weather", "sheet".
  void asked(const QString& what);

 protected:
  /// An action of the place: its keys work wherever in the place the keyboard is.
  QAction* make(const QString& name, const QString& text, const QKeySequence& keys,
                const std::function<void()>& slot);
};

}  // namespace outyard::widgets

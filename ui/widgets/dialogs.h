// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>

class QDialog;
class QWidget;

namespace outyard::widgets {

/// Everything that stops the window and waits for a person goes through here, so that tests can
/// answer instead. Nothing else in ui calls exec() or a static dialog function.
class Dialogs {
 public:
  virtual ~Dialogs() = default;
  /// True when the person chose the button named by `yes`.
  virtual bool question(QWidget* parent, const QString& title, const QString& text,
                        const QString& yes) = 0;
  virtual void inform(QWidget* parent, const QString& title, const QString& text) = 0;
  /// Something could not be done: the sentences of a base::Failure.
  virtual void failure(QWidget* parent, const QString& title, const QString& text) = 0;
  /// Shows a dialog of our own until it is closed; true when it was accepted. A test finds the
  /// fields by objectName, fills them in and accepts.
  virtual bool run(QDialog& dialog) = 0;
  /// Empty when the person changed their mind. `filter` as in QFileDialog.
  virtual QString openFile(QWidget* parent, const QString& title, const QString& filter) = 0;
  virtual QString saveFile(QWidget* parent, const QString& title, const QString& filter,
                           const QString& suggestion) = 0;
  virtual QString chooseFolder(QWidget* parent, const QString& title) = 0;
};

/// The real ones.
class WindowDialogs : public Dialogs {
 public:
  bool question(QWidget* parent, const QString& title, const QString& text,
                const QString& yes) override;
  void inform(QWidget* parent, const QString& title, const QString& text) override;
  void failure(QWidget* parent, const QString& title, const QString& text) override;
  bool run(QDialog& dialog) override;
  QString openFile(QWidget* parent, const QString& title, const QString& filter) override;
  QString saveFile(QWidget* parent, const QString& title, const QString& filter,
                   const QString& suggestion) override;
  QString chooseFolder(QWidget* parent, const QString& title) override;
};

}  // namespace outyard::widgets

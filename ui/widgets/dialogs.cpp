// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/dialogs.h"

#include <QDialog>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

namespace outyard::widgets {

bool WindowDialogs::question(QWidget* parent, const QString& title, const QString& text,
                             const QString& yes) {
  QMessageBox box(QMessageBox::Question, title, text, QMessageBox::Cancel, parent);
  const auto* accept = box.addButton(yes, QMessageBox::AcceptRole);
  box.setDefaultButton(QMessageBox::Cancel);
  box.exec();
  return box.clickedButton() == accept;
}

void WindowDialogs::inform(QWidget* parent, const QString& title, const QString& text) {
  QMessageBox(QMessageBox::Information, title, text, QMessageBox::Ok, parent).exec();
}

void WindowDialogs::failure(QWidget* parent, const QString& title, const QString& text) {
  QMessageBox(QMessageBox::Warning, title, text, QMessageBox::Ok, parent).exec();
}

bool WindowDialogs::run(QDialog& dialog) {
  return dialog.exec() == QDialog::Accepted;
}

QString WindowDialogs::openFile(QWidget* parent, const QString& title, const QString& filter) {
  return QFileDialog::getOpenFileName(parent, title, {}, filter);
}

QString WindowDialogs::saveFile(QWidget* parent, const QString& title, const QString& filter,
                                const QString& suggestion) {
  return QFileDialog::getSaveFileName(parent, title, suggestion, filter);
}

QString WindowDialogs::chooseFolder(QWidget* parent, const QString& title) {
  return QFileDialog::getExistingDirectory(parent, title);
}

}  // namespace outyard::widgets

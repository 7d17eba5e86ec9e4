// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/help_page.h"

#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QUrl>
#include <QVBoxLayout>

namespace outyard::main_window {

HelpPage::HelpPage(const QString& name, const QString& title, QWidget* parent) : QDialog(parent) {
  setWindowTitle(title);
  auto* page = new QTextBrowser(this);
  page->setObjectName(QStringLiteral("helpPage"));
  page->setAccessibleName(title);
  page->setSearchPaths({QStringLiteral(":/help")});
  page->setSource(QUrl(QStringLiteral("qrc:/help/%1.md").arg(name)),
                  QTextDocument::MarkdownResource);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(page, 1);
  layout->addWidget(box);
  resize(1080, 720);
  page->setFocus();
}

}  // namespace outyard::main_window

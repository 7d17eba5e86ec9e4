// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/guide.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace outyard::main_window {

Guide::Guide(QWidget* parent) : QFrame(parent) {
  setObjectName(QStringLiteral("guide"));
  setAccessibleName(tr("First steps"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  setBackgroundRole(QPalette::AlternateBase);
  auto* title = new QLabel(tr("First steps with the sample season"));
  QFont bold = title->font();
  bold.setBold(true);
  title->setFont(bold);
  auto* done = new QPushButton(tr("Put the guide away"));
  done->setObjectName(QStringLiteral("guideDone"));
  connect(done, &QPushButton::clicked, this, &Guide::dismissed);
  const QStringList lines{
      tr("Desk: what the next two weeks ask for, yard by yard, and the hives at risk. Enter leads "
         "to "
         "the hive; chosen work becomes tasks."),
      tr("Yards: choose a yard on the left. Each hive is drawn as it looks with the lid off; the "
         "filled seams are its bees. Letters stand for what needs you."),
      tr("Drag the days below the map back to see the yard as it stood."),
      tr("Pairs: which small colonies are worth help, and which neighbour can give."),
      tr("Print the yard sheet, take it along, and type it back in (Enter a sheet, in Rounds) in "
         "the evening."),
      tr("Everything can be undone (Ctrl+Z). Your own season: File, New season.")};
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(12, 8, 12, 8);
  grid->setHorizontalSpacing(8);
  grid->setVerticalSpacing(2);
  grid->addWidget(title, 0, 0, 1, 2);
  int row = 1;
  for (const QString& line : lines) {
    auto* number = new QLabel(QString::number(row));
    number->setAlignment(Qt::AlignTop | Qt::AlignRight);
    auto* text = new QLabel(line);
    text->setWordWrap(true);
    grid->addWidget(number, row, 0);
    grid->addWidget(text, row, 1);
    ++row;
  }
  grid->addWidget(done, 0, 2, row, 1, Qt::AlignTop);
  grid->setColumnStretch(1, 1);
}

}  // namespace outyard::main_window

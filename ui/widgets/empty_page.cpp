// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/empty_page.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "ui/widgets/place.h"

namespace outyard::widgets {

EmptyPage::EmptyPage(Place& place)
    : QWidget(&place), m_place(place), m_sentence(new QLabel), m_buttons(new QHBoxLayout) {
  m_sentence->setObjectName(QStringLiteral("emptySentence"));
  m_sentence->setAlignment(Qt::AlignCenter);
  m_sentence->setWordWrap(true);
  auto* all = new QVBoxLayout(this);
  all->addStretch(2);
  all->addWidget(m_sentence);
  all->addSpacing(8);
  all->addLayout(m_buttons);
  all->addStretch(3);
}

void EmptyPage::say(const QString& sentence, const std::vector<Button>& buttons) {
  m_sentence->setText(sentence);
  while (auto* item = m_buttons->takeAt(0)) {
    if (auto* old = item->widget()) {
      old->setObjectName({});
      old->deleteLater();
    }
    delete item;
  }
  m_buttons->addStretch();
  for (const auto& [name, words] : buttons) {
    auto* button = new QPushButton(words);
    button->setObjectName(QStringLiteral("first_") + name);
    connect(button, &QPushButton::clicked, this, [this, name = name] {
      if (name == QStringLiteral("again")) {
        Q_EMIT again();
      } else if (name == QStringLiteral("yards")) {
        Q_EMIT m_place.openPlace(name);
      } else {
        Q_EMIT m_place.asked(name);
      }
    });
    m_buttons->addWidget(button);
  }
  m_buttons->addStretch();
  if (auto* pages = qobject_cast<QStackedWidget*>(parentWidget())) pages->setCurrentWidget(this);
}

void EmptyPage::sayNoSeason() {
  say(tr("No season is open. Begin with the sample season to look around, or with a season of "
         "your own."),
      {{QStringLiteral("sample"), tr("Open the &sample season")},
       {QStringLiteral("new"), tr("&New season…")},
       {QStringLiteral("open"), tr("&Open a season…")}});
}

std::vector<EmptyPage::Button> EmptyPage::firstYards() {
  return {{QStringLiteral("yards"), tr("Go to &Yards")},
          {QStringLiteral("tables"), tr("&Import tables…")}};
}

QString EmptyPage::sentence() const {
  return m_sentence->text();
}

}  // namespace outyard::widgets

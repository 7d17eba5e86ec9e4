// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/overrule_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/session/commands.h"
#include "ui/adapt/system_clock.h"
#include "ui/pairs/pairs_words.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

namespace outyard::pairs {

OverruleDialog::OverruleDialog(widgets::SeasonHub& hub, const strength::Judgement& judgement,
                               base::Date date, QWidget* parent)
    : QDialog(parent), m_hub(hub), m_hive(judgement.hive), m_colony(judgement.colony) {
  setObjectName(QStringLiteral("overruleDialog"));
  setWindowTitle(
      tr("Overrule the judgement on %1").arg(colonyText(judgement.colony, judgement.hive)));
  setMinimumWidth(460);
  auto* form = new QFormLayout(this);
  auto* rules =
      new QLabel(tr("The rules say: %1. %2")
                     .arg(widgets::verdictText(judgement.ruleVerdict.value_or(judgement.verdict)),
                          sentences(judgement.evidence)),
                 this);
  rules->setWordWrap(true);
  form->addRow(rules);
  m_date = new QDateEdit(adapt::toQDate(date), this);
  m_date->setObjectName(QStringLiteral("date"));
  m_date->setCalendarPopup(true);
  //: Day, month, year: see QLocale::toString.
  m_date->setDisplayFormat(tr("d MMM yyyy"));
  form->addRow(tr("&Date"), m_date);
  m_verdict = new QComboBox(this);
  m_verdict->setObjectName(QStringLiteral("verdict"));
  for (std::size_t i = 0; i < apiary::Codes<apiary::VerdictCode>::kText.size(); ++i) {
    m_verdict->addItem(widgets::verdictText(static_cast<apiary::VerdictCode>(i)),
                       static_cast<int>(i));
  }
  // What is most often meant: that a colony is worth help after all, or that it is the queen.
  const bool sound = judgement.verdict == apiary::VerdictCode::SmallSound;
  m_verdict->setCurrentIndex(static_cast<int>(sound ? apiary::VerdictCode::QueenSuspect
                                                    : apiary::VerdictCode::SmallSound));
  form->addRow(tr("In your &judgement it is"), m_verdict);
  m_reason = new QLineEdit(this);
  m_reason->setObjectName(QStringLiteral("reason"));
  m_reason->setPlaceholderText(tr("what you saw"));
  form->addRow(tr("&Because"), m_reason);
  auto* caution = new QLabel(tr("Caution: foul brood is never overruled. Nothing leaves that yard; "
                                "call the bee inspector."),
                             this);
  caution->setWordWrap(true);
  form->addRow(caution);
  m_why = new QLabel(this);
  m_why->setWordWrap(true);
  form->addRow(m_why);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  m_ok->setText(tr("&Record"));
  form->addRow(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_reason, &QLineEdit::textChanged, this, &OverruleDialog::refresh);
  connect(m_date, &QDateEdit::dateChanged, this, &OverruleDialog::refresh);
  connect(m_verdict, &QComboBox::currentIndexChanged, this, &OverruleDialog::refresh);
  m_reason->setFocus();
  refresh();
}

session::CommandPtr OverruleDialog::command() const {
  return session::overruleVerdict(
      m_hive, m_colony, adapt::fromQDate(m_date->date()),
      static_cast<apiary::VerdictCode>(m_verdict->currentData().toInt()),
      m_reason->text().trimmed().toStdString());
}

void OverruleDialog::refresh() {
  const QString why = m_hub.whyNot(*command());
  m_why->setText(why.isEmpty() ? QString() : tr("Not yet: %1").arg(why));
  m_ok->setEnabled(why.isEmpty());
}

}  // namespace outyard::pairs

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/stack_step_dialog.h"

#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <algorithm>

#include "core/sheet/walking_order.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/widgets/session_model.h"

namespace outyard::pairs {
namespace {

using planning::StackStepKind;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// Choices of a thing that may not have been looked for; the first leaves it out.
std::optional<bool> answer(const QComboBox* box) {
  if (!box || box->currentIndex() <= 0) return std::nullopt;
  return box->currentIndex() == 1;
}

/// nullopt when empty; false in `good` when it is no number.
std::optional<double> numberIn(const QLineEdit* edit, bool& good) {
  good = true;
  if (!edit || edit->text().trimmed().isEmpty()) return std::nullopt;
  const double value = QLocale().toDouble(edit->text().trimmed(), &good);
  return good ? std::optional(value) : std::nullopt;
}

}  // namespace

StackStepDialog::StackStepDialog(widgets::SeasonHub& hub, const planning::MadeStack& stack,
                                 const planning::StackStep& step, QWidget* parent)
    : QDialog(parent), m_hub(hub), m_stack(stack), m_step(step) {
  setObjectName(QStringLiteral("stackStepDialog"));
  setWindowTitle(tr("%1: %2 over %3")
                     .arg(adapt::words(planning::stepName(step.kind)), qs(stack.upper.str()),
                          qs(stack.lower.str())));
  setMinimumWidth(520);
  auto* form = new QFormLayout(this);
  QString head;
  for (const auto& m : planning::stepAdvice(step.kind)) {
    head += (head.isEmpty() ? QString() : QStringLiteral(" ")) + adapt::words(m);
  }
  for (const auto& m : step.cautions) head += u'\n' + tr("Caution: %1").arg(adapt::words(m));
  auto* words = new QLabel(head, this);
  words->setWordWrap(true);
  form->addRow(words);
  m_date = new QDateEdit(adapt::toQDate(hub.workingDate()), this);
  m_date->setObjectName(QStringLiteral("date"));
  m_date->setCalendarPopup(true);
  //: Day, month, year: see QLocale::toString.
  m_date->setDisplayFormat(tr("d MMM yyyy"));
  form->addRow(tr("&Date"), m_date);
  connect(m_date, &QDateEdit::dateChanged, this, &StackStepDialog::refresh);
  if (step.kind == StackStepKind::Separate) {
    makeParting(*form);
  } else {
    makeLook(*form);
  }
  m_why = new QLabel(this);
  m_why->setObjectName(QStringLiteral("whyNot"));
  m_why->setWordWrap(true);
  form->addRow(m_why);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  m_ok = buttons->button(QDialogButtonBox::Ok);
  m_ok->setText(tr("&Record"));
  form->addRow(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  refresh();
}

QComboBox* StackStepDialog::choice(QFormLayout& form, const QString& name, const QString& label,
                                   const QStringList& texts) {
  auto* box = new QComboBox(this);
  box->setObjectName(name);
  box->addItems(texts);
  QString plain = label;
  box->setAccessibleName(plain.remove(u'&'));
  form.addRow(label, box);
  connect(box, &QComboBox::currentIndexChanged, this, &StackStepDialog::refresh);
  return box;
}

QLineEdit* StackStepDialog::field(QFormLayout& form, const QString& name, const QString& label) {
  auto* edit = new QLineEdit(this);
  edit->setObjectName(name);
  QString plain = label;
  edit->setAccessibleName(plain.remove(u'&'));
  form.addRow(label, edit);
  connect(edit, &QLineEdit::textChanged, this, &StackStepDialog::refresh);
  return edit;
}

void StackStepDialog::makeLook(QFormLayout& form) {
  const QString none = tr("not looked for");
  if (m_step.kind != StackStepKind::OwnStand) {
    m_paper = choice(form, QStringLiteral("paper"), tr("&Paper"),
                     {tr("not looked at"), tr("open"), tr("still closed")});
  }
  if (m_step.kind == StackStepKind::Paper) {
    m_paper->setCurrentIndex(1);
  } else {
    m_eggs = choice(form, QStringLiteral("eggs"), tr("&Eggs"), {none, tr("seen"), tr("none seen")});
    m_queen =
        choice(form, QStringLiteral("queen"), tr("&Queen"), {none, tr("seen"), tr("not seen")});
    m_cells = field(form, QStringLiteral("cells"), tr("Queen &cells (number)"));
    m_seams = field(form, QStringLiteral("seams"), tr("&Seams of bees"));
  }
  m_notes = field(form, QStringLiteral("notes"), tr("Re&mark"));
}

void StackStepDialog::makeParting(QFormLayout& form) {
  m_to = new QComboBox(this);
  m_to->setObjectName(QStringLiteral("toHive"));
  m_to->setAccessibleName(tr("Upper colony goes to"));
  const auto day = m_hub.workingDate();
  auto standing = apiary::yardOn(m_hub.season(), m_stack.yard, day);
  std::sort(standing.begin(), standing.end(), [](const auto& a, const auto& b) {
    return sheet::naturalLess(a.hive.str(), b.hive.str());
  });
  for (const auto& hive : standing) {
    if (hive.status == apiary::HiveStatus::Empty && hive.present) {
      const bool old = hive.hive == m_stack.oldStand;
      m_to->addItem(old ? tr("hive %1, where it came from").arg(qs(hive.hive.str()))
                        : tr("hive %1").arg(qs(hive.hive.str())),
                    qs(hive.hive.str()));
    }
  }
  m_to->addItem(tr("nowhere: plan B, both become one colony"), QString());
  const int home = m_to->findData(qs(m_stack.oldStand.str()));
  m_to->setCurrentIndex(m_stack.noEggs ? m_to->count() - 1 : std::max(0, home));
  form.addRow(tr("Upper colony &goes to"), m_to);
  if (m_to->count() == 1) {
    auto* none = new QLabel(tr("No empty hive stands in this yard. Set one up on the map first "
                               "(Yards, Add hive)."),
                            this);
    none->setWordWrap(true);
    form.addRow(none);
  }
  connect(m_to, &QComboBox::currentIndexChanged, this, &StackStepDialog::refresh);
}

session::CommandPtr StackStepDialog::look() const {
  bool good = true;
  const auto date = adapt::fromQDate(m_date->date());
  const auto cells = numberIn(m_cells, good);
  const auto seams = numberIn(m_seams, good);
  const std::string notes = m_notes->text().trimmed().toStdString();
  if (m_step.kind == StackStepKind::OwnStand) {
    apiary::Inspection i;
    i.hive = *m_stack.newHive;
    i.colony = m_stack.upper;
    i.date = date;
    i.eggsSeen = answer(m_eggs);
    i.queenSeen = answer(m_queen);
    if (cells) i.queenCells = static_cast<int>(*cells);
    i.seams = seams;
    i.notes = notes;
    std::vector<session::HiveStep> steps;
    steps.push_back({i.hive, session::recordInspection(i, {}, {})});
    if (m_step.task) {
      steps.push_back({i.hive, session::setTaskState(*m_step.task, apiary::TaskState::Done, date)});
    }
    return session::together(base::message("session.title.inspection", i.hive.str()),
                             std::move(steps));
  }
  session::StackLook l;
  l.hive = m_stack.hive;
  l.upper = m_stack.upper;
  l.date = date;
  l.paperOpen = answer(m_paper);
  l.eggs = answer(m_eggs);
  l.queenSeen = answer(m_queen);
  if (cells) l.queenCells = static_cast<int>(*cells);
  l.seams = seams;
  l.notes = notes;
  if (m_step.task) l.tasks = {*m_step.task};
  return session::recordStackLook(l);
}

session::CommandPtr StackStepDialog::parting() const {
  const auto date = adapt::fromQDate(m_date->date());
  const std::string to = m_to->currentData().toString().toStdString();
  if (to.empty()) return session::joinStack({m_stack.hive, m_stack.upper, date, m_step.task});
  return session::takeOff({m_stack.hive, m_stack.upper, base::HiveId(to), date, m_step.task});
}

session::CommandPtr StackStepDialog::command() const {
  return m_step.kind == StackStepKind::Separate ? parting() : look();
}

QString StackStepDialog::fieldFault() const {
  bool good = true;
  const auto cells = numberIn(m_cells, good);
  if (!good || (cells && (*cells < 0 || *cells > 500 || *cells != static_cast<int>(*cells)))) {
    return tr("Queen cells: a whole number from 0 to 500, or leave it empty.");
  }
  const auto seams = numberIn(m_seams, good);
  if (!good || (seams && (*seams < 0 || *seams > 40))) {
    return tr("Seams: a number from 0 to 40, or leave it empty.");
  }
  if (m_step.kind == StackStepKind::OwnStand && !answer(m_eggs) && !answer(m_queen) && !cells &&
      !seams && m_notes->text().trimmed().isEmpty()) {
    return tr("Say what was seen: eggs, queen, cells, seams or a remark.");
  }
  return {};
}

void StackStepDialog::refresh() {
  if (!m_ok) return;
  QString why = fieldFault();
  if (why.isEmpty()) why = m_hub.whyNot(*command());
  m_why->setText(why.isEmpty() ? QString() : tr("Not yet: %1").arg(why));
  m_ok->setEnabled(why.isEmpty());
}

}  // namespace outyard::pairs

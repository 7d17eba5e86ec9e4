// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/inspection_form.h"

#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QTimer>
#include <QVBoxLayout>

#include "core/session/task_done.h"
#include "ui/adapt/words.h"
#include "ui/hive/comb_page.h"
#include "ui/hive/estimate_words.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {
namespace {

constexpr int kEstimateDelayMs = 120;

QLabel* faintLabel(QWidget* parent) {
  auto* label = new QLabel(parent);
  label->setForegroundRole(QPalette::PlaceholderText);
  return label;
}

}  // namespace

InspectionForm::InspectionForm(widgets::SeasonHub& hub, const base::HiveId& hive,
                               std::optional<base::ColonyId> colony, QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_hive(hive),
      m_ofHive(seasonOfHive(hub.season(), hive)),
      m_units(adapt::Units::from(hub.settings())) {
  setObjectName(QStringLiteral("inspectionForm"));
  setWindowTitle(tr("Inspection of %1").arg(QString::fromStdString(hive.str())));
  m_base.hive = hive;
  m_base.date = hub.workingDate();
  m_delay = new QTimer(this);
  m_delay->setSingleShot(true);
  m_delay->setInterval(kEstimateDelayMs);
  connect(m_delay, &QTimer::timeout, this, &InspectionForm::showEstimate);

  auto* all = new QVBoxLayout(this);
  m_colony = new QComboBox(this);
  m_colony->setObjectName(QStringLiteral("colony"));
  m_colony->setAccessibleName(tr("Colony"));
  const auto state = apiary::hiveOn(hub.season(), hive, hub.workingDate());
  for (const auto& c : state.colonies) m_colony->addItem(QString::fromStdString(c.colony.str()));
  if (colony) {
    const int at = m_colony->findText(QString::fromStdString(colony->str()));
    if (at >= 0) m_colony->setCurrentIndex(at);
  }
  auto* which = new QHBoxLayout;
  auto* colonyLabel = new QLabel(tr("Colony looked at:"), this);
  colonyLabel->setBuddy(m_colony);
  which->addWidget(colonyLabel);
  which->addWidget(m_colony);
  which->addStretch();
  all->addLayout(which);
  // One colony alone need not be asked about.
  colonyLabel->setVisible(m_colony->count() > 1);
  m_colony->setVisible(m_colony->count() > 1);

  m_combs = new CombModel(this);
  m_pages = new QTabWidget(this);
  m_pages->setObjectName(QStringLiteral("pages"));
  m_pages->addTab(makeSummary(), tr("&What was seen"));
  const bool inches = m_hub.settings().get(adapt::desk::kLengthUnit) == adapt::LengthUnit::Foot;
  m_combPage = new CombPage(*m_combs, inches, m_pages);
  connect(m_combPage, &CombPage::said, this, &InspectionForm::say);
  m_pages->addTab(m_combPage, tr("&Comb by comb"));
  all->addWidget(m_pages, 1);

  m_estimate = new QLabel(this);
  m_estimate->setObjectName(QStringLiteral("estimate"));
  m_estimate->setWordWrap(true);
  m_estimate->setAccessibleName(tr("What this amounts to"));
  m_estimate->setMinimumHeight(fontMetrics().lineSpacing() * 2);
  m_estimate->setAlignment(Qt::AlignLeft | Qt::AlignTop);
  all->addWidget(m_estimate);
  m_status = new QLabel(this);
  m_status->setObjectName(QStringLiteral("status"));
  m_status->setWordWrap(true);
  m_status->setVisible(false);
  QFont bold = m_status->font();
  bold.setBold(true);
  m_status->setFont(bold);
  all->addWidget(m_status);

  auto* bottom = new QHBoxLayout;
  auto* help = faintLabel(this);
  help->setText(tr("Enter goes on, Ctrl+Enter records, Escape leaves. Empty means not recorded."));
  bottom->addWidget(help, 1);
  m_record = new QPushButton(tr("&Record"), this);
  m_record->setObjectName(QStringLiteral("record"));
  auto* cancel = new QPushButton(tr("Cancel"), this);
  cancel->setObjectName(QStringLiteral("cancel"));
  for (auto* button : {m_record, cancel}) {
    button->setAutoDefault(false);  // Enter belongs to the fields
    bottom->addWidget(button);
  }
  all->addLayout(bottom);
  connect(m_record, &QPushButton::clicked, this, &InspectionForm::accept);
  connect(cancel, &QPushButton::clicked, this, &InspectionForm::reject);
  connect(m_colony, &QComboBox::currentIndexChanged, this, [this] {
    showLast();
    showStack();
    m_delay->start();
  });
  connect(m_combs, &CombModel::edited, this, [this] {
    m_combsTouched = true;
    m_delay->start();
  });

  startOver();
  showLast();
  showStack();
  showEstimate();
  resize(1040, 660);
  for (const Editor& editor : m_editors) {
    if (qstrcmp(editor.field->column, "seams") == 0) widgetOf(editor)->setFocus();
  }
}

InspectionForm::~InspectionForm() = default;

QWidget* InspectionForm::makeSummary() {
  auto* area = new QScrollArea(this);
  area->setWidgetResizable(true);
  area->setFrameShape(QFrame::NoFrame);
  area->setFocusPolicy(Qt::NoFocus);
  auto* page = new QWidget(area);
  auto* columns = new QHBoxLayout(page);
  m_editors.resize(formFields().size());
  QGridLayout* grid = nullptr;
  int row = 0;
  std::size_t index = 0;
  QWidget* before = nullptr;
  for (const FormField& field : formFields()) {
    // The right half begins with the queen.
    if (!grid || qstrcmp(field.column, "queen_seen") == 0) {
      if (grid) grid->setRowStretch(row, 1);
      grid = new QGridLayout;
      grid->setColumnStretch(1, 1);
      grid->setColumnMinimumWidth(2,
                                  fontMetrics().horizontalAdvance(QStringLiteral("last 00.00 kg")));
      grid->setVerticalSpacing(3);
      grid->setHorizontalSpacing(10);
      columns->addLayout(grid, 1);
      columns->addSpacing(18);
      row = 0;
    }
    if (*field.group) {
      auto* heading = new QLabel(tr(field.group), page);
      QFont bold = heading->font();
      bold.setBold(true);
      heading->setFont(bold);
      heading->setContentsMargins(0, row > 0 ? 8 : 0, 0, 0);
      grid->addWidget(heading, row++, 0, 1, 3);
    }
    Editor& editor = m_editors[index++];
    makeEditor(editor, field, page);
    auto* label = new QLabel(fieldLabel(field, m_units), page);
    label->setBuddy(widgetOf(editor));
    const auto top = field.widget == FieldWidget::Notes ? Qt::AlignTop : Qt::AlignVCenter;
    grid->addWidget(label, row, 0, top);
    if (field.widget == FieldWidget::Notes) {
      grid->addWidget(widgetOf(editor), row++, 1, 1, 2);
    } else {
      grid->addWidget(widgetOf(editor), row, 1);
      grid->addWidget(editor.last, row++, 2);
    }
    grid->addWidget(editor.fault, row++, 0, 1, 3);
    if (before) setTabOrder(before, widgetOf(editor));
    before = widgetOf(editor);
  }
  grid->setRowStretch(row, 1);
  area->setWidget(page);
  return area;
}

void InspectionForm::makeEditor(Editor& editor, const FormField& field, QWidget* page) {
  editor.field = &field;
  const QString name = QString::fromLatin1(field.column);
  editor.last = faintLabel(page);
  editor.last->setObjectName(name + QStringLiteral("_last"));
  editor.fault = new QLabel(page);
  editor.fault->setObjectName(name + QStringLiteral("_fault"));
  editor.fault->setWordWrap(true);
  editor.fault->setVisible(false);
  // Never by colour alone: the sentence begins with a sign and stands in italics.
  QFont italic = editor.fault->font();
  italic.setItalic(true);
  editor.fault->setFont(italic);
  Editor* at = &editor;
  if (field.widget == FieldWidget::Choice) {
    editor.choice = new QComboBox(page);
    for (const Choice& choice : choicesFor(field)) {
      editor.choice->addItem(choice.text, QString::fromStdString(choice.code));
    }
    editor.choice->setFocusPolicy(Qt::StrongFocus);
    editor.choice->installEventFilter(this);
    connect(editor.choice, &QComboBox::currentIndexChanged, this, [this, at] { read(*at); });
  } else if (field.widget == FieldWidget::Notes) {
    editor.notes = new QPlainTextEdit(page);
    editor.notes->setTabChangesFocus(true);
    editor.notes->setFixedHeight(fontMetrics().lineSpacing() * 4);
    connect(editor.notes, &QPlainTextEdit::textChanged, this, [this, at] { read(*at); });
  } else {
    editor.line = new QLineEdit(page);
    editor.line->setPlaceholderText(fieldHint(field));
    connect(editor.line, &QLineEdit::textChanged, this, [this, at] { read(*at); });
  }
  widgetOf(editor)->setObjectName(name);
  widgetOf(editor)->setAccessibleName(fieldLabel(field, m_units));
}

QWidget* InspectionForm::widgetOf(const Editor& editor) {
  if (editor.choice) return editor.choice;
  if (editor.notes) return editor.notes;
  return editor.line;
}

QString InspectionForm::textOf(const Editor& editor) {
  if (editor.choice) return editor.choice->currentData().toString();
  if (editor.notes) return editor.notes->toPlainText();
  return editor.line->text();
}

void InspectionForm::setText(Editor& editor, const QString& text) {
  if (editor.choice) {
    editor.choice->setCurrentIndex(std::max(0, editor.choice->findData(text)));
  } else if (editor.notes) {
    editor.notes->setPlainText(text);
  } else {
    editor.line->setText(text);
  }
}

void InspectionForm::read(Editor& editor) {
  Typed typed = parseTyped(*editor.field, textOf(editor), m_units);
  editor.value = typed.value;
  if (!typed.fault.isEmpty()) {
    if (!typed.fault.endsWith(u'.')) typed.fault += u'.';
    typed.fault +=
        u' ' + (qstrcmp(editor.field->column, "date") == 0 ? tr("Type it as 2026-04-25.")
                                                           : tr("Mend it, or leave it empty."));
  }
  editor.fault->setText(typed.fault.isEmpty() ? QString() : QStringLiteral("! ") + typed.fault);
  editor.fault->setVisible(!typed.fault.isEmpty());
  widgetOf(editor)->setAccessibleDescription(typed.fault.isEmpty() ? editor.last->text()
                                                                   : typed.fault);
  say({});
  m_delay->start();
  if (qstrcmp(editor.field->column, "date") == 0 && typed.fault.isEmpty()) {
    showLast();
    if (!m_combs->anyTyped()) showStack();  // the boxes of that day
  }
}

void InspectionForm::startOver() {
  m_base = {};
  m_base.hive = m_hive;
  m_base.date = m_hub.workingDate();
  for (Editor& editor : m_editors) {
    if (qstrcmp(editor.field->column, "date") == 0) {
      setText(editor, QString::fromStdString(m_base.date.iso()));
    }
    read(editor);
    editor.start = textOf(editor);
  }
  m_combsTouched = false;
}

void InspectionForm::correct(const base::RecordId& old) {
  const auto& season = m_hub.season();
  const auto* record = season.find<apiary::Inspection>(old.str());
  if (!record) return;
  m_old = old;
  m_base = *record;
  setWindowTitle(tr("Correct the inspection of %1, %2")
                     .arg(QString::fromStdString(m_hive.str()), adapt::dateText(record->date)));
  if (record->colony) {
    const QString name = QString::fromStdString(record->colony->str());
    if (m_colony->findText(name) < 0) m_colony->addItem(name);
    m_colony->setCurrentText(name);
  }
  for (Editor& editor : m_editors) {
    setText(editor, typedText(*editor.field, valueOf(*record, editor.field->column), m_units));
    read(editor);
    editor.start = textOf(editor);
  }
  showStack();
  std::vector<apiary::CombSide> sides;
  for (const auto* side : season.combSides(old)) sides.push_back(*side);
  m_combs->setSides(sides);
  if (m_combs->rowCount() > 0) m_combPage->choose(0);
  m_seams.clear();
  for (const auto* seams : season.seamCounts(old)) m_seams.push_back(*seams);
  m_combsTouched = false;
  showLast();
  showEstimate();
}

std::optional<base::ColonyId> InspectionForm::colony() const {
  if (m_colony->currentText().isEmpty()) return m_base.colony;
  // Named only where two share the hive, or where the record named it already.
  if (m_colony->count() < 2 && !m_base.colony) return std::nullopt;
  return base::ColonyId(m_colony->currentText().toStdString());
}

base::Date InspectionForm::date() const {
  for (const Editor& editor : m_editors) {
    if (qstrcmp(editor.field->column, "date") != 0) continue;
    if (const auto* iso = std::get_if<std::string>(&editor.value)) {
      if (const auto day = base::Date::parse(*iso)) return *day;
    }
  }
  return m_base.date;
}

void InspectionForm::showLast() {
  const auto& season = m_hub.season();
  const auto state = apiary::hiveOn(season, m_hive, date());
  const apiary::Inspection* last = nullptr;
  const std::string wanted = m_colony->currentText().toStdString();
  for (const auto& c : state.colonies) {
    if (wanted.empty() || c.colony.str() == wanted) last = last ? last : c.lastInspection;
  }
  if (last && m_old && last->record == *m_old) last = nullptr;
  for (Editor& editor : m_editors) {
    const bool head =
        qstrcmp(editor.field->column, "time") == 0 || qstrcmp(editor.field->column, "air_c") == 0;
    QString text;
    if (last && !head) {
      const QString value = shownText(*editor.field, valueOf(*last, editor.field->column), m_units);
      const bool isDate = qstrcmp(editor.field->column, "date") == 0;
      if (!value.isEmpty() && editor.field->widget != FieldWidget::Notes) {
        text = tr("last %1").arg(isDate ? adapt::dateText(last->date) : value);
      }
    }
    editor.last->setText(text);
  }
}

void InspectionForm::showStack() {
  const auto state = apiary::hiveOn(m_hub.season(), m_hive, date());
  std::vector<apiary::BoxState> boxes = state.boxes;
  if (m_colony->count() > 1) {
    boxes = state.boxesOf(base::ColonyId(m_colony->currentText().toStdString()));
  }
  m_combs->setBoxes(boxes);
  m_combPage->setAreas(m_hub.season(), boxes);
  m_combsTouched = false;
  if (m_combs->rowCount() > 0) m_combPage->choose(0);
}

session::InspectionEntry InspectionForm::entry() const {
  session::InspectionEntry out;
  out.inspection = m_base;
  out.inspection.colony = colony();
  for (const Editor& editor : m_editors) {
    if (editor.field->column == std::string("date")) {
      out.inspection.date = date();
    } else {
      setValue(out.inspection, editor.field->column, editor.value);
    }
  }
  if (!out.inspection.seams) {
    out.inspection.seamsView.reset();
  } else if (out.inspection.seams != m_base.seams) {
    out.inspection.seamsView = apiary::SeamsView::Above;  // as the label asks for
  }
  out.sides = m_combs->typedSides();
  for (auto& side : out.sides) {
    side.hive = m_hive;
    side.colony = out.inspection.colony;
    side.date = out.inspection.date;
  }
  out.seams = m_seams;
  for (auto& seams : out.seams) seams.date = out.inspection.date;
  return out;
}

QString InspectionForm::firstFault() const {
  for (const Editor& editor : m_editors) {
    const QString fault = parseTyped(*editor.field, textOf(editor), m_units).fault;
    if (!fault.isEmpty()) {
      return QStringLiteral("%1: %2").arg(fieldLabel(*editor.field, m_units), fault);
    }
  }
  return m_combs->firstFault();
}

bool InspectionForm::touched() const {
  if (m_combsTouched) return true;
  return std::any_of(m_editors.begin(), m_editors.end(),
                     [](const Editor& e) { return textOf(e) != e.start; });
}

void InspectionForm::showEstimate() {
  const auto made = entry();
  const auto estimate = estimateDraft(m_ofHive, made);
  const QString amounts = amountsText(estimate, m_units);
  if (amounts.isEmpty()) {
    m_estimate->setText(
        tr("Type seams, frames or combs to see here what they amount to, with the "
           "band that holds 8 of 10."));
    return;
  }
  QString text = tr("This amounts to: %1.").arg(amounts);
  for (const QString& more : {looksText(estimate), workingsText(estimate, m_units)}) {
    if (!more.isEmpty()) text += QStringLiteral(" ") + more;
  }
  m_estimate->setText(text);
}

void InspectionForm::say(const QString& sentence) {
  m_status->setText(sentence);
  m_status->setVisible(!sentence.isEmpty());
}

void InspectionForm::accept() {
  for (const Editor& editor : m_editors) {
    if (!editor.fault->isHidden()) {
      m_pages->setCurrentIndex(0);
      widgetOf(editor)->setFocus();
      say(tr("Not recorded. %1").arg(firstFault()));
      return;
    }
  }
  if (const int row = m_combs->firstFaultRow(); row >= 0) {
    m_pages->setCurrentIndex(1);
    m_combPage->choose(row);
    m_combPage->takeFocus();
    say(tr("Not recorded. %1").arg(m_combs->firstFault()));
    return;
  }
  if (!touched()) {
    say(tr("Nothing was typed yet. Type at least one value, or leave with Escape."));
    return;
  }
  auto made = entry();
  auto command = m_old ? session::correctInspection(*m_old, std::move(made))
                       : session::recordInspection(made.inspection, made.sides, made.seams);
  if (m_task) command = session::forTask(*m_task, date(), std::move(command));
  const QString why = m_hub.whyNot(*command);
  if (!why.isEmpty()) {
    say(tr("Not recorded. %1").arg(why));
    return;
  }
  if (m_hub.execute(std::move(command), this)) QDialog::accept();
}

void InspectionForm::reject() {
  if (touched() &&
      !m_hub.dialogs().question(this, tr("Leave without recording?"),
                                tr("What you typed about %1 is not recorded yet and will be lost.")
                                    .arg(QString::fromStdString(m_hive.str())),
                                tr("Leave without recording"))) {
    return;
  }
  QDialog::reject();
}

void InspectionForm::keyPressEvent(QKeyEvent* event) {
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && (event->modifiers() & Qt::ControlModifier)) {
    accept();
    return;
  }
  if (enter) {
    focusNextChild();
    return;
  }
  QDialog::keyPressEvent(event);
}

bool InspectionForm::eventFilter(QObject* watched, QEvent* event) {
  // The wheel scrolls the form; it never changes a value on its way.
  if (event->type() == QEvent::Wheel && qobject_cast<QComboBox*>(watched)) {
    event->ignore();
    return true;
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace outyard::hive

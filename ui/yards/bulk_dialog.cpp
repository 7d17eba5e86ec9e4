// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/bulk_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QStackedWidget>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "core/apiary/validate.h"
#include "core/base/text.h"
#include "core/sheet/walking_order.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"
#include "ui/yards/dialog_parts.h"

// The cautions of this dialog are common practice of the trade, no source.
namespace outyard::yards {

using apiary::BoxRole;
using apiary::Goods;
using session::BulkKind;

namespace {

enum PageIndex { kNothing, kBox, kFeed, kTreat };

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::string trimmed(const QLineEdit* field) {
  return field->text().trimmed().toStdString();
}

std::optional<double> number(const QLineEdit* field) {
  QString text = field->text().trimmed();
  if (text.count(u',') == 1 && !text.contains(u'.')) text.replace(u',', u'.');
  return base::parseNumber(text.toStdString());
}

}  // namespace

BulkDialog::BulkDialog(widgets::SeasonHub& hub, base::YardId yard, std::vector<base::HiveId> chosen,
                       QWidget* parent)
    : QDialog(parent),
      m_hub(hub),
      m_yard(std::move(yard)),
      m_chosen(std::move(chosen)),
      m_scope(new QComboBox),
      m_kind(new QComboBox),
      m_date(dateField(hub.workingDate(), "bulkDate")),
      m_pages(new QStackedWidget),
      m_detail(new QLineEdit),
      m_caution(noteLabel("bulkCaution")),
      m_summary(noteLabel("bulkSummary")),
      m_list(new QTableWidget(0, 2)),
      m_buttons(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel)) {
  setObjectName(QStringLiteral("bulkDialog"));
  setWindowTitle(tr("For several hives"));
  setMinimumWidth(560);
  m_scope->setObjectName(QStringLiteral("bulkScope"));
  if (!m_chosen.empty()) {
    m_scope->addItem(tr("the %n chosen hives", nullptr, static_cast<int>(m_chosen.size())));
  }
  m_scope->addItem(tr("all hives of the yard"));
  if (m_chosen.size() == 1) m_scope->setCurrentIndex(1);
  m_kind->setObjectName(QStringLiteral("bulkKind"));
  const auto kind = [this](const QString& text, BulkKind value) {
    m_kind->addItem(text, static_cast<int>(value));
  };
  kind(tr("add a super"), BulkKind::AddSuper);
  kind(tr("add a box"), BulkKind::AddBox);
  kind(tr("take the supers off"), BulkKind::SupersOff);
  kind(tr("feed"), BulkKind::Feed);
  kind(tr("treat"), BulkKind::Treat);
  kind(tr("excluder under the supers"), BulkKind::ExcluderOn);
  kind(tr("take the excluder out"), BulkKind::ExcluderOff);
  kind(tr("wrap"), BulkKind::Wrap);
  kind(tr("unwrap"), BulkKind::Unwrap);
  addPage();
  makeBoxPage();
  makeFeedPage();
  makeTreatPage();
  m_detail->setObjectName(QStringLiteral("bulkDetail"));

  auto* form = new QFormLayout;
  form->addRow(tr("&Hives"), m_scope);
  form->addRow(tr("&What"), m_kind);
  form->addRow(tr("&Date"), m_date);
  form->addRow(m_pages);
  form->addRow(tr("&Remark"), m_detail);
  m_list->setObjectName(QStringLiteral("bulkList"));
  m_list->setAccessibleName(tr("Hives, and why it cannot be done there"));
  m_list->setHorizontalHeaderLabels({tr("Hive"), tr("Can it be done?")});
  m_list->horizontalHeader()->setStretchLastSection(true);
  m_list->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  m_list->verticalHeader()->hide();
  m_list->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_list->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_list->setTabKeyNavigation(false);
  m_list->setWordWrap(true);
  m_list->setMinimumHeight(160);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(m_caution);
  layout->addWidget(m_list, 1);
  layout->addWidget(m_summary);
  layout->addWidget(m_buttons);
  alignLabels();
  nameButtons(*m_buttons, tr("&Record"));
  connect(m_buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(m_buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);

  connect(m_scope, &QComboBox::currentIndexChanged, this, [this] {
    fillHives();
    refresh();
  });
  for (auto* box : findChildren<QComboBox*>()) {
    if (box != m_scope) connect(box, &QComboBox::currentIndexChanged, this, [this] { refresh(); });
  }
  for (auto* edit : findChildren<QLineEdit*>()) {
    connect(edit, &QLineEdit::textChanged, this, [this] { refresh(); });
  }
  connect(m_frames, &QSpinBox::valueChanged, this, [this] { refresh(); });
  connect(m_under, &QCheckBox::toggled, this, [this] { refresh(); });
  connect(m_date, &QDateEdit::dateChanged, this, [this] { refresh(); });
  connect(m_list, &QTableWidget::itemChanged, this, [this](QTableWidgetItem* item) {
    if (m_filling || item->column() != 0) return;
    auto& line = m_lines.at(static_cast<std::size_t>(item->row()));
    if (line.why.isEmpty()) line.leftOut = item->checkState() != Qt::Checked;
    refresh();
  });
  fillHives();
  refresh();
}

BulkDialog::Page BulkDialog::addPage() {
  Page page;
  page.widget = new QWidget;
  page.form = new QFormLayout(page.widget);
  page.form->setContentsMargins(0, 0, 0, 0);
  m_pages->addWidget(page.widget);
  return page;
}

void BulkDialog::alignLabels() {
  int widest = 0;
  std::vector<QLabel*> labels;
  for (auto* form : findChildren<QFormLayout*>()) {
    for (int row = 0; row < form->rowCount(); ++row) {
      auto* item = form->itemAt(row, QFormLayout::LabelRole);
      auto* label = item ? qobject_cast<QLabel*>(item->widget()) : nullptr;
      if (!label) continue;
      labels.push_back(label);
      widest = std::max(widest, label->sizeHint().width());
    }
  }
  for (auto* label : labels) label->setMinimumWidth(widest);
}

void BulkDialog::makeBoxPage() {
  const Page page = addPage();
  m_role = new QComboBox;
  m_role->setObjectName(QStringLiteral("bulkRole"));
  m_role->addItem(tr("chamber"), static_cast<int>(BoxRole::Chamber));
  m_role->addItem(tr("super"), static_cast<int>(BoxRole::Super));
  m_role->addItem(tr("feeder"), static_cast<int>(BoxRole::Feeder));
  m_type = new QComboBox;
  m_type->setObjectName(QStringLiteral("bulkType"));
  m_type->addItem(tr("as each hive has"), QString());
  for (const auto shipped : apiary::shippedFrameTypes()) {
    m_type->addItem(widgets::codeText("frame_type", shipped),
                    QString::fromUtf8(shipped.data(), static_cast<qsizetype>(shipped.size())));
  }
  for (const auto& [key, own] : m_hub.season().table<apiary::FrameType>()) {
    if (m_type->findData(qs(key)) >= 0) continue;
    m_type->addItem(qs(own.name.empty() ? key : own.name), qs(key));
  }
  m_frames = new QSpinBox;
  m_frames->setObjectName(QStringLiteral("bulkFrames"));
  m_frames->setRange(0, 60);
  m_frames->setValue(10);
  m_fill = new QComboBox;
  m_fill->setObjectName(QStringLiteral("bulkFill"));
  m_fill->addItem(tr("not told"));
  m_fill->addItem(tr("drawn and empty"), static_cast<int>(Goods::Drawn));
  m_fill->addItem(tr("foundation"), static_cast<int>(Goods::Foundation));
  m_under = new QCheckBox(tr("&under the lowest box"));
  m_under->setObjectName(QStringLiteral("bulkUnder"));
  page.form->addRow(tr("R&ole"), m_role);
  page.form->addRow(tr("Frames of the &type"), m_type);
  page.form->addRow(tr("Frames in &it"), m_frames);
  page.form->addRow(tr("Its &combs"), m_fill);
  page.form->addRow(QString(), m_under);
}

void BulkDialog::makeFeedPage() {
  const Page page = addPage();
  m_feed = new QComboBox;
  m_feed->setObjectName(QStringLiteral("bulkFeed"));
  for (const Goods goods : {Goods::Syrup11, Goods::Syrup21, Goods::Fondant, Goods::DrySugar,
                            Goods::PollenPatty, Goods::PollenFeed}) {
    m_feed->addItem(widgets::codeText("goods", apiary::code(goods)), static_cast<int>(goods));
  }
  m_amount = new QLineEdit;
  m_amount->setObjectName(QStringLiteral("bulkAmount"));
  m_unit = new QComboBox;
  m_unit->setObjectName(QStringLiteral("bulkUnit"));
  m_unit->addItem(tr("litres"), static_cast<int>(apiary::Unit::L));
  m_unit->addItem(adapt::Units::from(m_hub.settings()).massUnit(),
                  static_cast<int>(apiary::Unit::Kg));
  // Syrup is measured out, everything else is weighed.
  connect(m_feed, &QComboBox::currentIndexChanged, this, [this] {
    const auto goods = static_cast<Goods>(m_feed->currentData().toInt());
    m_unit->setCurrentIndex(goods == Goods::Syrup11 || goods == Goods::Syrup21 ? 0 : 1);
  });
  page.form->addRow(tr("&Feed"), m_feed);
  page.form->addRow(tr("&Amount for each hive"), m_amount);
  page.form->addRow(tr("&Unit"), m_unit);
}

void BulkDialog::makeTreatPage() {
  const Page page = addPage();
  const auto text = [&page](const char* name, const QString& label, const QString& hint) {
    auto* edit = new QLineEdit;
    edit->setObjectName(QLatin1String(name));
    edit->setPlaceholderText(hint);
    page.form->addRow(label, edit);
    return edit;
  };
  m_product = text("bulkProduct", tr("&Product"), tr("as the label calls it"));
  m_dose = text("bulkDose", tr("D&ose for each hive"), tr("as given, with its unit"));
  m_batch = text("bulkBatch", tr("&Batch"), {});
  m_waiting = text("bulkWaiting", tr("Waiting p&eriod (days)"), tr("from the label"));
}

void BulkDialog::fillHives() {
  m_lines.clear();
  const bool chosen = !m_chosen.empty() && m_scope->currentIndex() == 0;
  if (chosen) {
    for (const auto& hive : m_chosen) m_lines.push_back({hive, {}, false});
  } else {
    for (const auto& hive : m_hub.hives(m_yard)) m_lines.push_back({hive.hive, {}, false});
  }
  std::sort(m_lines.begin(), m_lines.end(), [](const Line& a, const Line& b) {
    return sheet::naturalLess(a.hive.str(), b.hive.str());
  });
}

session::BulkWork BulkDialog::work() const {
  session::BulkWork w;
  w.kind = static_cast<BulkKind>(m_kind->currentData().toInt());
  w.date = adapt::fromQDate(m_date->date());
  w.role = static_cast<BoxRole>(m_role->currentData().toInt());
  w.frameType = m_type->currentData().toString().toStdString();
  w.frames = m_frames->value();
  w.under = m_under->isChecked() && w.kind == BulkKind::AddBox;
  if (m_fill->currentIndex() > 0) w.fill = static_cast<Goods>(m_fill->currentData().toInt());
  w.feed = static_cast<Goods>(m_feed->currentData().toInt());
  w.amount = number(m_amount);
  w.unit = static_cast<apiary::Unit>(m_unit->currentData().toInt());
  if (w.amount && w.unit == apiary::Unit::Kg) {
    w.amount = adapt::Units::from(m_hub.settings()).massFrom(*w.amount).value;
  }
  w.product = trimmed(m_product);
  w.dose = trimmed(m_dose);
  w.batch = trimmed(m_batch);
  if (const auto days = number(m_waiting)) w.withdrawalDays = static_cast<int>(*days);
  w.detail = trimmed(m_detail);
  return w;
}

QString BulkDialog::fieldFault() const {
  const auto kind = static_cast<BulkKind>(m_kind->currentData().toInt());
  if (kind == BulkKind::Feed && !m_amount->text().trimmed().isEmpty()) {
    const auto amount = number(m_amount);
    if (!amount || *amount <= 0 || *amount > 300) {
      return tr("Amount: type a number above 0 and up to 300, for instance 2.5.");
    }
  }
  if (kind == BulkKind::Treat) {
    if (m_product->text().trimmed().isEmpty()) return tr("Type the product as its label calls it.");
    const auto days = number(m_waiting);
    const bool whole = days && *days == static_cast<int>(*days);
    if (!m_waiting->text().trimmed().isEmpty() && (!whole || *days < 0 || *days > 3650)) {
      return tr("Waiting period: type whole days from 0 to 3650, as the label says.");
    }
  }
  return {};
}

QString BulkDialog::whyNot(const base::HiveId& hive) const {
  auto steps = session::bulkSteps(m_hub.season(), hive, work());
  if (steps.nothing) return adapt::words(*steps.nothing);
  if (steps.steps.empty()) return tr("Nobody lives there.");
  if (steps.steps.size() == 1) return m_hub.whyNot(*steps.steps.front().command);
  const auto all =
      session::together(base::message("session.title.bulk", 1), std::move(steps.steps));
  return m_hub.whyNot(*all);
}

QString BulkDialog::caution() const {
  const auto w = work();
  QStringList out;
  QStringList supers, waiting;
  for (const Line& line : m_lines) {
    if (!line.why.isEmpty() || line.leftOut) continue;
    if (session::hasSupers(m_hub.season(), line.hive, w.date)) supers << qs(line.hive.str());
    if (const auto until = session::waitingUntil(m_hub.season(), line.hive, w.date)) {
      waiting << tr("%1 until %2").arg(qs(line.hive.str()), adapt::dateText(*until));
    }
  }
  switch (w.kind) {
    case BulkKind::AddBox:
    case BulkKind::AddSuper:
      out << tr(
          "Bees on 7 to 8 of 10 frames and a flow or feed first: too early chills the nest. "
          "Full boxes weigh up to 40 kg: lift with two.");
      break;
    case BulkKind::SupersOff:
      out << tr(
          "Full supers weigh up to 30 kg: lift with two. Cover them at once against robbing. "
          "They come off without their bees.");
      if (!waiting.isEmpty()) {
        out << tr("No harvest yet, a waiting period runs: %1.").arg(waiting.join(u", "));
      }
      break;
    case BulkKind::Feed:
      out << tr(
          "No syrup below 10 °C: fondant then. Feed inside and in the evening, spill nothing, "
          "keep the entrances small against robbing.");
      if (!supers.isEmpty()) {
        out << tr("Supers are on, feed would go into the honey: %1.").arg(supers.join(u", "));
      }
      break;
    case BulkKind::Treat:
      out << tr(
          "The label goes first. Gloves and goggles; with acids an acid-proof mask, in the "
          "open, water at hand. Nothing that is not for hives. Type the waiting period from "
          "the label: no harvest before it is over.");
      if (!supers.isEmpty()) {
        out << tr("Supers are on, most labels forbid that: %1.").arg(supers.join(u", "));
      }
      break;
    case BulkKind::Wrap:
      out << tr("Leave the entrances and an air hole free. Stores and mites are settled before.");
      break;
    case BulkKind::Unwrap:
      out << tr("Not before the cold is over; entrances stay small against robbing.");
      break;
    case BulkKind::ExcluderOn:
      out << tr("Be sure that the queen is below it, and no drones shut in above.");
      break;
    case BulkKind::ExcluderOff:
      out << tr("Without it the queen may lay in the supers.");
      break;
  }
  return tr("Caution: %1").arg(out.join(u' '));
}

int BulkDialog::doable() const {
  return static_cast<int>(std::count_if(m_lines.begin(), m_lines.end(), [](const Line& line) {
    return line.why.isEmpty() && !line.leftOut;
  }));
}

void BulkDialog::refresh() {
  const auto kind = static_cast<BulkKind>(m_kind->currentData().toInt());
  const bool box = kind == BulkKind::AddBox || kind == BulkKind::AddSuper;
  m_pages->setCurrentIndex(box                       ? kBox
                           : kind == BulkKind::Feed  ? kFeed
                           : kind == BulkKind::Treat ? kTreat
                                                     : kNothing);
  for (int page = 0; page < m_pages->count(); ++page) {
    m_pages->widget(page)->setVisible(page == m_pages->currentIndex());
  }
  m_role->setEnabled(kind == BulkKind::AddBox);
  m_under->setEnabled(kind == BulkKind::AddBox);
  m_frames->setEnabled(m_type->currentIndex() > 0);
  const QString fault = fieldFault();
  for (Line& line : m_lines) line.why = fault.isEmpty() ? whyNot(line.hive) : fault;
  showLines();
  m_caution->setText(caution());
  const int count = doable();
  if (!fault.isEmpty()) {
    m_summary->setText(tr("Not yet: %1").arg(fault));
  } else if (count == 0) {
    m_summary->setText(tr("It can be done at none of these hives: the list says why."));
  } else {
    m_summary->setText(tr("To be recorded for %1 of %2 hives, as one step to undo.")
                           .arg(count)
                           .arg(m_lines.size()));
  }
  m_buttons->button(QDialogButtonBox::Ok)->setEnabled(fault.isEmpty() && count > 0);
}

void BulkDialog::showLines() {
  m_filling = true;
  m_list->setRowCount(static_cast<int>(m_lines.size()));
  for (int row = 0; row < m_list->rowCount(); ++row) {
    const Line& line = m_lines[static_cast<std::size_t>(row)];
    auto* hive = m_list->item(row, 0);
    auto* why = m_list->item(row, 1);
    if (!hive) {
      hive = new QTableWidgetItem;
      why = new QTableWidgetItem;
      m_list->setItem(row, 0, hive);
      m_list->setItem(row, 1, why);
    }
    const bool can = line.why.isEmpty();
    hive->setText(qs(line.hive.str()));
    hive->setFlags(can ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable
                       : Qt::ItemIsSelectable);
    hive->setCheckState(can && !line.leftOut ? Qt::Checked : Qt::Unchecked);
    why->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    why->setText(!can ? tr("no: %1").arg(line.why) : line.leftOut ? tr("left out") : tr("yes"));
    why->setToolTip(why->text());
  }
  m_list->resizeColumnToContents(0);
  m_list->resizeRowsToContents();
  m_filling = false;
}

session::CommandPtr BulkDialog::command() const {
  std::vector<session::HiveStep> all;
  const auto w = work();
  int hives = 0;
  for (const Line& line : m_lines) {
    if (!line.why.isEmpty() || line.leftOut) continue;
    ++hives;
    auto each = session::bulkSteps(m_hub.season(), line.hive, w);
    for (auto& step : each.steps) all.push_back(std::move(step));
  }
  if (all.empty()) return nullptr;
  return session::together(base::message("session.title.bulk", hives), std::move(all));
}

}  // namespace outyard::yards

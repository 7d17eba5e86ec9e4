// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/reader_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>
#include <cmath>
#include <set>

#include "core/base/text.h"
#include "core/session/commands.h"
#include "ui/adapt/words.h"
#include "ui/widgets/session_model.h"

namespace outyard::main_window {
namespace {

constexpr int kRows = 12;

QString cellText(const QTableWidget& table, int row, int column) {
  const auto* item = table.item(row, column);
  return item ? item->text().trimmed() : QString();
}
std::optional<double> numberIn(QString text) {
  text.replace(u',', u'.');
  const auto value = base::parseNumber(text.toStdString());
  return value && *value > 0 ? value : std::nullopt;
}

QString percent(double share) {
  return QLocale().toString(100 * std::fabs(share), 'f', 0);
}
/// "counts 12 % too many (5 pairs, single counts scatter by 9 %)".
QString habit(const strength::ReaderFigures& f) {
  const double off = f.bias - 1;
  QString says;
  if (std::fabs(off) < 0.005) {
    says = ReaderDialog::tr("counts neither too many nor too few");
  } else if (off > 0) {
    says = ReaderDialog::tr("counts %1 % too many").arg(percent(off));
  } else {
    says = ReaderDialog::tr("counts %1 % too few").arg(percent(off));
  }
  return ReaderDialog::tr(
             "%1 (%2 pairs; single counts scatter by %3 %, the habit itself is known "
             "to %4 %)")
      .arg(says)
      .arg(f.pairs)
      .arg(percent(f.spread), percent(f.biasSigma()));
}

}  // namespace

ReaderDialog::ReaderDialog(widgets::SeasonHub& hub, QWidget* parent) : QDialog(parent), m_hub(hub) {
  setWindowTitle(tr("Calibrate a reader"));
  auto* layout = new QVBoxLayout(this);
  auto* intro = new QLabel(
      tr("Whoever looks counts a little too many or too few bees on a comb, time after time. Count "
         "some colonies before the bees fly, then have them weighed or counted by a trained "
         "reader, and enter both numbers, in any unit that is the same for both. What is found is "
         "taken out of full frames and comb sides that this reader enters; seams and quick counts "
         "keep their own, larger error."),
      this);
  intro->setWordWrap(true);
  layout->addWidget(intro);
  auto* form = new QFormLayout;
  m_reader = new QComboBox(this);
  m_reader->setObjectName(QStringLiteral("reader"));
  m_reader->setAccessibleName(tr("Reader"));
  m_reader->setEditable(true);
  m_reader->setInsertPolicy(QComboBox::NoInsert);
  std::set<std::string> names;
  for (const auto& [key, look] : m_hub.season().table<apiary::Inspection>()) {
    if (!look.reader.empty()) names.insert(look.reader);
  }
  for (const auto& name : names) m_reader->addItem(QString::fromStdString(name));
  form->addRow(tr("&Reader"), m_reader);
  m_kept = new QLabel(this);
  m_kept->setObjectName(QStringLiteral("readerKept"));
  m_kept->setWordWrap(true);
  form->addRow(tr("Kept so far"), m_kept);
  layout->addLayout(form);
  m_pairs = new QTableWidget(kRows, 2, this);
  m_pairs->setObjectName(QStringLiteral("readerPairs"));
  m_pairs->setAccessibleName(tr("Pairs of own and known counts"));
  m_pairs->setHorizontalHeaderLabels({tr("Own count"), tr("Weighed or graded")});
  m_pairs->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  m_pairs->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 8);
  m_pairs->setEditTriggers(QAbstractItemView::AllEditTriggers);
  layout->addWidget(m_pairs, 1);
  m_says = new QLabel(this);
  m_says->setObjectName(QStringLiteral("readerSays"));
  m_says->setWordWrap(true);
  m_says->setMinimumHeight(2 * fontMetrics().lineSpacing());
  layout->addWidget(m_says);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
  m_keep = box->addButton(tr("&Keep"), QDialogButtonBox::ActionRole);
  m_keep->setObjectName(QStringLiteral("readerKeep"));
  m_takeAway = box->addButton(tr("&Take away"), QDialogButtonBox::ActionRole);
  m_takeAway->setObjectName(QStringLiteral("readerTakeAway"));
  m_takeAway->setToolTip(tr("Read this reader's counts as they are again"));
  for (auto* button : box->buttons()) static_cast<QPushButton*>(button)->setAutoDefault(false);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(m_keep, &QPushButton::clicked, this, &ReaderDialog::keep);
  connect(m_takeAway, &QPushButton::clicked, this, &ReaderDialog::takeAway);
  layout->addWidget(box);
  connect(m_reader, &QComboBox::currentTextChanged, this, &ReaderDialog::refresh);
  connect(m_pairs, &QTableWidget::cellChanged, this, [this](int row, int) {
    if (row == m_pairs->rowCount() - 1) m_pairs->setRowCount(m_pairs->rowCount() + 1);
    refresh();
  });
  resize(56 * fontMetrics().averageCharWidth() + 120, 560);
  refresh();
}

std::string ReaderDialog::reader() const {
  return m_reader->currentText().trimmed().toStdString();
}

std::vector<strength::ReaderPair> ReaderDialog::pairs() const {
  std::vector<strength::ReaderPair> out;
  for (int row = 0; row < m_pairs->rowCount(); ++row) {
    const auto own = numberIn(cellText(*m_pairs, row, 0));
    const auto known = numberIn(cellText(*m_pairs, row, 1));
    if (own && known) out.push_back({*own, *known});
  }
  return out;
}

QString ReaderDialog::fault() const {
  for (int row = 0; row < m_pairs->rowCount(); ++row) {
    for (int column = 0; column < 2; ++column) {
      const QString text = cellText(*m_pairs, row, column);
      if (!text.isEmpty() && !numberIn(text)) {
        return tr("Line %1: “%2” is no number above nought.").arg(row + 1).arg(text);
      }
    }
    if (cellText(*m_pairs, row, 0).isEmpty() != cellText(*m_pairs, row, 1).isEmpty()) {
      return tr("Line %1: both counts are needed.").arg(row + 1);
    }
  }
  return {};
}

void ReaderDialog::refresh() {
  const auto kept = strength::readerFigures(m_hub.season(), reader());
  m_kept->setText(kept ? habit(*kept) : tr("nothing: counts are read as they are"));
  m_takeAway->setEnabled(kept.has_value());
  const QString wrong = fault();
  const auto all = pairs();
  const auto found = strength::fitReader(all);
  if (reader().empty()) {
    m_says->setText(tr("Name the reader."));
  } else if (!wrong.isEmpty()) {
    m_says->setText(wrong);
  } else if (!found) {
    m_says->setText(tr("%1 of at least %2 pairs entered; eight or more tell a habit from chance.")
                        .arg(all.size())
                        .arg(strength::kLeastReaderPairs));
  } else {
    m_says->setText(tr("%1 %2.").arg(m_reader->currentText().trimmed(), habit(*found)));
  }
  m_keep->setEnabled(!reader().empty() && wrong.isEmpty() && found.has_value());
}

void ReaderDialog::keep() {
  const auto found = strength::fitReader(pairs());
  if (!found) return;
  const auto source =
      tr("%1 pairs, %2").arg(found->pairs).arg(adapt::dateText(m_hub.workingDate())).toStdString();
  if (!m_hub.execute(
          session::calibrateReader(reader(), strength::readerSettings(reader(), found, source)),
          this)) {
    return;
  }
  m_pairs->clearContents();
  refresh();
}

void ReaderDialog::takeAway() {
  m_hub.execute(
      session::calibrateReader(reader(), strength::readerSettings(reader(), std::nullopt, {})),
      this);
  refresh();
}

}  // namespace outyard::main_window

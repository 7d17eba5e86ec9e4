// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/print_sheets.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPainter>
#include <QPixmap>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QVBoxLayout>
#include <memory>

#include "core/sheet/document.h"
#include "ui/adapt/system_clock.h"
#include "ui/adapt/words.h"
#include "ui/main_window/work_progress.h"
#include "ui/print/painter.h"
#include "ui/print/paper_painter.h"
#include "ui/print/pdf_writer.h"

namespace outyard::main_window {

// --- what is to be printed ----------------------------------------------------------------------

PrintSheetsDialog::PrintSheetsDialog(widgets::SeasonHub& hub, QWidget* parent)
    : QDialog(parent),
      m_yards(new QListWidget),
      m_paper(new QComboBox),
      m_date(new QDateEdit(adapt::toQDate(hub.workingDate()))),
      m_large(new QCheckBox(tr("&Large type, on paper laid across"))) {
  setWindowTitle(tr("Print yard sheets"));
  m_yards->setObjectName(QStringLiteral("sheetYards"));
  m_yards->setAccessibleName(tr("Yards to print a sheet for"));
  const auto selected = hub.selection().yard;
  for (const auto& [key, yard] : hub.season().table<apiary::Yard>()) {
    auto* item = new QListWidgetItem(
        QString::fromStdString(yard.name.empty() ? yard.yard.str() : yard.name), m_yards);
    item->setData(Qt::UserRole, QString::fromStdString(yard.yard.str()));
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
    const bool on = selected ? *selected == yard.yard : m_yards->count() == 1;
    item->setCheckState(on ? Qt::Checked : Qt::Unchecked);
    if (on) m_yards->setCurrentItem(item);
  }
  m_date->setObjectName(QStringLiteral("sheetDate"));
  m_date->setCalendarPopup(true);
  m_date->setDisplayFormat(QStringLiteral("d MMM yyyy"));
  m_paper->setObjectName(QStringLiteral("sheetPaper"));
  m_paper->addItem(tr("A4"), false);
  m_paper->addItem(tr("Letter"), true);
  m_paper->setCurrentIndex(hub.settings().get(adapt::desk::kLetterPaper) ? 1 : 0);
  m_large->setObjectName(QStringLiteral("sheetLarge"));
  auto* form = new QFormLayout;
  auto* yardsLabel = new QLabel(tr("&Yards"));
  yardsLabel->setBuddy(m_yards);
  form->addRow(yardsLabel, m_yards);
  form->addRow(tr("&Day of the visit"), m_date);
  form->addRow(tr("&Paper"), m_paper);
  form->addRow(QString(), m_large);
  auto* note = new QLabel(
      tr("Each sheet gets a number. It is kept in the season when the sheet is printed or saved, "
         "so that its lines can be typed back in the same order."));
  note->setWordWrap(true);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  m_ok = box->button(QDialogButtonBox::Ok);
  m_ok->setText(tr("Preview…"));
  connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(form);
  layout->addWidget(note);
  layout->addWidget(box);
  setMinimumWidth(420);
  const auto refresh = [this] { m_ok->setEnabled(!ask().yards.empty()); };
  connect(m_yards, &QListWidget::itemChanged, this, refresh);
  refresh();
}

SheetAsk PrintSheetsDialog::ask() const {
  SheetAsk ask;
  for (int i = 0; i < m_yards->count(); ++i) {
    const QListWidgetItem* item = m_yards->item(i);
    if (item->checkState() == Qt::Checked) {
      ask.yards.emplace_back(item->data(Qt::UserRole).toString().toStdString());
    }
  }
  ask.date = adapt::fromQDate(m_date->date());
  ask.letterPaper = m_paper->currentData().toBool();
  ask.largeType = m_large->isChecked();
  return ask;
}

void PrintSheetsDialog::choose(const std::vector<base::YardId>& yards, base::Date day) {
  for (int i = 0; i < m_yards->count(); ++i) {
    QListWidgetItem* item = m_yards->item(i);
    const base::YardId id(item->data(Qt::UserRole).toString().toStdString());
    const bool on = std::find(yards.begin(), yards.end(), id) != yards.end();
    item->setCheckState(on ? Qt::Checked : Qt::Unchecked);
  }
  m_date->setDate(adapt::toQDate(day));
}

// --- as it will come out ------------------------------------------------------------------------

namespace {

constexpr int kThumbDpi = 14;
constexpr double kLeastZoom = 0.5, kMostZoom = 4;

}  // namespace

SheetPreview::SheetPreview(const sheet::SheetDocument& document, const QString& fileName,
                           widgets::Dialogs& dialogs, std::function<base::Result<void>()> written,
                           QWidget* parent)
    : QDialog(parent),
      m_document(document),
      m_fileName(fileName),
      m_dialogs(dialogs),
      m_written(std::move(written)),
      m_strip(new QListWidget),
      m_area(new QScrollArea),
      m_page(new QLabel),
      m_say(new QLabel),
      m_range(new QLineEdit),
      m_save(new QPushButton(tr("&Save as PDF…"))),
      m_print(new QPushButton(tr("&Print…"))) {
  setWindowTitle(tr("Preview of %n page(s)", nullptr, static_cast<int>(document.pages.size())));
  m_strip->setObjectName(QStringLiteral("previewStrip"));
  m_strip->setAccessibleName(tr("Pages"));
  m_strip->setViewMode(QListView::IconMode);
  m_strip->setFlow(QListView::TopToBottom);
  m_strip->setWrapping(false);
  m_strip->setMovement(QListView::Static);
  m_strip->setResizeMode(QListView::Adjust);
  m_strip->setSpacing(6);
  QSize thumb;
  for (std::size_t i = 0; i < m_document.pages.size(); ++i) {
    const QImage small = print::renderPage(m_document.pages[i], kThumbDpi * devicePixelRatioF());
    QPixmap pixmap = QPixmap::fromImage(small);
    pixmap.setDevicePixelRatio(devicePixelRatioF());
    thumb = thumb.expandedTo(pixmap.deviceIndependentSize().toSize());
    auto* item = new QListWidgetItem(QIcon(pixmap), tr("%1").arg(i + 1), m_strip);
    item->setData(Qt::AccessibleTextRole,
                  tr("Page %1 of %2").arg(i + 1).arg(m_document.pages.size()));
  }
  m_strip->setIconSize(thumb);
  m_strip->setFixedWidth(thumb.width() + 46);
  m_page->setObjectName(QStringLiteral("previewPage"));
  m_page->setAlignment(Qt::AlignCenter);
  m_area->setWidget(m_page);
  m_area->setWidgetResizable(true);
  m_area->setAlignment(Qt::AlignCenter);
  m_range->setObjectName(QStringLiteral("previewRange"));
  m_range->setPlaceholderText(tr("all, or for instance 1-3, 5"));
  m_range->setAccessibleName(tr("Pages to print"));
  m_range->setMaximumWidth(220);
  m_say->setObjectName(QStringLiteral("previewSay"));
  m_say->setWordWrap(true);
  m_save->setObjectName(QStringLiteral("previewSave"));
  m_print->setObjectName(QStringLiteral("previewPrint"));
  m_save->setDefault(true);
  auto* close = new QPushButton(tr("&Close"));
  auto* larger = new QPushButton(tr("&Larger"));
  auto* smaller = new QPushButton(tr("S&maller"));
  for (QPushButton* b : {close, larger, smaller, m_print}) b->setAutoDefault(false);
  larger->setToolTip(tr("Larger (Ctrl++)"));
  smaller->setToolTip(tr("Smaller (Ctrl+-)"));

  auto* middle = new QHBoxLayout;
  middle->addWidget(m_strip);
  middle->addWidget(m_area, 1);
  auto* pagesLabel = new QLabel(tr("Pa&ges"));
  pagesLabel->setBuddy(m_range);
  auto* foot = new QHBoxLayout;
  foot->addWidget(pagesLabel);
  foot->addWidget(m_range);
  foot->addWidget(m_say, 1);
  foot->addWidget(smaller);
  foot->addWidget(larger);
  foot->addSpacing(12);
  foot->addWidget(m_print);
  foot->addWidget(m_save);
  foot->addWidget(close);
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(middle, 1);
  layout->addLayout(foot);
  resize(960, 760);

  connect(m_strip, &QListWidget::currentRowChanged, this, &SheetPreview::showPage);
  connect(m_range, &QLineEdit::textChanged, this, &SheetPreview::refresh);
  connect(m_save, &QPushButton::clicked, this, &SheetPreview::savePdf);
  connect(m_print, &QPushButton::clicked, this, &SheetPreview::print);
  connect(close, &QPushButton::clicked, this, &QDialog::accept);
  connect(larger, &QPushButton::clicked, this, [this] { zoomBy(1.25); });
  connect(smaller, &QPushButton::clicked, this, [this] { zoomBy(0.8); });
  new QShortcut(QKeySequence::ZoomIn, this, [this] { zoomBy(1.25); });
  new QShortcut(QKeySequence::ZoomOut, this, [this] { zoomBy(0.8); });
  m_strip->setCurrentRow(0);
  m_strip->setFocus();
  refresh();
}

SheetPreview::~SheetPreview() = default;

void SheetPreview::resizeEvent(QResizeEvent* event) {
  QDialog::resizeEvent(event);
  showPage(m_strip->currentRow());
}

/// At a zoom of one the page fits the width that there is.
void SheetPreview::showPage(int row) {
  if (row < 0 || row >= static_cast<int>(m_document.pages.size())) return;
  const sheet::SheetPage& page = m_document.pages[static_cast<std::size_t>(row)];
  const double ratio = devicePixelRatioF();
  const double width = std::max(300, m_area->width() - 34) * m_zoom;
  const double dpi = width * 25.4 / page.widthMm;
  QPixmap pixmap = QPixmap::fromImage(print::renderPage(page, dpi * ratio));
  pixmap.setDevicePixelRatio(ratio);
  m_page->setPixmap(pixmap);
  m_page->setAccessibleName(
      tr("Page %1 of %2").arg(row + 1).arg(static_cast<int>(m_document.pages.size())));
}

void SheetPreview::zoomBy(double factor) {
  m_zoom = std::clamp(m_zoom * factor, kLeastZoom, kMostZoom);
  showPage(m_strip->currentRow());
}

std::optional<sheet::SheetDocument> SheetPreview::chosen() {
  const auto pages = sheet::pageRange(m_range->text().toStdString(), m_document.pages.size());
  if (!pages) return std::nullopt;
  return sheet::onlyPages(m_document, *pages);
}

void SheetPreview::refresh() {
  const auto pages = sheet::pageRange(m_range->text().toStdString(), m_document.pages.size());
  m_say->setText(pages ? QString() : adapt::words(pages.failure()));
  m_save->setEnabled(static_cast<bool>(pages));
  m_print->setEnabled(static_cast<bool>(pages));
}

void SheetPreview::keep() {
  if (m_kept) return;
  const auto done = m_written();
  if (done) {
    m_kept = true;
    return;
  }
  m_dialogs.failure(this, tr("The sheet's number was not kept"), adapt::words(done.failure()));
}

void SheetPreview::savePdf() {
  const auto document = chosen();
  if (!document) return;
  QString file =
      m_dialogs.saveFile(this, tr("Save yard sheet"), tr("PDF files (*.pdf)"), m_fileName);
  if (file.isEmpty()) return;
  if (!file.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive)) file += QLatin1String(".pdf");
  auto progress = std::make_unique<WorkProgress>(tr("Writing the PDF…"), this);
  const auto done =
      progress->besideWindow([&] { return print::writePdf(*document, file, *progress); });
  const bool stopped = progress->cancelled();
  progress.reset();  // or it would come up over what follows
  if (!done) {
    if (stopped) {
      m_say->setText(adapt::words(done.failure()));
      return;
    }
    m_dialogs.failure(this, tr("The sheet was not written"), adapt::words(done.failure()));
    return;
  }
  keep();
  m_say->setText(tr("Written to %1").arg(file));
}

void SheetPreview::print() {
  const auto document = chosen();
  if (!document) return;
  // Made only now: a printer object asks the print server, which can be slow.
  QPrinter printer(QPrinter::HighResolution);
  printer.setDocName(QString::fromStdString(m_document.title));
  printer.setFullPage(true);
  const auto& first = document->pages.front();
  const bool across = first.widthMm > first.heightMm;
  printer.setPageSize(QPageSize(
      QSizeF(std::min(first.widthMm, first.heightMm), std::max(first.widthMm, first.heightMm)),
      QPageSize::Millimeter));
  printer.setPageOrientation(across ? QPageLayout::Landscape : QPageLayout::Portrait);
  QPrintDialog dialog(&printer, this);
  dialog.setOption(QPrintDialog::PrintPageRange, false);
  if (!m_dialogs.run(dialog)) return;
  QPainter painter;
  if (!painter.begin(&printer)) {
    m_dialogs.failure(this, tr("The sheet was not printed"),
                      tr("The printer did not take the sheet. See that it is switched on, or save "
                         "the sheet as a PDF and print that."));
    return;
  }
  print::PaperPainter paper(painter, print::Palette::paper());
  WorkProgress progress(tr("Sending the sheets to the printer…"), this);
  const auto pages = static_cast<double>(document->pages.size());
  for (std::size_t i = 0; i < document->pages.size(); ++i) {
    if (progress.cancelled()) {
      printer.abort();
      painter.end();
      m_say->setText(tr("Stopped: the printer was told to leave the sheets"));
      return;
    }
    if (i > 0) printer.newPage();
    paper.page(QRectF(printer.paperRect(QPrinter::DevicePixel)), document->pages[i]);
    progress.report(static_cast<double>(i + 1) / pages);
  }
  painter.end();
  keep();
  m_say->setText(tr("Sent to the printer"));
}

}  // namespace outyard::main_window

// SPDX-License-Identifier: GPL-3.0-or-later
// The desk on paper: hives at risk, gear and looks, then each yard with its days and its work.
#include <QComboBox>
#include <QFontMetricsF>
#include <QLabel>
#include <QPagedPaintDevice>
#include <QPainter>
#include <optional>

#include "ui/adapt/words.h"
#include "ui/desk/day_strip.h"
#include "ui/desk/desk_place.h"
#include "ui/desk/desk_words.h"
#include "ui/print/palette.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/session_model.h"

namespace outyard::desk {
namespace {

// The painter counts tenths of a millimetre, so that the sizes of fonts stay whole.
constexpr double kPerMm = 10, kMmPerInch = 25.4, kMargin = 14 * kPerMm;
constexpr int kText = 32, kHead = 38, kTitle = 50;  // heights of the fonts

/// Lays out the same twice: first dry, to count the pages, then on the device.
class Paper {
 public:
  Paper(QPagedPaintDevice& device, QPainter& painter, QString title, std::optional<int> pages)
      : m_device(device), m_painter(painter), m_title(std::move(title)), m_pages(pages) {
    m_painter.resetTransform();
    const double perUnit = device.logicalDpiX() / kMmPerInch / kPerMm;
    m_painter.scale(perUnit, perUnit);
    m_width = device.width() / perUnit - 2 * kMargin;
    m_bottom = device.height() / perUnit - kMargin;
    begin();
  }
  [[nodiscard]] double width() const { return m_width; }
  [[nodiscard]] static QFont font(int height, bool bold) {
    QFont font;
    font.setPixelSize(height);
    font.setBold(bold);
    return font;
  }
  [[nodiscard]] double heightOf(const QString& text, const QFont& font, double width) const {
    return QFontMetricsF(font)
        .boundingRect(QRectF(0, 0, width, 1e6), Qt::TextWordWrap, text)
        .height();
  }
  /// A new page when so much does not fit on this one.
  void need(double height) {
    if (m_y + height <= m_bottom) return;
    if (m_pages) m_device.newPage();
    ++m_page;
    m_y = kMargin;
    begin();
  }
  void heading(const QString& text, double keepWith) {
    const QFont large = font(kHead, true);
    const double high = QFontMetricsF(large).height();
    need(30 + high + keepWith);
    m_y += 30;
    draw(QRectF(kMargin, m_y, m_width, high), text, large, Qt::AlignLeft);
    m_y += high + 4;
    rule(4);
    m_y += 8;
  }
  void draw(const QRectF& at, const QString& text, const QFont& font, int flags) {
    if (!m_pages) return;
    m_painter.setFont(font);
    m_painter.setPen(Qt::black);
    m_painter.drawText(at, flags | Qt::TextWordWrap, text);
  }
  void rule(double thick) {
    if (!m_pages) return;
    m_painter.setPen(QPen(Qt::black, thick));
    m_painter.drawLine(QPointF(kMargin, m_y), QPointF(kMargin + m_width, m_y));
  }
  /// Null while the pages are counted.
  [[nodiscard]] QPainter* painter() { return m_pages ? &m_painter : nullptr; }
  [[nodiscard]] double y() const { return m_y; }
  [[nodiscard]] int pages() const { return m_page; }
  void down(double by) { m_y += by; }

 private:
  void begin() {
    const QFont large = font(kTitle, true), small = font(kText, false);
    const double high = QFontMetricsF(large).height();
    draw(QRectF(kMargin, kMargin, m_width, high), m_title, large, Qt::AlignLeft);
    draw(QRectF(kMargin, kMargin, m_width, high),
         DeskPlace::tr("Page %1 of %2").arg(m_page).arg(m_pages.value_or(m_page)), small,
         Qt::AlignRight | Qt::AlignVCenter);
    m_y = kMargin + high + 6;
  }
  QPagedPaintDevice& m_device;
  QPainter& m_painter;
  QString m_title;
  std::optional<int> m_pages;  ///< how many there are; not known while they are counted
  double m_width = 0, m_bottom = 0, m_y = kMargin;
  int m_page = 1;
};

/// A row with a box to tick where there is work; nothing of it is cut.
void paintRow(Paper& paper, const Row& row) {
  const QFont plain = Paper::font(kText, false), bold = Paper::font(kText, true);
  const QFontMetricsF plainSize(plain), boldSize(bold);
  const double line = plainSize.height();
  const bool tick = row.kind == Row::Kind::Task;
  const double box = tick ? line + 14 : 0;
  const double lead = row.kind == Row::Kind::Task ? 190 : boldSize.horizontalAdvance(row.lead) + 20;
  QString right = row.right;
  if (!row.extra.isEmpty()) right = QStringLiteral("%1  ·  %2").arg(row.extra, right);
  const double rightWidth = boldSize.horizontalAdvance(right) + 10;
  const double titleWidth = std::max(200.0, paper.width() - box - lead - rightWidth);
  double head = 0;
  if (!row.lead.isEmpty()) head = std::max(line, paper.heightOf(row.title, plain, titleWidth));
  const double indent = tick ? box + lead : 0;
  std::vector<std::pair<QString, double>> lines;
  double high = head;
  for (qsizetype i = 0; i < row.lines.size(); ++i) {
    QString text = row.lines.at(i);
    if (i < row.badges.size() && !row.badges.at(i).isSpace()) {
      text = QStringLiteral("%1  %2").arg(row.badges.at(i)).arg(text);
    }
    lines.emplace_back(text, paper.heightOf(text, plain, paper.width() - indent));
    high += lines.back().second;
  }
  paper.need(high + 14);
  if (auto* painter = tick ? paper.painter() : nullptr) {
    painter->setPen(QPen(Qt::black, 3));
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(QRectF(kMargin + 2, paper.y() + 4, line - 8, line - 8));
  }
  if (head > 0) {
    paper.draw(QRectF(kMargin + box, paper.y(), lead, line), row.lead, bold, Qt::AlignLeft);
    paper.draw(QRectF(kMargin + box + lead, paper.y(), titleWidth, head), row.title, plain,
               Qt::AlignLeft);
    paper.draw(QRectF(kMargin + paper.width() - rightWidth, paper.y(), rightWidth, line), right,
               row.urgent ? bold : plain, Qt::AlignRight);
    paper.down(head);
  }
  for (const auto& [text, textHigh] : lines) {
    paper.draw(QRectF(kMargin + indent, paper.y(), paper.width() - indent, textHigh), text, plain,
               Qt::AlignLeft);
    paper.down(textHigh);
  }
  paper.down(5);
  paper.rule(0.8);
  paper.down(7);
}

}  // namespace

void DeskPlace::printTo(QPagedPaintDevice& device) {
  QPainter painter(&device);
  const int pages = paintPages(device, painter, std::nullopt);
  paintPages(device, painter, pages);
}

int DeskPlace::paintPages(QPagedPaintDevice& device, QPainter& painter,
                          std::optional<int> pages) const {
  if (!m_facts) {
    Paper paper(device, painter, tr("Desk"), pages);
    const QFont plain = Paper::font(kText, false);
    paper.draw(QRectF(kMargin, paper.y() + 30, paper.width(), 400), m_empty->sentence(), plain,
               Qt::AlignLeft);
    return paper.pages();
  }
  const RowMaker make = maker();
  Paper paper(device, painter,
              tr("Desk: %1 – %2")
                  .arg(shortDay(m_facts->due.ask.from), adapt::dateText(m_facts->due.ask.to)),
              pages);
  const QFont plain = Paper::font(kText, false);
  const QString sum = sumText(*m_facts);
  const double high = paper.heightOf(sum, plain, paper.width());
  paper.draw(QRectF(kMargin, paper.y(), paper.width(), high), sum, plain, Qt::AlignLeft);
  paper.down(high);
  const auto block = [&](const QString& title, const std::vector<Row>& rows) {
    paper.heading(title, 120);
    for (const Row& row : rows) paintRow(paper, row);
  };
  block(tr("Hives at risk"), make.risk());
  block(tr("Gear short"), make.gear());
  block(tr("What surprised at the last looks"), make.looks());
  const double strip = stripHeight(plain);
  for (const auto& work : m_facts->yards) {
    const Row row = make.yard(work);
    paper.heading(QStringLiteral("%1:  %2").arg(row.lead, row.right), strip + 120);
    if (paper.painter()) {
      paintStrip(*paper.painter(), QRectF(kMargin, paper.y(), paper.width(), strip),
                 m_facts->due.yards[work.days], plain, print::Palette::paper(), make.units);
    }
    paper.down(strip + 10);
    if (m_facts->due.yards[work.days].foulBrood) {
      Row warning;
      warning.lines << row.lines.first();
      warning.badges = row.badges;
      paintRow(paper, warning);
    }
    for (const std::size_t i : make.shown(work, static_cast<Show>(m_show->currentIndex()))) {
      paintRow(paper, make.task(i));
    }
  }
  return paper.pages();
}

}  // namespace outyard::desk

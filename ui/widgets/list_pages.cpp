// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/list_pages.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QSaveFile>
#include <QTextLayout>
#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>

#include "ui/print/font_measurer.h"

namespace outyard::widgets {

namespace {

// One unit of the painter is a fiftieth of a millimetre: fonts are whole pixels of it, so text is
// as wide on paper as it was measured.
constexpr double kMm = 50;
constexpr double kMargin = 13 * kMm;
constexpr double kTitle = 5 * kMm, kText = 2.9 * kMm, kSmallestText = 1.9 * kMm, kFoot = 2.5 * kMm;
constexpr double kPadX = 1.2 * kMm, kPadY = 0.8 * kMm;
constexpr double kFootRoom = 7 * kMm;
/// A column of sentences is wrapped from here on before another one is squeezed.
constexpr double kWideColumn = 62 * kMm;

QString text(const char* source) {
  return QCoreApplication::translate("outyard::widgets::ListPages", source);
}

QFont fontOf(double size, bool bold) {
  QFont font = print::sheetFont(bold);
  font.setPixelSize(static_cast<int>(std::lround(size)));
  return font;
}

QString oneLine(QString cell) {
  cell.replace(QStringLiteral("\r\n"), QStringLiteral("\n"));
  cell.replace(QLatin1Char('\n'), QChar::LineSeparator);
  return cell;
}

/// Width of the widest line and of the widest word.
struct Extent {
  double whole = 0, word = 0;
};
Extent extentOf(const QString& cell, const QFontMetricsF& metrics) {
  static const QRegularExpression kBlank(QStringLiteral("[ \\t\\n]"));
  Extent out;
  for (const QString& line : cell.split(QLatin1Char('\n'))) {
    out.whole = std::max(out.whole, metrics.horizontalAdvance(line));
    for (const QString& word : line.split(kBlank)) {
      out.word = std::max(out.word, metrics.horizontalAdvance(word));
    }
  }
  return out;
}

struct Columns {
  double textSize = kText;
  std::vector<double> widths;
};

struct Natural {
  std::vector<double> whole, word;  ///< with the padding
  [[nodiscard]] double sum(const std::vector<double>& of) const {
    return std::accumulate(of.begin(), of.end(), 0.0);
  }
};

Natural naturalWidths(const ListTable& list, double size) {
  const QFontMetricsF plain(fontOf(size, false)), bold(fontOf(size, true));
  const auto count = static_cast<std::size_t>(list.head.size());
  Natural out;
  out.whole.assign(count, 0);
  out.word.assign(count, 0);
  const auto take = [&](const QStringList& cells, const QFontMetricsF& metrics) {
    for (std::size_t i = 0; i < count && i < static_cast<std::size_t>(cells.size()); ++i) {
      const Extent extent = extentOf(cells[static_cast<int>(i)], metrics);
      // Half a unit for every rounding, so that nothing wraps that was measured to fit.
      out.whole[i] = std::max(out.whole[i], extent.whole + 2 * kPadX + 4);
      out.word[i] = std::max(out.word[i], std::min(extent.word, kWideColumn) + 2 * kPadX + 4);
    }
  };
  take(list.head, bold);
  for (const auto& line : list.lines) take(line.cells, line.strong ? bold : plain);
  return out;
}

/// Columns as wide as their content where the page has room; else the wide ones give first, down to
/// their longest word; else the text gets smaller; else words are broken.
Columns columnsFor(const ListTable& list, double width) {
  Columns out;
  for (;; out.textSize -= 0.2 * kMm) {
    const Natural natural = naturalWidths(list, out.textSize);
    const double whole = natural.sum(natural.whole);
    if (whole <= width) {
      out.widths = natural.whole;
      // Columns that nearly fill the page fill it, so that its right edge is not ragged.
      const double spread = whole > 0.7 * width && whole > 0 ? width / whole : 1;
      for (double& each : out.widths) each *= spread;
      return out;
    }
    const double least = natural.sum(natural.word);
    const bool smallest = out.textSize <= kSmallestText;
    if (least > width && !smallest) continue;
    if (least > width) {
      out.widths = natural.word;
      for (double& each : out.widths) each *= width / least;
      return out;
    }
    // A row that becomes very tall reads worse than a slightly smaller letter.
    if (whole > 2.2 * width && !smallest && out.textSize > 2.4 * kMm) continue;
    // The room above the longest words goes to all alike until one has what it asks for.
    out.widths = natural.word;
    double left = width - least;
    for (int round = 0; round < 50 && left > 1; ++round) {
      std::vector<std::size_t> open;
      for (std::size_t i = 0; i < out.widths.size(); ++i) {
        if (out.widths[i] + 0.5 < natural.whole[i]) open.push_back(i);
      }
      if (open.empty()) break;
      const double share = left / static_cast<double>(open.size());
      for (const std::size_t i : open) {
        const double more = std::min(share, natural.whole[i] - out.widths[i]);
        out.widths[i] += more;
        left -= more;
      }
    }
    return out;
  }
}

struct Row {
  std::vector<std::unique_ptr<QTextLayout>> cells;
  int lines = 1;
};

/// A stretch of a row's lines on a page; nearly always the whole row.
struct Piece {
  std::size_t row = 0;
  int from = 0, to = 0;
};

class ListLayout {
 public:
  ListLayout(const ListTable& list, double width, double height)
      : m_list(list), m_width(width), m_height(height), m_columns(columnsFor(list, width)) {
    const QFont plain = fontOf(m_columns.textSize, false), bold = fontOf(m_columns.textSize, true);
    m_line = std::ceil(std::max(QFontMetricsF(plain).height(), QFontMetricsF(bold).height()));
    m_head = row(list.head, bold);
    m_note = paragraph(list.note, fontOf(kText, false), width);
    for (const auto& line : list.lines)
      m_rows.push_back(row(line.cells, line.strong ? bold : plain));
    paginate();
  }
  [[nodiscard]] std::size_t pages() const { return m_pages.size(); }

  void paint(QPainter& painter, std::size_t page) const {
    painter.setPen(QPen(Qt::black, 0));
    double y = paintTitle(painter, page == 0);
    if (m_list.head.isEmpty()) return;
    const double headHeight = heightOf(m_head.lines);
    painter.fillRect(QRectF(0, y, tableWidth(), headHeight), QColor(226, 226, 226));
    paintLines(painter, m_head, y, 0, m_head.lines);
    y += headHeight;
    rule(painter, y, 0.3 * kMm);
    if (m_list.lines.empty()) {
      painter.setFont(fontOf(kText, false));
      painter.drawText(QRectF(kPadX, y + kPadY, m_width, 2 * m_line), Qt::AlignLeft | Qt::AlignTop,
                       text("Nothing in the list."));
      return;
    }
    for (const Piece& piece : m_pages[page]) {
      const Row& row = m_rows[piece.row];
      paintLines(painter, row, y, piece.from, piece.to);
      y += heightOf(piece.to - piece.from);
      rule(painter, y, 0.1 * kMm);
    }
  }

 private:
  [[nodiscard]] double heightOf(int lines) const { return lines * m_line + 2 * kPadY; }
  [[nodiscard]] double tableWidth() const {
    return std::accumulate(m_columns.widths.begin(), m_columns.widths.end(), 0.0);
  }

  static std::unique_ptr<QTextLayout> laid(const QString& cell, const QFont& font, double width,
                                           bool right) {
    auto layout = std::make_unique<QTextLayout>(oneLine(cell), font);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setTextDirection(Qt::LayoutDirectionAuto);
    // Without AlignAbsolute left means where the text begins, so Hebrew stands at the right.
    option.setAlignment(right ? Qt::AlignRight | Qt::AlignAbsolute : Qt::AlignLeft);
    layout->setTextOption(option);
    layout->beginLayout();
    for (QTextLine line = layout->createLine(); line.isValid(); line = layout->createLine()) {
      line.setLineWidth(std::max(1.0, width));
    }
    layout->endLayout();
    return layout;
  }

  Row row(const QStringList& cells, const QFont& font) const {
    Row out;
    for (std::size_t i = 0; i < m_columns.widths.size(); ++i) {
      const bool right = i < m_list.right.size() && m_list.right[i];
      out.cells.push_back(
          laid(cells.value(static_cast<int>(i)), font, m_columns.widths[i] - 2 * kPadX, right));
      out.lines = std::max(out.lines, out.cells.back()->lineCount());
    }
    return out;
  }

  static std::unique_ptr<QTextLayout> paragraph(const QString& words, const QFont& font,
                                                double width) {
    return words.isEmpty() ? nullptr : laid(words, font, width, false);
  }

  /// Draws it, or only measures where there is no painter: the two never differ.
  double paintTitle(QPainter* painter, bool first) const {
    const QFont font = fontOf(first ? kTitle : kText, true);
    const QFont small = fontOf(kText, false);
    const double dateWidth = QFontMetricsF(small).horizontalAdvance(m_list.date) + 4 * kMm;
    const auto title = laid(m_list.title, font, m_width - dateWidth, false);
    const double line = std::ceil(QFontMetricsF(font).height());
    double y = 0;
    for (int i = 0; i < title->lineCount(); ++i, y += line) {
      if (painter) title->lineAt(i).draw(painter, QPointF(0, y));
    }
    if (painter) {
      painter->setFont(small);
      painter->drawText(QRectF(m_width - dateWidth, 0, dateWidth, line),
                        Qt::AlignRight | Qt::AlignVCenter, m_list.date);
    }
    if (first && m_note) {
      const double noteLine = std::ceil(QFontMetricsF(small).height());
      y += 0.6 * kMm;
      for (int i = 0; i < m_note->lineCount(); ++i, y += noteLine) {
        if (painter) m_note->lineAt(i).draw(painter, QPointF(0, y));
      }
    }
    return y + 2 * kMm;
  }
  double paintTitle(QPainter& painter, bool first) const { return paintTitle(&painter, first); }

  void paintLines(QPainter& painter, const Row& row, double y, int from, int to) const {
    double x = 0;
    for (std::size_t i = 0; i < row.cells.size(); x += m_columns.widths[i], ++i) {
      const QTextLayout& cell = *row.cells[i];
      for (int line = from; line < std::min(to, cell.lineCount()); ++line) {
        // A line knows where it begins within its layout; here it is put where its row stands.
        const QTextLine each = cell.lineAt(line);
        const double top = y + kPadY + (line - from) * m_line;
        each.draw(&painter, QPointF(x + kPadX, top) - QPointF(0, each.position().y()));
      }
    }
  }

  void rule(QPainter& painter, double y, double thick) const {
    painter.fillRect(QRectF(0, y - thick / 2, tableWidth(), thick), QColor(90, 90, 90));
  }

  void paginate() {
    m_pages.emplace_back();
    double y = paintTitle(nullptr, true) + heightOf(m_head.lines);
    const double top = paintTitle(nullptr, false) + heightOf(m_head.lines);
    const auto newPage = [&] {
      m_pages.emplace_back();
      y = top;
    };
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
      const int all = m_rows[i].lines;
      if (y + heightOf(all) > m_height && !m_pages.back().empty()) newPage();
      int from = 0;
      while (from < all) {
        const int fit = static_cast<int>((m_height - y - 2 * kPadY) / m_line);
        if (fit < 1 && !m_pages.back().empty()) {
          newPage();
          continue;
        }
        const int to = std::min(all, from + std::max(1, fit));
        m_pages.back().push_back({i, from, to});
        y += heightOf(to - from);
        from = to;
        if (from < all) newPage();
      }
    }
  }

  const ListTable& m_list;
  double m_width, m_height;
  Columns m_columns;
  double m_line = 1;
  Row m_head;
  std::unique_ptr<QTextLayout> m_note;
  std::vector<Row> m_rows;
  std::vector<std::vector<Piece>> m_pages;
};

QPageLayout pageOf(const ListTable& list, bool letter) {
  return {QPageSize(letter ? QPageSize::Letter : QPageSize::A4),
          wantsLandscape(list, letter) ? QPageLayout::Landscape : QPageLayout::Portrait,
          QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter};
}

QString notWritten(const QString& path, const QString& why) {
  return text("The list could not be written to %1: %2. Choose another folder or free some space.")
      .arg(path, why);
}

/// A page of one size for each list, where `sized` may set it before the page begins.
void paintAll(QPagedPaintDevice& device, const std::vector<ListTable>& lists, bool letter,
              bool sized) {
  struct Laid {
    std::unique_ptr<ListLayout> layout;
    double width = 0, height = 0, marginX = 0, marginY = 0;
  };
  std::vector<Laid> all;
  std::size_t total = 0;
  for (const auto& list : lists) {
    const QPageLayout page = sized ? pageOf(list, letter) : device.pageLayout();
    const QRectF area = page.paintRect(QPageLayout::Millimeter);
    const QMarginsF margins = page.margins(QPageLayout::Millimeter);
    Laid laid;
    // What the device leaves white already is not left white twice.
    laid.marginX = std::max(0.0, kMargin - std::min(margins.left(), margins.right()) * kMm);
    laid.marginY = std::max(0.0, kMargin - std::min(margins.top(), margins.bottom()) * kMm);
    laid.width = area.width() * kMm - 2 * laid.marginX;
    laid.height = area.height() * kMm - 2 * laid.marginY;
    laid.layout = std::make_unique<ListLayout>(list, laid.width, laid.height - kFootRoom);
    total += laid.layout->pages();
    all.push_back(std::move(laid));
  }
  if (sized && !lists.empty()) device.setPageLayout(pageOf(lists.front(), letter));
  QPainter painter;
  if (lists.empty() || !painter.begin(&device)) return;
  std::size_t number = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t page = 0; page < all[i].layout->pages(); ++page) {
      if (number++ > 0) {
        if (sized) device.setPageLayout(pageOf(lists[i], letter));
        device.newPage();
      }
      painter.save();
      painter.scale(device.logicalDpiX() / 25.4 / kMm, device.logicalDpiY() / 25.4 / kMm);
      painter.translate(all[i].marginX, all[i].marginY);
      all[i].layout->paint(painter, page);
      painter.setPen(Qt::black);
      painter.setFont(fontOf(kFoot, false));
      painter.drawText(QRectF(0, all[i].height - kFootRoom, all[i].width, kFootRoom),
                       Qt::AlignRight | Qt::AlignBottom,
                       text("Page %1 of %2").arg(number).arg(total));
      painter.restore();
    }
  }
}

}  // namespace

void paintLists(QPagedPaintDevice& device, const std::vector<ListTable>& lists) {
  paintAll(device, lists, false, false);
}

bool wantsLandscape(const ListTable& list, bool letter) {
  const QSizeF size =
      QPageSize(letter ? QPageSize::Letter : QPageSize::A4).size(QPageSize::Millimeter);
  const Natural natural = naturalWidths(list, kText);
  // Sentences may wrap on either; what must not wrap decides.
  double needed = 0;
  for (const double whole : natural.whole) needed += std::min(whole, kWideColumn);
  return needed > size.width() * kMm - 2 * kMargin;
}

QString writeListPdf(const std::vector<ListTable>& lists, bool letter, const QString& path) {
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return notWritten(path, file.errorString());
  {
    QPdfWriter writer(&file);
    writer.setResolution(1200);
    if (!lists.empty()) writer.setTitle(lists.front().title);
    writer.setCreator(QStringLiteral("Outyard " OUTYARD_VERSION));
    paintAll(writer, lists, letter, true);
  }
  return file.commit() ? QString() : notWritten(path, file.errorString());
}

QString writeListCsv(const ListTable& list, const QString& path) {
  const QByteArray bytes = listCsv(list);
  QSaveFile file(path);
  const bool written =
      file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
  return written ? QString() : notWritten(path, file.errorString());
}

}  // namespace outyard::widgets

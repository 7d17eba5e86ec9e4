// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/set_text.h"

#include <QFontMetrics>
#include <QString>
#include <QTextLayout>
#include <QTextOption>
#include <algorithm>
#include <cmath>

#include "ui/print/font_measurer.h"

namespace outyard::print {

std::size_t SetText::fontIndex(const QRawFont& font) {
  const auto it = std::find(m_fonts.begin(), m_fonts.end(), font);
  if (it != m_fonts.end()) return static_cast<std::size_t>(it - m_fonts.begin());
  m_fonts.push_back(font);
  return m_fonts.size() - 1;
}

SetText::Words SetText::set(const std::string& text, bool bold, bool italic) {
  Words out;
  const QString words = QString::fromStdString(text);
  const QFont font = sheetFont(bold, italic);
  out.width = QFontMetrics(font).horizontalAdvance(words);
  QTextLayout layout(words, font);
  QTextOption option;
  option.setWrapMode(QTextOption::NoWrap);
  // as QPainter::drawText does: each text in its own direction, from its left end
  option.setTextDirection(Qt::LayoutDirectionAuto);
  option.setAlignment(Qt::AlignLeft | Qt::AlignAbsolute);
  layout.setTextOption(option);
  layout.beginLayout();
  QTextLine line = layout.createLine();
  line.setLineWidth(1e6);
  layout.endLayout();
  const QPointF baseline(line.x(), line.y() + line.ascent());
  const auto runs = line.glyphRuns();
  for (const QGlyphRun& run : runs) {
    Run one;
    one.font = fontIndex(run.rawFont());
    one.glyphs = run.glyphIndexes();
    const QList<QPointF> places = run.positions();
    for (const QPointF& place : places) one.places << place - baseline;
    out.runs.push_back(std::move(one));
  }
  return out;
}

const SetText::Words& SetText::words(const std::string& text, bool bold, bool italic) {
  auto& known = m_known[(bold ? 1 : 0) + (italic ? 2 : 0)];
  const auto it = known.find(text);
  if (it != known.end()) return it->second;
  constexpr std::size_t kMost = 20000;
  if (known.size() >= kMost) known.clear();
  return known.emplace(text, set(text, bold, italic)).first->second;
}

QGlyphRun SetText::glyphs(const Run& run, double pixels, QPointF at) {
  const int size = std::max(1, static_cast<int>(std::lround(pixels)));
  auto [it, isNew] = m_sized.try_emplace({run.font, size}, m_fonts[run.font]);
  if (isNew) it->second.setPixelSize(size);
  const double scale = pixels / kFontPixels;
  QList<QPointF> places;
  places.reserve(run.places.size());
  for (const QPointF& place : run.places) {
    places << QPointF(std::round(at.x() + place.x() * scale),
                      std::round(at.y() + place.y() * scale));
  }
  QGlyphRun drawn;
  drawn.setRawFont(it->second);
  drawn.setGlyphIndexes(run.glyphs);
  drawn.setPositions(places);
  return drawn;
}

}  // namespace outyard::print

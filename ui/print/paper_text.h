// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QPainter>
#include <QSizeF>
#include <QString>
#include <functional>

class QPagedPaintDevice;

namespace outyard::print {

/// Rich text in black over as many pages as it takes; what a place prints of itself in words and
/// tables. One unit of the painter is a point, on paper and on a screen's picture alike.
class PaperText {
 public:
  /// The letters are so many points high.
  PaperText(QPagedPaintDevice& device, int points);
  [[nodiscard]] QSizeF page() const { return m_page; }
  /// `more` may draw on each page, told its number from 0, when its text stands.
  void print(const QString& html, const std::function<void(QPainter&, int page)>& more = {});

 private:
  QPagedPaintDevice& m_device;
  QSizeF m_page;
  int m_points;
  QPainter m_painter;
};

}  // namespace outyard::print

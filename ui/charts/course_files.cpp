// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/course_files.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgGenerator>
#include <algorithm>
#include <set>

#include "ui/charts/course_painter.h"

namespace outyard::charts {
namespace {

struct Course {
  Q_DECLARE_TR_FUNCTIONS(Course)
};

constexpr double kMmPerInch = 25.4;
constexpr int kFilePx = 13;

CourseStyle paperStyle(int px, const print::Palette& palette) {
  CourseStyle style;
  style.palette = &palette;
  style.font.setFamily(QStringLiteral("DejaVu Sans"));
  style.font.setPixelSize(px);
  style.title = true;
  return style;
}

QString writeAll(const QString& file, const QByteArray& bytes) {
  QSaveFile out(file);
  if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit()) {
    return Course::tr("%1 could not be written (%2). Choose another folder or free some space.")
        .arg(file, out.errorString());
  }
  return {};
}

QString quoted(QString text) {
  if (!text.contains(u',') && !text.contains(u'"') && !text.contains(u'\n')) return text;
  return u'"' + text.replace(u'"', QStringLiteral("\"\"")) + u'"';
}

QString number(double value) {
  return QString::number(value, 'g', 8);
}

}  // namespace

void printCourse(QPagedPaintDevice& device, const CourseData& data, base::Date from,
                 base::Date to) {
  QPainter painter(&device);
  const double perMm = painter.device()->logicalDpiX() / kMmPerInch;
  painter.scale(perMm, perMm);
  // Pixel sizes in our own transform: four pixels to a millimetre.
  constexpr double kPerMm = 4;
  painter.scale(1 / kPerMm, 1 / kPerMm);
  const double width = painter.device()->width() / perMm * kPerMm;
  const double height = painter.device()->height() / perMm * kPerMm;
  constexpr double kMargin = 12 * kPerMm;
  QRectF area(kMargin, kMargin, width - 2 * kMargin, height - 2 * kMargin);
  const auto style = paperStyle(kFilePx, print::Palette::paper());
  // What it means stands under it, as many lines as there are.
  const double line = kFilePx * 1.6;
  const double notes = line * static_cast<double>(data.remarks.size()) + line;
  area.setHeight(std::min(area.height() - notes, area.width() * 0.75));
  paintCourse(painter, area, data, from, to, style);
  painter.setFont(style.font);
  painter.setPen(style.palette->colour(sheet::Ink::Text));
  double y = area.bottom() + line * 0.6;
  for (const QString& remark : data.remarks) {
    painter.drawText(QRectF(area.left(), y, area.width(), line * 2), Qt::TextWordWrap, remark);
    y += line;
  }
}

QByteArray courseCsv(const CourseData& data) {
  QStringList head{QStringLiteral("date"), QStringLiteral("known")};
  std::vector<const Series*> all;
  for (const auto& lane : data.lanes) {
    for (const auto& s : lane.series) {
      all.push_back(&s);
      QString name = s.name;
      name.replace(u' ', u'_');
      for (const char* part : {"low", "median", "high", "seen", "seen_low", "seen_high"}) {
        head << name + u'_' + QLatin1String(part);
      }
      if (!s.other.empty()) {
        for (const char* part : {"tried_low", "tried_median", "tried_high"}) {
          head << name + u'_' + QLatin1String(part);
        }
      }
    }
  }
  head << QStringLiteral("tmin") << QStringLiteral("tmax") << QStringLiteral("rain_mm")
       << QStringLiteral("weather") << QStringLiteral("journal");
  std::set<base::Date> days;
  for (const auto* s : all) {
    for (const auto* band : {&s->past, &s->ahead, &s->other}) {
      for (const auto& p : *band) days.insert(p.date);
    }
    for (const auto& p : s->seen) days.insert(p.date);
  }
  for (const auto& t : data.ticks) {
    if (t.date >= data.first && t.date <= data.last) days.insert(t.date);
  }
  QStringList lines{head.join(u',')};
  for (const auto day : days) {
    QStringList row{QString::fromStdString(day.iso()),
                    day > data.today ? QStringLiteral("expected") : QStringLiteral("estimated")};
    for (const auto* s : all) {
      const auto put = [&](const std::optional<BandPoint>& p, bool medianFirst) {
        if (!p) {
          row << QString() << QString() << QString();
        } else if (medianFirst) {
          row << number(p->median) << number(p->low) << number(p->high);
        } else {
          row << number(p->low) << number(p->median) << number(p->high);
        }
      };
      put(at(*s, day), false);
      std::optional<BandPoint> seen;
      for (const auto& p : s->seen) {
        if (p.date == day) seen = BandPoint{day, p.low, p.median, p.high};
      }
      put(seen, true);
      if (!s->other.empty()) put(at(s->other, day), false);
    }
    QStringList weather{QString(), QString(), QString(), QString()};
    for (const auto& w : data.weather) {
      if (w.date != day) continue;
      weather[0] = number(w.tmin);
      weather[1] = number(w.tmax);
      if (w.rainMm) weather[2] = number(*w.rainMm);
      weather[3] = w.kind == WeatherPoint::Kind::Observed   ? QStringLiteral("observed")
                   : w.kind == WeatherPoint::Kind::Forecast ? QStringLiteral("forecast")
                                                            : QStringLiteral("usual");
    }
    row << weather;
    QStringList journal;
    for (const auto& t : data.ticks) {
      if (t.date == day) journal << QStringLiteral("%1 %2").arg(t.letter).arg(t.words);
    }
    row << quoted(journal.join(QStringLiteral("; ")));
    lines << row.join(u',');
  }
  return (lines.join(u'\n') + u'\n').toUtf8();
}

QString saveCourse(const QString& file, const CourseData& data, base::Date from, base::Date to,
                   QSize size) {
  const QString ending = QFileInfo(file).suffix().toLower();
  const auto style = paperStyle(kFilePx, print::Palette::light());
  const QColor paper = style.palette->colour(sheet::Ink::Paper);
  const QRectF area = QRectF(QPointF(), QSizeF(size)).adjusted(16, 12, -16, -12);
  if (ending == QStringLiteral("csv")) return writeAll(file, courseCsv(data));
  if (ending == QStringLiteral("png")) {
    // Twice the size of the screen, so that it prints well.
    QImage image(size * 2, QImage::Format_ARGB32_Premultiplied);
    image.fill(paper);
    {
      QPainter painter(&image);
      painter.scale(2, 2);
      paintCourse(painter, area, data, from, to, style);
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return writeAll(file, bytes);
  }
  if (ending == QStringLiteral("svg")) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(), size));
    svg.setTitle(data.title);
    {
      QPainter painter(&svg);
      painter.fillRect(QRect(QPoint(), size), paper);
      paintCourse(painter, area, data, from, to, style);
    }
    return writeAll(file, bytes);
  }
  if (ending == QStringLiteral("pdf")) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
      QPdfWriter pdf(&buffer);
      pdf.setPageSize(QPageSize(QPageSize::A4));
      pdf.setPageOrientation(QPageLayout::Landscape);
      pdf.setPageMargins({0, 0, 0, 0});
      pdf.setTitle(data.title);
      printCourse(pdf, data, from, to);
    }
    return writeAll(file, bytes);
  }
  return Course::tr(
             "%1: give the name an ending that says what to write: .svg, .png, .pdf or .csv.")
      .arg(file);
}

}  // namespace outyard::charts

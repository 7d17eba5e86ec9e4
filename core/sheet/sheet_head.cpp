// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/quantity.h"
#include "core/sheet/entry_block.h"
#include "core/sheet/map_drawing.h"
#include "core/sheet/qr_code.h"
#include "core/sheet/sheet_parts.h"

namespace outyard::sheet {

namespace {

using base::message;

constexpr double kHeadWidth = 76, kHeadGap = 4;
constexpr double kQrMm = 15;  ///< with its quiet zone; modules of half a millimetre
constexpr TextStyle kTitle{6.4, true};
constexpr TextStyle kDay{3.7, true};
constexpr TextStyle kText{2.75, false};
constexpr TextStyle kStrong{2.75, true};
constexpr double kLeading = 3.45;
constexpr double kBoxWide = 12, kBoxTall = 10;

base::Message weekdayWord(int weekday) {
  switch (weekday) {
    case 0:
      return message("sheet.day.mon");
    case 1:
      return message("sheet.day.tue");
    case 2:
      return message("sheet.day.wed");
    case 3:
      return message("sheet.day.thu");
    case 4:
      return message("sheet.day.fri");
    case 5:
      return message("sheet.day.sat");
    default:
      return message("sheet.day.sun");
  }
}

std::string degrees(const SheetContext& context, double celsius) {
  const double shown = context.in.usUnits ? base::inFahrenheit({celsius}) : celsius;
  return context.word(context.in.usUnits ? message("sheet.weather.f", std::round(shown))
                                         : message("sheet.weather.c", std::round(shown)));
}

/// The row that counts for the day: observed before forecast before normal.
const apiary::WeatherDay* weatherOn(const SheetContext& context) {
  const apiary::WeatherDay* best = nullptr;
  for (const auto& [key, day] : context.season().table<apiary::WeatherDay>()) {
    if (day.yard != context.in.yard || day.date != context.in.date) continue;
    if (day.kind == apiary::WeatherKind::Normal) continue;
    if (!best || day.kind < best->kind || (day.kind == best->kind && best->issued < day.issued)) {
      best = &day;
    }
  }
  return best;
}

/// What the day allows. Thresholds: lid 8, combs out 14, brood moved 15 degrees and dry (common
/// practice, no source).
std::vector<std::string> weatherTexts(const SheetContext& context) {
  const auto limits = message("sheet.weather.limits", degrees(context, 8), degrees(context, 14),
                              degrees(context, 15));
  const apiary::WeatherDay* day = weatherOn(context);
  if (!day) {
    return {context.word(message("sheet.weather.none")), context.word(limits)};
  }
  std::string text = context.word(
      message("sheet.weather.range", degrees(context, day->tminC), degrees(context, day->tmaxC)));
  if (day->rainMm) {
    text += *day->rainMm < 0.5
                ? context.word(message("sheet.weather.dry"))
                : context.word(message("sheet.weather.rain", oneDecimal(*day->rainMm)));
  }
  if (day->windMs) text += context.word(message("sheet.weather.wind", oneDecimal(*day->windMs)));
  const bool wet = day->rainMm.value_or(0) >= 0.5;
  base::Message window = message("sheet.weather.closed");
  if (day->tmaxC >= 15 && !wet) {
    window = message("sheet.weather.all");
  } else if (day->tmaxC >= 14 && !wet) {
    window = message("sheet.weather.combs");
  } else if (day->tmaxC >= 8 && !wet) {
    window = message("sheet.weather.lid");
  } else if (wet) {
    window = message("sheet.weather.wet");
  }
  return {text, context.word(window), context.word(limits)};
}

/// Writes down one column; what is too long goes on at the end of the sheet.
class HeadColumn {
 public:
  HeadColumn(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context,
             std::vector<Continuation>& continued)
      : m_canvas(canvas), m_frame(frame), m_c(context), m_continued(continued), m_y(frame.top) {}

  void paragraph(const std::string& text, const TextStyle& style, double leading, int most,
                 const base::Message& label, double indent = 0) {
    const double wide = width() - indent;
    const Wrapped wrapped = wrapText(m_canvas.measurer(), text, style, wide, most);
    for (const std::string& line : wrapped.lines) {
      m_canvas.text({m_frame.left + indent, m_y + style.sizeMm * kAscent}, line, style, wide);
      m_y += leading;
    }
    if (!wrapped.rest.empty()) m_continued.push_back({m_c.word(label), text});
  }
  void text(const std::string& words, const TextStyle& style, int most, const base::Message& label,
            double indent = 0) {
    paragraph(words, style, kLeading, most, label, indent);
  }
  /// The sheet's number as a code in the upper right corner of the column; text keeps clear of it.
  void code(const std::string& number) {
    m_canvas.add(qrCode(number, {m_frame.left + kHeadWidth - kQrMm, m_frame.top}, kQrMm));
  }
  void skip(double mm) { m_y += mm; }
  [[nodiscard]] double y() const { return m_y; }

  /// In a frame, so that nobody reads past it.
  void framed(const std::string& words, const base::Message& label) {
    const double from = m_y;
    m_y += 1.4;
    text(words, kStrong, 4, label, 1.5);
    m_canvas.box({m_frame.left - 0.3, from}, kHeadWidth + 0.6, m_y - from + 0.2, 0.6, 0.8);
    m_y += 1.6;
  }

  void ticked(const std::string& words, const base::Message& label) {
    constexpr double kTick = 6;
    m_canvas.box({m_frame.left, m_y}, kTick, kTick, 0.3);
    const double from = m_y;
    m_y += 0.9;
    text(words, kText, 2, label, kTick + 1.5);
    m_y = std::max(m_y + 0.3, from + kTick + 0.6);
  }

  /// Boxes to write in: who, when, how warm.
  void fields(const std::vector<std::string>& names) {
    const double each = kHeadWidth / static_cast<double>(names.size());
    for (std::size_t i = 0; i < names.size(); ++i) {
      const double x = m_frame.left + each * static_cast<double>(i);
      const double wide = std::max(kBoxWide, each - 2);
      m_canvas.box({x, m_y}, wide, kBoxTall, 0.25);
      constexpr TextStyle kSmall{2.2, false};
      const Wrapped name = wrapText(m_canvas.measurer(), names[i], kSmall, wide - 1.4, 1);
      m_canvas.lines({x + 0.8, m_y + 2.3}, name.lines, kSmall, wide - 1.4, 2.2);
    }
    m_y += kBoxTall + 1.5;
  }

 private:
  [[nodiscard]] double width() const {
    return m_y < m_frame.top + kQrMm ? kHeadWidth - kQrMm - 1 : kHeadWidth;
  }

  PageCanvas& m_canvas;
  const PageFrame& m_frame;
  const SheetContext& m_c;
  std::vector<Continuation>& m_continued;
  double m_y;
};

void writeColumn(HeadColumn& column, const SheetContext& context) {
  const apiary::Yard* yard = context.season().yard(context.in.yard);
  column.code(context.in.sheetNumber);
  column.paragraph(yardName(context), kTitle, 7, 2, message("sheet.head.yard"));
  column.skip(0.6);
  column.paragraph(longDate(context, context.in.date), kDay, 4.8, 1, message("sheet.head.date"));
  int dead = 0;
  for (const apiary::HiveState& hive : context.hives) {
    dead += hive.status == apiary::HiveStatus::Dead ? 1 : 0;
  }
  const auto hives = static_cast<std::int64_t>(context.hives.size());
  column.text(
      context.word(dead > 0 ? message("sheet.head.hives_dead", hives, dead, context.in.sheetNumber)
                            : message("sheet.head.hives", hives, context.in.sheetNumber)),
      kText, 2, message("sheet.head.sheet"));
  column.skip(1.2);
  bool first = true;
  for (const std::string& text : weatherTexts(context)) {
    column.text(text, first ? kStrong : kText, 2, message("sheet.head.weather"));
    first = false;
  }
  column.skip(1.2);
  if (yard && !yard->access.empty()) {
    column.text(context.word(message("sheet.head.access_text", yard->access)), kText, 4,
                message("sheet.head.access"));
    column.skip(1.2);
  }
  if (yard && !yard->notes.empty()) {
    column.text(yard->notes, kText, 3, message("sheet.head.notes"));
    column.skip(1.2);
  }
  if (const auto hive = apiary::foulBroodIn(context.season(), context.in.yard, context.in.date)) {
    column.framed(context.word(message("sheet.caution.foul_brood", hiveReference(context, *hive))),
                  message("sheet.head.cautions"));
  }
  for (const base::Message& caution :
       {message("sheet.caution.stings"), message("sheet.caution.lift", massText(context, 40)),
        message("sheet.caution.smoker"), message("sheet.caution.health")}) {
    column.text(context.word(caution), kText, 3, message("sheet.head.cautions"));
    column.skip(0.4);
  }
  column.skip(0.8);
  int jobs = 0;
  for (const apiary::Task* task : tasksOn(context.season(), context.in.date)) {
    constexpr int kMostJobs = 3;
    if (task->hive || task->yard != context.in.yard || jobs == kMostJobs) continue;
    ++jobs;
    column.ticked(taskText(context, *task), message("sheet.head.tasks"));
  }
  column.fields(
      {context.word(message("sheet.field.who")), context.word(message("sheet.field.from_to")),
       context.word(context.in.usUnits ? message("sheet.field.f") : message("sheet.field.c"))});
}

/// "1" or, for two colonies, "1-2": the line numbers of each hive.
std::map<base::HiveId, std::string> lineLabels(const SheetContext& context) {
  std::map<base::HiveId, std::string> labels;
  for (const HiveBlock& block : context.blocks) {
    std::string label = std::to_string(block.rows.front().line);
    if (block.rows.size() > 1) label += "\u2013" + std::to_string(block.rows.back().line);
    labels[block.hive->hive] = label;
  }
  return labels;
}

/// True where the hives stand over more width than length: their map goes beneath the head.
bool wideYard(const SheetContext& context) {
  double x0 = 1e9, x1 = -1e9, y0 = 1e9, y1 = -1e9;
  for (const apiary::HiveState& hive : context.hives) {
    if (!hive.xM || !hive.yM) continue;
    x0 = std::min(x0, *hive.xM);
    x1 = std::max(x1, *hive.xM);
    y0 = std::min(y0, *hive.yM);
    y1 = std::max(y1, *hive.yM);
  }
  return x1 - x0 > y1 - y0;
}

}  // namespace

std::string longDate(const SheetContext& context, base::Date date) {
  return context.word(message("sheet.head.day", weekdayWord(date.weekday()), date.iso()));
}

std::string yardName(const SheetContext& context) {
  const apiary::Yard* yard = context.season().yard(context.in.yard);
  return yard && !yard->name.empty() ? yard->name : context.in.yard.str();
}

double drawHead(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context,
                std::vector<Continuation>& continued) {
  HeadColumn column(canvas, frame, context, continued);
  writeColumn(column, context);
  const double head = column.y() - frame.top;

  MapInput map;
  map.season = context.in.season;
  map.yard = context.in.yard;
  map.day = context.in.date;
  map.hives = &context.hives;
  map.judgements = &context.judgements;
  map.labels = lineLabels(context);
  map.word = context.in.word;
  map.text = context.in.text;
  map.expected = context.in.expected;
  map.widthMm = frame.contentWidth() - kHeadWidth - kHeadGap;
  constexpr double kLegendMm = 8;
  constexpr std::size_t kManyHives = 60;
  const bool many = context.hives.size() > kManyHives;
  constexpr double kLeastMapMm = 62;
  const bool beneath =
      many && wideYard(context) && frame.contentHeight() - kLegendMm - 1 - head >= kLeastMapMm;
  // A large yard has the whole first page for its map; a middling one some more of it where that
  // keeps hives from being drawn as groups.
  map.heightMm = many ? frame.contentHeight() - kLegendMm - 1 : std::max(kLeastMapMm, head - 1.5);
  if (beneath) {
    map.widthMm = frame.contentWidth();
    map.heightMm -= head;
  }
  MapDrawing drawing = mapDrawing(map);
  constexpr double kStepMm = 10, kMostMoreMm = 30;
  const auto groups = [](const MapDrawing& d) {
    return std::count_if(d.spots.begin(), d.spots.end(),
                         [](const MapDrawing::Spot& s) { return s.hives.size() > 1; });
  };
  const double least = map.heightMm;
  while (!many && groups(drawing) > 0 && map.heightMm + kStepMm <= least + kMostMoreMm) {
    map.heightMm += kStepMm;
    drawing = mapDrawing(map);
  }
  const Point at = beneath ? Point{frame.left, frame.top + head}
                           : Point{frame.left + kHeadWidth + kHeadGap, frame.top};
  canvas.add(transformed(drawing.shapes, at));

  double y = std::max(frame.top + head, at.y + map.heightMm) + 1.5;
  constexpr TextStyle kLegend{2.35, false};
  const Wrapped legend = wrapText(canvas.measurer(), context.word(message("sheet.legend.letters")),
                                  kLegend, frame.contentWidth(), 3);
  y = canvas.lines({frame.left, y + kLegend.sizeMm * kAscent}, legend.lines, kLegend,
                   frame.contentWidth(), 2.9);
  return y - kLegend.sizeMm * kAscent + 0.8;
}

void drawFoot(PageCanvas& canvas, const PageFrame& frame, const SheetContext& context, int page,
              int pages, bool withLegend) {
  constexpr TextStyle kLegend{2.3, false};
  constexpr TextStyle kId{3.0, true};
  const double width = frame.contentWidth();
  const Wrapped legend =
      wrapText(canvas.measurer(), entryLegend(context.in.word), kLegend, width, 1);
  if (withLegend) canvas.lines({frame.left, frame.heightMm - 9.8}, legend.lines, kLegend, width, 3);
  TextStyle right = kId;
  right.align = Align::Right;
  const std::string count = context.word(message("sheet.foot.page", page, pages));
  const double y = frame.heightMm - 5.8;
  canvas.text({frame.right, y}, count, right, width);
  const double left = width - canvas.width(count, kId) - 4;
  const Wrapped id = wrapText(
      canvas.measurer(),
      context.word(message("sheet.foot.id", shortened(context.in.sheetNumber, 24),
                           longDate(context, context.in.date), shortened(yardName(context), 60))),
      kId, left, 1);
  canvas.lines({frame.left, y}, id.lines, kId, left, 3);
}

}  // namespace outyard::sheet

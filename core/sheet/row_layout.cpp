// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/row_layout.h"

#include <algorithm>
#include <array>

#include "core/sheet/entry_block.h"

namespace outyard::sheet {

namespace {

using base::message;

constexpr double kNameColumn = 26.5;  ///< line number, name, mark, box to write in
constexpr double kGap = 1.7;
constexpr TextStyle kNumber{4.2, true};
constexpr TextStyle kName{3.0, true};
constexpr TextStyle kVerdict{2.9, true};
constexpr TextStyle kInfo{2.5, false};
constexpr TextStyle kTask{2.75, true};
constexpr double kInfoLeading = 3.1, kTaskLeading = 3.2;
constexpr double kTickMm = 6, kTickGap = 1.4, kTaskMm = 6.5;
constexpr double kWriteWide = 12, kWriteTall = 10;
constexpr double kFirstBaseline = 3.3;
constexpr double kOriginPitch = 4.6;  ///< room to circle one of them

double infoWidth(const PageFrame& frame) {
  return frame.contentWidth() - kNameColumn - kEntryWidthMm - 2 * kGap;
}

}  // namespace

PageFrame PageFrame::of(Paper paper, bool large) {
  PageFrame f;
  if (paper == Paper::Letter) {  // 8.5 by 11 inches
    f.widthMm = 215.9;
    f.heightMm = 279.4;
  }
  if (large) {
    std::swap(f.widthMm, f.heightMm);
    f.widthMm /= kLargeType;
    f.heightMm /= kLargeType;
    f.top /= kLargeType;
  }
  f.right = f.widthMm - f.left;
  f.bottom = f.heightMm - 13;
  constexpr int kRowsPerPage = 12;
  f.rowMm = large ? 20.0 : std::max(20.0, f.contentHeight() / kRowsPerPage);
  return f;
}

RowLayout::RowLayout(const RowContent& row, const PageFrame& frame, const TextMeasurer& measurer,
                     const std::function<std::string(const base::Message&)>& word)
    : m_row(row), m_frame(frame) {
  if (row.kind == RowKind::Blank) {
    m_height = frame.rowMm;
    return;
  }
  const std::string label =
      word(message("sheet.continued.line", row.line, shortened(row.name, 40)));
  const auto rest = [&](const Wrapped& wrapped, const std::string& whole) {
    if (!wrapped.rest.empty()) m_continued.push_back({label, whole});
  };
  const double width = infoWidth(frame);
  // The name has two lines beside and under the line number.
  const double numberWide = measurer.widthMm(std::to_string(row.line), kNumber.sizeMm, true) + 1.4;
  const double lettersWide =
      row.letters.empty() ? 0 : measurer.widthMm(row.letters, kName.sizeMm, true) + 2.6;
  const Wrapped name =
      wrapText(measurer, row.name, kName, kNameColumn - numberWide - lettersWide, 2);
  m_name = name.lines;
  rest(name, row.name);

  const double seenWide = measurer.widthMm(row.seenOn, kInfo.sizeMm, false);
  Wrapped verdict = wrapText(measurer, row.verdict, kVerdict, width - seenWide - 1.5, 1);
  if (!verdict.lines.empty()) m_verdict = verdict.lines.front();
  rest(verdict, row.verdict);
  constexpr int kDetailLines = 4, kExpectedLines = 2, kTaskLines = 3, kNoteLines = 2;
  // Twelve lines a page hold only while what was seen takes two: rather a little smaller.
  constexpr double kLeastInfoMm = 2.3;
  constexpr std::size_t kUsualLines = 2;
  Wrapped details;
  for (m_detailsMm = kInfo.sizeMm;; m_detailsMm -= 0.1) {
    details = wrapText(measurer, row.details, {m_detailsMm, false}, width, kDetailLines);
    if (details.lines.size() <= kUsualLines || m_detailsMm < kLeastInfoMm + 0.05) break;
  }
  m_details = details.lines;
  rest(details, row.details);
  const Wrapped expected = wrapText(measurer, row.expected, kInfo, width, kExpectedLines);
  m_expected = expected.lines;
  rest(expected, row.expected);
  const Wrapped notes = wrapText(measurer, row.notes, kInfo, width, kNoteLines);
  m_notes = notes.lines;
  rest(notes, row.notes);
  constexpr std::size_t kMostTasks = 4;
  double height = kFirstBaseline + 0.6;
  height +=
      kInfoLeading * static_cast<double>(m_details.size() + m_expected.size() + m_notes.size());
  for (std::size_t i = 0; i < row.tasks.size(); ++i) {
    if (i >= kMostTasks) {
      m_continued.push_back({label, row.tasks[i]});
      continue;
    }
    const Wrapped task =
        wrapText(measurer, row.tasks[i], kTask, width - kTickMm - kTickGap, kTaskLines);
    m_tasks.push_back({task.lines});
    rest(task, row.tasks[i]);
    height += std::max(kTaskMm, kTaskLeading * static_cast<double>(task.lines.size()) + 0.5);
  }
  m_height = std::max(frame.rowMm, height + 0.2);
}

void RowLayout::drawName(PageCanvas& canvas, double top, const SheetContext& context) const {
  const double x = m_frame.left;
  if (m_row.kind == RowKind::Blank) {
    const std::string hive = context.word(message("sheet.blank.hive"));
    canvas.text({x, top + 4.2}, hive, kInfo, kNameColumn);
    canvas.line({x, top + 10}, {x + kNameColumn - 2, top + 10}, 0.15, Ink::Line, true);
    return;
  }
  const std::string number = std::to_string(m_row.line);
  const double numberWide = canvas.width(number, kNumber) + 1.4;
  canvas.text({x, top + 4.4}, number, kNumber, numberWide);
  canvas.lines({x + numberWide, top + (m_name.size() > 1 ? 3.2 : 4.4)}, m_name, kName,
               kNameColumn - numberWide, 3.3);
  if (!m_row.letters.empty()) {
    const double w = canvas.width(m_row.letters, kName) + 1.6;
    const double left = x + kNameColumn - w;
    canvas.box({left, top + 0.9}, w, 4.2, 0.25, 0.6);
    TextStyle centred = kName;
    centred.align = Align::Centre;
    canvas.text({left + w / 2, top + 4.1}, m_row.letters, centred, w);
  }
  const double markTop = top + m_frame.rowMm - kMarkHeightMm - 1.6;
  if (m_row.mark) {
    canvas.add(
        transformed(hiveMark(*m_row.mark), {x + kMarkWidthMm / 2, markTop + kMarkHeightMm / 2}));
  }
  if (m_row.kind == RowKind::Colony) {
    const Point box{x + kNameColumn - kWriteWide, top + m_frame.rowMm - kWriteTall - 1.2};
    canvas.box(box, kWriteWide, kWriteTall, 0.2);
    const std::string unit = context.in.usUnits ? context.word(message("sheet.unit.lb"))
                                                : context.word(message("sheet.unit.kg"));
    TextStyle small{2.1, false};
    small.align = Align::Right;
    canvas.text({box.x + kWriteWide - 0.7, box.y + kWriteTall - 0.8}, unit, small, 8);
  }
}

namespace {

/// Where the hive on a blank line came from, to circle: one below the other, beside its number.
void drawOrigins(PageCanvas& canvas, Point at, double width, const SheetContext& context) {
  const std::string label = context.word(message("sheet.blank.origin"));
  canvas.text(at, label, kInfo, width);
  const double left = canvas.width(label, kInfo) + 2.5;
  const std::array<base::Message, 4> origins{
      message("sheet.blank.swarm"), message("sheet.blank.bought"), message("sheet.blank.split"),
      message("sheet.blank.moved")};
  for (const base::Message& origin : origins) {
    canvas.text({at.x + left, at.y}, context.word(origin), kInfo, width - left);
    at.y += kOriginPitch;
  }
}

}  // namespace

void RowLayout::draw(PageCanvas& canvas, double top, const SheetContext& context) const {
  drawName(canvas, top, context);
  const double x = m_frame.left + kNameColumn + kGap;
  const double width = infoWidth(m_frame);
  double y = top + kFirstBaseline;
  if (m_row.kind == RowKind::Blank) drawOrigins(canvas, {x, top + 4.2}, width, context);
  canvas.text({x, y}, m_verdict, kVerdict, width);
  TextStyle right = kInfo;
  right.align = Align::Right;
  canvas.text({x + width, y}, m_row.seenOn, right, width);
  y = canvas.lines({x, y + kInfoLeading}, m_details, {m_detailsMm, false}, width, kInfoLeading);
  y = canvas.lines({x, y}, m_expected, kInfo, width, kInfoLeading);
  y = canvas.lines({x, y}, m_notes, kInfo, width, kInfoLeading);
  double taskTop = y - kInfoLeading + kInfo.sizeMm * kDescent + 0.35;
  for (const Task& task : m_tasks) {
    const double text = kTaskLeading * static_cast<double>(task.lines.size());
    const double tall = std::max(kTaskMm, text + 0.5);
    canvas.box({x, taskTop}, kTickMm, kTickMm, 0.3);
    // one or two lines stand beside the middle of the tick box
    const double first = taskTop + std::max(0.0, (kTickMm - text) / 2) + kTask.sizeMm * 0.86;
    canvas.lines({x + kTickMm + kTickGap, first}, task.lines, kTask, width - kTickMm - kTickGap,
                 kTaskLeading);
    taskTop += tall;
  }
  const Point entry{m_frame.right - kEntryWidthMm, top + 0.3};
  drawEntry(canvas, context.in.word, m_row.kind, entry, m_height - 0.6);
}

double BlockLayout::heightMm() const {
  double sum = 0;
  for (const RowLayout& row : rows) sum += row.heightMm();
  return sum;
}

}  // namespace outyard::sheet

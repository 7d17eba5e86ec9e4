// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tests/calibration/checks.h"

namespace outyard::calibration {
namespace {

constexpr const char *kTwinsBegin = "<!-- twins -->", *kTwinsEnd = "<!-- end of twins -->";

/// 12345.6 with 0 digits gives 12,346.
std::string figure(double v, int digits) {
  std::string s = fmt::format("{:.{}f}", v, digits);
  if (s == "-0") s = "0";
  const auto dot = std::min(s.find('.'), s.size());
  for (auto i = static_cast<int>(dot) - 3; i > (s[0] == '-' ? 1 : 0); i -= 3) {
    s.insert(static_cast<std::size_t>(i), ",");
  }
  return s;
}

std::string table(const std::vector<Check>& checks) {
  std::string out =
      "| what | place | weather | start | must be | ours | verdict | source |\n"
      "| --- | --- | --- | --- | --- | --- | --- | --- |\n";
  for (const Check& c : checks) {
    const std::string unit = c.unit.empty() ? "" : " " + c.unit;
    out += fmt::format("| {} | {} | {} | {} | {} to {}{} | {} | {} | {} |\n", c.what, c.place,
                       c.weather, c.start, figure(c.low, c.digits), figure(c.high, c.digits), unit,
                       figure(c.ours, c.digits),
                       !c.demanded ? "only reported" : (c.holds() ? "holds" : "fails"), c.source);
  }
  return out;
}

std::string scores(const std::vector<Score>& all) {
  std::string out =
      "| set | quantity | lead | counts | mean log ratio | inside the 80 % band | verdict |\n"
      "| --- | --- | --- | --- | --- | --- | --- |\n";
  for (const Score& s : all) {
    const bool holds =
        std::abs(s.bias) <= kBiasMost && s.cover >= kCoverLeast && s.cover <= kCoverMost;
    out += fmt::format("| {} | {} | {} | {} | {:+.2f} | {:.0f} % | {} |\n", s.set, s.quantity,
                       s.lead, s.n, s.bias, 100 * s.cover,
                       !s.demanded ? "only reported" : (holds ? "holds" : "fails"));
  }
  return out;
}

std::string heldOut() {
  std::string out =
      "| set left out | spread, fitted on the others | share seen, fitted | counts | mean log "
      "ratio "
      "| inside the 80 % band |\n| --- | --- | --- | --- | --- | --- |\n";
  for (const HeldOut& h : heldOutScores()) {
    out += fmt::format("| {} | {:.1f} times | {:.2f} | {} | {:+.2f} | {:.0f} % |\n", h.set, h.width,
                       h.seenShare, h.n, h.bias, 100 * h.cover);
  }
  return out;
}

std::string twins(int count) {
  std::string out =
      "| model error | lead | forecasts | error against \"as last seen\" | inside the 80 % band |\n"
      "| --- | --- | --- | --- | --- |\n";
  for (const double noise : {1.0, 2.0}) {
    for (const TwinScore& s : twinScores(count, noise)) {
      out += fmt::format("| {} | {} days | {} | {:.2f} | {:.0f} % |\n",
                         noise > 1 ? "doubled" : "as assumed", s.lead, s.n, s.ratio, 100 * s.cover);
    }
  }
  return out;
}

/// A small chart: the 80 % band as an area, the median as a line, one grid line at each step.
std::string drawn(const Course& c) {
  constexpr double kWidth = 420, kHeight = 220, kLeft = 52, kBottom = 30, kTop = 26, kRight = 10;
  double most = 1;
  for (const auto& b : c.days) most = std::max(most, b.high);
  double step = 10000;
  for (const double s : {1000.0, 2000.0, 5000.0, 10000.0, 20000.0, 50000.0}) {
    step = s;
    if (most / s <= 5) break;
  }
  most = std::ceil(most / step) * step;
  const double wide = kWidth - kLeft - kRight, tall = kHeight - kTop - kBottom;
  const auto x = [&](std::size_t d) {
    return kLeft + wide * static_cast<double>(d) / static_cast<double>(c.days.size() - 1);
  };
  const auto y = [&](double v) { return kTop + tall * (1 - v / most); };
  std::string area, line;
  for (std::size_t d = 0; d < c.days.size(); d += 3) {
    area += fmt::format("{}{:.1f} {:.1f}", d == 0 ? "M" : "L", x(d), y(c.days[d].high));
    line += fmt::format("{}{:.1f} {:.1f}", d == 0 ? "M" : "L", x(d), y(c.days[d].median));
  }
  for (std::size_t k = (c.days.size() - 1) / 3 + 1; k-- > 0;) {
    area += fmt::format("L{:.1f} {:.1f}", x(3 * k), y(c.days[3 * k].low));
  }
  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" "
      "height=\"{1}\" font-family=\"sans-serif\" font-size=\"11\" fill=\"#222\">\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"#fff\"/>\n"
      "<text x=\"{2}\" y=\"15\" font-weight=\"bold\">{3}: {4}</text>\n",
      kWidth, kHeight, kLeft, c.title, c.axis);
  for (double v = 0; v <= most + 1; v += step) {
    svg += fmt::format(
        "<path d=\"M{:.0f} {:.1f}H{:.0f}\" stroke=\"#ddd\"/><text x=\"{:.0f}\" y=\"{:.1f}\" "
        "text-anchor=\"end\">{}</text>\n",
        kLeft, y(v), kWidth - kRight, kLeft - 5, y(v) + 4, figure(v, 0));
  }
  svg += fmt::format("<path d=\"{}Z\" fill=\"#9ecae1\" fill-opacity=\"0.6\"/>\n", area);
  svg +=
      fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"#08519c\" stroke-width=\"2\"/>\n", line);
  const std::size_t every = c.days.size() > 200 ? 60 : 30;
  for (std::size_t d = 0; d < c.days.size(); d += every) {
    svg += fmt::format("<text x=\"{:.1f}\" y=\"{:.0f}\" text-anchor=\"middle\">{}</text>\n", x(d),
                       kHeight - 12, c.from.plusDays(static_cast<int>(d)).iso().substr(5));
  }
  return svg + "</svg>\n";
}

}  // namespace

Page page(int count) {
  Page out;
  std::string& t = out.text;
  t = "# How far the forecast can be trusted\n\n"
      "This page is made by the target `outyard_calibration` from the program itself; a test fails "
      "when page and program differ. Every line names the place, the weather and the start of a "
      "check, what must come out, and what does come out. *Normals* are the usual weather of the "
      "latitude; nothing is known of the days ahead.\n\n"
      "**bees** are all living adults of a colony. What a reader counts on the combs is less: "
      "field "
      "bees are away, and in the counted sets a \"full frame\" held fewer bees than books say. The "
      "forecast keeps both figures apart.\n\n"
      "## Published figures\n\n" +
      table(publishedChecks()) + "\n## Facts of the trade\n\n" + table(practiceChecks()) +
      "\n## How colonies run in the forecast\n\nThe line is the middle, the area holds four "
      "colonies in five, lost queens, swarms and starved colonies included.\n\n";
  for (const Course& c : practiceCourses()) {
    out.pictures.emplace_back(c.file + ".svg", drawn(c));
    t += fmt::format("![{}]({}.svg)\n", c.title, c.file);
  }
  std::vector<Score> demanded = autumnScores();
  for (auto& s : splitScores()) demanded.push_back(s);
  t += fmt::format(
      "\n## Counted colonies\n\nEach colony is forecast from its first look. The mean log ratio of "
      "count to middle must lie within {:.2f} (0.25 is about a quarter off), and {:.0f} to {:.0f} "
      "% "
      "of the counts inside the band. Colonies that had died are left out. Counts in "
      "`tests/data`, trimmed: *autumn_2020* Aurell et al. 2024, doi 10.1093/jisesa/ieae022 (data "
      "doi 10.5281/zenodo.10612431); *splits_2022* Aurell et al. 2025, doi 10.1093/jee/toaf126 "
      "(data doi 10.5281/zenodo.15733143); both CC BY 4.0.\n\n",
      kBiasMost, std::ceil(100 * kCoverLeast), std::floor(100 * kCoverMost));
  t += scores(demanded);
  t +=
      "\n*urban_2021* (Abdollahi et al. 2024, doi 10.20383/103.0972, CC BY 4.0) are hives of one "
      "to "
      "three boxes in a city in the north-east, frames with bees on them with \"ten\" meaning "
      "\"ten "
      "or more\": a full hive is held when the band reaches it, and the line of those that were "
      "not full says what is left of the others. A count of frames with bees is read by box: a box "
      "whose ten combs are covered holds about 3.6 full frames, in a stack as alone.\n\n" +
      scores(urbanScores());
  t += "\nAll three sets were at hand when the figures were set: this shows fit. The next table "
       "asks "
       "what would have come out of a set that was not: how far colonies differ (times the figures "
       "of the table) and what share of the bees a reader sees are fitted on two sets and tried on "
       "the third.\n\n" +
       heldOut();
  t += fmt::format(
      "\n## Synthetic twins\n\n{} made-up small colonies at 45 degrees north with other parameters "
      "and with model error, seen every 14 days by a reader who errs by 10 % on bees and 16 % on "
      "sealed brood. Error must be at most 0.40 of that of taking the last count for true; 75 to "
      "90 % must lie inside the band, and at least 72 % when the model error is doubled.\n\n",
      count);
  t += fmt::format("{}\n\n{}\n{}\n", kTwinsBegin, twins(count), kTwinsEnd);
  t += "\n## What the counts can and cannot tell\n\n"
       "- A count of bees and one of brood together tell how long bees live *times* what share of "
       "them a reader sees; the two cannot be told apart from such counts. Both have wide starting "
       "values, and looks at the same colony narrow the product.\n"
       "- Small colonies are ruled by what they can keep warm: the queen's quality cannot be read "
       "from their growth.\n"
       "- Flow, place and year differ more than colonies: the first forecast of a colony is wide "
       "and narrows with each look.\n"
       "- In autumn heavy mites, treatment, lost queens and starvation make a few colonies "
       "collapse; the lower edge of the band then reaches down to none.\n"
       "- Places and starts that were never counted (latitudes 30 to 60 north and south, every "
       "season, "
       "nuclei of 1,500 bees, packages, broodless and full colonies, clusters in winter: 216 of "
       "them) "
       "are held to the bounds of the trade in `tests/core/forecast/other_places_test.cpp`; that "
       "shows that they are plausible, not that they are right.\n"
       "- No treatment in the journal is not no treatment: most keepers treat, and the band holds "
       "both.\n"
       "- The same season and seed give the same figures to the last bit on one or more threads "
       "and on every vector width (tested).\n";
  return out;
}

std::string withoutTwins(const std::string& text) {
  const auto begin = text.find(kTwinsBegin), end = text.find(kTwinsEnd);
  if (begin == std::string::npos || end == std::string::npos) return text;
  // The number of twins stands in the sentence before the mark.
  const auto head = text.rfind("## Synthetic twins", begin);
  return text.substr(0, head) + text.substr(end);
}

}  // namespace outyard::calibration

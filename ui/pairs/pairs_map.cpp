// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_map.h"

#include <QPainter>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/sheet/map_drawing.h"
#include "ui/adapt/words.h"
#include "ui/pairs/pairs_words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/painter.h"
#include "ui/widgets/theme.h"

namespace outyard::pairs {
namespace {

constexpr double kPxPerMm = 4;  // marks of 8 mm are 32 px then
constexpr double kHeadMm = 2.2, kKeepOffMm = 4.5, kTextMm = 2.9;
constexpr double kNumberMm = 3.5;  // the hive's number hangs beneath its mark
constexpr double kGroupHalfMm = 12;
constexpr double kAroundMm = 14;  // room for a mark and its label
constexpr std::array<double, 5> kZooms{3, 2.4, 1.8, 1.35, 1};
constexpr std::size_t kMostLabels = 3;

struct Arrow {
  sheet::Point from, to;
  bool fromGroup = false, toGroup = false;
  bool bothWays = false;
};

/// How far from the centre of a mark (or of a group's box of labels) its edge is in a direction.
double edgeAway(bool group, double dx, double dy) {
  const double halfWide = group ? kGroupHalfMm : kKeepOffMm;
  const double x = std::abs(dx) < 1e-9 ? 1e9 : halfWide / std::abs(dx);
  const double y = std::abs(dy) < 1e-9 ? 1e9 : kKeepOffMm / std::abs(dy);
  return std::min(x, y);
}

/// The small colony's box goes to the donor when it is set over or united; combs and bees go from
/// the donor to it; swapped stands go both ways.
bool goesToDonor(apiary::Method method) {
  return method == apiary::Method::Stack || method == apiary::Method::Unite;
}

const sheet::Point* spotOf(const sheet::MapDrawing& map, const base::HiveId& hive) {
  for (const auto& spot : map.spots) {
    if (std::find(spot.hives.begin(), spot.hives.end(), hive) != spot.hives.end()) {
      return &spot.centre;
    }
  }
  return nullptr;
}

void drawHead(sheet::Shapes& out, sheet::Point tip, double angle) {
  sheet::PolygonShape head;
  head.fill = sheet::Ink::Arrow;
  head.stroke.ink = sheet::Ink::Arrow;
  head.points = {
      tip,
      {tip.x - kHeadMm * std::cos(angle - 0.45), tip.y - kHeadMm * std::sin(angle - 0.45)},
      {tip.x - kHeadMm * std::cos(angle + 0.45), tip.y - kHeadMm * std::sin(angle + 0.45)}};
  out.emplace_back(head);
}

/// The way of an arrow: from one end to the other in a bow to the left (negative: to the right).
sheet::Point onBow(const Arrow& arrow, double bow, double t) {
  const double dx = arrow.to.x - arrow.from.x, dy = arrow.to.y - arrow.from.y;
  const double length = std::hypot(dx, dy);
  const sheet::Point mid{(arrow.from.x + arrow.to.x) / 2 + dy / length * bow,
                         (arrow.from.y + arrow.to.y) / 2 - dx / length * bow};
  const double u = 1 - t;
  return {u * u * arrow.from.x + 2 * u * t * mid.x + t * t * arrow.to.x,
          u * u * arrow.from.y + 2 * u * t * mid.y + t * t * arrow.to.y};
}

/// The bow that runs over the fewest marks and numbers of other hives and stays on the ground: a
/// row of hives has them all on one line. A gentle bow to the left where that is free, so that two
/// arrows between the same hives do not cover.
double bowOf(const Arrow& arrow, const std::vector<sheet::Point>& marks, double widthMm,
             double heightMm) {
  const double length = std::hypot(arrow.to.x - arrow.from.x, arrow.to.y - arrow.from.y);
  const double gentle = std::min(6.0, length * 0.18);
  double best = gentle;
  int fewest = -1;
  for (const double bow : {gentle, -gentle, 2.5 * gentle, -2.5 * gentle, 4 * gentle, -4 * gentle}) {
    int covered = 0;
    for (const auto& mark : marks) {
      const bool end = std::hypot(mark.x - arrow.from.x, mark.y - arrow.from.y) < 0.1 ||
                       std::hypot(mark.x - arrow.to.x, mark.y - arrow.to.y) < 0.1;
      for (int i = 1; !end && i < 16; ++i) {
        const auto p = onBow(arrow, bow, i / 16.0);
        if (std::abs(p.x - mark.x) < kKeepOffMm && p.y > mark.y - kKeepOffMm &&
            p.y < mark.y + kKeepOffMm + kNumberMm) {
          ++covered;
          break;
        }
      }
    }
    const auto top = onBow(arrow, bow, 0.5);
    if (top.x < 1 || top.y < 1 || top.x > widthMm - 1 || top.y > heightMm - 1) covered += 100;
    if (fewest < 0 || covered < fewest) {
      fewest = covered;
      best = bow;
    }
  }
  return best;
}

void drawArrow(sheet::Shapes& out, const Arrow& arrow, bool chosen,
               const std::vector<sheet::Point>& marks, double widthMm, double heightMm) {
  const double dx = arrow.to.x - arrow.from.x, dy = arrow.to.y - arrow.from.y;
  const double length = std::hypot(dx, dy);
  if (length < 1) return;  // both in one group on the map: the label alone says it
  const double bow = bowOf(arrow, marks, widthMm, heightMm);
  const auto at = [&](double t) { return onBow(arrow, bow, t); };
  // Between neighbours the arrow runs over the edges of their marks rather than not at all.
  const double ux = dx / length, uy = dy / length;
  const double begin = std::min(edgeAway(arrow.fromGroup, ux, uy) / length, 0.3);
  const double end = std::min(edgeAway(arrow.toGroup, ux, uy) / length, 0.3);
  sheet::PolygonShape line;
  line.closed = false;
  line.stroke = {sheet::Ink::Arrow, chosen ? 1.1 : 0.6, false};
  constexpr int kParts = 16;
  for (int i = 0; i <= kParts; ++i) {
    line.points.push_back(at(begin + (1 - begin - end) * i / kParts));
  }
  const auto last = line.points.back(), before = line.points[line.points.size() - 2];
  const auto first = line.points.front(), second = line.points[1];
  out.emplace_back(line);
  drawHead(out, last, std::atan2(last.y - before.y, last.x - before.x));
  if (arrow.bothWays) drawHead(out, first, std::atan2(first.y - second.y, first.x - second.x));
}

/// The gain stands at the small colony, above its mark or beneath its number: where it covers
/// fewer other marks.
sheet::TextShape gainLabel(const planning::BoostOption& o, sheet::Point small, bool chosen,
                           double widthMm, const std::vector<sheet::Point>& marks,
                           const sheet::TextMeasurer& measurer) {
  const auto thousands = [](double bees) { return std::round(bees / 100) / 10; };
  sheet::TextShape label;
  label.text = o.gain.high > 0
                   ? PairsMap::tr("%1 gains %2 thousand")
                         .arg(QString::fromStdString(o.hive.str()),
                              adapt::fromTo(thousands(o.gain.low), thousands(o.gain.high)))
                         .toStdString()
                   : o.hive.str();
  label.sizeMm = kTextMm;
  label.bold = chosen;
  label.align = sheet::Align::Centre;
  const double half = measurer.widthMm(label.text, kTextMm, chosen) / 2;
  const double x = std::clamp(small.x, half + 1, std::max(half + 1, widthMm - half - 1));
  const auto covered = [&](double y) {
    return std::count_if(marks.begin(), marks.end(), [&](const sheet::Point& m) {
      return std::abs(m.x - x) < half + kKeepOffMm && y > m.y - kKeepOffMm &&
             y - kTextMm < m.y + kKeepOffMm + kNumberMm;
    });
  };
  const double above = small.y - kKeepOffMm - 0.6, beneath = small.y + kKeepOffMm + 6.4;
  label.at = {x, covered(beneath) < covered(above) ? beneath : above};
  return label;
}

/// Moves the last label up until it shares no line with another.
void keepApart(std::vector<sheet::TextShape>& labels, const sheet::TextMeasurer& measurer) {
  auto& last = labels.back();
  const auto half = [&](const sheet::TextShape& t) {
    return measurer.widthMm(t.text, t.sizeMm, t.bold) / 2;
  };
  for (bool moved = true; moved;) {
    moved = false;
    for (std::size_t i = 0; i + 1 < labels.size(); ++i) {
      const auto& other = labels[i];
      if (std::abs(other.at.x - last.at.x) < half(other) + half(last) + 1 &&
          std::abs(other.at.y - last.at.y) < kTextMm * 1.1) {
        last.at.y = other.at.y - kTextMm * 1.15;
        moved = true;
      }
    }
  }
  last.at.y = std::max(last.at.y, kTextMm);
}

}  // namespace

PairsMap::PairsMap(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("pairsMap"));
  setAccessibleName(tr("Map of the pairs"));
}

void PairsMap::setPlan(std::shared_ptr<const PlanOutcome> outcome,
                       std::shared_ptr<const apiary::Season> season) {
  m_outcome = std::move(outcome);
  m_season = std::move(season);
  describe();
  update();
}

void PairsMap::setYard(std::optional<base::YardId> yard) {
  m_yard = std::move(yard);
  describe();
  update();
}

void PairsMap::choose(std::optional<base::ColonyId> colony) {
  m_colony = std::move(colony);
  update();
}

void PairsMap::describe() {
  QStringList lines;
  for (const auto* o : pairsHere()) {
    lines << QStringLiteral("%1: %2").arg(colonyText(o->colony, o->hive), optionText(*o));
  }
  const QString text =
      lines.isEmpty() ? tr("No pair in this yard.") : lines.join(QStringLiteral("; "));
  setAccessibleDescription(text);
  setToolTip(text);
}

std::vector<const planning::BoostOption*> PairsMap::pairsHere() const {
  std::vector<const planning::BoostOption*> out;
  if (!m_outcome || !m_outcome->plan) return out;
  const auto& plan = *m_outcome->plan;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!o || !o->donorHive) continue;
    const auto yard = plan.problem.yardOf.find(o->colony.str());
    if (m_yard && (yard == plan.problem.yardOf.end() || yard->second != *m_yard)) continue;
    out.push_back(o);
  }
  return out;
}

sheet::Shapes PairsMap::shapesFor(double widthMm, double heightMm) const {
  if (!m_season || !m_yard || !m_season->yard(*m_yard)) return {};
  const print::FontMeasurer measurer;
  sheet::MapInput input;
  input.season = m_season.get();
  input.yard = *m_yard;
  input.day = m_outcome && m_outcome->plan ? m_outcome->plan->problem.request.date : base::Date{};
  auto hives = apiary::yardOn(*m_season, *m_yard, input.day);
  const auto pairs = pairsHere();
  if (!pairs.empty()) {
    // Only the hives that take part: the others would crowd them into groups.
    std::erase_if(hives, [&](const auto& hive) {
      return std::none_of(pairs.begin(), pairs.end(), [&](const auto* o) {
        return o->hive == hive.hive || o->donorHive == hive.hive;
      });
    });
  }
  std::vector<strength::Judgement> judgements;
  if (m_outcome && m_outcome->plan) judgements = m_outcome->plan->problem.judgements;
  input.hives = &hives;
  input.judgements = &judgements;
  for (const auto& hive : hives) input.labels[hive.hive] = hive.hive.str();
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  // As near as the hives of all pairs still fit: the nearer, the fewer marks are grouped.
  sheet::MapDrawing map;
  sheet::Point shift;
  for (const double zoom : kZooms) {
    input.widthMm = widthMm * zoom;
    input.heightMm = heightMm * zoom;
    auto drawn = sheet::mapDrawing(input);
    sheet::Point low{1e9, 1e9}, high{-1e9, -1e9};
    for (const auto* o : pairs) {
      for (const auto& hive : {o->hive, *o->donorHive}) {
        if (const auto* spot = spotOf(drawn, hive)) {
          low = {std::min(low.x, spot->x), std::min(low.y, spot->y)};
          high = {std::max(high.x, spot->x), std::max(high.y, spot->y)};
        }
      }
    }
    const bool none = low.x > high.x;
    const bool fits =
        high.x - low.x + 2 * kAroundMm <= widthMm && high.y - low.y + 2 * kAroundMm <= heightMm;
    if (zoom > 1 && (none || !fits)) continue;
    map = std::move(drawn);
    if (zoom > 1) {
      shift = {std::clamp(widthMm / 2 - (low.x + high.x) / 2, widthMm - input.widthMm, 0.0),
               std::clamp(heightMm / 2 - (low.y + high.y) / 2, heightMm - input.heightMm, 0.0)};
    }
    break;
  }
  sheet::Shapes out = sheet::transformed(map.shapes, shift);
  const auto at = [&](const base::HiveId& hive) -> std::optional<sheet::Point> {
    const auto* spot = spotOf(map, hive);
    if (!spot) return std::nullopt;
    return sheet::Point{spot->x + shift.x, spot->y + shift.y};
  };
  const auto isGroup = [&](const base::HiveId& hive) {
    return std::any_of(map.spots.begin(), map.spots.end(), [&](const auto& spot) {
      return spot.hives.size() > 1 &&
             std::find(spot.hives.begin(), spot.hives.end(), hive) != spot.hives.end();
    });
  };
  std::vector<sheet::Point> marks;
  for (const auto& spot : map.spots) {
    marks.push_back({spot.centre.x + shift.x, spot.centre.y + shift.y});
  }
  std::vector<sheet::TextShape> labels;
  for (const auto* o : pairs) {
    const auto small = at(o->hive), donor = at(*o->donorHive);
    if (!small || !donor) continue;
    Arrow arrow{*donor, *small, isGroup(*o->donorHive), isGroup(o->hive),
                o->method == apiary::Method::ChangePlaces};
    if (goesToDonor(o->method)) {
      std::swap(arrow.from, arrow.to);
      std::swap(arrow.fromGroup, arrow.toGroup);
    }
    const bool chosen = m_colony == o->colony;
    drawArrow(out, arrow, chosen, marks, widthMm, heightMm);
    // Where there are many pairs only the chosen one is spelled out; the table has them all.
    if (!chosen && pairs.size() > kMostLabels) continue;
    labels.push_back(gainLabel(*o, *small, chosen, widthMm, marks, measurer));
    keepApart(labels, measurer);
  }
  for (const auto& label : labels) {
    const double width = measurer.widthMm(label.text, label.sizeMm, label.bold);
    sheet::RectShape plate;
    plate.corner = {label.at.x - width / 2 - 0.6, label.at.y - kTextMm * 0.85};
    plate.widthMm = width + 1.2;
    plate.heightMm = kTextMm * 1.15;
    plate.radiusMm = 0.6;
    plate.fill = sheet::Ink::Paper;
    plate.stroke.ink = sheet::Ink::None;
    out.emplace_back(plate);
    out.emplace_back(label);
  }
  return out;
}

void PairsMap::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const auto& colours = widgets::drawingPalette(palette());
  painter.fillRect(rect(), palette().color(QPalette::Base));
  const auto shapes = shapesFor(width() / kPxPerMm, height() / kPxPerMm);
  if (shapes.empty()) {
    painter.setPen(palette().color(QPalette::Text));
    painter.drawText(rect().adjusted(8, 8, -8, -8), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("The map follows once there is a plan."));
    return;
  }
  painter.setClipRect(rect());
  painter.scale(kPxPerMm, kPxPerMm);
  print::paintShapes(painter, shapes, colours);
}

}  // namespace outyard::pairs

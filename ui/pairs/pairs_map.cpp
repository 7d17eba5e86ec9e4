// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_map.h"

#include <QPainter>
#include <QStringList>
#include <algorithm>
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

struct Arrow {
  const planning::BoostOption* option = nullptr;
  sheet::Point from, to;
  bool bothWays = false;
};

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

void drawArrow(sheet::Shapes& out, const Arrow& arrow, bool chosen) {
  const double dx = arrow.to.x - arrow.from.x, dy = arrow.to.y - arrow.from.y;
  const double length = std::hypot(dx, dy);
  if (length < 2 * kKeepOffMm) return;
  // A bow to the left of the way, so that two arrows between the same hives do not cover.
  const double bow = std::min(6.0, length * 0.18);
  const sheet::Point mid{(arrow.from.x + arrow.to.x) / 2 + dy / length * bow,
                         (arrow.from.y + arrow.to.y) / 2 - dx / length * bow};
  const auto at = [&](double t) {
    const double u = 1 - t;
    return sheet::Point{u * u * arrow.from.x + 2 * u * t * mid.x + t * t * arrow.to.x,
                        u * u * arrow.from.y + 2 * u * t * mid.y + t * t * arrow.to.y};
  };
  const double off = kKeepOffMm / length;
  sheet::PolygonShape line;
  line.closed = false;
  line.stroke = {sheet::Ink::Arrow, chosen ? 1.1 : 0.6, false};
  constexpr int kParts = 16;
  for (int i = 0; i <= kParts; ++i) {
    line.points.push_back(at(off + (1 - 2 * off) * i / kParts));
  }
  const auto last = line.points.back(), before = line.points[line.points.size() - 2];
  const auto first = line.points.front(), second = line.points[1];
  out.emplace_back(line);
  drawHead(out, last, std::atan2(last.y - before.y, last.x - before.x));
  if (arrow.bothWays) drawHead(out, first, std::atan2(first.y - second.y, first.x - second.x));
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
  if (m_outcome && m_outcome->plan) {
    const auto& plan = *m_outcome->plan;
    for (const auto& id : plan.chosen) {
      const auto* o = plan.option(id);
      if (!o || !o->donorHive) continue;
      const auto yard = plan.problem.yardOf.find(o->colony.str());
      if (m_yard && yard != plan.problem.yardOf.end() && yard->second != *m_yard) continue;
      lines << QStringLiteral("%1: %2").arg(colonyText(o->colony, o->hive), optionText(*o));
    }
  }
  const QString text =
      lines.isEmpty() ? tr("No pair in this yard.") : lines.join(QStringLiteral("; "));
  setAccessibleDescription(text);
  setToolTip(text);
}

sheet::Shapes PairsMap::shapesFor(double widthMm, double heightMm) const {
  if (!m_season || !m_yard || !m_season->yard(*m_yard)) return {};
  const print::FontMeasurer measurer;
  sheet::MapInput input;
  input.season = m_season.get();
  input.yard = *m_yard;
  input.day = m_outcome && m_outcome->plan ? m_outcome->plan->problem.request.date : base::Date{};
  const auto hives = apiary::yardOn(*m_season, *m_yard, input.day);
  std::vector<strength::Judgement> judgements;
  if (m_outcome && m_outcome->plan) judgements = m_outcome->plan->problem.judgements;
  input.hives = &hives;
  input.judgements = &judgements;
  for (const auto& hive : hives) input.labels[hive.hive] = hive.hive.str();
  input.widthMm = widthMm;
  input.heightMm = heightMm;
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  const auto map = sheet::mapDrawing(input);
  sheet::Shapes out = map.shapes;
  if (!m_outcome || !m_outcome->plan) return out;
  const auto& plan = *m_outcome->plan;
  std::vector<sheet::TextShape> labels;
  for (const auto& id : plan.chosen) {
    const auto* o = plan.option(id);
    if (!o || !o->donorHive) continue;
    const auto* small = spotOf(map, o->hive);
    const auto* donor = spotOf(map, *o->donorHive);
    if (!small || !donor) continue;
    Arrow arrow{o, *donor, *small, o->method == apiary::Method::ChangePlaces};
    if (goesToDonor(o->method)) std::swap(arrow.from, arrow.to);
    const bool chosen = m_colony == o->colony;
    drawArrow(out, arrow, chosen);
    // The gain stands at the small colony.
    sheet::TextShape label;
    label.text = o->gain.high > 0 ? tr("%1 gains %2–%3 thousand")
                                        .arg(QString::fromStdString(o->hive.str()),
                                             adapt::roundNumber(o->gain.low / 1000),
                                             adapt::roundNumber(o->gain.high / 1000))
                                        .toStdString()
                                  : o->hive.str();
    label.sizeMm = kTextMm;
    label.bold = chosen;
    const double half = measurer.widthMm(label.text, kTextMm, label.bold) / 2;
    label.align = sheet::Align::Centre;
    label.at = {std::clamp(small->x, half + 1, std::max(half + 1, widthMm - half - 1)),
                small->y - kKeepOffMm - 0.6};
    // Two labels never share a line.
    for (bool moved = true; moved;) {
      moved = false;
      for (const auto& other : labels) {
        const double apart = (measurer.widthMm(other.text, kTextMm, other.bold) / 2) + half + 1;
        if (std::abs(other.at.x - label.at.x) < apart &&
            std::abs(other.at.y - label.at.y) < kTextMm * 1.1) {
          label.at.y = other.at.y - kTextMm * 1.15;
          moved = true;
        }
      }
    }
    label.at.y = std::max(label.at.y, kTextMm);
    labels.push_back(label);
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
  painter.scale(kPxPerMm, kPxPerMm);
  print::paintShapes(painter, shapes, colours);
}

}  // namespace outyard::pairs

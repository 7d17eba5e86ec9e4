// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/forecast/history.h"

#include <algorithm>
#include <set>

#include "core/strength/frame_table.h"

namespace outyard::forecast {
namespace {

using apiary::BoxRole;
using apiary::ColonyPlace;
using apiary::ColonyStay;
using apiary::Event;
using apiary::EventKind;
using apiary::Goods;
using apiary::Inspection;
using base::Date;

constexpr double kBroodFill = 0.7;     ///< sealed cells of a given comb, common practice 0.75-0.85
constexpr double kBeesOnFrame = 1400;  ///< Simpson 1969, Langstroth deep in use
constexpr double kStoresPerSugar = 1.25;  ///< BBKA: sugar / 0.8

/// How likely a treatment was one whose vapour sets laying back: by the name of its substance; when
/// none is given, one in three.
double vapourChance(std::string method) {
  for (char& c : method) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (method.empty()) return 0.33;
  return method.find("thymol") != std::string::npos || method.find("formic") != std::string::npos
             ? 0.9
             : 0.0;
}

/// A colony set over a strong one sits in its warmth: its cold shell is thinner (our assumption).
constexpr double kStackWarmth = 0.6;

bool covers(const ColonyStay& s, Date day) {
  return s.fromDate <= day && (!s.toDate || day < *s.toDate);
}

/// Stores in kg that a feed makes; ICUMSA densities: 0.615 and 0.885 kg sugar a litre.
double storesOf(const Event& e) {
  const double amount = e.amount.value_or(0);
  const bool litres = e.unit == apiary::Unit::L;
  switch (e.what.value_or(Goods::Syrup11)) {
    case Goods::Syrup11:
      return amount * (litres ? 0.615 : 0.5) * kStoresPerSugar;
    case Goods::Syrup21:
      return amount * (litres ? 0.885 : 0.667) * kStoresPerSugar;
    case Goods::Fondant:
      return amount * 0.78 * kStoresPerSugar;
    case Goods::DrySugar:
      return amount * kStoresPerSugar;
    case Goods::HoneyComb:
    case Goods::Stores:
      return amount;
    default:
      return 0;
  }
}

class Builder {
 public:
  Builder(const apiary::Season& season, const base::ColonyId& colony, Date asOf)
      : m_season(season), m_asOf(asOf) {
    m_out.colony = colony;
  }

  std::optional<History> build() {
    const auto stays = m_season.stays(m_out.colony);
    std::set<base::HiveId> hives;
    bool any = false;
    for (const ColonyStay* s : stays) {
      if (s->fromDate > m_asOf) continue;
      if (!any || s->fromDate < m_out.start) m_out.start = s->fromDate;
      if (!any) m_out.origin = s->origin;
      any = true;
      hives.insert(s->hive);
    }
    if (!any) return std::nullopt;
    if (const ColonyStay* last = stays.back(); last->toDate && *last->toDate <= m_asOf) {
      m_out.end = *last->toDate;
    }
    readStacks(stays);
    for (const auto& hive : hives) readHive(hive, stays);
    const auto byDate = [](const auto& a, const auto& b) { return a.date < b.date; };
    std::stable_sort(m_out.looks.begin(), m_out.looks.end(), byDate);
    std::stable_sort(m_out.actions.begin(), m_out.actions.end(), byDate);
    return m_out;
  }

 private:
  const ColonyStay* stayOn(const std::vector<const ColonyStay*>& stays, const base::HiveId& hive,
                           Date day) const {
    const ColonyStay* out = nullptr;
    for (const ColonyStay* s : stays) {
      if (s->hive == hive && (covers(*s, day) || s->toDate == day)) out = s;
    }
    return out;
  }
  /// A record without a colony means the main one of the hive on that day.
  bool hers(const std::optional<base::ColonyId>& named, const ColonyStay* stay) const {
    if (!stay) return false;
    if (named) return *named == m_out.colony;
    return stay->place.value_or(ColonyPlace::Main) == ColonyPlace::Main;
  }
  void add(Date date, Action::Kind kind, double amount = 0, double amount2 = 0) {
    m_out.actions.push_back({date, kind, amount, amount2});
  }

  /// Where bees of two colonies pass through an excluder; a screen or a board lets none through.
  void readStacks(const std::vector<const ColonyStay*>& stays) {
    const auto above = [](const ColonyStay& s) { return s.place == ColonyPlace::OverExcluder; };
    for (const ColonyStay* s : stays) {
      for (const ColonyStay* o : m_season.journal<ColonyStay>(s->hive)) {
        if (o->colony == m_out.colony || above(*s) == above(*o)) continue;
        const ColonyStay &up = above(*s) ? *s : *o, &down = above(*s) ? *o : *s;
        if (down.place.value_or(ColonyPlace::Main) != ColonyPlace::Main) continue;
        SharedStack k{o->colony, above(*s), std::max(s->fromDate, o->fromDate), up.toDate, false};
        if (down.toDate && (!k.until || *down.toDate < *k.until)) k.until = down.toDate;
        if (k.from > m_asOf || (k.until && *k.until <= k.from)) continue;
        if (k.until && *k.until > m_asOf) k.until.reset();
        if (k.until && up.toDate == k.until) {
          for (const ColonyStay* next : m_season.stays(up.colony)) {
            k.takenOff |= next->fromDate == *k.until && next->hive != up.hive;
          }
        }
        m_out.stacks.push_back(k);
      }
    }
    std::stable_sort(m_out.stacks.begin(), m_out.stacks.end(),
                     [](const SharedStack& a, const SharedStack& b) { return a.from < b.from; });
  }
  /// An event of a stack that readStacks found is done by the run of both.
  bool begunTogether(Date date) const {
    return std::any_of(m_out.stacks.begin(), m_out.stacks.end(), [&](const SharedStack& s) {
      return s.from - date <= 3 && date - s.from <= 3;
    });
  }
  bool endedTogether(Date date) const {
    return std::any_of(m_out.stacks.begin(), m_out.stacks.end(), [&](const SharedStack& s) {
      return s.until && *s.until - date <= 3 && date - *s.until <= 3;
    });
  }
  /// Of the colony that is set over another one.
  std::optional<ColonyPlace> placeAbove(const base::ColonyId& upper, Date date) const {
    for (const ColonyStay* s : m_season.stays(upper)) {
      if (s->fromDate == date && s->place && *s->place != ColonyPlace::Main) return s->place;
    }
    return std::nullopt;
  }

  void setOver(const Event& e, bool asOther) {
    if (begunTogether(e.date)) return;
    const auto place =
        asOther ? std::nullopt : placeAbove(m_out.colony, e.date);  // the lower one changes nothing
    if (place && *place != ColonyPlace::OverExcluder) {
      // Through a screen comes warmth, through a board nothing; field bees are lost in any case.
      add(e.date, Action::Kind::LosesFieldBees, 0.8);
      if (*place == ColonyPlace::OverDoubleScreen) add(e.date, Action::Kind::Warmth, kStackWarmth);
      return;
    }
    if (asOther && e.colony) {
      const auto other = placeAbove(*e.colony, e.date);
      if (other && *other != ColonyPlace::OverExcluder) return;
    }
    // Nothing is known of the other colony. A stack moves 3,000 to 6,000 bees up in a week (common
    // practice, no source).
    add(e.date, Action::Kind::BeesIn, (asOther ? -1 : 1) * 4500);
    if (!asOther) add(e.date, Action::Kind::Warmth, kStackWarmth);
  }
  void setOff(const Event& e) {
    if (endedTogether(e.date)) return;
    add(e.date, Action::Kind::LosesFieldBees, 0.8);
    const auto warmed =
        std::any_of(m_out.actions.begin(), m_out.actions.end(),
                    [](const Action& a) { return a.kind == Action::Kind::Warmth && a.amount < 1; });
    if (warmed) add(e.date, Action::Kind::Warmth, 1 / kStackWarmth);
  }

  void readHive(const base::HiveId& hive, const std::vector<const ColonyStay*>& stays) {
    for (const Inspection* i : m_season.journal<Inspection>(hive)) {
      if (i->date <= m_asOf && hers(i->colony, stayOn(stays, hive, i->date))) addLook(*i);
    }
    for (const auto* w : m_season.journal<apiary::Wash>(hive)) {
      if (w->date > m_asOf || !hers(w->colony, stayOn(stays, hive, w->date))) continue;
      if (w->method == apiary::WashMethod::Board || w->bees < 50) continue;
      Look look;
      look.date = w->date;
      look.mitesPer100 = 100.0 * w->mites / w->bees;
      look.washBees = w->bees;
      m_out.looks.push_back(look);
    }
    for (const ColonyStay* s : stays) {
      if (s->hive == hive && s->fromDate <= m_asOf) addBoxes(hive, s->fromDate);
    }
    std::set<Date> boxDates;
    for (const auto* b : m_season.journal<apiary::Box>(hive)) boxDates.insert(b->date);
    for (const Date d : boxDates) {
      if (d <= m_asOf && stayOn(stays, hive, d)) addBoxes(hive, d);
    }
    for (const Event* e : m_season.eventsTouching(hive)) {
      if (e->date <= m_asOf) addEvent(*e, hive, stays);
    }
  }

  void addLook(const Inspection& i) {
    const auto s = strength::estimateInspection(m_season, i);
    Look look;
    look.date = i.date;
    look.bees = s.bees;
    look.sealed = s.sealedCells;
    look.open = s.openCells;
    look.eggs = s.eggCells;
    look.brood = s.broodCells;
    look.honeyKg = s.honeyKg;
    look.eggsSeen = i.eggsSeen;
    look.reader = i.reader;
    m_out.looks.push_back(look);
  }

  void addBoxes(const base::HiveId& hive, Date day) {
    const auto state = apiary::hiveOn(m_season, hive, day);
    double nest = 0, supers = 0;
    for (const auto& b : state.boxesOf(m_out.colony)) {
      const auto figures = strength::figuresFor(m_season, b.frameType);
      if (!figures || b.role == BoxRole::Feeder) continue;
      const int frames = b.frames > 0 ? b.frames : figures->framesPerBox;
      (b.role == BoxRole::Super ? supers : nest) += 2.0 * frames * figures->cellsPerSide();
    }
    if (nest > 0) add(day, Action::Kind::Boxes, nest, supers);
  }

  double frameCells(const base::HiveId& hive, Date day) const {
    const auto state = apiary::hiveOn(m_season, hive, day);
    for (const auto& b : state.boxes) {
      if (const auto f = strength::figuresFor(m_season, b.frameType)) return 2 * f->cellsPerSide();
    }
    return 6900;
  }

  void addFrames(const Event& e, const base::HiveId& hive, double sign) {
    const double amount = e.amount.value_or(1) * sign;
    const double cells = amount * frameCells(hive, e.date) * kBroodFill;
    switch (e.what.value_or(Goods::SealedBrood)) {
      case Goods::SealedBrood:
        add(e.date, Action::Kind::BroodIn, cells);
        break;
      case Goods::OpenBrood:
        add(e.date, Action::Kind::OpenIn, cells);
        break;
      case Goods::Stores:
      case Goods::HoneyComb:
        add(e.date, sign > 0 ? Action::Kind::Feed : Action::Kind::Harvest, 2.4 * amount * sign);
        return;
      case Goods::NurseBees: {
        const double bees = e.unit == apiary::Unit::Frames ? amount * kBeesOnFrame : amount;
        // Of shaken bees the old ones fly home: about half stay (common practice, no source).
        add(e.date, Action::Kind::BeesIn, 0.5 * bees);
        return;
      }
      default:
        return;
    }
    if (e.withBees.value_or(false)) {
      add(e.date, Action::Kind::BeesIn, e.amount.value_or(1) * sign * kBeesOnFrame * 0.7);
    }
  }

  /// The other colony's bees and brood join as they are forecast there.
  void addUnited(const Event& e, bool asOther) {
    const auto& other = asOther ? e.colony : e.otherColony;
    if (!other || *other == m_out.colony || m_season.stays(*other).empty()) return;
    m_out.meetings.push_back({e.date, *other, true, !asOther});
  }
  void addPlacesChanged(const Event& e, bool asOther) {
    if (!e.otherHive) return;
    const auto other = apiary::hiveOn(m_season, asOther ? e.hive : *e.otherHive, e.date);
    if (!other.colonies.empty()) {
      m_out.meetings.push_back({e.date, other.colonies.front().colony, false, !asOther});
    }
  }

  void addEvent(const Event& e, const base::HiveId& hive,
                const std::vector<const ColonyStay*>& stays) {
    const bool asOther = e.hive != hive;
    const ColonyStay* stay = stayOn(stays, hive, e.date);
    if (!hers(asOther ? e.otherColony : e.colony, stay)) return;
    using K = Action::Kind;
    const double sign = asOther ? -1.0 : 1.0;
    switch (e.kind) {
      case EventKind::Fed:
        add(e.date, K::Feed, storesOf(e));
        if (e.what == Goods::PollenPatty || e.what == Goods::PollenFeed) {
          add(e.date, K::Pollen, 0.4 * e.amount.value_or(0.5));
        }
        break;
      case EventKind::Harvested:
        if (e.unit.value_or(apiary::Unit::Kg) == apiary::Unit::Kg) {
          add(e.date, K::Harvest, e.amount.value_or(0));
        }
        break;
      case EventKind::Treated:
        add(e.date, K::Treated, vapourChance(e.method));
        break;
      case EventKind::QueenLost:
      case EventKind::QueenRemoved:
        add(e.date, K::QueenGone);
        break;
      case EventKind::QueenIntroduced:
        add(e.date, K::QueenIn);
        break;
      case EventKind::QueenCellGiven:
        add(e.date, K::CellIn);
        break;
      case EventKind::Swarmed:
        add(e.date, K::Swarmed);
        break;
      case EventKind::Robbed:
        add(e.date, K::Robbed);
        break;
      case EventKind::FramesMoved:
        addFrames(e, hive, sign);
        break;
      case EventKind::BeesShaken: {
        Event shaken = e;
        shaken.what = Goods::NurseBees;
        addFrames(shaken, hive, sign);
        break;
      }
      case EventKind::FramesTaken:
        addFrames(e, hive, -1);
        break;
      case EventKind::FramesGiven:
        addFrames(e, hive, 1);
        break;
      case EventKind::United:
        addUnited(e, asOther);
        break;
      case EventKind::PlacesChanged:
        addPlacesChanged(e, asOther);
        break;
      case EventKind::Split:
        if (asOther) add(e.date, K::KeepShare, 0.6);
        break;
      case EventKind::Stacked:
        setOver(e, asOther);
        break;
      case EventKind::Unstacked:
        if (!asOther) setOff(e);
        break;
      default:
        break;
    }
  }

  const apiary::Season& m_season;
  Date m_asOf;
  History m_out;
};

}  // namespace

std::optional<History> historyOf(const apiary::Season& season, const base::ColonyId& colony,
                                 base::Date asOf) {
  return Builder(season, colony, asOf).build();
}

}  // namespace outyard::forecast

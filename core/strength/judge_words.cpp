// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/strength/code_words.h"
#include "core/strength/judge_rules.h"

namespace outyard::strength {
namespace {

using apiary::Disease;
using apiary::VerdictCode;
using base::Message;
using base::message;

/// Two significant figures: nobody counts bees closer.
std::int64_t rounded(double value) {
  if (value <= 0) return 0;
  const double step = std::max(1.0, std::pow(10.0, std::floor(std::log10(value)) - 1));
  return std::llround(std::round(value / step) * step);
}
std::int64_t percent(double share) {
  return std::llround(100 * share);
}
double quarters(double seams) {
  return std::round(seams * 4) / 4;
}
double tenths(double value) {
  return std::round(value * 10) / 10;
}
void strengthWords(const Evidence& e, std::vector<Message>& out) {
  if (e.seams) {
    out.push_back(e.seamsCounted ? message("evidence.seams", quarters(*e.seams))
                                 : message("evidence.seams_equal", quarters(*e.seams)));
  }
  if (e.bees) {
    out.push_back(message("evidence.bees", rounded(e.bees->median), rounded(e.bees->low),
                          rounded(e.bees->high)));
  }
  if (!e.seams && e.seamsAtLeast) {
    out.push_back(message("evidence.sides_partial", quarters(*e.seamsAtLeast)));
  }
  if (!e.strength || e.strength->looks.size() < 2) return;
  const auto& looks = e.strength->looks;
  const auto [least, most] = std::minmax_element(
      looks.begin(), looks.end(),
      [](const Look& a, const Look& b) { return a.bees.median < b.bees.median; });
  if (least->bees.high < most->bees.low) {
    out.push_back(message("evidence.looks_disagree", codeWord("basis", least->basis),
                          rounded(least->bees.median), codeWord("basis", most->basis),
                          rounded(most->bees.median)));
  }
}

void broodWords(const Evidence& e, const VerdictRules& r, std::vector<Message>& out) {
  if (e.eggs) out.push_back(*e.eggs ? message("evidence.eggs_seen") : message("evidence.no_eggs"));
  if (e.anyBrood == false) out.push_back(message("evidence.no_brood"));
  if (e.pattern) {
    if (*e.pattern <= r.scatteredPattern) {
      out.push_back(message("evidence.pattern_scattered", *e.pattern));
    } else if (*e.pattern >= 4) {
      out.push_back(message("evidence.pattern_compact", *e.pattern));
    } else {
      out.push_back(message("evidence.pattern_middling", *e.pattern));
    }
  }
  if (e.cover && e.anyBrood == true) {
    if (*e.cover >= r.broodFills) {
      out.push_back(message("evidence.brood_fills_cover", percent(*e.cover)));
    } else if (*e.cover < r.broodLittle) {
      out.push_back(message("evidence.brood_little", percent(*e.cover)));
    } else {
      out.push_back(message("evidence.brood_partly_fills", percent(*e.cover)));
    }
  }
  if (e.eggs == false && e.sealedCells.value_or(0) > 0 && e.openCells == 0.0) {
    out.push_back(message("evidence.only_sealed"));
  }
  if (e.droneShare && *e.droneShare >= r.droneShare) {
    out.push_back(message("evidence.drone_share", percent(*e.droneShare)));
  } else if (e.droneBrood.value_or(0) >= 2) {
    out.push_back(message("evidence.drone_brood", *e.droneBrood));
  }
}

void queenWords(const Evidence& e, std::vector<Message>& out) {
  if (e.queenSeen) {
    out.push_back(*e.queenSeen ? message("evidence.queen_seen")
                               : message("evidence.queen_not_seen"));
  }
  if (e.queenCells.value_or(0) > 0) {
    out.push_back(message("evidence.queen_cells", *e.queenCells));
  }
  if (e.queenLost) out.push_back(message("evidence.queen_lost", e.queenLost->iso()));
  if (e.queenDue) {
    out.push_back(message("evidence.queen_due", e.queenDue->since.iso(), e.queenDue->due.iso()));
  }
  if (e.knownQueenless) out.push_back(message("evidence.long_without_eggs"));
  if (e.eggs != true && (e.eggs == false || e.anyBrood == false)) {
    if (e.calendar.beforePollen()) {
      out.push_back(
          e.calendar.fromFlows
              ? message("evidence.before_pollen", e.calendar.firstPollenDate.iso())
              : message("evidence.before_pollen_guess", e.calendar.firstPollenDate.iso()));
    } else if (!e.calendar.broodSeason()) {
      out.push_back(message("evidence.brood_season_over"));
    }
  }
}

void healthWords(const Evidence& e, std::vector<Message>& out) {
  if (e.disease) {
    out.push_back(message("evidence.disease", codeWord("disease", *e.disease), e.diseaseOn->iso()));
  }
  if (!e.mites) return;
  const MitesSeen& m = *e.mites;
  out.push_back(message("evidence.mites", tenths(m.per100), tenths(m.per100Range.low),
                        tenths(m.per100Range.high), m.threshold, m.date.iso()));
  if (m.treatedSince) out.push_back(message("evidence.treated_since_wash"));
}

}  // namespace

std::vector<Message> evidenceWords(const Evidence& e, const VerdictRules& r) {
  std::vector<Message> out;
  if (!e.lastSeen) {
    out.push_back(message("evidence.never_seen"));
    healthWords(e, out);
    return out;
  }
  if (e.daysSince == 0) {
    out.push_back(message("evidence.seen_today"));
  } else {
    out.push_back(message("evidence.seen_days_ago", e.daysSince));
  }
  if (e.forgotten) {
    out.push_back(message("evidence.too_long_ago", static_cast<int>(r.forgottenDays)));
  } else if (!e.fresh) {
    out.push_back(message("evidence.not_fresh", static_cast<int>(r.freshDays)));
  }
  strengthWords(e, out);
  broodWords(e, r, out);
  queenWords(e, out);
  healthWords(e, out);
  return out;
}

std::vector<Message> wouldChangeWords(VerdictCode verdict, const Evidence& e,
                                      const VerdictRules& r) {
  std::vector<Message> out;
  if (e.lastSeen && !e.fresh) out.push_back(message("change.look_again", e.daysSince));
  switch (verdict) {
    case VerdictCode::Strong:
      out.push_back(message("change.fewer_seams", r.strongSeams));
      if (e.eggs != true) out.push_back(message("change.no_eggs"));
      break;
    case VerdictCode::Fair:
      out.push_back(message("change.strong_from", r.strongSeams));
      out.push_back(message("change.small_under", r.smallSeams));
      if (e.eggs != true) out.push_back(message("change.no_eggs"));
      break;
    case VerdictCode::SmallSound:
      out.push_back(message("change.no_eggs_or_scattered"));
      out.push_back(message("change.fair_from", r.smallSeams));
      if (e.cover && *e.cover < r.broodFills) out.push_back(message("change.honey_bound"));
      break;
    case VerdictCode::QueenSuspect:
      out.push_back(message("change.eggs_compact"));
      if (e.eggs != true) out.push_back(message("change.test_comb"));
      if (e.disease == Disease::Chalkbrood || e.disease == Disease::Sacbrood) {
        out.push_back(message("change.pattern_from_disease"));
      }
      break;
    case VerdictCode::Queenless:
      out.push_back(message("change.eggs_found"));
      out.push_back(message("change.test_comb"));
      break;
    case VerdictCode::DroneLayer:
      out.push_back(message("change.several_eggs"));
      out.push_back(message("change.worker_brood"));
      break;
    case VerdictCode::LayingWorkers:
      out.push_back(message("change.queen_found"));
      break;
    case VerdictCode::Sick:
      if (e.disease == Disease::SuspectAfb || e.disease == Disease::SuspectEfb) {
        out.push_back(message("change.inspector"));
      } else {
        out.push_back(message("change.healthy_look"));
      }
      break;
    case VerdictCode::TooSmall:
      out.push_back(message("change.more_than_seams", r.tooSmallSeams));
      break;
    case VerdictCode::TooEarly:
      if (e.queenDue) {
        out.push_back(message("change.after_queen_due", e.queenDue->due.iso()));
      } else {
        out.push_back(message("change.after_pollen", e.calendar.firstPollenDate.iso()));
      }
      break;
    case VerdictCode::NotEnoughSeen:
      if (!e.lastSeen || e.forgotten) {
        out.push_back(message("change.look_first"));
        break;
      }
      if (!e.seams) out.push_back(message("change.count_seams"));
      if (e.eggs != true) out.push_back(message("change.look_for_eggs"));
      if (!e.pattern) out.push_back(message("change.note_pattern"));
      break;
  }
  return out;
}

std::optional<Message> healthBarOf(const Evidence& e, const std::optional<base::HiveId>& foulIn) {
  if (e.disease == Disease::SuspectAfb || e.disease == Disease::SuspectEfb) {
    return message("health.foul_brood_here", codeWord("disease", *e.disease));
  }
  if (foulIn) return message("health.foul_brood_yard", foulIn->str());
  if (e.disease == Disease::Nosema || e.disease == Disease::Other) {
    return message("health.sick", codeWord("disease", *e.disease));
  }
  if (e.mites && e.mites->heavy()) {
    return message("health.mites", tenths(e.mites->per100), e.mites->threshold);
  }
  return std::nullopt;
}

}  // namespace outyard::strength

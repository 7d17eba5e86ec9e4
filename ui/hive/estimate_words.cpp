// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/estimate_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/strength/laying.h"
#include "ui/adapt/words.h"

namespace outyard::hive {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("HiveEstimate", text);
}

template <class T>
void addAll(apiary::ChangeList& changes, const std::vector<const T*>& records) {
  for (const T* record : records) {
    apiary::Row row = apiary::toRow(*record);
    std::string key = apiary::rowKey(row);
    changes.push_back({apiary::TableOf<T>::kId, std::move(key), std::nullopt, std::move(row)});
  }
}

template <class T>
void addTable(apiary::ChangeList& changes, const apiary::Season& season) {
  for (const auto& [key, record] : season.table<T>()) {
    changes.push_back({apiary::TableOf<T>::kId, key, std::nullopt, apiary::toRow(record)});
  }
}

}  // namespace

QString basisText(strength::Basis basis) {
  using strength::Basis;
  switch (basis) {
    case Basis::CombSides:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "comb sides"));
    case Basis::FullFrames:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "full frames"));
    case Basis::FramesWithBees:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "frames with bees"));
    case Basis::Seams:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "seams"));
    case Basis::SeamsByBox:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "seams by box"));
    case Basis::Weight:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "the weight"));
    case Basis::Summary:
      return tr(QT_TRANSLATE_NOOP("HiveEstimate", "the summary"));
  }
  return {};
}

QString looksText(const strength::StrengthEstimate& estimate) {
  if (estimate.looks.size() < 2) return {};
  QStringList parts;
  for (const auto& look : estimate.looks) {
    //: A way of looking and the bees it gives: "seams: 9,000".
    parts << tr(QT_TRANSLATE_NOOP("HiveEstimate", "%1: %2"))
                 .arg(basisText(look.basis), adapt::roundNumber(look.bees.median));
  }
  const QString all = parts.join(QStringLiteral(", "));
  return looksDisagree(estimate)
             ? tr(QT_TRANSLATE_NOOP("HiveEstimate",
                                    "The ways of looking disagree. Look again or correct: %1."))
                   .arg(all)
             : tr(QT_TRANSLATE_NOOP("HiveEstimate", "Bees by each way of looking: %1.")).arg(all);
}

bool looksDisagree(const strength::StrengthEstimate& estimate) {
  for (const auto& a : estimate.looks) {
    for (const auto& b : estimate.looks) {
      if (a.bees.high < b.bees.low) return true;
    }
  }
  return false;
}

QString storesText(const strength::Estimate& honeyKg, const adapt::Units& units) {
  const auto shown = [&](double kg) { return adapt::roundNumber(units.shown(base::Mass{kg})); };
  return QStringLiteral("%1 %2 (%3–%4)")
      .arg(shown(honeyKg.median), units.massUnit(), shown(honeyKg.low), shown(honeyKg.high));
}

QString workingsText(const strength::StrengthEstimate& estimate, const adapt::Units& units) {
  QStringList out, rates;
  const strength::LayingRates laying = strength::layingRates(estimate);
  const auto rate = [&](const std::optional<strength::Estimate>& eggs, const char* days) {
    if (!eggs || eggs->median <= 0) return;
    rates << tr(days).arg(adapt::roundNumber(eggs->median));
  };
  rate(laying.fromEggs, QT_TRANSLATE_NOOP("HiveEstimate", "%1 in the last 3 days"));
  rate(laying.fromOpen, QT_TRANSLATE_NOOP("HiveEstimate", "%1 in the last 9 days"));
  rate(laying.fromSealed, QT_TRANSLATE_NOOP("HiveEstimate", "%1 from 21 to 9 days ago"));
  if (!rates.isEmpty()) {
    out << tr(QT_TRANSLATE_NOOP("HiveEstimate", "Eggs a day by the brood: %1."))
               .arg(rates.join(QStringLiteral(", ")));
  }
  if (laying.expansion) {
    switch (strength::nestTrend(laying.expansion->median)) {
      case strength::NestTrend::Growing:
        out << tr(QT_TRANSLATE_NOOP("HiveEstimate", "The brood nest is growing."));
        break;
      case strength::NestTrend::Shrinking:
        out << tr(QT_TRANSLATE_NOOP("HiveEstimate", "The brood nest is shrinking."));
        break;
      case strength::NestTrend::Steady:
        break;
    }
  }
  if (estimate.weighedKg && estimate.tareKg) {
    const auto mass = [&](double kg) { return units.text(base::Mass{kg}); };
    out << tr(QT_TRANSLATE_NOOP("HiveEstimate",
                                "Of %1 weighed about %2 (give or take %3) are "
                                "boxes, bees and brood."))
               .arg(mass(*estimate.weighedKg), mass(*estimate.tareKg),
                    mass(estimate.tareSdKg.value_or(0)));
  }
  if (estimate.readerBias && std::fabs(*estimate.readerBias - 1) >= 0.01) {
    const QString off = QLocale().toString(100 * std::fabs(*estimate.readerBias - 1), 'f', 0);
    out << (*estimate.readerBias > 1
                ? tr(QT_TRANSLATE_NOOP("HiveEstimate",
                                       "This reader counts %1 % too many: taken out."))
                : tr(QT_TRANSLATE_NOOP("HiveEstimate",
                                       "This reader counts %1 % too few: taken out.")))
               .arg(off);
  }
  if (estimate.inFlyingHours) {
    out << tr(
        QT_TRANSLATE_NOOP("HiveEstimate", "Counted in flying hours: some field bees were out."));
  }
  return out.join(u' ');
}

QString amountsText(const strength::StrengthEstimate& estimate, const adapt::Units& units) {
  const auto band = [](const strength::Estimate& e) {
    return adapt::band(e.median, e.low, e.high);
  };
  QStringList parts;
  if (estimate.bees) {
    parts << tr(QT_TRANSLATE_NOOP("HiveEstimate", "Bees %1")).arg(band(*estimate.bees));
  }
  if (estimate.sealedCells) {
    parts << tr(QT_TRANSLATE_NOOP("HiveEstimate", "sealed cells %1"))
                 .arg(band(*estimate.sealedCells));
  }
  if (estimate.broodCells) {
    parts << tr(QT_TRANSLATE_NOOP("HiveEstimate", "brood cells in all %1"))
                 .arg(band(*estimate.broodCells));
  }
  if (estimate.honeyKg) {
    parts << tr(QT_TRANSLATE_NOOP("HiveEstimate", "stores %1"))
                 .arg(storesText(*estimate.honeyKg, units));
  }
  return parts.join(QStringLiteral("; "));
}

apiary::Season seasonOfHive(const apiary::Season& season, const base::HiveId& hive) {
  apiary::ChangeList changes;
  addTable<apiary::Yard>(changes, season);
  if (const auto* h = season.hive(hive)) {
    apiary::Row row = apiary::toRow(*h);
    std::string key = apiary::rowKey(row);
    changes.push_back({apiary::TableId::Hives, std::move(key), std::nullopt, std::move(row)});
  }
  addTable<apiary::FrameType>(changes, season);
  addTable<apiary::Setting>(changes, season);
  addAll(changes, season.journal<apiary::ColonyStay>(hive));
  addAll(changes, season.journal<apiary::Box>(hive));
  addAll(changes, season.journal<apiary::Event>(hive));
  addAll(changes, season.journal<apiary::Place>(hive));
  apiary::Season out;
  out.apply(changes);
  return out;
}

strength::StrengthEstimate estimateDraft(const apiary::Season& ofHive,
                                         const session::InspectionEntry& entry) {
  apiary::Season draft = ofHive;
  apiary::ChangeList changes;
  apiary::Inspection inspection = entry.inspection;
  inspection.record = base::RecordId(std::string("draft"));
  inspection.supersedes.reset();
  const auto add = [&]<class T>(const T& record) {
    apiary::Row row = apiary::toRow(record);
    std::string key = apiary::rowKey(row);
    changes.push_back({apiary::TableOf<T>::kId, std::move(key), std::nullopt, std::move(row)});
  };
  add(inspection);
  for (apiary::CombSide side : entry.sides) {
    side.inspection = inspection.record;
    add(side);
  }
  for (apiary::SeamCount seams : entry.seams) {
    seams.inspection = inspection.record;
    add(seams);
  }
  draft.apply(changes);
  return strength::estimateInspection(draft, inspection);
}

}  // namespace outyard::hive

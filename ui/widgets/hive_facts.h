// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <string_view>
#include <vector>

#include "core/apiary/state.h"
#include "core/strength/expected_look.h"
#include "core/strength/verdict.h"

namespace outyard::widgets {

class SeasonHub;

/// What is known about one colony on the shown day, in words.
struct ColonyFacts {
  base::ColonyId colony;
  QString name;       ///< with its place where two share the hive
  QString judgement;  ///< "small but sound"
  QStringList evidence, wouldChange;
  QString overruled;  ///< empty unless a person overruled the rules
  QString healthBar;  ///< empty = nothing bars it
  QString seams;      ///< "5½"
  QString bees;       ///< "9,000 (7,200–11,000)"
  QString brood;
  QString stores;
  QString queen;
  QString expected;       ///< "8–9 seams" on the shown day; empty without a forecast
  QString expectedBrood;  ///< "brood on 5–6 combs"
  QString lastLook;       ///< "18 Apr 2026, 7 days before"
};

/// The facts that map, table and side panel show about one hive.
struct HiveFacts {
  QString number;
  QString letters;   ///< "B", "2 Q"
  QString meanings;  ///< the letters spelled out
  QString status;
  QString stand;
  QString boxes;  ///< "2 chambers, 1 super"
  std::vector<ColonyFacts> colonies;
  QStringList tasks;
  /// All of it in one or two sentences, for tool tips and screen readers.
  [[nodiscard]] QString sentence() const;
};
HiveFacts hiveFacts(const SeasonHub& hub, const apiary::HiveState& hive);

/// "8–9": whole seams or combs.
QString rangeText(const strength::Spread& spread);

/// The name of a code: codeText("frame_type", "zander"); an unknown one is shown as it is written.
QString codeText(const char* set, std::string_view code);
QString verdictText(apiary::VerdictCode verdict);
QString eventText(apiary::EventKind kind);
QString taskText(const apiary::Task& task);
/// "5", "5½", "5¾": seams are counted in quarters.
QString quarters(double value);

/// Letters of the marks and what each means, in the order of the legend.
struct LetterMeaning {
  QChar letter;
  QString meaning;
};
std::vector<LetterMeaning> letterMeanings();

}  // namespace outyard::widgets

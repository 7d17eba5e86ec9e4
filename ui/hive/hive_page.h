// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>

#include "core/apiary/state.h"

class QPagedPaintDevice;

namespace outyard::widgets {
class SeasonHub;
}

namespace outyard::hive {

class JournalModel;

/// "TR-02, over an excluder".
QString colonyTabText(const apiary::ColonyState& colony);
/// The stack in one sentence, bottom first, for screen readers and tool tips.
QString stackSentence(const apiary::Season& season, const apiary::HiveState& hive);
/// When the combs drawn were seen, or what is missing to draw them.
QString stackNote(const apiary::Season& season, const apiary::HiveState& hive, base::Date day);
/// Everything known of the chosen colony (or the main one), judgement and its evidence first.
QString factsHtml(const widgets::SeasonHub& hub, const apiary::HiveState& hive,
                  const std::optional<base::ColonyId>& colony);
/// Stack, facts and journal on pages, black on white; `hive` null says that none is chosen.
void printHivePage(QPagedPaintDevice& device, const widgets::SeasonHub& hub,
                   const apiary::HiveState* hive, const JournalModel& journal);

}  // namespace outyard::hive

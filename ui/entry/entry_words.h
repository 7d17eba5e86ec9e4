// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>

#include "core/apiary/season.h"
#include "core/session/sheet_entry.h"
#include "ui/adapt/units.h"

namespace outyard::entry {

/// Head of a column; the unit where it has one ("kg").
QString columnHead(session::EntryColumn column, const QString& massUnit);
/// The keys that a column takes, in words ("y eggs, n none").
QString columnKeys(session::EntryColumn column);
/// True when one key fills the cell and the cursor goes on by itself.
bool takesOneKey(session::EntryColumn column);
/// What the key writes in the column; nullopt when it means nothing there.
std::optional<QString> oneKey(session::EntryColumn column, QChar key);
/// The answer as the cell shows it ("m" as "M", "u" as "cups").
QString cellText(session::EntryColumn column, const QString& typed);
/// What a cell that lies under another head is asked for: shown in it ("cause"); empty where the
/// head of the column says it.
QString cellLabel(session::EntryColumn column);

/// The task as on paper, short: what, how much, with which hive.
QString taskText(const apiary::Task& task, const adapt::Units& units);
/// A boost as the paper asks for it: at the hive that gets it, or at the one that gives.
QString boostText(const apiary::PlanRow& row, const base::HiveId& at);
/// What was recorded and what is still open, one sentence a line.
QString reportText(const apiary::Season& season, const session::EntryReading& reading,
                   const adapt::Units& units);

}  // namespace outyard::entry

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QChar>
#include <QString>
#include <utility>
#include <vector>

#include "core/apiary/season.h"
#include "ui/adapt/units.h"

namespace outyard::hive {

/// What kind of line a journal has: one letter each, spelled out beside it.
enum class JournalKind {
  Look,
  Wash,
  Boxes,
  Combs,
  Joined,
  Queen,
  Fed,
  Treated,
  Harvest,
  Place,
  Judgement,
  End,
  Note
};
inline constexpr int kJournalKinds = 13;
QChar kindLetter(JournalKind kind);
QString kindName(JournalKind kind);
JournalKind kindOf(apiary::EventKind kind);

QString goodsText(apiary::Goods goods);
QString washMethodText(apiary::WashMethod method);
/// The outfit's own name of a frame type, else the trade's.
QString frameTypeText(const apiary::Season& season, const std::string& frameType);
QString amountText(double amount, std::optional<apiary::Unit> unit, const adapt::Units& units);

/// One line of a journal in words, as read in the journal of `hive`.
QString inspectionWords(const apiary::Inspection& inspection, const adapt::Units& units);
QString washWords(const apiary::Wash& wash);
QString eventWords(const apiary::Event& event, const base::HiveId& hive, const adapt::Units& units);
QString frameMoveWords(const apiary::FrameMove& move, const base::HiveId& hive);

/// Everything that a row holds: label and value, in the table's order, recorded ones only.
std::vector<std::pair<QString, QString>> detailOf(const apiary::Row& row,
                                                  const adapt::Units& units);

}  // namespace outyard::hive

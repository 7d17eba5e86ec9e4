// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <string>
#include <vector>

#include "core/planning/boost.h"

namespace outyard::pairs {

QString methodText(apiary::Method method);
/// What an option does, in a few words: "set over TR-05".
QString optionText(const planning::BoostOption& option);
/// "+0.19", "−0.08", "±0".
QString signedText(double difference);
/// The second best with its difference to what was chosen: "−0.08: set over TR-08" (in usable
/// colonies by forecast).
QString secondText(const planning::BoostOption& second, const planning::BoostOption& chosen,
                   const planning::BoostProblem& problem);
/// "3,400 (2,100–4,800)"; "none" for an option that moves no bees.
QString gainText(const planning::BoostOption& option);
/// What a sum of benefits is worth: "3,400 bees", or by forecast "0.85 usable colonies".
QString worthText(double worth, const planning::BoostProblem& problem);
/// "12 → 86 %": the chance to be usable on the target day without and with the option; a dash
/// where it was not worked out. "AB-19: 73 → 88 %" where the colony that stays is another one.
QString chanceText(const planning::BoostOption& option);
/// "excluder", "chamber, Langstroth deep".
QString gearText(const std::string& item);
QString sentences(const std::vector<base::Message>& messages);
/// "TR-02", and the colony's own name where it differs.
QString colonyText(const base::ColonyId& colony, const base::HiveId& hive);
const strength::Judgement* judgementOf(const planning::BoostProblem& problem,
                                       const base::ColonyId& colony);
/// Why nothing is planned for the colony (its health, its yard's, an old look, two in one hive);
/// null when nothing bars it.
const base::Message* barOf(const planning::BoostProblem& problem, const base::ColonyId& colony);
/// The plan as a table of the exchange grammar: one line for each colony that was decided.
QString planCsv(const planning::BoostPlan& plan);

}  // namespace outyard::pairs

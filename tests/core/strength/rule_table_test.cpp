// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/rule_table.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>

namespace outyard::strength {
namespace {

using apiary::Disease;

/// Evidence of a sound, fair colony in the middle of the brood season: no finding holds.
Evidence sound() {
  Evidence e;
  e.lastSeen = base::Date::parse("2026-05-10");
  e.fresh = true;
  e.forgotten = false;
  e.calendar.today = 132;
  e.calendar.firstPollen = 80;
  e.calendar.lastBrood = 258;
  e.seams = 6;
  e.eggs = true;
  e.anyBrood = true;
  e.pattern = 4;
  e.cover = 0.8;
  return e;
}

struct Step {
  const char* rule;
  bool fires;
  const char* what;
  void (*change)(Evidence&);
};

/// Each alternative of each rule once just fulfilled, and once missed by a hair.
const Step kSteps[] = {
    {"scattered", true, "pattern 2", [](Evidence& e) { e.pattern = 2; }},
    {"scattered", false, "pattern 3", [](Evidence& e) { e.pattern = 3; }},
    {"scattered", false, "no pattern", [](Evidence& e) { e.pattern.reset(); }},
    {"drone_heavy", true, "half the sealed is drone", [](Evidence& e) { e.droneShare = 0.5; }},
    {"drone_heavy", false, "less than half", [](Evidence& e) { e.droneShare = 0.49; }},
    {"drone_heavy", true, "much drone brood, scattered",
     [](Evidence& e) { e.droneBrood = 2, e.pattern = 1; }},
    {"drone_heavy", true, "much drone brood, little worker brood",
     [](Evidence& e) { e.droneBrood = 2, e.cover = 0.2; }},
    {"drone_heavy", false, "much drone brood in a strong nest",
     [](Evidence& e) { e.droneBrood = 3; }},
    {"drone_heavy", true, "all drone brood, nothing else noted",
     [](Evidence& e) { e.droneBrood = 3, e.cover.reset(), e.pattern.reset(); }},
    {"drone_heavy", false, "the same with the queen seen",
     [](Evidence& e) { e.droneBrood = 3, e.cover.reset(), e.pattern.reset(), e.queenSeen = true; }},
    {"queen_long_gone", true, "known queenless", [](Evidence& e) { e.knownQueenless = true; }},
    {"queen_long_gone", true, "looked for and not seen", [](Evidence& e) { e.queenSeen = false; }},
    {"queen_long_gone", false, "not seen, but certain twenty days before",
     [](Evidence& e) {
       e.queenSeen = false;
       e.queenKnown = e.lastSeen->plusDays(-20);
     }},
    {"queen_long_gone", true, "certain three weeks before",
     [](Evidence& e) {
       e.queenSeen = false;
       e.queenKnown = e.lastSeen->plusDays(-21);
     }},
    {"queen_long_gone", false, "seen",
     [](Evidence& e) {
       e.queenSeen = true;
       e.knownQueenless = true;
     }},
    {"laying_missing", true, "no eggs", [](Evidence& e) { e.eggs = false; }},
    {"laying_missing", true, "no brood", [](Evidence& e) { e.eggs.reset(), e.anyBrood = false; }},
    {"laying_missing", true, "queen lost",
     [](Evidence& e) { e.eggs.reset(), e.queenLost = e.lastSeen; }},
    {"laying_missing", false, "queen lost, eggs since",
     [](Evidence& e) { e.queenLost = e.lastSeen; }},
    {"laying_missing", false, "eggs not looked for", [](Evidence& e) { e.eggs.reset(); }},
    {"little_brood", true, "brood for a quarter of the bees", [](Evidence& e) { e.cover = 0.24; }},
    {"little_brood", false, "a little more", [](Evidence& e) { e.cover = 0.25; }},
    {"little_brood", false, "under three seams", [](Evidence& e) { e.cover = 0.2, e.seams = 2.9; }},
    {"little_brood", false, "a new queen is due",
     [](Evidence& e) {
       e.cover = 0.2;
       e.queenDue = QueenDue{*e.lastSeen, e.lastSeen->plusDays(20)};
     }},
    {"little_brood", false, "three weeks after first pollen are not over",
     [](Evidence& e) {
       e.cover = 0.2;
       e.calendar.firstPollen = e.calendar.today - 20;
     }},
    {"sick", true, "foul brood suspected", [](Evidence& e) { e.disease = Disease::SuspectAfb; }},
    {"sick", true, "European foul brood", [](Evidence& e) { e.disease = Disease::SuspectEfb; }},
    {"sick", true, "nosema", [](Evidence& e) { e.disease = Disease::Nosema; }},
    {"sick", true, "something else", [](Evidence& e) { e.disease = Disease::Other; }},
    {"sick", false, "chalkbrood", [](Evidence& e) { e.disease = Disease::Chalkbrood; }},
    {"not_enough_seen", true, "never seen", [](Evidence& e) { e.lastSeen.reset(); }},
    {"not_enough_seen", true, "long ago", [](Evidence& e) { e.forgotten = true; }},
    {"not_enough_seen", false, "seen", [](Evidence&) {}},
    {"too_small", true, "under a seam", [](Evidence& e) { e.seams = 0.75; }},
    {"too_small", false, "a seam", [](Evidence& e) { e.seams = 1; }},
    {"too_small", false, "under a seam, not fresh",
     [](Evidence& e) { e.seams = 0.75, e.fresh = false; }},
    {"laying_workers", true, "drones, known queenless",
     [](Evidence& e) { e.droneShare = 0.9, e.knownQueenless = true; }},
    {"laying_workers", true, "drones, eggs scattered, no queen seen",
     [](Evidence& e) { e.droneShare = 0.9, e.queenSeen = false, e.pattern = 1; }},
    {"laying_workers", false, "drones alone", [](Evidence& e) { e.droneShare = 0.9; }},
    {"drone_layer", true, "drones alone", [](Evidence& e) { e.droneShare = 0.9; }},
    {"drone_layer", false, "few drones", [](Evidence& e) { e.droneBrood = 1; }},
    {"too_early", true, "no eggs, a queen is due",
     [](Evidence& e) {
       e.eggs = false;
       e.queenDue = QueenDue{*e.lastSeen, e.lastSeen->plusDays(20)};
     }},
    {"too_early", true, "no eggs before first pollen",
     [](Evidence& e) {
       e.eggs = false;
       e.calendar.today = e.calendar.firstPollen - 10;
     }},
    {"too_early", false, "no eggs in May", [](Evidence& e) { e.eggs = false; }},
    {"queenless", true, "neither eggs nor brood",
     [](Evidence& e) { e.eggs = false, e.anyBrood = false; }},
    {"queenless", true, "lost, no eggs since",
     [](Evidence& e) { e.eggs.reset(), e.queenLost = e.lastSeen; }},
    {"queenless", false, "brood but no eggs", [](Evidence& e) { e.eggs = false; }},
    {"queenless", false, "queen seen",
     [](Evidence& e) { e.eggs = false, e.anyBrood = false, e.queenSeen = true; }},
    {"queen_suspect", true, "brood but no eggs", [](Evidence& e) { e.eggs = false; }},
    {"queen_suspect", true, "scattered", [](Evidence& e) { e.pattern = 2; }},
    {"queen_suspect", true, "little brood", [](Evidence& e) { e.cover = 0.1; }},
    {"queen_suspect", false, "sound", [](Evidence&) {}},
    {"strong", true, "seven seams", [](Evidence& e) { e.seams = 7; }},
    {"strong", true, "seven seams at least",
     [](Evidence& e) { e.seams.reset(), e.seamsAtLeast = 7; }},
    {"strong", false, "six and three quarters", [](Evidence& e) { e.seams = 6.75; }},
    {"fair", true, "five", [](Evidence& e) { e.seams = 5; }},
    {"fair", false, "under five", [](Evidence& e) { e.seams = 4.75; }},
    {"small_sound", true, "eggs, compact", [](Evidence& e) { e.seams = 3; }},
    {"small_sound", true, "eggs, brood fills half its cover, no pattern",
     [](Evidence& e) { e.seams = 3, e.pattern.reset(), e.cover = 0.5; }},
    {"small_sound", false, "brood fills less",
     [](Evidence& e) { e.seams = 3, e.pattern.reset(), e.cover = 0.49; }},
    {"small_sound", false, "eggs not seen", [](Evidence& e) { e.seams = 3, e.eggs.reset(); }},
    {"small_sound", false, "not fresh", [](Evidence& e) { e.seams = 3, e.fresh = false; }},
};

// The judgements are common practice, no source (see the table).
TEST(RuleTable, CaseByCase) {
  const RuleTable& table = RuleTable::shipped();
  for (const Step& s : kSteps) {
    Evidence e = sound();
    s.change(e);
    EXPECT_EQ(table.holds(s.rule, e, table.figures()), s.fires) << s.rule << ": " << s.what;
  }
}

TEST(RuleTable, EveryRuleHasACaseThatFiresAndOneThatDoesNot) {
  std::set<std::string> fires, rests;
  for (const Step& s : kSteps) (s.fires ? fires : rests).insert(s.rule);
  for (const EvidenceRule& r : RuleTable::shipped().rules()) {
    EXPECT_TRUE(fires.contains(r.name)) << r.name;
    EXPECT_TRUE(rests.contains(r.name)) << r.name;
    EXPECT_FALSE(r.source.empty()) << r.name;
  }
}

TEST(RuleTable, FirstVerdictFromTheTopCounts) {
  const RuleTable& table = RuleTable::shipped();
  Evidence e = sound();
  EXPECT_EQ(table.verdictOf(e, table.figures()), apiary::VerdictCode::Fair);
  e.pattern = 1;
  EXPECT_EQ(table.verdictOf(e, table.figures()), apiary::VerdictCode::QueenSuspect);
  e.disease = Disease::SuspectAfb;
  EXPECT_EQ(table.verdictOf(e, table.figures()), apiary::VerdictCode::Sick);
  EXPECT_EQ(table.verdictOf(Evidence{}, table.figures()), apiary::VerdictCode::NotEnoughSeen);
}

TEST(RuleTable, FiguresOfTheOutfitCount) {
  const RuleTable& table = RuleTable::shipped();
  VerdictRules figures = table.figures();
  figures.strongSeams = 6;
  EXPECT_EQ(table.verdictOf(sound(), figures), apiary::VerdictCode::Strong);
}

/// The shipped text with one piece replaced.
std::string withFault(const std::string& from, const std::string& to) {
  std::string text = "kind,name,value,low,high,unit,holds,source\n";
  for (const RuleSpec& f : ruleSpecs()) {
    text += "figure," + std::string(f.name) + ",3,1,9,d,,ours\n";
  }
  text += "finding,scattered,,,,,pattern <= scattered_pattern,ours\n";
  text += "verdict,sick,,,,,scattered & seams < 4,ours\nverdict,fair,,,,,always,ours\n";
  if (!from.empty()) text.replace(text.find(from), from.size(), to);
  return text;
}

TEST(RuleTable, ABrokenTableNamesTheRow) {
  EXPECT_NO_THROW(RuleTable(withFault("", "")));
  const std::pair<const char*, const char*> faults[] = {
      {"verdict,fair,,,,,always", "verdict,fair,,,,,eggs"},
      {"pattern <=", "patern <="},
      {"seams < 4", "seams < four"},
      {"verdict,sick", "verdict,ill"},
      {"finding,scattered", "rule,scattered"},
      {"figure,fresh_days", "figure,stale_days"},
      {"figure,fresh_days,3,1,9,d,,ours\n", ""},
      {",always,ours", ",always,"},
      {"scattered & seams", "scattered < 2 & seams"},
      {"kind,name", "sort,name"},
  };
  for (const auto& [from, to] : faults) {
    EXPECT_THROW(RuleTable(withFault(from, to)), std::logic_error) << from << " -> " << to;
  }
}

TEST(RuleTable, WhatIsNotRecordedFulfilsNoComparison) {
  Evidence nothing;
  const RuleTable& table = RuleTable::shipped();
  for (const EvidenceRule& r : table.rules()) {
    EXPECT_EQ(table.holds(r.name, nothing, table.figures()), r.name == "not_enough_seen") << r.name;
  }
  EXPECT_GE(evidenceFacts().size(), 25U);
  EXPECT_THROW((void)table.holds("strength", nothing, table.figures()), std::logic_error);
}

}  // namespace
}  // namespace outyard::strength

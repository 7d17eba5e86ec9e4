// SPDX-License-Identifier: GPL-3.0-or-later
// The rules in words.
#include "core/planning/due_rules.h"

namespace outyard::planning {
namespace {

using base::message;

std::string_view sourceOf(std::string_view code) {
  const DueRule* rule = findDueRule(code);
  return rule ? rule->source : std::string_view("common practice, no source");
}

}  // namespace

std::vector<DueRuleText> dueRuleTexts() {
  std::vector<DueRuleText> out;
  const auto add = [&](std::string_view code, base::Message name, base::Message needs,
                       base::Message window, base::Message caution) {
    out.push_back({code, std::move(name), std::move(needs), std::move(window), std::move(caution),
                   sourceOf(code)});
  };
  add("treat_off", message("planning.due.rule.treat_off.name"),
      message("planning.due.rule.treat_off.needs"), message("planning.due.rule.treat_off.window"),
      message("planning.due.rule.treat_off.caution"));
  add("treat", message("planning.due.rule.treat.name"), message("planning.due.rule.treat.needs"),
      message("planning.due.rule.treat.window"), message("planning.due.rule.treat.caution"));
  add("queen_check", message("planning.due.rule.queen_check.name"),
      message("planning.due.rule.queen_check.needs"),
      message("planning.due.rule.queen_check.window"),
      message("planning.due.rule.queen_check.caution"));
  add("paper", message("planning.due.rule.paper.name"), message("planning.due.rule.paper.needs"),
      message("planning.due.rule.paper.window"), base::Message{});
  add("stack_look", message("planning.due.rule.stack_look.name"),
      message("planning.due.rule.stack_look.needs"), message("planning.due.rule.stack_look.window"),
      message("planning.due.rule.stack_look.caution"));
  add("separate", message("planning.due.rule.separate.name"),
      message("planning.due.rule.separate.needs"), message("planning.due.rule.separate.window"),
      message("planning.due.rule.separate.caution"));
  add("own_stand", message("planning.due.rule.own_stand.name"),
      message("planning.due.rule.own_stand.needs"), message("planning.due.rule.own_stand.window"),
      base::Message{});
  add("stores_out", message("planning.due.rule.stores_out.name"),
      message("planning.due.rule.stores_out.needs"), message("planning.due.rule.stores_out.window"),
      message("planning.due.rule.stores_out.caution"));
  add("feed", message("planning.due.rule.feed.name"), message("planning.due.rule.feed.needs"),
      message("planning.due.rule.feed.window"), message("planning.due.rule.feed.caution"));
  add("swarm", message("planning.due.rule.swarm.name"), message("planning.due.rule.swarm.needs"),
      message("planning.due.rule.swarm.window"), message("planning.due.rule.swarm.caution"));
  add("add_box", message("planning.due.rule.add_box.name"),
      message("planning.due.rule.add_box.needs"), message("planning.due.rule.add_box.window"),
      message("planning.due.rule.add_box.caution"));
  add("no_room", message("planning.due.rule.no_room.name"),
      message("planning.due.rule.no_room.needs"), message("planning.due.rule.no_room.window"),
      message("planning.due.rule.no_room.caution"));
  add("reverse", message("planning.due.rule.reverse.name"),
      message("planning.due.rule.reverse.needs"), message("planning.due.rule.reverse.window"),
      message("planning.due.rule.reverse.caution"));
  add("split", message("planning.due.rule.split.name"), message("planning.due.rule.split.needs"),
      message("planning.due.rule.split.window"), message("planning.due.rule.split.caution"));
  add("wash", message("planning.due.rule.wash.name"), message("planning.due.rule.wash.needs"),
      message("planning.due.rule.wash.window"), message("planning.due.rule.wash.caution"));
  add("take_off", message("planning.due.rule.take_off.name"),
      message("planning.due.rule.take_off.needs"), message("planning.due.rule.take_off.window"),
      message("planning.due.rule.take_off.caution"));
  add("unwrap", message("planning.due.rule.unwrap.name"), message("planning.due.rule.unwrap.needs"),
      message("planning.due.rule.unwrap.window"), base::Message{});
  add("wrap", message("planning.due.rule.wrap.name"), message("planning.due.rule.wrap.needs"),
      message("planning.due.rule.wrap.window"), message("planning.due.rule.wrap.caution"));
  add("open", message("planning.due.rule.open.name"), message("planning.due.rule.open.needs"),
      message("planning.due.rule.open.window"), message("planning.due.rule.open.caution"));
  add("inspector", message("planning.due.rule.inspector.name"),
      message("planning.due.rule.inspector.needs"), message("planning.due.rule.inspector.window"),
      message("planning.due.rule.inspector.caution"));
  add("clear_dead", message("planning.due.rule.clear_dead.name"),
      message("planning.due.rule.clear_dead.needs"), message("planning.due.rule.clear_dead.window"),
      message("planning.due.rule.clear_dead.caution"));
  return out;
}

base::Message dueName(const DueTask& due) {
  if (due.rule != "planned") {
    static const std::vector<DueRuleText> kTexts = dueRuleTexts();
    for (const DueRuleText& t : kTexts) {
      if (t.code == due.rule) return t.name;
    }
  }
  if (due.kind == "open") return message("planning.due.kind.open");
  if (due.kind == "look") return message("planning.due.kind.look");
  if (!apiary::parseCode<apiary::EventKind>(due.kind)) {
    return message("planning.due.kind.other", due.kind);
  }
  base::Message m;  // the name of a kind of record, in the catalogue of codes
  m.key = "code.event.";
  m.key += due.kind;
  return m;
}

}  // namespace outyard::planning

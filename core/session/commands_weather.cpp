// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Flow;
using apiary::WeatherDay;
using apiary::WeatherKind;
using base::message;

namespace {

template <class T>
std::string keyOf(const T& row) {
  return apiary::rowKey(apiary::toRow(row));
}

void checkFlow(Checker& c, const Flow& flow) {
  if (!c.yard(flow.yard)) return;
  c.row(flow);
  if (!flow.nectar && !flow.pollen) {
    c.fault(message("session.flow_empty", flow.fromDay, flow.toDay));
  }
}

}  // namespace

CommandPtr editFlow(std::optional<Flow> old, Flow flow) {
  return verb(
      message("session.title.flow", flow.yard.str()), std::nullopt,
      [=](Checker& c) {
        checkFlow(c, flow);
        if (old && !c.season().find<Flow>(keyOf(*old))) {
          c.fault(message("session.unknown_flow", old->yard.str(), old->fromDay, old->toDay));
        }
        const bool moved = !old || keyOf(*old) != keyOf(flow);
        if (moved && c.season().find<Flow>(keyOf(flow))) {
          c.fault(message("session.flow_exists", flow.yard.str(), flow.fromDay, flow.toDay));
        }
      },
      [=](ChangeBuilder& b) {
        if (old && keyOf(*old) != keyOf(flow)) b.remove<Flow>(keyOf(*old));
        b.put(flow);
      });
}

CommandPtr removeFlow(Flow flow) {
  return verb(
      message("session.title.flow", flow.yard.str()), std::nullopt,
      [=](Checker& c) {
        if (!c.season().find<Flow>(keyOf(flow))) {
          c.fault(message("session.unknown_flow", flow.yard.str(), flow.fromDay, flow.toDay));
        }
      },
      [=](ChangeBuilder& b) { b.remove<Flow>(keyOf(flow)); });
}

CommandPtr setFlows(std::vector<YardId> yards, std::vector<Flow> flows) {
  return verb(
      yards.size() == 1 ? message("session.title.flow", yards.front().str())
                        : message("session.title.flows", yards.size()),
      std::nullopt,
      [=](Checker& c) {
        std::set<std::pair<int, int>> seen;
        for (const Flow& f : flows) {
          if (!seen.emplace(f.fromDay, f.toDay).second) {
            c.fault(message("session.flow_exists", f.yard.str(), f.fromDay, f.toDay));
          }
        }
        for (const YardId& yard : yards) {
          for (Flow f : flows) {
            f.yard = yard;
            checkFlow(c, f);
          }
          if (flows.empty()) c.yard(yard);
        }
      },
      [=](ChangeBuilder& b) {
        const std::set<YardId> all(yards.begin(), yards.end());
        std::set<std::string> kept;
        for (const YardId& yard : all) {
          for (Flow f : flows) {
            f.yard = yard;
            kept.insert(keyOf(f));
            b.put(f);
          }
        }
        for (const auto& [key, f] : b.before().table<Flow>()) {
          if (all.contains(f.yard) && !kept.contains(key)) b.remove<Flow>(key);
        }
      });
}

CommandPtr recordWeather(std::vector<WeatherDay> days) {
  return verb(
      days.size() == 1
          ? message("session.title.weather_day", days.front().yard.str(), days.front().date.iso())
          : message("session.title.weather", days.size()),
      std::nullopt,
      [=](Checker& c) {
        for (const WeatherDay& w : days) {
          if (!c.yard(w.yard)) continue;
          c.row(w);
          if (w.kind == WeatherKind::Forecast && !w.issued) {
            c.fault(message("session.weather_issued", w.date.iso()));
          } else if (w.issued && *w.issued > w.date) {
            c.fault(message("session.weather_issued_late", w.issued->iso(), w.date.iso()));
          }
        }
      },
      [=](ChangeBuilder& b) {
        for (const WeatherDay& w : days) b.put(w);
      });
}

CommandPtr removeWeather(std::vector<WeatherDay> days) {
  return verb(
      days.size() == 1
          ? message("session.title.weather_day", days.front().yard.str(), days.front().date.iso())
          : message("session.title.weather", days.size()),
      std::nullopt,
      [=](Checker& c) {
        for (const WeatherDay& w : days) {
          if (c.season().find<WeatherDay>(keyOf(w))) continue;
          c.fault(message("session.unknown_weather", w.yard.str(), w.date.iso()));
        }
      },
      [=](ChangeBuilder& b) {
        for (const WeatherDay& w : days) b.remove<WeatherDay>(keyOf(w));
      });
}

}  // namespace outyard::session

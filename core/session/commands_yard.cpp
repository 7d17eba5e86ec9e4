// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/session/commands.h"
#include "core/session/verb.h"

namespace outyard::session {

using apiary::Feature;
using apiary::Hive;
using apiary::Stand;
using apiary::Yard;
using base::message;

namespace {

template <class T>
std::string keyOf(const T& row) {
  return apiary::rowKey(apiary::toRow(row));
}

/// Nothing of the drawing: a yard's plain rows have no history, a change replaces the row.
template <class T>
CommandPtr putRow(base::Message title, T row, std::function<void(Checker&, const T&)> check) {
  return verb(
      std::move(title), std::nullopt,
      [row, check](Checker& c) {
        check(c, row);
        c.row(row);
      },
      [row](ChangeBuilder& b) { b.put(row); });
}

}  // namespace

CommandPtr addYard(Yard yard) {
  return putRow<Yard>(message("session.title.add_yard", yard.yard.str()), yard,
                      [](Checker& c, const Yard& y) {
                        c.name(y.yard.str());
                        if (c.season().yard(y.yard)) {
                          c.fault(message("session.yard_exists", y.yard.str()));
                        }
                      });
}

CommandPtr editYard(Yard yard) {
  return putRow<Yard>(message("session.title.edit_yard", yard.yard.str()), yard,
                      [](Checker& c, const Yard& y) { c.yard(y.yard); });
}

CommandPtr addStand(Stand stand) {
  return putRow<Stand>(message("session.title.add_stand", stand.stand, stand.yard.str()), stand,
                       [](Checker& c, const Stand& s) {
                         c.name(s.stand);
                         c.yard(s.yard);
                         if (c.season().find<Stand>(keyOf(s))) {
                           c.fault(message("session.stand_exists", s.stand, s.yard.str()));
                         }
                       });
}

CommandPtr editStand(Stand stand) {
  return putRow<Stand>(message("session.title.edit_stand", stand.stand, stand.yard.str()), stand,
                       [](Checker& c, const Stand& s) {
                         if (c.yard(s.yard) && !c.season().find<Stand>(keyOf(s))) {
                           c.fault(message("session.unknown_stand", s.stand, s.yard.str()));
                         }
                       });
}

CommandPtr removeStand(YardId yard, std::string stand) {
  Stand probe;
  probe.stand = stand;
  probe.yard = yard;
  const std::string key = keyOf(probe);
  return verb(
      message("session.title.remove_stand", stand, yard.str()), std::nullopt,
      [=](Checker& c) {
        if (!c.yard(yard)) return;
        if (!c.season().find<Stand>(key)) {
          return c.fault(message("session.unknown_stand", stand, yard.str()));
        }
        for (const auto& [id, hive] : c.season().table<Hive>()) {
          if (hive.yard == yard && hive.stand == stand) {
            return c.fault(message("session.stand_in_use", stand, yard.str(), id));
          }
        }
      },
      [key](ChangeBuilder& b) { b.remove<Stand>(key); });
}

CommandPtr addFeature(Feature feature) {
  return putRow<Feature>(message("session.title.add_feature", feature.feature), feature,
                         [](Checker& c, const Feature& f) {
                           c.name(f.feature);
                           c.yard(f.yard);
                           if (c.season().find<Feature>(f.feature)) {
                             c.fault(message("session.feature_exists", f.feature));
                           }
                         });
}

CommandPtr editFeature(Feature feature) {
  return putRow<Feature>(message("session.title.edit_feature", feature.feature), feature,
                         [](Checker& c, const Feature& f) {
                           c.yard(f.yard);
                           if (!c.season().find<Feature>(f.feature)) {
                             c.fault(message("session.unknown_feature", f.feature));
                           }
                         });
}

CommandPtr removeFeature(std::string feature) {
  return verb(
      message("session.title.remove_feature", feature), std::nullopt,
      [feature](Checker& c) {
        if (!c.season().find<Feature>(feature)) {
          c.fault(message("session.unknown_feature", feature));
        }
      },
      [feature](ChangeBuilder& b) { b.remove<Feature>(feature); });
}

CommandPtr editHiveNotes(HiveId hive, std::string notes) {
  return verb(
      message("session.title.hive_notes", hive.str()), std::nullopt,
      [=](Checker& c) {
        if (!c.hive(hive)) return;
        Hive row = *c.season().hive(hive);
        row.notes = notes;
        c.row(row);
      },
      [=](ChangeBuilder& b) {
        Hive row = b.find<Hive>(hive.str()).value();
        row.notes = notes;
        b.put(row);
      });
}

}  // namespace outyard::session

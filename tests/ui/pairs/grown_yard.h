// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "tests/support/season_builder.h"

/// Invented yards of any size for the tests of Pairs: rows of stands, every third colony small.
namespace outyard::tests {

struct YardWish {
  int hives = 10;
  bool cold = false;       ///< a cold week from the day on, warm again after it
  bool donors = true;      ///< false: nobody has more than five seams
  bool foulBrood = false;  ///< the last hive was seen with a sign of foul brood
  int excluders = -1;      ///< counted in the shed; -1 = never counted
  bool gear = true;        ///< false: everything was counted, and nothing is left
};

inline constexpr const char* kYardDay = "2026-04-25";

class GrownYard : public SeasonBuilder {
 public:
  explicit GrownYard(const YardWish& wish) {
    yard("TR");
    apiary::Flow pollen;
    pollen.yard = base::YardId("TR");
    pollen.fromDay = 85;
    pollen.toDay = 273;
    pollen.pollen = 2;
    put(pollen);
    for (int i = 0; i < wish.hives; ++i) {
      const std::string name = "TR-" + std::string(i < 9 ? "0" : "") + std::to_string(i + 1);
      const bool weak = i % 3 == 0;
      livingHive(name, "TR", 2.0 + 3.0 * (i % 12), 2.0 + 3.5 * (i / 12), weak ? 1 : 2);
      inspection(name, "2026-04-22", [&](apiary::Inspection& look) {
        look.seams = weak ? 1.5 + 0.5 * (i % 4) : wish.donors ? 8.0 + 0.5 * (i % 5) : 5.0;
        look.eggsSeen = i != 4;
        look.queenSeen = i == 4 ? std::optional(false) : std::nullopt;
        look.pattern = 5;
        look.framesWithBrood = i == 4 ? 0 : weak ? 2 : wish.donors ? 6 + i % 3 : 4;
        look.sealedBroodFrames = i == 4 ? 0 : weak ? 0.3 : wish.donors ? 2.2 : 1.2;
        look.openBroodFrames = i == 4 ? 0 : weak ? 0.25 : wish.donors ? 1.2 : 0.8;
        look.queenCells = 0;
        look.honeyKg = weak ? 7 : 13;
        if (wish.foulBrood && i == wish.hives - 1) look.disease = apiary::Disease::SuspectAfb;
      });
    }
    for (int n = 0; n < 16; ++n) {
      apiary::WeatherDay w;
      w.yard = base::YardId("TR");
      w.date = day(kYardDay).plusDays(n);
      const bool cold = wish.cold && n < 6;
      w.tminC = cold ? -4 : 6;
      w.tmaxC = cold ? 6 : 17;
      w.kind = apiary::WeatherKind::Forecast;
      w.issued = day(kYardDay);
      put(w);
    }
    if (wish.excluders >= 0) count("excluder", wish.excluders);
    if (!wish.gear) {
      for (const char* item : {"excluder", "paper", "feeder", "chamber:langstroth_deep",
                               "drawn_comb:langstroth_deep"}) {
        count(item, 0);
      }
    }
  }

 private:
  void count(const char* item, double number) {
    apiary::GearCount g;
    g.item = item;
    g.place = "shed";
    g.date = day("2026-04-20");
    g.count = number;
    put(g);
  }
};

}  // namespace outyard::tests

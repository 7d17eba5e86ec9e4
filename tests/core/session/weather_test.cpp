// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/session/commands_fixture.h"

namespace outyard::session {
namespace {

using apiary::Flow;
using apiary::WeatherDay;
using apiary::WeatherKind;
using testing::ElementsAre;

Flow flow(int from, int to, double nectar) {
  Flow f;
  f.yard = YardId{"TR"};
  f.fromDay = from;
  f.toDay = to;
  f.nectar = nectar;
  return f;
}

struct WeatherVerbs : CommandsTest {
  WeatherDay weather(Date date, WeatherKind kind) const {
    WeatherDay w;
    w.yard = YardId{"TR"};
    w.date = date;
    w.tminC = 3;
    w.tmaxC = 14;
    w.kind = kind;
    return w;
  }
};

TEST_F(WeatherVerbs, FlowsAreAddedChangedAndTakenOut) {
  const std::size_t before = season().table<Flow>().size();
  mustDo(editFlow(std::nullopt, flow(101, 120, 1)));
  EXPECT_THAT(refused(editFlow(std::nullopt, flow(101, 120, 2))),
              ElementsAre("session.flow_exists"));
  mustDo(editFlow(flow(101, 120, 1), flow(101, 125, 2)));
  EXPECT_EQ(season().table<Flow>().size(), before + 1);
  EXPECT_THAT(refused(editFlow(flow(101, 120, 1), flow(90, 91, 1))),
              ElementsAre("session.unknown_flow"));
  EXPECT_FALSE(refused(editFlow(std::nullopt, flow(130, 140, 4))).empty());
  Flow nothing = flow(130, 140, 0);
  nothing.nectar.reset();
  EXPECT_THAT(refused(editFlow(std::nullopt, nothing)), ElementsAre("session.flow_empty"));
  mustDo(editFlow(std::nullopt, flow(350, 20, 1)));  // over New Year
  mustDo(removeFlow(flow(101, 125, 2)));
  EXPECT_THAT(refused(removeFlow(flow(101, 125, 2))), ElementsAre("session.unknown_flow"));
}

TEST_F(WeatherVerbs, AWholeCalendarIsOneStep) {
  mustDo(editFlow(std::nullopt, flow(101, 120, 1)));
  mustDo(setFlows({YardId{"TR"}}, {flow(110, 120, 1), flow(121, 140, 3)}));
  EXPECT_EQ(season().table<Flow>().size(), 2u);
  ASSERT_TRUE(session->undo().ok());
  EXPECT_EQ(season().table<Flow>().size(), 1u);
  ASSERT_TRUE(session->redo().ok());
  EXPECT_THAT(refused(setFlows({YardId{"TR"}}, {flow(1, 2, 1), flow(1, 2, 2)})),
              ElementsAre("session.flow_exists"));
  EXPECT_FALSE(refused(setFlows({YardId{"ZZ"}}, {})).empty());
  mustDo(setFlows({YardId{"TR"}}, {}));
  EXPECT_TRUE(season().table<Flow>().empty());
}

TEST_F(WeatherVerbs, ForecastsNameTheirDayOfIssue) {
  mustDo(recordWeather({weather(d, WeatherKind::Observed)}));
  auto ahead = weather(d.plusDays(3), WeatherKind::Forecast);
  EXPECT_THAT(refused(recordWeather({ahead})), ElementsAre("session.weather_issued"));
  ahead.issued = d.plusDays(4);
  EXPECT_THAT(refused(recordWeather({ahead})), ElementsAre("session.weather_issued_late"));
  ahead.issued = d;
  mustDo(recordWeather({ahead}));
  auto upside = weather(d, WeatherKind::Observed);
  upside.tminC = 20;
  EXPECT_FALSE(refused(recordWeather({upside})).empty());
  upside.tminC = -61;
  EXPECT_FALSE(refused(recordWeather({upside})).empty());
  mustDo(removeWeather({ahead}));
  EXPECT_THAT(refused(removeWeather({ahead})), ElementsAre("session.unknown_weather"));
}

}  // namespace
}  // namespace outyard::session

# SPDX-License-Identifier: GPL-3.0-or-later
"""Invented weather of a cold-winter climate at about 45 degrees north."""
import math
from datetime import date, timedelta

from chance import Chance

FIRST, LAST = date(2025, 9, 1), date(2026, 4, 25)

# What spring did, day by day, in the lower yards: highest of the day and rain. The rounds of the
# journal fall on its warm days.
SPRING_FROM = date(2026, 3, 24)
SPRING_MAX = [8, 10, 9, 6, 5, 9, 11, 10,  # 24 to 31 March
              7, 9, 11, 12, 8, 6, 9, 12, 13, 14, 16, 13, 9, 7, 10,  # 1 to 15 April
              16, 17, 18, 14.5, 15, 17, 18.5, 18, 16, 15.6]  # 16 to 25 April
SPRING_RAIN = {date(2026, 3, 27): 6.2, date(2026, 3, 28): 3.4, date(2026, 4, 1): 1.8,
               date(2026, 4, 6): 7.6, date(2026, 4, 7): 2.2, date(2026, 4, 13): 4.8,
               date(2026, 4, 14): 9.4, date(2026, 4, 19): 0.6}
# Tomorrow and the six days after it, as forecast on the evening of the last day.
FORECAST = [(3.5, 11.5, 4.2, 5.5), (2, 12.5, 0.8, 4), (3, 15.5, 0, 3), (5, 17, 0, 2.5),
            (6.5, 18.5, 0, 2.5), (7, 17, 1.2, 3.5), (5.5, 15, 3, 4.5)]


def normal_max(day):
    """Mean daily maximum: coldest in the third week of January, warmest in the third of July."""
    return 11.5 - 16.5 * math.cos(2 * math.pi * (day.timetuple().tm_yday - 20) / 365.25)


def normal_spread(day):
    return 11 + 1.5 * math.sin(2 * math.pi * (day.timetuple().tm_yday - 100) / 365.25)


def region():
    """Day -> (min, max, rain, wind, sun) of the lower ground."""
    chance = Chance("weather")
    out, swing, day = {}, 0.0, FIRST
    while day <= LAST:
        swing = 0.72 * swing + 2.9 * chance.normal()
        high = normal_max(day) + swing
        wet = chance.yes(0.3)
        rain = round(chance.between(0.4, 3) * chance.between(0.6, 4), 1) if wet else 0.0
        low = high - normal_spread(day) * chance.between(0.6, 1.1) * (0.7 if wet else 1)
        if day >= SPRING_FROM:
            high = SPRING_MAX[(day - SPRING_FROM).days]
            rain = SPRING_RAIN.get(day, 0.0)
            low = max(high - (6 if rain else chance.between(9, 11.5)), -3.5)
        wind = chance.between(1.2, 4.2) + (1.6 if rain else 0)
        sun = max(0.0, chance.between(0.2, 0.8) * (12 + 3 * math.sin(
            2 * math.pi * (day.timetuple().tm_yday - 80) / 365.25)) * (0.35 if rain else 1))
        out[day] = (low, high, rain, wind, sun)
        day += timedelta(days=1)
    return out


def add_weather(tables, yards):
    """Observed up to the working date, seven days of forecast, and normals for every yard.
    Returns (yard, day) -> highest of the day."""
    highest = {}
    base = region()
    for yard in yards:
        chance = Chance("weather", yard.code)
        for day, (low, high, rain, wind, sun) in base.items():
            low = round(low + yard.warmer + 0.6 * chance.normal(), 1)
            high = round(high + yard.warmer + 0.4 * chance.normal(), 1)
            high = max(high, low + 1.5)
            highest[yard.code, day] = high
            tables.add("weather", yard=yard.code, date=day, tmin_c=low, tmax_c=round(high, 1),
                       rain_mm=round(rain * chance.between(0.8, 1.2), 1), kind="observed",
                       wind_ms=round(wind, 1), sun_h=round(sun, 1))
        for ahead, (low, high, rain, wind) in enumerate(FORECAST, start=1):
            day = LAST + timedelta(days=ahead)
            tables.add("weather", yard=yard.code, date=day, tmin_c=round(low + yard.warmer / 2, 1),
                       tmax_c=round(high + yard.warmer, 1), rain_mm=float(rain), kind="forecast",
                       issued=LAST, wind_ms=float(wind))
        day = date(2025, 1, 1)
        while day.year == 2025:
            high = normal_max(day) + yard.warmer
            tables.add("weather", yard=yard.code, date=day,
                       tmin_c=round(high - 0.87 * normal_spread(day), 1), tmax_c=round(high, 1),
                       rain_mm=1.6 if 105 < day.timetuple().tm_yday < 260 else 1.0, kind="normal")
            day += timedelta(days=1)
    return highest

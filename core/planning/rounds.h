// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/planning/due.h"

/// Rounds: which yards to drive to on which day, in which order, with what on the truck.
namespace outyard::planning {

/// Figures of the rounds; a setting of the name in roundFigureTable replaces the shipped value.
struct RoundFigures {
  double dayHours = 8;       ///< working hours of a day, drive included
  double people = 2;         ///< hands; the work at the hives is shared, the drive is not
  double speedKmh = 45;      ///< of the loaded truck
  double roadFactor = 1.35;  ///< road to straight line
  double yardMinutes = 20;   ///< gate, smoker, sheet, tidying up
  double unknownKm = 15;     ///< between yards of which one has no place
  double most = 4;           ///< yards a day
  double truckKg = 900;      ///< load that the truck carries
  double homeLatitude = 0, homeLongitude = 0;  ///< both 0: the tour is open, without a home
  double least = 0.5;      ///< certain pieces of work that make a visit worth it
  double kmWorth = 40;     ///< km of driving that a certain piece of work is worth
  double coldShare = 0.3;  ///< of its worth, when the day is too cold or wet for the work
};
struct RoundFigure {
  std::string_view name;  ///< of the setting
  double RoundFigures::*member;
  double min, max;
  std::string_view unit, source;
};
std::span<const RoundFigure> roundFigureTable();
RoundFigures roundFigures(const apiary::Season& season, std::vector<base::Message>& notes);

/// One thing to load, with what is at hand.
struct RoundItem {
  std::string
      item;  ///< gear item ("excluder", "super:langstroth_medium"), or feed: "syrup_1_1", ...
  double needed = 0;
  std::optional<apiary::Unit> unit;  ///< nullopt = pieces
  std::optional<double> atHand;      ///< nullopt = never counted: taken as enough, and said so
  std::optional<double> kg;          ///< weight of what is needed; nullopt = not known
  std::optional<double> sugarKg;     ///< sugar in the feed
  [[nodiscard]] double missing() const;
};
struct RoundLoad {
  std::vector<RoundItem> items;
  double kg = 0;          ///< of what has a weight
  bool tooHeavy = false;  ///< over what the truck carries
  std::vector<base::Message> cautions;
};

struct RoundStop {
  base::YardId yard;
  std::vector<std::size_t> tasks;      ///< indices into DueList::tasks
  double workHours = 0;                ///< there, for all hands
  double driveKm = 0, driveHours = 0;  ///< to it from the stop before (or from home)
  std::vector<base::Message> why;      ///< what makes it the day: the tasks that press
};
struct RoundDay {
  base::Date date;
  std::vector<RoundStop> stops;  ///< in the order of driving
  double driveKm = 0;            ///< with the way home
  double hours = 0;              ///< work and drive
  RoundLoad load;
};
struct RoundsPlan {
  std::vector<RoundDay> days;     ///< those with a stop, by date
  std::vector<std::size_t> left;  ///< tasks that no day could take, and why in notes
  std::vector<base::Message> notes;
};

/// Visits proposed for the tasks of a list between its two days. Each yard is visited once for the
/// tasks whose windows a day can serve together (chosen with the most chance served for the least
/// drive), days warm enough first; the order of a day's yards is the shortest of all orders.
/// `kept` are days and yards that stand (visits already made by hand): they are filled first.
RoundsPlan proposeRounds(const apiary::Season& season, const DueList& due,
                         const RoundFigures& figures, const std::vector<apiary::Visit>& kept = {});

/// Hours of work in a yard for a set of tasks (shared by the hands; one hive is opened once).
double workHours(const DueList& due, const std::vector<std::size_t>& tasks,
                 const RoundFigures& figures);
/// What must be on the truck for tasks, against what is at hand in their yards, truck and shed.
RoundLoad loadOf(const apiary::Season& season, const DueList& due,
                 const std::vector<std::size_t>& tasks, base::Date date,
                 const RoundFigures& figures);
/// Orders a day's stops anew after one was added or moved by hand: shortest drive, hours, load.
RoundDay arrangedDay(const apiary::Season& season, const DueList& due, base::Date date,
                     std::vector<RoundStop> stops, const RoundFigures& figures);

/// Drive between two yards in km along roads (haversine times the road factor).
double driveKm(const apiary::Season& season, const base::YardId& a, const base::YardId& b,
               const RoundFigures& figures);

/// The shortest way through all places of a distance table. With `closed` it begins and ends at
/// place 0, else it begins and ends anywhere. Exact (Held and Karp 1962, J. SIAM 10:196) up to 13
/// places, beyond that the best of all nearest-neighbour starts bettered by exchanges of two edges.
struct Tour {
  std::vector<std::size_t> order;
  double km = 0;
  bool exact = true;
};
Tour shortestTour(const std::vector<std::vector<double>>& km, bool closed);

}  // namespace outyard::planning

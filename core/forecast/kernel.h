// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

/// The daily colony model as plain data and one function: many members of one colony's ensemble,
/// many days. Structure of arrays with the member innermost, float32, the same bits on every
/// vector width. A plain readable twin stands in tests/core/forecast/plain_twin.h.
///
/// State of a member: worker brood by age (3 egg, 6 open, 12 sealed days), house bees by age for
/// their first ten days, then a pool of older house bees, foragers, winter bees, honey and pollen,
/// mites on bees and in sealed brood. Cohorts of one stage share a day's survival, so a cohort is
/// kept divided by the running product of its stage's survival and a day costs a few operations
/// for each stage instead of one for each age.
namespace outyard::forecast {

inline constexpr int kBlock = 32;  ///< members are computed in blocks; weather scenarios alike
inline constexpr int kEggDays = 3, kOpenDays = 6, kSealedDays = 12, kYoungDays = 10;

/// Parameters that differ between members (figures and sources: resources/parameters.csv).
enum class Param : int {
  QueenPotential,  ///< eggs a day at the height of the season
  CoverCells,      ///< cells that a bee of a large warm cluster keeps warm
  CoverShell,      ///< factor on the depth of the cold shell
  CareCeiling,     ///< brood cells that a nurse-equivalent rears
  FillDays,        ///< days over which gaps in the nest are filled
  EggSurvival,
  OpenSurvival,
  SealedSurvival,  ///< a day
  HouseDeath,
  WinterDeath,       ///< a day
  ForagerHourDeath,  ///< per hour flown
  ForagerDayDeath,   ///< a day, flown or not
  RecruitMost,
  RecruitSlope,  ///< house bees turning foragers a day = most - slope * F / N
  RecruitYoung,  ///< share of that rate which young bees follow (0; 1 = age-free)
  Income,        ///< factor on nectar brought
  Use,           ///< factor on stores eaten
  NestCells,     ///< cells of the chambers
  SuperCells,    ///< cells of the supers
  MiteGrowth,    ///< factor on the daughters of a mite
  Immigration,   ///< mites a day in the robbing season
  SwarmDraw,
  FailDraw,        ///< cumulated hazard at which it happens (exponential draws)
  RequeenSuccess,  ///< uniform draw; below the chance a new queen comes to lay
  KeeperFeeds,     ///< kg of stores below which the keeper feeds (0 = never)
  KeeperTreats,    ///< mites a bee above which the keeper treats (none in the journal)
  NoiseLay,
  NoiseLife,     ///< size of the daily model error on laying and on adult death
  EclosionHalf,  ///< above 0: eggs = potential * N / (half + N), nothing else limits
  Count
};
inline constexpr int kParams = static_cast<int>(Param::Count);

/// What the day brings, for each weather scenario.
enum class Driver : int {
  Lay,      ///< season's share of the queen's potential, 0 to 1
  Shell,    ///< depth of the cold shell, in units of the cube root of bees
  Hours,    ///< hours flown by a forager
  Nectar,   ///< kg that a forager brings
  Pollen,   ///< kg of pollen that a forager brings
  Winter,   ///< share of emerging bees that become winter bees
  Release,  ///< share of winter bees that turn foragers
  Rest,     ///< 1 = a resting winter cluster's use of stores, 0 = summer use
  Heat,     ///< factor on stores used to warm brood
  Swarm,    ///< swarm hazard of a crowded nest, a day
  Robbing,  ///< 1 in the season when mites come in from outside
  Count
};
inline constexpr int kDrivers = static_cast<int>(Driver::Count);

/// [day][driver][kBlock scenarios]
struct Drivers {
  int days = 0;
  std::vector<float> values;
  [[nodiscard]] const float* at(int day, Driver d) const {
    return values.data() +
           (static_cast<std::size_t>(day) * kDrivers + static_cast<std::size_t>(d)) * kBlock;
  }
  float* at(int day, Driver d) {
    return const_cast<float*>(static_cast<const Drivers*>(this)->at(day, d));
  }
};

/// State variables in order; rings are in order of age (0 = youngest) whenever an Ensemble is at
/// rest (between runs).
namespace state {
inline constexpr int kEgg = 0;
inline constexpr int kOpen = kEgg + kEggDays;
inline constexpr int kSealed = kOpen + kOpenDays;
inline constexpr int kYoung = kSealed + kSealedDays;
inline constexpr int kOlder = kYoung + kYoungDays;  ///< house bees past their tenth day
inline constexpr int kForagers = kOlder + 1;
inline constexpr int kWinter = kForagers + 1;
inline constexpr int kHoney = kWinter + 1;     ///< kg
inline constexpr int kPollen = kHoney + 1;     ///< kg
inline constexpr int kMites = kPollen + 1;     ///< on bees
inline constexpr int kMiteCells = kMites + 1;  ///< in sealed brood, by age, kSealedDays of them
inline constexpr int kRidden = kMiteCells + kSealedDays;  ///< mites a bee, mean of past weeks
inline constexpr int kQueenless = kRidden + 1;            ///< days until a queen lays; < 0 never
inline constexpr int kSwarmHazard = kQueenless + 1;
inline constexpr int kFailHazard = kSwarmHazard + 1;
inline constexpr int kErrorLay = kFailHazard + 1;  ///< slow model error, standard deviation 1
inline constexpr int kErrorLife = kErrorLay + 1;
inline constexpr int kCount = kErrorLife + 1;
}  // namespace state

/// The members of one colony. members is a multiple of kBlock.
struct Ensemble {
  int members = 0;
  std::vector<float> params;          ///< [kParams][members]
  std::vector<float> values;          ///< [state::kCount][members]
  std::vector<std::uint32_t> random;  ///< [members], none zero
  explicit Ensemble(int count = 0);
  float* param(Param p) { return params.data() + static_cast<int>(p) * members; }
  [[nodiscard]] const float* param(Param p) const {
    return params.data() + static_cast<int>(p) * members;
  }
  float* value(int v) { return values.data() + v * members; }
  [[nodiscard]] const float* value(int v) const { return values.data() + v * members; }
};

/// Which figures a run hands out for each asked day.
enum class Out : int { Bees, Foragers, Eggs, Open, Sealed, Honey, Mites, Count };
inline constexpr int kOuts = static_cast<int>(Out::Count);
/// [asked day][kOuts][members]
struct Outputs {
  int members = 0;
  std::vector<float> values;
  [[nodiscard]] const float* at(int asked, Out o) const {
    return values.data() + (static_cast<std::size_t>(asked) * kOuts + static_cast<std::size_t>(o)) *
                               static_cast<std::size_t>(members);
  }
};

/// Runs days [from, to) of the drivers on the ensemble in place; after each day whose index + 1
/// stands in asked (ascending), writes the figures.
void runDays(Ensemble& ensemble, const Drivers& drivers, int from, int to,
             std::span<const int> asked, Outputs& out);

/// Names of the vector paths that this processor has, the widest first ("avx512", "avx2",
/// "baseline"), and the one that runDays uses.
std::vector<std::string_view> availablePaths();
std::string_view pathInUse();
/// For tests and benchmarks: take a path by name; false when the processor lacks it.
bool usePath(std::string_view name);

}  // namespace outyard::forecast

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/apiary/state.h"
#include "core/strength/frame_table.h"

namespace outyard::strength {

/// A number with its error: log-normal, median and central 80 % band.
struct Estimate {
  double median = 0, low = 0, high = 0;
  double sigmaLog = 0;  ///< standard deviation of the logarithm; 0 for an exact zero
  static Estimate fromMedian(double median, double sigmaLog);
};
/// Independent looks at one quantity combined by precision on the log scale.
Estimate combined(const std::vector<Estimate>& looks);

/// Looks of one reader at one inspection: as combined, but what she over-reads she over-reads
/// every time, so the error never falls below kSameReaderSigma; looks that disagree by more than
/// their errors widen it (ratio of Birge). A look of nought beside others counts as a tenth of the
/// unit handed in.
Estimate combinedSameReader(std::vector<Estimate> looks, double unit, double sameReaderSigma);
Estimate combinedSameReader(std::vector<Estimate> looks, double unit);
/// Readers of the same colony on the same day differ by up to 15 % for good (Bartlett et al. 2024,
/// open data of their trials).
inline constexpr double kSameReaderSigma = 0.08;

/// Named figures of the estimates, with their sources.
inline constexpr double kSidesBeesSigma = 0.10;   ///< 5 to 15 % a reader, Bartlett et al. 2024
inline constexpr double kSidesBroodSigma = 0.16;  ///< 13 to 19 %, the same
inline constexpr double kSidesEggsSigma = 0.25;   ///< eggs are easily missed: our assumption
inline constexpr double kFullFramesSigma = 0.18;  ///< 15 to 20 %: 2,000 to 2,430 bees a full frame
/// Share of a frame called "full of brood" that is brood: 0.75 to 0.85, common practice, no source
/// (corners hold stores, some cells are empty). Sides in per cent or eighths need no such share.
inline constexpr double kFrameOfBroodFill = 0.80;
/// A lid lifted and "looks about right": half as much or half as many again. Added to the error of
/// the seams, our assumption.
inline constexpr double kGlanceSigma = 0.40;
/// Counted in flying hours (10:00 to 17:00, 13 C or more) a part of the field bees is out, more on
/// one day than on the other; exact counts are made before flight (Imdorf & Gerig, course text,
/// Liebefeld). Added to the error of a count from above, our assumption.
inline constexpr double kFlyingHoursSigma = 0.12;
/// A comb with any brood is about half covered with it: common practice, no source.
inline constexpr double kCombWithBroodCover = 0.50;

/// What an estimate was made from.
enum class Basis { CombSides, FullFrames, FramesWithBees, Seams, SeamsByBox, Weight, Summary };
}  // namespace outyard::strength

namespace outyard::apiary {
template <>
struct Codes<outyard::strength::Basis> {
  static constexpr std::array<std::string_view, 7> kText{
      "comb_sides",   "full_frames", "frames_with_bees", "seams",
      "seams_by_box", "weight",      "summary"};
};
}  // namespace outyard::apiary

namespace outyard::strength {

/// One way of seeing the bees with what it says on its own (for "seams say 9,000, frames say
/// 14,000").
struct Look {
  Basis basis = Basis::Seams;
  Estimate bees;
};

/// Strength of a colony as seen at one inspection. Quantities that nothing was recorded about are
/// empty. Bees are adults on the combs that a careful full count would read; cells are worker
/// cells.
struct StrengthEstimate {
  base::ColonyId colony;
  base::HiveId hive;
  base::Date seenOn;
  std::optional<Estimate> bees;
  std::vector<Look> looks;
  std::optional<Estimate> sealedCells, openCells, eggCells, broodCells;  ///< open = eggs + larvae
  std::optional<double> broodFrames;   ///< full frames, all stages
  std::optional<int> framesWithBrood;  ///< combs with any brood
  std::optional<Estimate> honeyKg;
  std::optional<double> seams;  ///< as counted, or worked out from the bees
  std::vector<Basis> basis;
  /// Sides were given, but not all: no total is made of them (what was not listed is unknown, not
  /// empty); this is what there is at least.
  bool sidesPartial = false;
  std::optional<double> beesAtLeast, broodCellsAtLeast, eggCellsAtLeast;
  /// Scale: the whole hive as weighed, and what of it is no stores with its standard deviation.
  std::optional<double> weighedKg, tareKg, tareSdKg;
  /// The named reader's fitted own / known count, taken out of full frames and comb sides.
  std::optional<double> readerBias;
  bool inFlyingHours = false;        ///< counted while field bees were out
  std::optional<double> droneShare;  ///< drone cells of all sealed brood on the sides given
};

/// From one inspection and its comb sides and seam counts.
StrengthEstimate estimateInspection(const apiary::Season& season,
                                    const apiary::Inspection& inspection);
/// Figures of the frames in which the colony's counts are meant: its lowest chamber at the day.
/// The flag tells whether boxes and their type are recorded; without, a Langstroth deep is taken.
struct MeantFrames {
  FrameFigures figures;
  bool known = false;
};
MeantFrames framesMeant(const apiary::Season& season, const apiary::HiveState& state,
                        const base::ColonyId& colony);
/// Inspections of the colony up to the day, oldest first, wherever it stood.
std::vector<const apiary::Inspection*> inspectionsOf(const apiary::Season& season,
                                                     const base::ColonyId& colony, base::Date day);
/// Seams that so many bees would show from above in cool air.
double seamsFromBees(double bees, const FrameFigures& figures);
/// Bees behind so many seams counted in cool air.
double beesFromSeams(double seams, const FrameFigures& figures);
/// From the last inspection of the colony up to the day; nullopt when it was never looked at.
std::optional<StrengthEstimate> estimateColony(const apiary::Season& season,
                                               const base::ColonyId& colony, base::Date day);

}  // namespace outyard::strength

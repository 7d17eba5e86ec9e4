// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/apiary/codes.h"
#include "core/base/date.h"
#include "core/base/ids.h"

/// The rows of the season: one struct for each exchange table, with its columns in the table's
/// order. An empty optional means "not recorded", never zero. Text columns are empty when not
/// recorded. Units stand in the names: kg, m, C (degrees Celsius), deg (clockwise from north).
namespace outyard::apiary {

using base::ColonyId;
using base::Date;
using base::HiveId;
using base::PlanId;
using base::QueenId;
using base::RecordId;
using base::SheetId;
using base::TaskId;
using base::TimeOfDay;
using base::VisitId;
using base::YardId;
template <class T>
using Opt = std::optional<T>;

/// The head of every journal record. A record is superseded at most once, by a row of its own
/// table; isVoid withdraws without replacing.
struct RecordHead {
  RecordId record;
  Opt<RecordId> supersedes;
  bool isVoid = false;
  std::string enteredAt;  ///< UTC, YYYY-MM-DDTHH:MM:SSZ, or empty
  bool operator==(const RecordHead&) const = default;
};

struct Yard {
  YardId yard;
  std::string name;
  Opt<double> latitude, longitude;  ///< degrees, WGS 84
  Opt<double> widthM, lengthM;      ///< of the drawn ground
  Opt<double> northDeg;             ///< where north points on the drawing; 0 = up
  Opt<double> elevationM;
  std::string access, notes;
  bool operator==(const Yard&) const = default;
};

/// A stand with its boxes. Yard, position, direction and stand say the place it has now; the
/// history of places stands in Place rows (both are written in one transaction).
struct Hive {
  HiveId hive;
  YardId yard;
  Opt<double> xM, yM;       ///< centre, from the yard's south-west corner, y to the drawing's top
  Opt<double> entranceDeg;  ///< clockwise from north
  std::string stand;
  Opt<HiveStatus> status;  ///< derived: never stored, filled on export, checked on import
  std::string notes;
  bool operator==(const Hive&) const = default;
};

struct Queen {
  QueenId queen;
  std::string line;
  Opt<int> year;
  std::string mother, origin;
  Opt<bool> marked, clipped;
  std::string notes;
  bool operator==(const Queen&) const = default;
};

/// One stay of a colony in a hive with a queen: fromDate <= day < toDate.
struct ColonyStay : RecordHead {
  ColonyId colony;
  HiveId hive;
  Opt<ColonyPlace> place;  ///< not given = main
  Opt<QueenId> queen;
  Opt<int> queenYear;
  std::string queenLine;
  Opt<bool> queenMarked;
  Date fromDate;
  Opt<Date> toDate;
  Opt<ColonyId> parentColony;
  Opt<ColonyOrigin> origin;
  bool operator==(const ColonyStay&) const = default;
};

/// One box; all rows of one hive and date are its whole stack from that date on.
struct Box : RecordHead {
  HiveId hive;
  Date date;
  int position = 1;       ///< 1 = bottom
  std::string frameType;  ///< key of a FrameType
  Opt<int> frames;
  Opt<BoxRole> role;     ///< not given = chamber
  Opt<ColonyId> colony;  ///< only where two share the hive
  Opt<Beneath> beneath;
  bool operator==(const Box&) const = default;
};

struct Inspection : RecordHead {
  HiveId hive;
  Opt<ColonyId> colony;
  Date date;
  Opt<TimeOfDay> time;
  Opt<double> airC;
  Opt<double> seams;  ///< counted seams of bees, quarters allowed
  Opt<SeamsView> seamsView;
  Opt<double> beeFrames;       ///< full frames of bees, both sides
  Opt<double> framesWithBees;  ///< the quick count: frames with a good cover
  Opt<double> sealedBroodFrames, openBroodFrames, broodFrames;  ///< full frames, both sides
  Opt<int> framesWithBrood;                                     ///< combs with any brood
  Opt<int> droneBrood;                                          ///< 0 none to 3 much
  Opt<bool> eggsSeen, queenSeen;
  Opt<int> queenCells;
  Opt<CellKind> cellKind;
  Opt<int> pattern;     ///< 1 scattered to 5 solid
  Opt<double> honeyKg;  ///< all stores
  Opt<double> pollenFrames, emptyCombFrames;
  Opt<double> weightKg;  ///< the whole hive
  Opt<int> temper;       ///< 1 to 5
  Opt<Disease> disease;
  Opt<bool> dronesSeen;
  std::string reader;
  Opt<SheetId> sheet;
  Opt<int> line;
  std::string notes;
  Opt<StoresLevel> storesLevel;
  /// The seams are what was printed as expected, and it looked about so: a wide reading.
  Opt<Glance> glance;
  bool operator==(const Inspection&) const = default;
};

/// One comb side as seen at an inspection; per cent of the comb's face. A side without a row is
/// unknown, never empty. Slot 1 is left, standing behind the hive; side a faces slot 1.
struct CombSide {
  RecordId inspection;
  HiveId hive;
  Opt<ColonyId> colony;
  Date date;
  int box = 1;
  int slot = 1;
  FrameSide side = FrameSide::A;
  Opt<double> beesPct, eggsPct, openPct, sealedPct, dronePct, pollenPct, nectarPct, honeyPct,
      emptyPct, undrawnPct;
  Opt<bool> mould;
  bool operator==(const CombSide&) const = default;
};

/// Seams of one box at an inspection.
struct SeamCount {
  RecordId inspection;
  HiveId hive;
  Date date;
  int box = 1;
  Opt<double> fromAbove, fromBelow;
  Opt<bool> atLeast;
  bool operator==(const SeamCount&) const = default;
};

struct Wash : RecordHead {
  HiveId hive;
  Opt<ColonyId> colony;
  Date date;
  Opt<WashMethod> method;
  int bees = 0;
  int mites = 0;
  bool operator==(const Wash&) const = default;
};

/// What was done or happened. For Stacked, hive is the weak colony's and otherHive the donor's;
/// for FramesMoved, hive receives and otherHive gives; for United, hive stays; for Split, hive is
/// the new one.
struct Event : RecordHead {
  Date date;
  Opt<TimeOfDay> time;
  EventKind kind = EventKind::Note;
  HiveId hive;
  Opt<ColonyId> colony;
  Opt<HiveId> otherHive;
  Opt<YardId> otherYard;
  Opt<ColonyId> otherColony;
  Opt<QueenId> queen;
  Opt<Goods> what;
  Opt<bool> withBees;
  Opt<double> amount;
  Opt<Unit> unit;
  std::string method, dose, batch;
  Opt<TaskId> task;
  Opt<SheetId> sheet;
  std::string detail;
  Opt<int> withdrawalDays;
  bool operator==(const Event&) const = default;
};

struct Task {
  TaskId task;
  std::string kind;  ///< an EventKind code, or "open", "look"
  Opt<YardId> yard;
  Opt<HiveId> hive;
  Opt<ColonyId> colony;
  Opt<HiveId> otherHive;
  Opt<ColonyId> otherColony;
  Opt<PlanId> plan;
  Opt<VisitId> visit;
  Opt<Method> method;
  Opt<Goods> what;
  Opt<Date> earliest, latest, dueOn, plannedOn, doneOn;
  Opt<double> amount;
  Opt<Unit> unit;
  std::string why;
  TaskState state = TaskState::Planned;
  Opt<RecordId> doneRecord;
  bool operator==(const Task&) const = default;
};

struct WeatherDay {
  YardId yard;
  Date date;
  double tminC = 0, tmaxC = 0;
  Opt<double> rainMm;
  WeatherKind kind = WeatherKind::Observed;
  Opt<Date> issued;  ///< for forecasts
  Opt<double> windMs, sunH;
  bool operator==(const WeatherDay&) const = default;
};

/// Days of the year; may run over New Year (fromDay > toDay). Strength 0 none to 3 strong.
struct Flow {
  YardId yard;
  int fromDay = 1, toDay = 1;
  Opt<double> nectar, pollen;
  bool operator==(const Flow&) const = default;
};

struct GearCount {
  std::string item;   ///< excluder, chamber:TYPE, super:TYPE, drawn_comb:TYPE, ... or free
  std::string place;  ///< a yard, truck or shed
  Date date;
  double count = 0;
  bool operator==(const GearCount&) const = default;
};

struct Setting {
  std::string name, value, source;
  bool operator==(const Setting&) const = default;
};

/// Where a hive stands from a date on.
struct Place : RecordHead {
  HiveId hive;
  YardId yard;
  Opt<double> xM, yM, entranceDeg;
  std::string stand;
  Date fromDate;
  Opt<PlaceHow> how;
  bool operator==(const Place&) const = default;
};

struct Stand {
  std::string stand;
  YardId yard;
  double xM = 0, yM = 0;
  Opt<double> angleDeg;
  Opt<StandKind> kind;
  std::string notes;
  bool operator==(const Stand&) const = default;
};

struct Feature {
  std::string feature;
  YardId yard;
  FeatureKind kind = FeatureKind::Gate;
  double xM = 0, yM = 0;
  Opt<double> x2M, y2M;  ///< other end of a fence; far corner of a picture
  std::string file;      ///< under pictures/ beside the season file
  std::string notes;
  bool operator==(const Feature&) const = default;
};

struct FrameMove : RecordHead {
  Date date;
  HiveId hive;  ///< receives
  Opt<int> box, slot;
  Opt<HiveId> otherHive;  ///< gives
  Opt<int> otherBox, otherSlot;
  Opt<bool> withBees;
  Opt<TaskId> task;
  std::string detail;
  bool operator==(const FrameMove&) const = default;
};

/// An outfit's own figures for a frame type, in place of the shipped ones.
struct FrameType {
  std::string frameType;
  std::string name;
  Opt<double> combCm2;      ///< comb area of one side
  Opt<double> cellsPerCm2;  ///< worker cells, one side
  Opt<double> beesPerCm2;   ///< on a fully covered side
  Opt<double> honeySideKg;  ///< full capped side
  Opt<int> framesPerBox;
  Opt<double> boxKg;  ///< empty box with drawn comb
  std::string source;
  bool operator==(const FrameType&) const = default;
};

/// An accepted boost plan, with the numbers that it was based on.
struct Plan {
  PlanId plan;
  YardId yard;
  Date date;
  Opt<Date> target;
  std::string acceptedAt;  ///< UTC
  Opt<double> objective;
  std::string basis;  ///< code of what the benefit was computed from
  std::string notes;
  bool operator==(const Plan&) const = default;
};

struct PlanRow {
  PlanId plan;
  std::string option;  ///< method:colony:donor:k
  ColonyId colony;
  HiveId hive;
  Opt<VerdictCode> verdict;
  Opt<Method> method;
  Opt<ColonyId> donorColony;
  Opt<HiveId> donorHive;
  Opt<double> beesMoved, framesMoved, gain, gainLow, gainHigh, donorCost;
  std::string why;
  bool operator==(const PlanRow&) const = default;
};

struct Visit {
  VisitId visit;
  YardId yard;
  Date date;
  Opt<TimeOfDay> time;
  std::string notes;
  bool operator==(const Visit&) const = default;
};

struct SheetRow {
  SheetId sheet;
  YardId yard;
  Date date;
  std::string madeAt;  ///< UTC
  std::string paper;   ///< a4, letter
  bool operator==(const SheetRow&) const = default;
};

struct SheetLine {
  SheetId sheet;
  int line = 1;
  HiveId hive;
  Opt<ColonyId> colony;
  std::string expected;
  bool operator==(const SheetLine&) const = default;
};

}  // namespace outyard::apiary

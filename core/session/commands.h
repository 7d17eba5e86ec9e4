// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/apiary/state.h"
#include "core/session/session.h"

namespace outyard::planning {
struct DueList;
struct RoundsPlan;
}  // namespace outyard::planning

/// The verbs: everything that changes a season. Each function makes a Command; Session::check
/// says whether it may be done, Session::execute does it. Ids of new records and entered_at are
/// filled in on execution. All of them refuse a date before the hive's first place, and anything
/// that moves bees, combs or boxes from or into a yard where foul brood is suspected.
namespace outyard::session {

using apiary::Beneath;
using apiary::BoxState;
using base::ColonyId;
using base::Date;
using base::HiveId;
using base::YardId;

// --- yards and what stands in them -----------------------------------------------------------
CommandPtr addYard(apiary::Yard yard);
/// Replaces the row of the same yard.
CommandPtr editYard(apiary::Yard yard);
CommandPtr addStand(apiary::Stand stand);
CommandPtr editStand(apiary::Stand stand);
CommandPtr removeStand(YardId yard, std::string stand);
CommandPtr addFeature(apiary::Feature feature);
CommandPtr editFeature(apiary::Feature feature);
CommandPtr removeFeature(std::string feature);
/// The stand's row in place of the old one; the hives on it go and turn with it. A correction of
/// the drawing, as arrange.
CommandPtr arrangeStand(apiary::Stand stand);
struct LayoutCopy {
  YardId from, to;
  /// A yard that is made for it, with the size and north of the old one where it says none.
  std::optional<apiary::Yard> newYard;
  bool stands = true, features = true;
};
/// Stands and features of one yard drawn in another too, at the same places. Names that are taken
/// there get the next free number. Hives are not carried.
CommandPtr copyLayout(LayoutCopy copy);

/// A new stand with boxes; hive.yard, position, direction and stand are its first place.
CommandPtr addHive(apiary::Hive hive, Date from, std::vector<BoxState> boxes);
/// Replaces notes only; places change by arrange and move.
CommandPtr editHiveNotes(HiveId hive, std::string notes);

struct Spot {
  HiveId hive;
  double xM = 0, yM = 0;
  std::optional<double> entranceDeg;  ///< as it was when not given
  std::string stand;
};
/// Corrects the drawing: no hive was carried. The place that holds now is superseded by one that
/// says "drawn".
CommandPtr arrange(std::vector<Spot> spots);
/// A real move on that day, within the yard or to another: event "moved" and a place from then on.
CommandPtr moveHives(std::vector<Spot> spots, YardId to, Date date);

// --- what was seen ---------------------------------------------------------------------------
/// The inspection's record id and those of its sides and seams are made on execution. A hive that
/// never had a colony gets one named after it, place main, from that day (as on import).
CommandPtr recordInspection(apiary::Inspection inspection, std::vector<apiary::CombSide> sides,
                            std::vector<apiary::SeamCount> seams);
/// The same for many hives at once (a typed sheet): one undo step.
struct InspectionEntry {
  apiary::Inspection inspection;
  std::vector<apiary::CombSide> sides;
  std::vector<apiary::SeamCount> seams;
};
CommandPtr recordInspections(std::vector<InspectionEntry> entries);
/// A new record that supersedes the old one.
CommandPtr correctInspection(base::RecordId old, InspectionEntry entry);
CommandPtr recordWash(apiary::Wash wash);
/// The judgement overruled, with the reason.
CommandPtr overruleVerdict(HiveId hive, ColonyId colony, Date date, apiary::VerdictCode verdict,
                           std::string reason);
/// Withdraws any record (void = 1) with the state rows that its verb wrote on the same day;
/// refused when later records build on it.
CommandPtr withdrawRecord(apiary::TableId table, base::RecordId record);

// --- what was done ---------------------------------------------------------------------------
/// Events that change no state row: fed, treated, treatment_off, harvested, note, queen_marked,
/// queen_seen_laying, cells_removed, paper_open, wrapped, unwrapped, robbed, bloom, poisoned,
/// bees_shaken, frames_moved, frames_given, frames_taken, queen_cell_given. Others are refused
/// and name the verb to use.
CommandPtr recordEvent(apiary::Event event);
/// The whole stack of a hive from that day on; kind says how it came (box_added, box_removed,
/// reversed, supered, excluder_on, excluder_off).
CommandPtr changeStack(HiveId hive, Date date, std::vector<BoxState> boxes, apiary::EventKind kind);

struct Stacking {
  HiveId weakHive;  ///< its main colony goes up with its chamber(s)
  HiveId donorHive;
  Date date;
  Beneath between = Beneath::Excluder;
  bool paper = true;  ///< said in the event's detail
  std::optional<base::TaskId> task;
};
/// The weak colony's boxes over the donor's: places, stack and event in one transaction. The old
/// stand is left empty.
CommandPtr stackOver(Stacking stacking);
struct TakingOff {
  HiveId fromHive;  ///< the stacked hive
  ColonyId colony;  ///< the upper one
  HiveId toHive;    ///< an empty hive
  Date date;
  std::optional<base::TaskId> task = std::nullopt;
};
/// The excluder comes off with it.
CommandPtr takeOff(TakingOff takingOff);
/// The look into a stack after a week: whether the paper is open, and what was seen above. One undo
/// step: an event where the paper is open, an inspection of the upper colony, the tasks done.
struct StackLook {
  HiveId hive;
  ColonyId upper;
  Date date;
  std::optional<bool> paperOpen, eggs, queenSeen;
  std::optional<int> queenCells;
  std::optional<double> seams;  ///< of the upper colony, from above
  std::string reader, notes;
  std::vector<base::TaskId> tasks;
};
CommandPtr recordStackLook(StackLook look);
/// The upper queen is gone: the excluder comes off and the upper bees and boxes are the lower
/// colony's from that day on.
struct StackJoining {
  HiveId hive;
  ColonyId upper;
  Date date;
  std::optional<base::TaskId> task;
};
CommandPtr joinStack(StackJoining joining);
struct Uniting {
  HiveId staysHive, goesHive;
  Date date;
  std::optional<base::QueenId> queenRemoved;
  bool queenOfGoingStays = false;
};
/// goesHive's colony ends; its boxes come on top of staysHive.
CommandPtr unite(Uniting uniting);
/// Two hives swap their spots on that day.
CommandPtr swapStands(HiveId a, HiveId b, Date date);
struct FrameGift {
  HiveId toHive, fromHive;
  std::optional<ColonyId> toColony, fromColony;
  Date date;
  apiary::Goods what = apiary::Goods::SealedBrood;
  double amount = 1;  ///< frames, or bees for nurse bees
  bool withBees = false;
  std::optional<base::TaskId> task;
};
CommandPtr giveFrames(FrameGift gift);

// --- combs and boxes by hand -------------------------------------------------------------------
// What moves where stands in frame_moves (core/apiary/comb_state.h says how they are read), the
// stack in boxes, and an event where something leaves a hive or comes into one.
struct CombSpot {
  HiveId hive;
  int box = 1;   ///< position in the stack, 1 = bottom
  int slot = 1;  ///< 1 = left, standing behind the hive
  bool operator==(const CombSpot&) const = default;
};
struct CombMove {
  std::vector<CombSpot> from;     ///< combs of one hive, in the order in which they shall stand
  std::vector<std::string> heap;  ///< or combs from the gear heap, by key
  /// In front of the comb that stands in that slot now; one more than the combs = behind the last.
  /// nullopt = off to the gear heap.
  std::optional<CombSpot> to;
  bool exchange = false;  ///< one comb: the one that stands in that slot takes its place
  Date date;
  bool withBees = true;  ///< false = shaken: the bees stay in the hive that gives
  std::optional<base::TaskId> task;
};
CommandPtr moveCombs(CombMove move);
/// Fresh combs: `what` is Drawn, Foundation or HoneyComb.
CommandPtr setInCombs(CombSpot to, int count, apiary::Goods what, Date date);
/// The combs with brood side by side in the middle of their box, in their order; without a box in
/// every chamber.
CommandPtr broodToMiddle(HiveId hive, std::optional<int> box, Date date);
/// Sides as seen, added to the day's look at that colony, or a look of their own where there is
/// none (or combs were moved since it).
CommandPtr recordCombs(HiveId hive, std::optional<ColonyId> colony, Date date,
                       std::vector<apiary::CombSide> sides);
/// Both sides of every comb of the box: Stores = full of honey, Drawn = drawn and empty,
/// Foundation = undrawn.
std::vector<apiary::CombSide> filledBox(const apiary::Season& season, const HiveId& hive,
                                        int position, apiary::Goods with, Date date);

struct BoxMove {
  HiveId hive;
  int position = 1;
  /// Where it goes; nullopt = off to the gear heap.
  std::optional<HiveId> toHive;
  int toPosition = 1;  ///< its position afterwards, 1 = bottom
  Date date;
  bool withBees = true;
};
/// Within a stack the boxes change their order (two chambers: a reversal); excluders stay.
CommandPtr moveBox(BoxMove move);
CommandPtr boxFromHeap(std::string key, HiveId toHive, int toPosition, Date date);
/// A box from the stock; `fill` as in setInCombs, nullopt = nobody said what its combs are.
CommandPtr setOnBox(HiveId hive, BoxState box, std::optional<apiary::Goods> fill, Date date);

/// A new colony in an empty hive.
CommandPtr installColony(HiveId hive, ColonyId colony, Date date, apiary::ColonyOrigin origin,
                         std::optional<base::QueenId> queen);
/// Ends the colony's stay; detail says the cause and what became of the combs.
CommandPtr recordDeath(HiveId hive, ColonyId colony, Date date, std::string cause);

// --- queens, swarms, and ends ------------------------------------------------------------------
/// A queen for the colony: a new row in queens, or one that is known (her row as it stands) and
/// lives nowhere else. Ends the stay with the earlier queen and begins one with her.
struct QueenGiven {
  HiveId hive;
  ColonyId colony;
  Date date;
  apiary::Queen queen;
  std::string method;  ///< cage, comb, ... as typed
  std::string detail;
  std::optional<base::TaskId> task;
};
CommandPtr introduceQueen(QueenGiven given);
/// The queen is lost, or was taken out; the colony lives on with none that is known.
struct QueenGone {
  HiveId hive;
  ColonyId colony;
  Date date;
  bool removed = false;
  std::string detail;
  std::optional<base::TaskId> task;
};
CommandPtr recordQueenGone(QueenGone gone);
/// The mark and the clipped wing go into her row too.
struct QueenMarking {
  HiveId hive;
  ColonyId colony;
  Date date;
  bool marked = true, clipped = false;
  std::string detail;  ///< colour, number
};
CommandPtr markQueen(QueenMarking marking);
struct CellsGiven {
  HiveId hive;
  std::optional<ColonyId> colony;
  Date date;
  int cells = 1;
  std::string line;
  std::string detail;
  std::optional<base::TaskId> task;
};
CommandPtr giveQueenCells(CellsGiven given);
/// A prime swarm takes the old queen along, an after-swarm does not; caught, it lives from then on
/// in an empty hive as a colony of that hive's name unless another is given.
struct Swarm {
  HiveId hive;
  ColonyId colony;
  Date date;
  bool after = false;
  std::optional<HiveId> caughtIn;
  std::optional<ColonyId> swarmColony;
  std::string detail;
};
CommandPtr recordSwarm(Swarm swarm);
/// A colony bought, into an empty hive; the queen is new or known.
struct Purchase {
  HiveId hive;
  ColonyId colony;
  Date date;
  std::optional<apiary::Queen> queen;
  std::string detail;
};
CommandPtr recordPurchase(Purchase purchase);
/// A colony that goes, or without its name the hive with all that is in it.
struct Parting {
  HiveId hive;
  std::optional<ColonyId> colony;
  Date date;
  std::string detail;
};
CommandPtr recordSale(Parting parting);
/// Stolen, flooded, burnt, or the bees gone.
CommandPtr recordLoss(Parting parting);

// --- plans, tasks, sheets, settings ----------------------------------------------------------
/// Stores the plan with the numbers that it was based on and its tasks; the journal is untouched.
/// Tasks whose window lies beside the day of the work (return visits) keep to their window.
CommandPtr acceptPlan(apiary::Plan plan, std::vector<apiary::PlanRow> rows,
                      std::vector<apiary::Task> tasks);
CommandPtr addTask(apiary::Task task);
/// Several at once: one undo step.
CommandPtr addTasks(std::vector<apiary::Task> tasks);
CommandPtr setTaskState(base::TaskId task, apiary::TaskState state, std::optional<Date> doneOn);
CommandPtr keepSheet(apiary::SheetRow sheet, std::vector<apiary::SheetLine> lines);
/// The sheets of one print: one undo step.
struct SheetToKeep {
  apiary::SheetRow sheet;
  std::vector<apiary::SheetLine> lines;
};
CommandPtr keepSheets(std::vector<SheetToKeep> sheets);
/// An empty value takes the setting back to the shipped one.
CommandPtr changeSetting(std::string name, std::string value, std::string source);
/// What a usable colony is (core/planning/usable_purpose.h): both figures in one undo step.
CommandPtr nameUsable(double seams, double broodCombs, std::string source);
/// What was fitted for a reader (core/strength/reader_bias.h), or an end to it: rows with an empty
/// value are taken away. One undo step.
CommandPtr calibrateReader(std::string reader, std::vector<apiary::Setting> rows);
/// The outfit's own figures of a frame type, in place of the shipped ones; columns left out stay
/// shipped, and a row that says nothing is taken away.
CommandPtr setFrameType(apiary::FrameType type);
CommandPtr countGear(apiary::GearCount count);

// --- visits ----------------------------------------------------------------------------------
// A drive to a yard on a day, and the planned tasks that go with it: their day (planned_on) is the
// visit's. One visit of a yard on a day.
CommandPtr addVisit(apiary::Visit visit, std::vector<base::TaskId> planned = {});
/// Refused when work was done at the visit already.
CommandPtr moveVisit(base::VisitId visit, Date date);
CommandPtr moveVisits(std::vector<base::VisitId> visits, Date date);
CommandPtr editVisit(base::VisitId visit, std::optional<base::TimeOfDay> time, std::string notes);
/// The tasks stay planned, for no day.
CommandPtr removeVisits(std::vector<base::VisitId> visits);
/// Planned tasks, and new ones, several as one undo step.
CommandPtr putIntoVisit(base::VisitId visit, std::vector<base::TaskId> planned,
                        std::vector<apiary::Task> fresh = {});
CommandPtr takeOutOfVisit(std::vector<base::TaskId> tasks);
/// One visit of a round: a new one or one that stands, with planned and new tasks to go into it.
struct RoundVisit {
  apiary::Visit visit;
  bool stands = false;
  std::vector<base::TaskId> planned;
  std::vector<apiary::Task> fresh;
};
/// Visits and their tasks as one undo step.
CommandPtr acceptRounds(std::vector<RoundVisit> visits);
/// A proposal as visits (of one day only, when it is given); `word` makes the reasons that are
/// kept.
std::vector<RoundVisit> roundVisits(const apiary::Season& season, const planning::RoundsPlan& plan,
                                    const planning::DueList& due,
                                    const std::function<std::string(const base::Message&)>& word,
                                    std::optional<Date> only = std::nullopt);

// --- weather and flows -----------------------------------------------------------------------
/// A flow of a yard's calendar: new without `old`, else in its place.
CommandPtr editFlow(std::optional<apiary::Flow> old, apiary::Flow flow);
CommandPtr removeFlow(apiary::Flow flow);
/// The whole calendar of each of the yards; the yard named in the flows does not count.
CommandPtr setFlows(std::vector<YardId> yards, std::vector<apiary::Flow> flows);
/// Days of weather, each in the place of the row of its yard, day, kind and day of issue. A
/// forecast names the day on which it was issued.
CommandPtr recordWeather(std::vector<apiary::WeatherDay> days);
CommandPtr removeWeather(std::vector<apiary::WeatherDay> days);

/// What is to be done to one hive of several.
struct HiveStep {
  HiveId hive;
  CommandPtr command;
};
/// One transaction and one undo step for all of them, in their order; each sees what those before
/// it wrote. When one is refused nothing is done, and the first message names its hive.
CommandPtr together(base::Message title, std::vector<HiveStep> steps);

/// Ready-made changes as one step (import). The maker has checked them against this season.
CommandPtr applyChanges(base::Message title, apiary::ChangeList changes);

}  // namespace outyard::session

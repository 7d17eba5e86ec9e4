// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace outyard::apiary {

/// The words that the season file and the exchange tables use for things with a fixed set of
/// values. They are never translated; ui/adapt words them for people.
/// Enumerators stand in the order of their codes.
template <class E>
struct Codes;  // specialised below: static constexpr std::array<std::string_view, N> kText

enum class HiveStatus { Live, Empty, Dead };
enum class FrameSide { A, B };
enum class BoxRole { Chamber, Super, Feeder };
/// What lies between a box and the one beneath it.
enum class Beneath { None, Excluder, Paper, DoubleScreen, Board };
/// Where in a hive a colony lives.
enum class ColonyPlace { Main, OverExcluder, OverDoubleScreen, OverBoard, Left, Right };
enum class ColonyOrigin { Wintered, Split, Swarm, Package, Bought };
enum class SeamsView { Above, Below, Both };
/// Stores as hefted, not weighed.
enum class StoresLevel { Low, Medium, Heavy };
/// A lid lifted and put back: it looked as was printed on the sheet, give or take.
enum class Glance { AboutRight };
enum class CellKind { Cups, Charged, Sealed };
enum class Disease { SuspectAfb, SuspectEfb, Chalkbrood, Sacbrood, Nosema, Other };
enum class WashMethod { Alcohol, Sugar, Co2, Soap, Board };
enum class EventKind {
  BoxAdded,
  BoxRemoved,
  Reversed,
  FramesMoved,
  FramesGiven,
  FramesTaken,
  BeesShaken,
  Stacked,
  Unstacked,
  United,
  Split,
  PlacesChanged,
  QueenIntroduced,
  QueenLost,
  QueenCellGiven,
  QueenMarked,
  QueenRemoved,
  QueenSeenLaying,
  CellsRemoved,
  Installed,
  ExcluderOn,
  ExcluderOff,
  PaperOpen,
  Fed,
  Treated,
  TreatmentOff,
  Supered,
  Harvested,
  Wrapped,
  Unwrapped,
  Moved,
  Swarmed,
  Robbed,
  Poisoned,
  Sold,
  Bought,
  Lost,
  Bloom,
  Died,
  Verdict,
  Note
};
/// What one transfer carries or what was fed.
enum class Goods {
  SealedBrood,
  OpenBrood,
  Stores,
  Drawn,
  Foundation,
  NurseBees,
  Syrup11,
  Syrup21,
  Fondant,
  DrySugar,
  HoneyComb,
  PollenPatty,
  PollenFeed
};
enum class Unit { Kg, L, Frames, Boxes, Bees };
enum class TaskState { Planned, Done, Dropped };
enum class WeatherKind { Observed, Forecast, Normal };
enum class PlaceHow { Placed, Moved, Drawn };
enum class StandKind { Stand, PalletOfTwo, PalletOfFour };
enum class FeatureKind { Gate, Truck, Water, Fence, Picture };
/// What to do for a colony that is worth help.
enum class Method { Leave, Room, Feed, SealedFrames, NurseBees, Stack, ChangePlaces, Unite };
/// The judgement on a colony.
enum class VerdictCode {
  Strong,
  Fair,
  SmallSound,
  QueenSuspect,
  Queenless,
  DroneLayer,
  LayingWorkers,
  Sick,
  TooSmall,
  TooEarly,
  NotEnoughSeen
};

template <>
struct Codes<HiveStatus> {
  static constexpr std::array<std::string_view, 3> kText{"live", "empty", "dead"};
};
template <>
struct Codes<FrameSide> {
  static constexpr std::array<std::string_view, 2> kText{"a", "b"};
};
template <>
struct Codes<BoxRole> {
  static constexpr std::array<std::string_view, 3> kText{"chamber", "super", "feeder"};
};
template <>
struct Codes<Beneath> {
  static constexpr std::array<std::string_view, 5> kText{"none", "excluder", "paper",
                                                         "double_screen", "board"};
};
template <>
struct Codes<ColonyPlace> {
  static constexpr std::array<std::string_view, 6> kText{
      "main", "over_excluder", "over_double_screen", "over_board", "left", "right"};
};
template <>
struct Codes<ColonyOrigin> {
  static constexpr std::array<std::string_view, 5> kText{"wintered", "split", "swarm", "package",
                                                         "bought"};
};
template <>
struct Codes<SeamsView> {
  static constexpr std::array<std::string_view, 3> kText{"above", "below", "both"};
};
template <>
struct Codes<StoresLevel> {
  static constexpr std::array<std::string_view, 3> kText{"low", "medium", "heavy"};
};
template <>
struct Codes<Glance> {
  static constexpr std::array<std::string_view, 1> kText{"about_right"};
};
template <>
struct Codes<CellKind> {
  static constexpr std::array<std::string_view, 3> kText{"cups", "charged", "sealed"};
};
template <>
struct Codes<Disease> {
  static constexpr std::array<std::string_view, 6> kText{"suspect_afb", "suspect_efb", "chalkbrood",
                                                         "sacbrood",    "nosema",      "other"};
};
template <>
struct Codes<WashMethod> {
  static constexpr std::array<std::string_view, 5> kText{"alcohol", "sugar", "co2", "soap",
                                                         "board"};
};
template <>
struct Codes<EventKind> {
  static constexpr std::array<std::string_view, 41> kText{"box_added",
                                                          "box_removed",
                                                          "reversed",
                                                          "frames_moved",
                                                          "frames_given",
                                                          "frames_taken",
                                                          "bees_shaken",
                                                          "stacked",
                                                          "unstacked",
                                                          "united",
                                                          "split",
                                                          "places_changed",
                                                          "queen_introduced",
                                                          "queen_lost",
                                                          "queen_cell_given",
                                                          "queen_marked",
                                                          "queen_removed",
                                                          "queen_seen_laying",
                                                          "cells_removed",
                                                          "installed",
                                                          "excluder_on",
                                                          "excluder_off",
                                                          "paper_open",
                                                          "fed",
                                                          "treated",
                                                          "treatment_off",
                                                          "supered",
                                                          "harvested",
                                                          "wrapped",
                                                          "unwrapped",
                                                          "moved",
                                                          "swarmed",
                                                          "robbed",
                                                          "poisoned",
                                                          "sold",
                                                          "bought",
                                                          "lost",
                                                          "bloom",
                                                          "died",
                                                          "verdict",
                                                          "note"};
};
template <>
struct Codes<Goods> {
  static constexpr std::array<std::string_view, 13> kText{
      "sealed_brood", "open_brood",   "stores",     "drawn",   "foundation",
      "nurse_bees",   "syrup_1_1",    "syrup_2_1",  "fondant", "dry_sugar",
      "honey_comb",   "pollen_patty", "pollen_feed"};
};
template <>
struct Codes<Unit> {
  static constexpr std::array<std::string_view, 5> kText{"kg", "l", "frames", "boxes", "bees"};
};
template <>
struct Codes<TaskState> {
  static constexpr std::array<std::string_view, 3> kText{"planned", "done", "dropped"};
};
template <>
struct Codes<WeatherKind> {
  static constexpr std::array<std::string_view, 3> kText{"observed", "forecast", "normal"};
};
template <>
struct Codes<PlaceHow> {
  static constexpr std::array<std::string_view, 3> kText{"placed", "moved", "drawn"};
};
template <>
struct Codes<StandKind> {
  static constexpr std::array<std::string_view, 3> kText{"stand", "pallet_2", "pallet_4"};
};
template <>
struct Codes<FeatureKind> {
  static constexpr std::array<std::string_view, 5> kText{"gate", "truck", "water", "fence",
                                                         "picture"};
};
template <>
struct Codes<Method> {
  static constexpr std::array<std::string_view, 8> kText{
      "leave", "room", "feed", "sealed_frames", "nurse_bees", "stack", "change_places", "unite"};
};
template <>
struct Codes<VerdictCode> {
  static constexpr std::array<std::string_view, 11> kText{
      "strong",         "fair", "small_sound", "queen_suspect", "queenless",      "drone_layer",
      "laying_workers", "sick", "too_small",   "too_early",     "not_enough_seen"};
};

template <class E>
concept Coded = requires {
  Codes<E>::kText.size();
};

template <Coded E>
constexpr std::string_view code(E value) {
  return Codes<E>::kText[static_cast<std::size_t>(value)];
}

template <Coded E>
constexpr std::optional<E> parseCode(std::string_view text) {
  for (std::size_t i = 0; i < Codes<E>::kText.size(); ++i) {
    if (Codes<E>::kText[i] == text) return static_cast<E>(i);
  }
  return std::nullopt;
}

template <Coded E>
constexpr std::span<const std::string_view> allCodes() {
  return Codes<E>::kText;
}

}  // namespace outyard::apiary

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "core/apiary/records.h"

/// One description of every table, from which the exchange tables, the database rows, the undo
/// steps and the checks on single values are all made. To add a column: add the member to its
/// struct, one line in schema.cpp, one migration in resources/migrations.
namespace outyard::apiary {

/// In the order in which tables are written and checked (what is referred to comes first).
enum class TableId {
  Yards,
  Hives,
  Queens,
  Colonies,
  Boxes,
  Inspections,
  Frames,
  Seams,
  Washes,
  Events,
  Tasks,
  Weather,
  Flows,
  Gear,
  Settings,
  Places,
  Stands,
  Features,
  FrameMoves,
  FrameTypes,
  Plans,
  PlanRows,
  Visits,
  Sheets,
  SheetLines
};
inline constexpr int kTableCount = 25;

enum class ColumnType { Text, Integer, Real, Date, Time, Flag, Code };

/// monostate = not recorded. Dates are ISO text, times HH:MM, flags 0 or 1, codes their text.
using Value = std::variant<std::monostate, std::int64_t, double, std::string>;

struct ColumnSpec {
  std::string name;
  ColumnType type = ColumnType::Text;
  bool required = false;
  bool key = false;         ///< part of the table's key; record tables have the key "record"
  double min = 0, max = 0;  ///< for Integer and Real, both inclusive
  std::span<const std::string_view> codes{};
};

struct TableSpec {
  TableId id{};
  std::string name;       ///< exchange file is name + ".csv"; database table has the same name
  bool isRecord = false;  ///< has record, supersedes, void, entered_at
  std::vector<ColumnSpec> columns;
  [[nodiscard]] int columnIndex(std::string_view column) const;  ///< -1 when there is none
};

/// A row of any table as values in the order of the spec's columns.
struct Row {
  TableId table{};
  std::vector<Value> values;
  bool operator==(const Row&) const = default;
};

const std::vector<TableSpec>& tableSpecs();
const TableSpec& tableSpec(TableId id);
const TableSpec* findTable(std::string_view name);

/// The key text of a row: its key columns joined by the unit separator (0x1F).
std::string rowKey(const Row& row);

template <class T>
struct TableOf;  // static constexpr TableId kId
#define OUTYARD_TABLE(Type, Id)                 \
  template <>                                   \
  struct TableOf<Type> {                        \
    static constexpr TableId kId = TableId::Id; \
  }
OUTYARD_TABLE(Yard, Yards);
OUTYARD_TABLE(Hive, Hives);
OUTYARD_TABLE(Queen, Queens);
OUTYARD_TABLE(ColonyStay, Colonies);
OUTYARD_TABLE(Box, Boxes);
OUTYARD_TABLE(Inspection, Inspections);
OUTYARD_TABLE(CombSide, Frames);
OUTYARD_TABLE(SeamCount, Seams);
OUTYARD_TABLE(Wash, Washes);
OUTYARD_TABLE(Event, Events);
OUTYARD_TABLE(Task, Tasks);
OUTYARD_TABLE(WeatherDay, Weather);
OUTYARD_TABLE(Flow, Flows);
OUTYARD_TABLE(GearCount, Gear);
OUTYARD_TABLE(Setting, Settings);
OUTYARD_TABLE(Place, Places);
OUTYARD_TABLE(Stand, Stands);
OUTYARD_TABLE(Feature, Features);
OUTYARD_TABLE(FrameMove, FrameMoves);
OUTYARD_TABLE(FrameType, FrameTypes);
OUTYARD_TABLE(Plan, Plans);
OUTYARD_TABLE(PlanRow, PlanRows);
OUTYARD_TABLE(Visit, Visits);
OUTYARD_TABLE(SheetRow, Sheets);
OUTYARD_TABLE(SheetLine, SheetLines);
#undef OUTYARD_TABLE

/// Calls f(std::type_identity<T>{}) with the struct of the table.
template <class F>
decltype(auto) withTable(TableId id, F&& f) {
  switch (id) {
    case TableId::Yards:
      return f(std::type_identity<Yard>{});
    case TableId::Hives:
      return f(std::type_identity<Hive>{});
    case TableId::Queens:
      return f(std::type_identity<Queen>{});
    case TableId::Colonies:
      return f(std::type_identity<ColonyStay>{});
    case TableId::Boxes:
      return f(std::type_identity<Box>{});
    case TableId::Inspections:
      return f(std::type_identity<Inspection>{});
    case TableId::Frames:
      return f(std::type_identity<CombSide>{});
    case TableId::Seams:
      return f(std::type_identity<SeamCount>{});
    case TableId::Washes:
      return f(std::type_identity<Wash>{});
    case TableId::Events:
      return f(std::type_identity<Event>{});
    case TableId::Tasks:
      return f(std::type_identity<Task>{});
    case TableId::Weather:
      return f(std::type_identity<WeatherDay>{});
    case TableId::Flows:
      return f(std::type_identity<Flow>{});
    case TableId::Gear:
      return f(std::type_identity<GearCount>{});
    case TableId::Settings:
      return f(std::type_identity<Setting>{});
    case TableId::Places:
      return f(std::type_identity<Place>{});
    case TableId::Stands:
      return f(std::type_identity<Stand>{});
    case TableId::Features:
      return f(std::type_identity<Feature>{});
    case TableId::FrameMoves:
      return f(std::type_identity<FrameMove>{});
    case TableId::FrameTypes:
      return f(std::type_identity<FrameType>{});
    case TableId::Plans:
      return f(std::type_identity<Plan>{});
    case TableId::PlanRows:
      return f(std::type_identity<PlanRow>{});
    case TableId::Visits:
      return f(std::type_identity<Visit>{});
    case TableId::Sheets:
      return f(std::type_identity<SheetRow>{});
    case TableId::SheetLines:
      return f(std::type_identity<SheetLine>{});
  }
  return f(std::type_identity<Yard>{});
}

template <class T>
Row toRow(const T& record);
/// The row must have passed checkRow (validate.h); values of the wrong type throw.
template <class T>
T fromRow(const Row& row);

/// One member of a struct as a column; the list of them makes a table.
template <class T>
struct Column {
  ColumnSpec spec;
  std::function<Value(const T&)> get;
  std::function<void(T&, const Value&)> set;
};
template <class T>
const std::vector<Column<T>>& columnsOf();

template <class T>
Row toRow(const T& record) {
  const auto& columns = columnsOf<T>();
  Row row{TableOf<T>::kId, {}};
  row.values.reserve(columns.size());
  for (const auto& c : columns) row.values.push_back(c.get(record));
  return row;
}

template <class T>
T fromRow(const Row& row) {
  const auto& columns = columnsOf<T>();
  T record{};
  for (std::size_t i = 0; i < columns.size(); ++i) columns[i].set(record, row.values.at(i));
  return record;
}

}  // namespace outyard::apiary

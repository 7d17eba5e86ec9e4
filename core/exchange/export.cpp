// SPDX-License-Identifier: GPL-3.0-or-later
#include <type_traits>

#include "core/apiary/state.h"
#include "core/apiary/validate.h"
#include "core/exchange/csv.h"
#include "core/exchange/tables.h"

namespace outyard::exchange {
namespace {

using apiary::TableId;
using base::Date;

template <class T>
void latest(const apiary::Season& season, std::optional<Date>& day) {
  const auto see = [&](Date d) {
    if (!day || *day < d) day = d;
  };
  for (const auto& [key, r] : season.table<T>()) {
    if constexpr (requires { r.fromDate; }) {
      see(r.fromDate);
    } else {
      see(r.date);
    }
    if constexpr (std::is_same_v<T, apiary::ColonyStay>) {
      if (r.toDate) see(*r.toDate);
    }
  }
}

}  // namespace

std::optional<Date> statusDay(const apiary::Season& season) {
  if (const auto working = season.workingDate()) return working;
  std::optional<Date> day;
  latest<apiary::ColonyStay>(season, day);
  latest<apiary::Box>(season, day);
  latest<apiary::Inspection>(season, day);
  latest<apiary::Wash>(season, day);
  latest<apiary::Event>(season, day);
  latest<apiary::Place>(season, day);
  latest<apiary::FrameMove>(season, day);
  return day;
}

std::string tableText(const apiary::Season& season, TableId table) {
  std::string out;
  CsvWriter writer(out);
  for (const auto& column : apiary::tableSpec(table).columns) writer.field(column.name);
  writer.endRecord();
  const Date day = table == TableId::Hives ? statusDay(season).value_or(Date{}) : Date{};
  apiary::withTable(table, [&]<class T>(std::type_identity<T>) {
    for (const auto& [key, record] : season.table<T>()) {
      apiary::Row row = apiary::toRow(record);
      if constexpr (std::is_same_v<T, apiary::Hive>) {
        T filled = record;
        filled.status = apiary::hiveOn(season, record.hive, day).status;
        row = apiary::toRow(filled);
      }
      for (const auto& value : row.values) writer.field(apiary::valueText(value));
      writer.endRecord();
    }
  });
  return out;
}

base::Result<void> exportTables(const apiary::Season& season, FileSink& sink,
                                base::Progress& progress) {
  for (int t = 0; t < apiary::kTableCount; ++t) {
    progress.report(static_cast<double>(t) / apiary::kTableCount);
    if (progress.cancelled()) return base::fail(base::message("exchange.export_stopped"));
    const auto id = static_cast<TableId>(t);
    auto written = sink.write(apiary::tableSpec(id).name + ".csv", tableText(season, id));
    if (!written) return written;
  }
  auto done = sink.commit();
  if (done) progress.report(1);
  return done;
}

}  // namespace outyard::exchange

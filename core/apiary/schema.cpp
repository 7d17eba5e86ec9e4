// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/apiary/schema.h"

#include <stdexcept>

namespace outyard::apiary {
namespace {

template <class T>
struct IsOpt : std::false_type {};
template <class T>
struct IsOpt<std::optional<T>> : std::true_type {
  using Inner = T;
};
template <class T>
struct IsId : std::false_type {};
template <class Tag>
struct IsId<base::Id<Tag>> : std::true_type {};

Value put(const std::string& s) {
  return s.empty() ? Value{} : Value{s};
}
template <class Tag>
Value put(const base::Id<Tag>& id) {
  return put(id.str());
}
Value put(double v) {
  return v;
}
Value put(int v) {
  return static_cast<std::int64_t>(v);
}
Value put(bool v) {
  return static_cast<std::int64_t>(v ? 1 : 0);
}
Value put(Date d) {
  return d.iso();
}
Value put(TimeOfDay t) {
  return t.text();
}
template <Coded E>
Value put(E e) {
  return std::string(code(e));
}
template <class T>
Value put(const std::optional<T>& o) {
  return o ? put(*o) : Value{};
}

template <class T>
T take(const Value& v) {
  if constexpr (IsOpt<T>::value) {
    if (std::holds_alternative<std::monostate>(v)) return std::nullopt;
    return take<typename IsOpt<T>::Inner>(v);
  } else if constexpr (std::is_same_v<T, std::string>) {
    return std::holds_alternative<std::monostate>(v) ? std::string{} : std::get<std::string>(v);
  } else if constexpr (IsId<T>::value) {
    return std::holds_alternative<std::monostate>(v) ? T{} : T{std::get<std::string>(v)};
  } else if constexpr (std::is_same_v<T, double>) {
    if (const auto* i = std::get_if<std::int64_t>(&v)) return static_cast<double>(*i);
    return std::get<double>(v);
  } else if constexpr (std::is_same_v<T, int>) {
    return static_cast<int>(std::get<std::int64_t>(v));
  } else if constexpr (std::is_same_v<T, bool>) {
    return !std::holds_alternative<std::monostate>(v) && std::get<std::int64_t>(v) != 0;
  } else if constexpr (std::is_same_v<T, Date>) {
    return Date::parse(std::get<std::string>(v)).value();
  } else if constexpr (std::is_same_v<T, TimeOfDay>) {
    return TimeOfDay::parse(std::get<std::string>(v)).value();
  } else {
    return parseCode<T>(std::get<std::string>(v)).value();
  }
}

template <class M>
ColumnSpec specOf(const char* name) {
  ColumnSpec s;
  s.name = name;
  if constexpr (IsOpt<M>::value) {
    s = specOf<typename IsOpt<M>::Inner>(name);
    s.required = false;
  } else if constexpr (std::is_same_v<M, double>) {
    s.type = ColumnType::Real;
    s.required = true;
  } else if constexpr (std::is_same_v<M, bool>) {
    s.type = ColumnType::Flag;
    s.required = true;
  } else if constexpr (std::is_same_v<M, int>) {
    s.type = ColumnType::Integer;
    s.required = true;
  } else if constexpr (std::is_same_v<M, Date>) {
    s.type = ColumnType::Date;
    s.required = true;
  } else if constexpr (std::is_same_v<M, TimeOfDay>) {
    s.type = ColumnType::Time;
    s.required = true;
  } else if constexpr (std::is_same_v<M, std::string>) {
    s.type = ColumnType::Text;
  } else if constexpr (IsId<M>::value) {
    s.type = ColumnType::Text;
    s.required = true;
  } else {
    s.type = ColumnType::Code;
    s.codes = allCodes<M>();
    s.required = true;
  }
  return s;
}

template <class T>
struct Maker {
  std::vector<Column<T>> columns;

  template <class B, class M>
  Maker& col(const char* name, M B::*member, double min = 0, double max = 0) {
    static_assert(std::is_base_of_v<B, T>);
    Column<T> c;
    c.spec = specOf<M>(name);
    c.spec.min = min;
    c.spec.max = max;
    c.get = [member](const T& t) { return put(t.*member); };
    c.set = [member](T& t, const Value& v) { t.*member = take<M>(v); };
    columns.push_back(std::move(c));
    return *this;
  }
  Maker& key() {
    columns.back().spec.key = true;
    columns.back().spec.required = true;
    return *this;
  }
  Maker& must() {
    columns.back().spec.required = true;
    return *this;
  }
  /// record, supersedes, void, entered_at; the record id is made by the importer when left out.
  Maker& head() {
    col("record", &RecordHead::record).key();
    col("supersedes", &RecordHead::supersedes);
    col("void", &RecordHead::isVoid);
    columns.back().spec.required = false;
    columns.back().get = [](const T& t) {
      return t.isVoid ? Value{static_cast<std::int64_t>(1)} : Value{};
    };
    col("entered_at", &RecordHead::enteredAt);
    return *this;
  }
};

// Ranges of the exchange grammar: frames 0-60, seams 0-40, per cent 0-100, kg 0-300, C -60 to 60.
constexpr double kFrames = 60, kSeams = 40, kPct = 100, kKg = 300;
constexpr double kMetres = 100000, kCount = 1e6;

auto make(std::type_identity<Yard>) {
  Maker<Yard> m;
  m.col("yard", &Yard::yard).key();
  m.col("name", &Yard::name).col("latitude", &Yard::latitude, -90, 90);
  m.col("longitude", &Yard::longitude, -180, 180).col("width_m", &Yard::widthM, 0, kMetres);
  m.col("length_m", &Yard::lengthM, 0, kMetres).col("north_deg", &Yard::northDeg, -360, 360);
  m.col("elevation_m", &Yard::elevationM, -500, 9000).col("access", &Yard::access);
  m.col("notes", &Yard::notes);
  return m.columns;
}
auto make(std::type_identity<Hive>) {
  Maker<Hive> m;
  m.col("hive", &Hive::hive).key().col("yard", &Hive::yard);
  m.col("x_m", &Hive::xM, -kMetres, kMetres).col("y_m", &Hive::yM, -kMetres, kMetres);
  m.col("entrance_deg", &Hive::entranceDeg, -360, 360).col("stand", &Hive::stand);
  m.col("status", &Hive::status).col("notes", &Hive::notes);
  return m.columns;
}
auto make(std::type_identity<Queen>) {
  Maker<Queen> m;
  m.col("queen", &Queen::queen).key().col("line", &Queen::line);
  m.col("year", &Queen::year, 1900, 2199).col("mother", &Queen::mother);
  m.col("origin", &Queen::origin).col("marked", &Queen::marked).col("clipped", &Queen::clipped);
  m.col("notes", &Queen::notes);
  return m.columns;
}
auto make(std::type_identity<ColonyStay>) {
  Maker<ColonyStay> m;
  m.head().col("colony", &ColonyStay::colony).col("hive", &ColonyStay::hive);
  m.col("place", &ColonyStay::place).col("queen", &ColonyStay::queen);
  m.col("queen_year", &ColonyStay::queenYear, 1900, 2199);
  m.col("queen_line", &ColonyStay::queenLine).col("queen_marked", &ColonyStay::queenMarked);
  m.col("from_date", &ColonyStay::fromDate).col("to_date", &ColonyStay::toDate);
  m.col("parent_colony", &ColonyStay::parentColony).col("origin", &ColonyStay::origin);
  return m.columns;
}
auto make(std::type_identity<Box>) {
  Maker<Box> m;
  m.head().col("hive", &Box::hive).col("date", &Box::date).col("position", &Box::position, 1, 12);
  m.col("frame_type", &Box::frameType).must().col("frames", &Box::frames, 0, kFrames);
  m.col("role", &Box::role).col("colony", &Box::colony).col("beneath", &Box::beneath);
  return m.columns;
}
auto make(std::type_identity<Inspection>) {
  using I = Inspection;
  Maker<I> m;
  m.head().col("hive", &I::hive).col("colony", &I::colony).col("date", &I::date);
  m.col("time", &I::time).col("air_c", &I::airC, -60, 60).col("seams", &I::seams, 0, kSeams);
  m.col("seams_view", &I::seamsView).col("bee_frames", &I::beeFrames, 0, kFrames);
  m.col("frames_with_bees", &I::framesWithBees, 0, kFrames);
  m.col("sealed_brood_frames", &I::sealedBroodFrames, 0, kFrames);
  m.col("open_brood_frames", &I::openBroodFrames, 0, kFrames);
  m.col("brood_frames", &I::broodFrames, 0, kFrames);
  m.col("frames_with_brood", &I::framesWithBrood, 0, kFrames);
  m.col("drone_brood", &I::droneBrood, 0, 3).col("eggs_seen", &I::eggsSeen);
  m.col("queen_seen", &I::queenSeen).col("queen_cells", &I::queenCells, 0, 500);
  m.col("cell_kind", &I::cellKind).col("pattern", &I::pattern, 1, 5);
  m.col("honey_kg", &I::honeyKg, 0, kKg).col("pollen_frames", &I::pollenFrames, 0, kFrames);
  m.col("empty_comb_frames", &I::emptyCombFrames, 0, kFrames);
  m.col("weight_kg", &I::weightKg, 0, kKg).col("temper", &I::temper, 1, 5);
  m.col("disease", &I::disease).col("drones_seen", &I::dronesSeen).col("reader", &I::reader);
  m.col("sheet", &I::sheet).col("line", &I::line, 1, 10000).col("notes", &I::notes);
  m.col("stores_level", &I::storesLevel).col("glance", &I::glance);
  return m.columns;
}
auto make(std::type_identity<CombSide>) {
  using C = CombSide;
  Maker<C> m;
  m.col("inspection", &C::inspection).key().col("hive", &C::hive).col("colony", &C::colony);
  m.col("date", &C::date).col("box", &C::box, 1, 12).key().col("slot", &C::slot, 1, kFrames).key();
  m.col("side", &C::side).key().col("bees_pct", &C::beesPct, 0, kPct);
  m.col("eggs_pct", &C::eggsPct, 0, kPct).col("open_pct", &C::openPct, 0, kPct);
  m.col("sealed_pct", &C::sealedPct, 0, kPct).col("drone_pct", &C::dronePct, 0, kPct);
  m.col("pollen_pct", &C::pollenPct, 0, kPct).col("nectar_pct", &C::nectarPct, 0, kPct);
  m.col("honey_pct", &C::honeyPct, 0, kPct).col("empty_pct", &C::emptyPct, 0, kPct);
  m.col("undrawn_pct", &C::undrawnPct, 0, kPct).col("mould", &C::mould);
  return m.columns;
}
auto make(std::type_identity<SeamCount>) {
  using S = SeamCount;
  Maker<S> m;
  m.col("inspection", &S::inspection).key().col("hive", &S::hive).col("date", &S::date);
  m.col("box", &S::box, 1, 12).key().col("from_above", &S::fromAbove, 0, kSeams);
  m.col("from_below", &S::fromBelow, 0, kSeams).col("at_least", &S::atLeast);
  return m.columns;
}
auto make(std::type_identity<Wash>) {
  Maker<Wash> m;
  m.head().col("hive", &Wash::hive).col("colony", &Wash::colony).col("date", &Wash::date);
  m.col("method", &Wash::method).col("bees", &Wash::bees, 1, 5000);
  m.col("mites", &Wash::mites, 0, 5000);
  return m.columns;
}
auto make(std::type_identity<Event>) {
  using E = Event;
  Maker<E> m;
  m.head().col("date", &E::date).col("time", &E::time).col("kind", &E::kind);
  m.col("hive", &E::hive).col("colony", &E::colony).col("other_hive", &E::otherHive);
  m.col("other_yard", &E::otherYard).col("other_colony", &E::otherColony);
  m.col("queen", &E::queen).col("what", &E::what).col("with_bees", &E::withBees);
  m.col("amount", &E::amount, 0, kCount).col("unit", &E::unit).col("method", &E::method);
  m.col("dose", &E::dose).col("batch", &E::batch).col("task", &E::task);
  m.col("sheet", &E::sheet).col("detail", &E::detail);
  m.col("withdrawal_days", &E::withdrawalDays, 0, 1000);
  return m.columns;
}
auto make(std::type_identity<Task>) {
  using T = Task;
  Maker<T> m;
  m.col("task", &T::task).key().col("kind", &T::kind).must().col("yard", &T::yard);
  m.col("hive", &T::hive).col("colony", &T::colony).col("other_hive", &T::otherHive);
  m.col("other_colony", &T::otherColony).col("plan", &T::plan).col("visit", &T::visit);
  m.col("method", &T::method).col("what", &T::what).col("earliest", &T::earliest);
  m.col("latest", &T::latest).col("due_on", &T::dueOn).col("planned_on", &T::plannedOn);
  m.col("done_on", &T::doneOn).col("amount", &T::amount, 0, kCount).col("unit", &T::unit);
  m.col("why", &T::why).col("state", &T::state).col("done_record", &T::doneRecord);
  return m.columns;
}
auto make(std::type_identity<WeatherDay>) {
  using W = WeatherDay;
  Maker<W> m;
  m.col("yard", &W::yard).key().col("date", &W::date).key().col("tmin_c", &W::tminC, -60, 60);
  m.col("tmax_c", &W::tmaxC, -60, 60).col("rain_mm", &W::rainMm, 0, 2000);
  m.col("kind", &W::kind).key().col("issued", &W::issued);
  m.columns.back().spec.key = true;  // part of the key, yet it may be missing
  m.col("wind_ms", &W::windMs, 0, 120).col("sun_h", &W::sunH, 0, 24);
  return m.columns;
}
auto make(std::type_identity<Flow>) {
  Maker<Flow> m;
  m.col("yard", &Flow::yard).key().col("from_day", &Flow::fromDay, 1, 366).key();
  m.col("to_day", &Flow::toDay, 1, 366).key().col("nectar", &Flow::nectar, 0, 3);
  m.col("pollen", &Flow::pollen, 0, 3);
  return m.columns;
}
auto make(std::type_identity<GearCount>) {
  using G = GearCount;
  Maker<G> m;
  m.col("item", &G::item).key().col("place", &G::place).key().col("date", &G::date).key();
  m.col("count", &G::count, 0, kCount);
  return m.columns;
}
auto make(std::type_identity<Setting>) {
  Maker<Setting> m;
  m.col("name", &Setting::name).key().col("value", &Setting::value).must();
  m.col("source", &Setting::source);
  return m.columns;
}
auto make(std::type_identity<Place>) {
  using P = Place;
  Maker<P> m;
  m.head().col("hive", &P::hive).col("yard", &P::yard).col("x_m", &P::xM, -kMetres, kMetres);
  m.col("y_m", &P::yM, -kMetres, kMetres).col("entrance_deg", &P::entranceDeg, -360, 360);
  m.col("stand", &P::stand).col("from_date", &P::fromDate).col("how", &P::how);
  return m.columns;
}
auto make(std::type_identity<Stand>) {
  using S = Stand;
  Maker<S> m;
  m.col("stand", &S::stand).key().col("yard", &S::yard).key();
  m.col("x_m", &S::xM, -kMetres, kMetres).col("y_m", &S::yM, -kMetres, kMetres);
  m.col("angle_deg", &S::angleDeg, -360, 360).col("kind", &S::kind).col("notes", &S::notes);
  return m.columns;
}
auto make(std::type_identity<Feature>) {
  using F = Feature;
  Maker<F> m;
  m.col("feature", &F::feature).key().col("yard", &F::yard).col("kind", &F::kind);
  m.col("x_m", &F::xM, -kMetres, kMetres).col("y_m", &F::yM, -kMetres, kMetres);
  m.col("x2_m", &F::x2M, -kMetres, kMetres).col("y2_m", &F::y2M, -kMetres, kMetres);
  m.col("file", &F::file).col("notes", &F::notes);
  return m.columns;
}
auto make(std::type_identity<FrameMove>) {
  using F = FrameMove;
  Maker<F> m;
  m.head().col("date", &F::date).col("hive", &F::hive).col("box", &F::box, 1, 12);
  m.col("slot", &F::slot, 1, kFrames).col("other_hive", &F::otherHive);
  m.col("other_box", &F::otherBox, 1, 12).col("other_slot", &F::otherSlot, 1, kFrames);
  m.col("with_bees", &F::withBees).col("task", &F::task).col("detail", &F::detail);
  return m.columns;
}
auto make(std::type_identity<FrameType>) {
  using F = FrameType;
  Maker<F> m;
  m.col("frame_type", &F::frameType).key().col("name", &F::name);
  m.col("comb_cm2", &F::combCm2, 100, 3000).col("cells_per_cm2", &F::cellsPerCm2, 3.5, 4.8);
  m.col("bees_per_cm2", &F::beesPerCm2, 1.1, 1.5).col("honey_side_kg", &F::honeySideKg, 0.2, 6);
  m.col("frames_per_box", &F::framesPerBox, 1, 20).col("box_kg", &F::boxKg, 0.5, 40);
  m.col("source", &F::source);
  return m.columns;
}
auto make(std::type_identity<Plan>) {
  Maker<Plan> m;
  m.col("plan", &Plan::plan).key().col("yard", &Plan::yard).col("date", &Plan::date);
  m.col("target", &Plan::target).col("accepted_at", &Plan::acceptedAt);
  m.col("objective", &Plan::objective, -kCount, kCount).col("basis", &Plan::basis);
  m.col("notes", &Plan::notes);
  return m.columns;
}
auto make(std::type_identity<PlanRow>) {
  using P = PlanRow;
  Maker<P> m;
  m.col("plan", &P::plan).key().col("option", &P::option).key().col("colony", &P::colony);
  m.col("hive", &P::hive).col("verdict", &P::verdict).col("method", &P::method);
  m.col("donor_colony", &P::donorColony).col("donor_hive", &P::donorHive);
  m.col("bees_moved", &P::beesMoved, 0, kCount).col("frames_moved", &P::framesMoved, 0, kFrames);
  m.col("gain", &P::gain, -kCount, kCount).col("gain_low", &P::gainLow, -kCount, kCount);
  m.col("gain_high", &P::gainHigh, -kCount, kCount);
  m.col("donor_cost", &P::donorCost, -kCount, kCount).col("why", &P::why);
  return m.columns;
}
auto make(std::type_identity<Visit>) {
  Maker<Visit> m;
  m.col("visit", &Visit::visit).key().col("yard", &Visit::yard).col("date", &Visit::date);
  m.col("time", &Visit::time).col("notes", &Visit::notes);
  return m.columns;
}
auto make(std::type_identity<SheetRow>) {
  using S = SheetRow;
  Maker<S> m;
  m.col("sheet", &S::sheet).key().col("yard", &S::yard).col("date", &S::date);
  m.col("made_at", &S::madeAt).col("paper", &S::paper);
  return m.columns;
}
auto make(std::type_identity<SheetLine>) {
  using S = SheetLine;
  Maker<S> m;
  m.col("sheet", &S::sheet).key().col("line", &S::line, 1, 10000).key().col("hive", &S::hive);
  m.col("colony", &S::colony).col("expected", &S::expected);
  return m.columns;
}

constexpr const char* kNames[kTableCount] = {
    "yards",     "hives",  "queens", "colonies",   "boxes",       "inspections", "frames",
    "seams",     "washes", "events", "tasks",      "weather",     "flows",       "gear",
    "settings",  "places", "stands", "features",   "frame_moves", "frame_types", "plans",
    "plan_rows", "visits", "sheets", "sheet_lines"};

std::vector<TableSpec> makeSpecs() {
  std::vector<TableSpec> specs;
  for (std::size_t i = 0; i < kTableCount; ++i) {
    withTable(static_cast<TableId>(i), [&]<class T>(std::type_identity<T>) {
      TableSpec s;
      s.id = TableOf<T>::kId;
      s.name = kNames[i];
      s.isRecord = std::is_base_of_v<RecordHead, T>;
      for (const auto& c : columnsOf<T>()) s.columns.push_back(c.spec);
      specs.push_back(std::move(s));
    });
  }
  return specs;
}

}  // namespace

template <class T>
const std::vector<Column<T>>& columnsOf() {
  static const std::vector<Column<T>> columns = make(std::type_identity<T>{});
  return columns;
}

#define OUTYARD_COLUMNS(Type) template const std::vector<Column<Type>>& columnsOf<Type>();
OUTYARD_COLUMNS(Yard)
OUTYARD_COLUMNS(Hive)
OUTYARD_COLUMNS(Queen)
OUTYARD_COLUMNS(ColonyStay)
OUTYARD_COLUMNS(Box)
OUTYARD_COLUMNS(Inspection)
OUTYARD_COLUMNS(CombSide)
OUTYARD_COLUMNS(SeamCount)
OUTYARD_COLUMNS(Wash)
OUTYARD_COLUMNS(Event)
OUTYARD_COLUMNS(Task)
OUTYARD_COLUMNS(WeatherDay)
OUTYARD_COLUMNS(Flow)
OUTYARD_COLUMNS(GearCount)
OUTYARD_COLUMNS(Setting)
OUTYARD_COLUMNS(Place)
OUTYARD_COLUMNS(Stand)
OUTYARD_COLUMNS(Feature)
OUTYARD_COLUMNS(FrameMove)
OUTYARD_COLUMNS(FrameType)
OUTYARD_COLUMNS(Plan)
OUTYARD_COLUMNS(PlanRow)
OUTYARD_COLUMNS(Visit)
OUTYARD_COLUMNS(SheetRow)
OUTYARD_COLUMNS(SheetLine)
#undef OUTYARD_COLUMNS

int TableSpec::columnIndex(std::string_view column) const {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i].name == column) return static_cast<int>(i);
  }
  return -1;
}

const std::vector<TableSpec>& tableSpecs() {
  static const std::vector<TableSpec> specs = makeSpecs();
  return specs;
}

const TableSpec& tableSpec(TableId id) {
  return tableSpecs()[static_cast<std::size_t>(id)];
}

const TableSpec* findTable(std::string_view name) {
  for (const auto& s : tableSpecs()) {
    if (s.name == name) return &s;
  }
  return nullptr;
}

std::string rowKey(const Row& row) {
  std::string key;
  const auto& columns = tableSpec(row.table).columns;
  bool first = true;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (!columns[i].key) continue;
    if (!first) key += '\x1F';
    first = false;
    const Value& v = row.values.at(i);
    if (const auto* s = std::get_if<std::string>(&v)) key += *s;
    if (const auto* n = std::get_if<std::int64_t>(&v)) key += std::to_string(*n);
    if (std::holds_alternative<double>(v)) throw std::logic_error("a key column is not a real");
  }
  return key;
}

}  // namespace outyard::apiary

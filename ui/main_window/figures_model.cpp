// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window/figures_model.h"

#include <QFont>
#include <QLocale>

#include "core/base/text.h"
#include "core/forecast/parameters.h"
#include "core/planning/boost_figures.h"
#include "core/planning/due_figures.h"
#include "core/planning/rounds.h"
#include "core/session/commands.h"
#include "core/strength/frame_table.h"
#include "core/strength/rule_table.h"
#include "core/strength/verdict_rules.h"
#include "ui/widgets/hive_facts.h"

namespace outyard::main_window {
namespace {

QString text(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}

/// "boost.stack_min_c" as people read it: "stack min c" after the group's own name.
QString readable(std::string_view name) {
  const auto dot = name.find('.');
  QString out = text(dot == std::string_view::npos ? name : name.substr(dot + 1));
  return out.replace(u'_', u' ');
}

QString number(double value) {
  return QLocale().toString(value, 'g', 6);
}

std::optional<double> ownValue(const apiary::Season& season, const std::string& name) {
  const auto set = season.setting(name);
  return set && !set->empty() ? base::parseNumber(*set) : std::nullopt;
}

/// The member of a frame type's row that a column names.
std::optional<double> ofColumn(const apiary::FrameType& t, std::string_view column) {
  if (column == "comb_cm2") return t.combCm2;
  if (column == "cells_per_cm2") return t.cellsPerCm2;
  if (column == "bees_per_cm2") return t.beesPerCm2;
  if (column == "honey_side_kg") return t.honeySideKg;
  if (column == "box_kg") return t.boxKg;
  if (column == "frames_per_box" && t.framesPerBox) return *t.framesPerBox;
  return std::nullopt;
}

void setColumn(apiary::FrameType& t, std::string_view column, std::optional<double> value) {
  if (column == "comb_cm2") t.combCm2 = value;
  if (column == "cells_per_cm2") t.cellsPerCm2 = value;
  if (column == "bees_per_cm2") t.beesPerCm2 = value;
  if (column == "honey_side_kg") t.honeySideKg = value;
  if (column == "box_kg") t.boxKg = value;
  if (column == "frames_per_box") {
    t.framesPerBox = value ? std::optional(static_cast<int>(*value)) : std::nullopt;
  }
}

}  // namespace

FiguresModel::FiguresModel(widgets::SeasonHub& hub, QObject* parent)
    : QAbstractTableModel(parent), m_hub(hub) {
  fill();
  connect(&hub, &widgets::SeasonHub::changed, this, [this] {
    beginResetModel();
    fill();
    endResetModel();
  });
}

void FiguresModel::fill() {
  const apiary::Season& season = m_hub.season();
  m_rows.clear();
  // Frames and boxes: the shipped types, then those of the outfit's own.
  std::vector<std::string> types;
  for (const auto& f : strength::allShippedFigures()) types.push_back(f.frameType);
  for (const auto& [key, type] : season.table<apiary::FrameType>()) {
    if (!strength::shippedFigures(type.frameType)) types.push_back(type.frameType);
  }
  for (const std::string& type : types) {
    const auto* own = season.find<apiary::FrameType>(type);
    const bool shipped = strength::shippedFigures(type) != nullptr;
    // An own type has the columns of any other, and no more than the wide ranges of a comb.
    const auto notes = strength::figureNotes(shipped ? type : "langstroth_deep");
    for (const auto& note : notes) {
      FigureRow row;
      row.group = tr("Frames and boxes");
      row.name = tr("%1: %2").arg(widgets::codeText("frame_type", type), readable(note.column));
      row.setting = std::string(note.column);
      row.frameType = type;
      row.shipped = note.value;
      row.hasShipped = shipped;
      row.own = own ? ofColumn(*own, note.column) : std::nullopt;
      // What an outfit measures may lie outside the range of sources, but not by much.
      row.low = shipped ? 0.5 * note.low : 0.1 * note.low;
      row.high = shipped ? 1.5 * note.high : 3 * note.high;
      row.unit = text(note.unit);
      row.source = shipped ? text(note.source) : (own ? text(own->source) : QString());
      m_rows.push_back(std::move(row));
    }
  }
  const auto table = [&](const QString& group, const auto& specs, const auto& shippedOf) {
    for (const auto& spec : specs) {
      FigureRow row;
      row.group = group;
      row.setting = std::string(spec.name);
      row.name = readable(spec.name);
      row.shipped = shippedOf.*spec.member;
      row.low = spec.min;
      row.high = spec.max;
      row.unit = text(spec.unit);
      row.source = text(spec.source);
      row.own = ownValue(season, row.setting);
      m_rows.push_back(std::move(row));
    }
  };
  for (const auto& spec : strength::ruleSpecs()) {
    FigureRow row;
    row.group = tr("Judgement");
    row.setting = "verdict." + std::string(spec.name);
    row.name = readable(spec.name);
    row.shipped = strength::RuleTable::shipped().figures().*spec.member;
    row.low = spec.low;
    row.high = spec.high;
    row.unit = text(spec.unit);
    row.source = text(spec.source);
    row.own = ownValue(season, row.setting);
    m_rows.push_back(std::move(row));
  }
  for (const auto& f : forecast::Figures::shipped().all()) {
    FigureRow row;
    row.group = tr("Forecast");
    row.setting = "forecast." + f.name;
    row.name = readable(f.name);
    row.shipped = f.value;
    row.low = f.low;
    row.high = f.high;
    row.unit = text(f.unit);
    row.source = text(f.source);
    row.own = ownValue(season, row.setting);
    m_rows.push_back(std::move(row));
  }
  table(tr("Pairs"), planning::boostFigureTable(), planning::BoostFigures{});
  table(tr("What falls due"), planning::dueFigureTable(), planning::DueFigures{});
  table(tr("Rounds"), planning::roundFigureTable(), planning::RoundFigures{});
}

QStringList FiguresModel::groups() const {
  QStringList out;
  for (const FigureRow& row : m_rows) {
    if (!out.contains(row.group)) out << row.group;
  }
  return out;
}

int FiguresModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int FiguresModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : Count;
}

QVariant FiguresModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
  switch (section) {
    case Group:
      return tr("Of");
    case Name:
      return tr("Figure");
    case Value:
      return tr("Value");
    case Shipped:
      return tr("Shipped");
    case Range:
      return tr("May be");
    case Unit:
      return tr("Unit");
    case Source:
      return tr("Source");
    default:
      return {};
  }
}

QVariant FiguresModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const FigureRow& row = m_rows[static_cast<std::size_t>(index.row())];
  if (role == Qt::TextAlignmentRole && (index.column() == Value || index.column() == Shipped)) {
    return QVariant(Qt::AlignRight | Qt::AlignVCenter);
  }
  if (role == Qt::FontRole && row.own) {
    QFont bold;
    bold.setBold(true);
    return bold;
  }
  if (role == Qt::ToolTipRole) {
    return tr("%1, %2. Source: %3")
        .arg(row.name, row.unit.isEmpty() ? tr("no unit") : row.unit,
             row.source.isEmpty() ? tr("not said") : row.source);
  }
  if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
  const bool known = row.own || row.hasShipped;
  switch (index.column()) {
    case Group:
      return row.group;
    case Name:
      return row.name;
    case Value:
      return known ? number(row.own.value_or(row.shipped)) : tr("not given");
    case Shipped:
      return row.hasShipped ? number(row.shipped) : QStringLiteral("–");
    case Range:
      return tr("%1 to %2").arg(number(row.low), number(row.high));
    case Unit:
      return row.unit;
    case Source:
      return row.source;
    default:
      return {};
  }
}

Qt::ItemFlags FiguresModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags flags = QAbstractTableModel::flags(index);
  if (index.column() == Value && m_hub.isOpen()) flags |= Qt::ItemIsEditable;
  return flags;
}

bool FiguresModel::put(const FigureRow& row, std::optional<double> value) {
  const QString source = tr("set in the window");
  if (row.frameType.empty()) {
    return m_hub.execute(session::changeSetting(
        row.setting, value ? base::shortest(*value) : std::string(), source.toStdString()));
  }
  apiary::FrameType type;
  if (const auto* own = m_hub.season().find<apiary::FrameType>(row.frameType)) type = *own;
  type.frameType = row.frameType;
  if (type.source.empty()) type.source = source.toStdString();
  setColumn(type, row.setting, value);
  return m_hub.execute(session::setFrameType(type));
}

bool FiguresModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || index.column() != Value) return false;
  const FigureRow row = m_rows[static_cast<std::size_t>(index.row())];
  const QString typed = value.toString().trimmed();
  bool ok = false;
  double figure = QLocale().toDouble(typed, &ok);
  if (!ok) figure = QLocale::c().toDouble(typed, &ok);
  if (!ok) {
    Q_EMIT refused(tr("“%1” is no number: write for instance %2.").arg(typed, number(row.shipped)));
    return false;
  }
  if (figure < row.low || figure > row.high) {
    Q_EMIT refused(tr("%1: %2 is outside %3 to %4 %5.")
                       .arg(row.name, number(figure), number(row.low), number(row.high), row.unit));
    return false;
  }
  if (row.setting == "frames_per_box" && figure != static_cast<int>(figure)) {
    Q_EMIT refused(tr("%1 is a whole number.").arg(row.name));
    return false;
  }
  const bool same = row.hasShipped && figure == row.shipped;
  if (same && !row.own) return true;
  return put(row, same ? std::nullopt : std::optional(figure));
}

bool FiguresModel::reset(int index) {
  const FigureRow row = m_rows.at(static_cast<std::size_t>(index));
  return row.own && put(row, std::nullopt);
}

bool FiguresModel::addFrameType(const QString& name) {
  const QString code = name.trimmed().toLower().replace(u' ', u'_');
  if (code.isEmpty()) {
    Q_EMIT refused(tr("Give the frame type a name."));
    return false;
  }
  apiary::FrameType type;
  type.frameType = code.toStdString();
  if (strength::shippedFigures(type.frameType) ||
      m_hub.season().find<apiary::FrameType>(type.frameType)) {
    Q_EMIT refused(tr("There is a frame type “%1” already.").arg(name.trimmed()));
    return false;
  }
  type.name = name.trimmed().toStdString();
  type.source = tr("set in the window").toStdString();
  // Without a comb area nothing can be counted on it: it begins as a Langstroth deep.
  const auto* like = strength::shippedFigures("langstroth_deep");
  type.combCm2 = like->combCm2;
  type.framesPerBox = like->framesPerBox;
  return m_hub.execute(session::setFrameType(type));
}

}  // namespace outyard::main_window

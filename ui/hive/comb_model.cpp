// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/comb_model.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/apiary/validate.h"
#include "core/base/text.h"
#include "ui/adapt/words.h"

namespace outyard::hive {
namespace {

using apiary::CombSide;
constexpr int kDefaultFrames = 10;

const apiary::ColumnSpec& percentSpec() {
  const auto& spec = apiary::tableSpec(apiary::TableId::Frames);
  return spec.columns[static_cast<std::size_t>(spec.columnIndex("bees_pct"))];
}

std::optional<double> CombSide::*shareOf(int column) {
  if (column == CombModel::kBees) return &CombSide::beesPct;
  return combContents()[static_cast<std::size_t>(column - CombModel::kFirstContent)].share;
}

bool isShare(int column) {
  return column >= CombModel::kBees && column < CombModel::kMould;
}

}  // namespace

const std::array<Content, kContentCount>& combContents() {
  using sheet::Hatch;
  using sheet::Ink;
#define N(text) QT_TRANSLATE_NOOP("CombContents", text)
  static const std::array<Content, kContentCount> kAll{{
      {&CombSide::honeyPct, N("honey"), N("Honey"), u'H', Ink::Honey, Hatch::Diagonal},
      {&CombSide::nectarPct, N("nectar"), N("Nectar"), u'N', Ink::Nectar, Hatch::None},
      {&CombSide::pollenPct, N("pollen"), N("Pollen"), u'P', Ink::Pollen, Hatch::Horizontal},
      {&CombSide::emptyPct, N("empty comb"), N("Empty"), u'C', Ink::Comb, Hatch::None},
      {&CombSide::undrawnPct, N("undrawn"), N("Undrawn"), u'U', Ink::Undrawn, Hatch::None},
      {&CombSide::sealedPct, N("sealed brood"), N("Sealed"), u'S', Ink::SealedBrood, Hatch::None},
      {&CombSide::openPct, N("open brood"), N("Open"), u'O', Ink::OpenBrood, Hatch::Dots},
      {&CombSide::eggsPct, N("eggs"), N("Eggs"), u'E', Ink::Eggs, Hatch::Vertical},
      {&CombSide::dronePct, N("drone brood"), N("Drone"), u'D', Ink::DroneBrood, Hatch::Dense},
  }};
#undef N
  return kAll;
}

QString contentName(const Content& content) {
  return QCoreApplication::translate("CombContents", content.name);
}

void CombModel::setBoxes(const std::vector<apiary::BoxState>& boxes) {
  beginResetModel();
  m_lines.clear();
  for (const auto& box : boxes) {
    if (box.role == apiary::BoxRole::Feeder) continue;
    const int frames = box.frames > 0 ? box.frames : kDefaultFrames;
    for (int slot = 1; slot <= frames; ++slot) {
      for (const auto side : {apiary::FrameSide::A, apiary::FrameSide::B}) {
        Line line;
        line.side.box = box.position;
        line.side.slot = slot;
        line.side.side = side;
        m_lines.push_back(line);
      }
    }
  }
  endResetModel();
}

void CombModel::setSides(const std::vector<CombSide>& sides) {
  beginResetModel();
  for (const CombSide& side : sides) {
    const auto same = [&](const Line& l) {
      return std::tie(l.side.box, l.side.slot, l.side.side) ==
             std::tie(side.box, side.slot, side.side);
    };
    auto it = std::find_if(m_lines.begin(), m_lines.end(), same);
    if (it == m_lines.end()) it = m_lines.insert(m_lines.end(), Line{});
    it->side = side;
    laid(*it);
  }
  std::stable_sort(m_lines.begin(), m_lines.end(), [](const Line& a, const Line& b) {
    return std::tie(a.side.box, a.side.slot, a.side.side) <
           std::tie(b.side.box, b.side.slot, b.side.side);
  });
  endResetModel();
}

int CombModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int CombModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kColumnCount;
}

QVariant CombModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const Line& line = m_lines.at(static_cast<std::size_t>(index.row()));
  const int column = index.column();
  const auto& bad = line.bad[static_cast<std::size_t>(column)];
  const auto& why = line.why[static_cast<std::size_t>(column)];
  if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::Alignment(Qt::AlignCenter));
  if (role == Qt::ToolTipRole) return column == kSum ? sumFault(line) : why;
  if (role == Qt::AccessibleTextRole) {
    return QStringLiteral("%1 %2: %3")
        .arg(tr("Box %1, comb %2, side %3")
                 .arg(line.side.box)
                 .arg(line.side.slot)
                 .arg(line.side.side == apiary::FrameSide::A ? tr("a") : tr("b")),
             headerData(column, Qt::Horizontal, Qt::DisplayRole).toString(),
             data(index, Qt::DisplayRole).toString());
  }
  if (role == Qt::CheckStateRole && column == kMould) {
    return line.side.mould.value_or(false) ? Qt::Checked : Qt::Unchecked;
  }
  if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
  switch (column) {
    case kBox:
      return line.side.box;
    case kSlot:
      return line.side.slot;
    case kSide:
      return line.side.side == apiary::FrameSide::A ? tr("a") : tr("b");
    case kMould:
      return {};
    case kSum: {
      if (!typed(line)) return {};
      const QString number = QString::number(sum(line), 'g', 4);
      // The sign stands beside the number, so that a wrong sum is told without colour.
      return sumFault(line).isEmpty() ? number : QStringLiteral("! %1").arg(number);
    }
    default:
      break;
  }
  if (!bad.isEmpty()) return bad;
  const auto& share = line.side.*shareOf(column);
  return share ? QVariant(QString::fromStdString(base::shortest(*share))) : QVariant();
}

QVariant CombModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role == Qt::ToolTipRole && isShare(section)) {
    if (section == kBees) return tr("Per cent of the face covered by bees");
    const auto& c = combContents()[static_cast<std::size_t>(section - kFirstContent)];
    return tr("Per cent of the face that is %1; key %2 on the face")
        .arg(contentName(c), QChar(c.key));
  }
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case kBox:
      return tr("Box");
    case kSlot:
      return tr("Comb");
    case kSide:
      return tr("Side");
    case kBees:
      return tr("Bees");
    case kMould:
      return tr("Mould");
    case kSum:
      return tr("Sum");
    default:
      break;
  }
  const auto& c = combContents()[static_cast<std::size_t>(section - kFirstContent)];
  return QCoreApplication::translate("CombContents", c.column);
}

Qt::ItemFlags CombModel::flags(const QModelIndex& index) const {
  Qt::ItemFlags f = Qt::ItemIsSelectable | Qt::ItemIsEnabled;
  if (isShare(index.column())) f |= Qt::ItemIsEditable;
  if (index.column() == kMould) f |= Qt::ItemIsUserCheckable;
  return f;
}

bool CombModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (!index.isValid()) return false;
  Line& line = m_lines.at(static_cast<std::size_t>(index.row()));
  if (role == Qt::CheckStateRole && index.column() == kMould) {
    if (value.toInt() == Qt::Checked) {
      line.side.mould = true;
    } else {
      line.side.mould.reset();
    }
    touched(index.row());
    return true;
  }
  if (role != Qt::EditRole || !isShare(index.column())) return false;
  QString text = value.toString().trimmed();
  if (text.count(u',') == 1 && !text.contains(u'.')) text.replace(u',', u'.');
  auto& bad = line.bad[static_cast<std::size_t>(index.column())];
  auto& why = line.why[static_cast<std::size_t>(index.column())];
  auto& share = line.side.*shareOf(index.column());
  const auto parsed = apiary::parseValue(percentSpec(), text.toStdString());
  bad.clear();
  why.clear();
  if (!parsed) {
    bad = text;
    why = adapt::words(parsed.failure());
    share.reset();
  } else if (const auto* number = std::get_if<double>(&parsed.value())) {
    share = *number;
  } else {
    share.reset();
  }
  laid(line);
  touched(index.row());
  return true;
}

std::vector<CombSide> CombModel::typedSides() const {
  std::vector<CombSide> out;
  for (const Line& line : m_lines) {
    if (typed(line)) out.push_back(line.side);
  }
  return out;
}

bool CombModel::anyTyped() const {
  return std::any_of(m_lines.begin(), m_lines.end(), [](const Line& l) {
    return typed(l) ||
           std::any_of(l.bad.begin(), l.bad.end(), [](const QString& b) { return !b.isEmpty(); });
  });
}

int CombModel::firstFaultRow() const {
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    const Line& l = m_lines[i];
    const bool bad =
        std::any_of(l.why.begin(), l.why.end(), [](const QString& w) { return !w.isEmpty(); });
    if (bad || !sumFault(l).isEmpty()) return static_cast<int>(i);
  }
  return -1;
}

QString CombModel::firstFault() const {
  const int row = firstFaultRow();
  if (row < 0) return {};
  const Line& l = m_lines[static_cast<std::size_t>(row)];
  QString what = sumFault(l);
  for (const QString& w : l.why) {
    if (!w.isEmpty()) what = w;
  }
  return tr("Box %1, comb %2, side %3: %4")
      .arg(l.side.box)
      .arg(l.side.slot)
      .arg(l.side.side == apiary::FrameSide::A ? tr("a") : tr("b"), what);
}

const CombSide& CombModel::side(int row) const {
  return m_lines.at(static_cast<std::size_t>(row)).side;
}

const Eighths& CombModel::eighths(int row) const {
  return m_lines.at(static_cast<std::size_t>(row)).eighths;
}

void CombModel::setEighth(int row, int eighth, std::optional<int> content) {
  Line& line = m_lines.at(static_cast<std::size_t>(row));
  line.eighths.at(static_cast<std::size_t>(eighth)) = content;
  counted(line);
  touched(row);
}

void CombModel::fillSide(int row, int content) {
  Line& line = m_lines.at(static_cast<std::size_t>(row));
  line.eighths.fill(content);
  counted(line);
  touched(row);
}

int CombModel::fillBox(int row) {
  const Line from = m_lines.at(static_cast<std::size_t>(row));
  int filled = 0;
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    Line& line = m_lines[i];
    if (line.side.box != from.side.box || typed(line)) continue;
    const int slot = line.side.slot;
    const auto side = line.side.side;
    line = from;
    line.side.slot = slot;
    line.side.side = side;
    ++filled;
  }
  if (filled > 0) {
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, kColumnCount - 1));
    Q_EMIT edited();
  }
  return filled;
}

void CombModel::copyToOtherSide(int row) {
  const Line from = m_lines.at(static_cast<std::size_t>(row));
  for (std::size_t i = 0; i < m_lines.size(); ++i) {
    Line& line = m_lines[i];
    if (line.side.box != from.side.box || line.side.slot != from.side.slot ||
        line.side.side == from.side.side) {
      continue;
    }
    const auto side = line.side.side;
    line = from;
    line.side.side = side;
    touched(static_cast<int>(i));
  }
}

bool CombModel::copyFromBefore(int row) {
  if (row < 1) return false;
  Line& line = m_lines.at(static_cast<std::size_t>(row));
  Line like = m_lines.at(static_cast<std::size_t>(row) - 1);
  like.side.box = line.side.box;
  like.side.slot = line.side.slot;
  like.side.side = line.side.side;
  line = std::move(like);
  touched(row);
  return true;
}

void CombModel::clearSide(int row) {
  Line& line = m_lines.at(static_cast<std::size_t>(row));
  Line blank;
  blank.side.box = line.side.box;
  blank.side.slot = line.side.slot;
  blank.side.side = line.side.side;
  line = blank;
  touched(row);
}

bool CombModel::typed(const Line& line) {
  if (line.side.beesPct || line.side.mould) return true;
  return std::any_of(combContents().begin(), combContents().end(),
                     [&](const Content& c) { return (line.side.*c.share).has_value(); });
}

double CombModel::sum(const Line& line) {
  double total = 0;
  for (const Content& c : combContents()) total += (line.side.*c.share).value_or(0);
  return total;
}

QString CombModel::sumFault(const Line& line) {
  if (!typed(line)) return {};
  CombSide side = line.side;
  // Keys that the check asks for and that recording fills in.
  side.inspection = apiary::RecordId(std::string("draft"));
  side.hive = apiary::HiveId(std::string("draft"));
  for (const auto& fault : apiary::checkRow(apiary::toRow(side))) return adapt::words(fault.what);
  return {};
}

void CombModel::laid(Line& line) {
  // Whole eighths by largest remainder, food above, as the drawing of the comb does.
  std::array<double, kContentCount> share{};
  std::array<int, kContentCount> whole{};
  double total = 0;
  for (std::size_t i = 0; i < share.size(); ++i) {
    share[i] = (line.side.*combContents()[i].share).value_or(0) * kEighths / 100;
    total += share[i];
  }
  int left = std::min(kEighths, static_cast<int>(std::lround(total)));
  for (std::size_t i = 0; i < share.size(); ++i) {
    whole[i] = std::min(left, static_cast<int>(std::floor(share[i] + 1e-9)));
    left -= whole[i];
  }
  while (left > 0) {
    std::size_t best = 0;
    for (std::size_t i = 1; i < share.size(); ++i) {
      if (share[i] - whole[i] > share[best] - whole[best] + 1e-9) best = i;
    }
    ++whole[best];
    --left;
  }
  line.eighths.fill(std::nullopt);
  std::size_t at = 0;
  for (std::size_t i = 0; i < whole.size(); ++i) {
    for (int n = 0; n < whole[i] && at < line.eighths.size(); ++n) {
      line.eighths[at++] = static_cast<int>(i);
    }
  }
}

void CombModel::counted(Line& line) {
  std::array<int, kContentCount> count{};
  bool whole = true;
  for (const auto& e : line.eighths) {
    if (e) {
      ++count.at(static_cast<std::size_t>(*e));
    } else {
      whole = false;
    }
  }
  for (std::size_t i = 0; i < count.size(); ++i) {
    auto& share = line.side.*combContents()[i].share;
    const int column = kFirstContent + static_cast<int>(i);
    line.bad[static_cast<std::size_t>(column)].clear();
    line.why[static_cast<std::size_t>(column)].clear();
    if (count[i] > 0) {
      share = count[i] * 100.0 / kEighths;
    } else if (whole) {
      share = 0;  // the whole face was told, so what is not on it is known to be none
    } else {
      share.reset();
    }
  }
}

void CombModel::touched(int row) {
  Q_EMIT dataChanged(index(row, 0), index(row, kColumnCount - 1));
  Q_EMIT edited();
}

}  // namespace outyard::hive

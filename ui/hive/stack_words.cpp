// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/stack_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>

#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/hive/comb_model.h"
#include "ui/hive/record_words.h"

namespace outyard::hive {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(StackWords)
};

QString roleText(apiary::BoxRole role) {
  switch (role) {
    case apiary::BoxRole::Chamber:
      return Words::tr("chamber");
    case apiary::BoxRole::Super:
      return Words::tr("super");
    case apiary::BoxRole::Feeder:
      return Words::tr("feeder");
  }
  return {};
}

QString combCount(std::size_t n) {
  return n == 1 ? Words::tr("1 comb") : Words::tr("%1 combs").arg(n);
}

}  // namespace

QString sideWords(const std::optional<apiary::SideSeen>& side) {
  if (!side) return Words::tr("not seen");
  QStringList parts;
  for (const Content& c : combContents()) {
    const auto& share = side->holds.*c.share;
    if (share && *share > 0) {
      parts << Words::tr("%1 % %2").arg(adapt::roundNumber(*share), contentName(c));
    }
  }
  if (parts.isEmpty()) parts << Words::tr("contents not told");
  if (side->holds.beesPct) {
    parts << Words::tr("bees on %1 %").arg(adapt::roundNumber(*side->holds.beesPct));
  }
  if (side->holds.mould.value_or(false)) parts << Words::tr("mould");
  return parts.join(QStringLiteral(", "));
}

QString combWords(const apiary::HiveCombs& combs, int box, int slot) {
  const auto* frame = combs.frame(box, slot);
  if (!frame) return {};
  const QString head = Words::tr("Box %1, comb %2").arg(box).arg(slot);
  if (!frame->known()) return Words::tr("%1: not seen yet").arg(head);
  QStringList sides;
  for (int i = 0; i < 2; ++i) {
    const auto& side = frame->sides[static_cast<std::size_t>(i)];
    QString words =
        Words::tr("side %1 %2").arg(i == 0 ? Words::tr("a") : Words::tr("b"), sideWords(side));
    if (side) words += Words::tr(" (%1)").arg(adapt::dateText(side->seenOn));
    sides << words;
  }
  return Words::tr("%1: %2").arg(head, sides.join(QStringLiteral("; ")));
}

QString mostlyWords(const apiary::CombBox& box) {
  using apiary::CombSide;
  double brood = 0, food = 0, empty = 0, undrawn = 0;
  for (const auto& f : box.frames) {
    brood += f.sum(&CombSide::sealedPct) + f.sum(&CombSide::openPct) + f.sum(&CombSide::eggsPct);
    food += f.sum(&CombSide::honeyPct) + f.sum(&CombSide::nectarPct);
    empty += f.sum(&CombSide::emptyPct);
    undrawn += f.sum(&CombSide::undrawnPct);
  }
  const double most = std::max({brood, food, empty, undrawn});
  if (most <= 0) return Words::tr("not seen");
  if (brood > 0) return Words::tr("brood");
  if (most == food) return Words::tr("honey");
  return most == empty ? Words::tr("drawn comb") : Words::tr("foundation");
}

QString boxWords(const apiary::Season& season, const apiary::HiveCombs& combs, int position) {
  const auto* box = combs.box(position);
  if (!box) return {};
  const QString head = Words::tr("Box %1, %2, %3")
                           .arg(QString::number(position), roleText(box->role),
                                frameTypeText(season, box->frameType));
  return box->role == apiary::BoxRole::Feeder
             ? head
             : Words::tr("%1, %2, %3").arg(head, combCount(box->frames.size()), mostlyWords(*box));
}

QString heapWords(const apiary::Season& season, const apiary::HeapItem& item) {
  const QString type = frameTypeText(season, item.box.frameType);
  const QString from = Words::tr("%1, %2").arg(QString::fromStdString(item.fromHive.str()),
                                               adapt::dateText(item.since));
  const QString what =
      Words::tr("%1, %2").arg(item.wholeBox ? roleText(item.box.role) : Words::tr("comb"), type);
  const bool seen = std::any_of(item.box.frames.begin(), item.box.frames.end(),
                                [](const apiary::CombFrame& f) { return f.known(); });
  if (!seen) return Words::tr("%1\noff %2").arg(what, from);
  return Words::tr("%1\noff %2: %3").arg(what, from, mostlyWords(item.box));
}

}  // namespace outyard::hive

// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "core/sheet/walking_order.h"
#include "ui/hive/comb_face_edit.h"
#include "ui/hive/comb_model.h"
#include "ui/hive/stack_board.h"
#include "ui/hive/stack_words.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/session_model.h"

// The dialogs of the stack. Their cautions are common practice of the trade, no source.
namespace outyard::hive {

using apiary::Goods;
using widgets::StackPick;

namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

/// Puts a widget over the caution and the buttons of the dialog.
void putIn(VerbDialog& dialog, QWidget* panel) {
  if (auto* all = qobject_cast<QVBoxLayout*>(dialog.layout())) all->insertWidget(1, panel);
}

std::optional<base::ColonyId> colonyAt(const apiary::HiveState& state, int box) {
  if (!state.stacked()) return std::nullopt;
  for (const auto& b : state.boxes) {
    if (b.position == box && b.colony) return b.colony;
  }
  return state.colonies.front().colony;
}

QString combCaution(const Lift& lift) {
  if (!lift.fromHive()) {
    return StackBoard::tr(
        "Drawn comb goes beside the brood, food stays in touch with the nest. No comb from a hive "
        "that died of an unknown cause.");
  }
  return StackBoard::tr(
      "Look for the queen on the comb before it leaves the hive. Brood is out for minutes only, "
      "from 14 to 16 °C, and keeps its order. Shaken bees: set the queen aside first; about half "
      "fly home. Begin at an empty outer frame, so that nobody is rolled.");
}

QString boxCaution() {
  return StackBoard::tr(
      "A full chamber weighs up to 40 kg, a full super up to 25 kg: lift with two, knees bent, or "
      "comb by comb. Look for the queen before a box leaves the hive. Reverse only in warm weather "
      "and never so that the nest is divided. Into another colony only over paper.");
}

}  // namespace

void StackBoard::askMove(const Lift& lift, const Landing& landing) {
  const bool box = lift.isBox();
  QString title = tr("Set in from the gear heap");
  if (lift.what == Lift::What::Box) {
    title = tr("Move box %1 of %2").arg(lift.position).arg(qs(lift.hive.str()));
  } else if (lift.what == Lift::What::Combs) {
    const auto& first = lift.combs.front();
    title =
        lift.combs.size() == 1
            ? tr("Move comb %1 of box %2, %3")
                  .arg(QString::number(first.slot), QString::number(first.box), qs(lift.hive.str()))
            : tr("Move %1 combs of %2").arg(lift.combs.size()).arg(qs(lift.hive.str()));
  }
  VerbDialog dialog(m_hub, QStringLiteral("moveDialog"), title,
                    box ? boxCaution() : combCaution(lift), this);
  auto* hive = dialog.addChoice(QStringLiteral("toHive"), tr("To"));
  auto* toBox = dialog.addChoice(QStringLiteral("toBox"), box ? tr("Position") : tr("Box"));
  auto* toSlot = box ? nullptr : dialog.addChoice(QStringLiteral("toSlot"), tr("Place"));
  auto* how = lift.what == Lift::What::Combs && lift.combs.size() == 1
                  ? dialog.addChoice(QStringLiteral("how"), tr("How"))
                  : nullptr;
  auto* bees = lift.fromHive() ? dialog.addChoice(QStringLiteral("bees"), tr("Bees")) : nullptr;
  auto* fill = lift.what == Lift::What::FreshBox
                   ? dialog.addChoice(QStringLiteral("fill"), tr("Its combs"))
                   : nullptr;

  std::vector<base::HiveId> ids;
  for (const auto& state : m_hub.hives(m_states[0].yard)) ids.push_back(state.hive);
  std::sort(ids.begin(), ids.end(),
            [](const auto& a, const auto& b) { return sheet::naturalLess(a.str(), b.str()); });
  for (const auto& id : ids) {
    hive->addItem(id == lift.hive ? tr("%1, the same hive").arg(qs(id.str())) : qs(id.str()),
                  qs(id.str()));
  }
  if (lift.fromHive()) hive->addItem(tr("the gear heap"), QString());
  if (how) {
    how->addItem(tr("between the combs"), false);
    how->addItem(tr("comb for comb: they change places"), true);
  }
  if (bees) {
    bees->addItem(tr("with the bees on it"), true);
    bees->addItem(tr("shaken: the bees stay"), false);
  }
  if (fill) {
    fill->addItem(tr("drawn and empty"), static_cast<int>(Goods::Drawn));
    fill->addItem(tr("foundation"), static_cast<int>(Goods::Foundation));
    fill->addItem(tr("full of honey"), static_cast<int>(Goods::HoneyComb));
  }
  const auto hiveChosen = [hive]() -> std::optional<base::HiveId> {
    const QString id = hive->currentData().toString();
    if (id.isEmpty()) return std::nullopt;
    return base::HiveId(id.toStdString());
  };
  const auto fillSlots = [=, this, &dialog] {
    if (!toSlot) return;
    const QSignalBlocker quiet(toSlot);
    toSlot->clear();
    const auto id = hiveChosen();
    toSlot->setEnabled(id.has_value());
    if (!id) return;
    const auto combs = apiary::combsOfHive(m_hub.season(), *id, dialog.date());
    const auto* in = combs.box(toBox->currentData().toInt());
    const int count = in ? static_cast<int>(in->frames.size()) : 0;
    for (int slot = 1; slot <= count; ++slot) {
      toSlot->addItem(tr("at comb %1").arg(slot), slot);
    }
    toSlot->addItem(count == 0 ? tr("as the first comb") : tr("behind comb %1").arg(count),
                    count + 1);
  };
  const auto fillBoxes = [=, this, &dialog] {
    const QSignalBlocker quiet(toBox);
    toBox->clear();
    const auto id = hiveChosen();
    toBox->setEnabled(id.has_value());
    if (!id) return;
    const auto combs = apiary::combsOfHive(m_hub.season(), *id, dialog.date());
    const int count = static_cast<int>(combs.boxes.size());
    const bool own = lift.what == Lift::What::Box && *id == lift.hive;
    for (int p = 1; p <= (box && !own ? count + 1 : count); ++p) {
      if (box) {
        toBox->addItem(p == 1                       ? tr("1, on the floor")
                       : p >= count + (own ? 0 : 1) ? tr("%1, on top").arg(p)
                                                    : QString::number(p),
                       p);
      } else {
        toBox->addItem(boxWords(m_hub.season(), combs, p), p);
      }
    }
  };
  const auto choose = [](QComboBox* in, const QVariant& value) {
    if (!in) return;
    const QSignalBlocker quiet(in);
    in->setCurrentIndex(std::max(0, in->findData(value)));
  };
  choose(hive, landing.hive ? qs(landing.hive->str()) : QString());
  fillBoxes();
  choose(toBox, landing.box);
  fillSlots();
  choose(toSlot, landing.slot);
  choose(how, landing.exchange);
  choose(bees, landing.withBees);
  connect(hive, &QComboBox::currentIndexChanged, &dialog, [=, &dialog] {
    fillBoxes();
    toBox->setCurrentIndex(toBox->count() - 1);
    fillSlots();
    if (toSlot) toSlot->setCurrentIndex(toSlot->count() - 1);
    // Nobody leaves bees on the heap.
    if (bees && !hiveChosen()) bees->setCurrentIndex(1);
    dialog.refresh();
  });
  connect(toBox, &QComboBox::currentIndexChanged, &dialog, [=, &dialog] {
    fillSlots();
    if (toSlot) toSlot->setCurrentIndex(toSlot->count() - 1);
    dialog.refresh();
  });
  dialog.setMaker([=, this, &dialog]() -> session::CommandPtr {
    Landing to;
    to.hive = hiveChosen();
    to.box = toBox->currentData().toInt();
    to.slot = toSlot ? toSlot->currentData().toInt() : 1;
    to.exchange = how && how->currentData().toBool() && to.hive;
    to.withBees = !bees || bees->currentData().toBool();
    Lift what = lift;
    if (fill) what.fresh = static_cast<Goods>(fill->currentData().toInt());
    return commandFor(m_hub, what, to, dialog.date());
  });
  if (!m_hub.dialogs().run(dialog)) return say(tr("Everything stays where it was."));
  if (m_hub.execute(dialog.command(), this)) say(tr("Done; Undo takes it back."));
}

void StackBoard::moveDialog() {
  const auto lift = liftOf(activeView());
  if (!lift || !whyNothingMoves().isEmpty()) return;
  Landing to;
  to.hive = lift->hive;
  if (lift->isBox()) {
    const int count = m_views[static_cast<std::size_t>(activeView())]->boxCount();
    to.box = lift->position < count ? lift->position + 1 : std::max(1, lift->position - 1);
  } else {
    const auto& first = lift->combs.front();
    to.box = first.box;
    to.slot = m_views[static_cast<std::size_t>(activeView())]->combCount(first.box) + 1;
  }
  askMove(*lift, to);
}

void StackBoard::heapDialog() {
  const auto lift = liftOfItem(m_heap->currentItem());
  if (!lift || !m_hive || !whyNothingMoves().isEmpty()) return;
  askMove(*lift, usualLanding(m_hub, *lift, *m_hive, today()));
}

void StackBoard::combDialog() {
  const auto which = static_cast<std::size_t>(activeView());
  const auto& picks = m_views[which]->picked();
  if (picks.empty() || picks.back().slot == 0 || !whyNothingMoves().isEmpty()) return;
  const StackPick at = picks.back();
  const auto& combs = m_combs[which];
  const auto& state = m_states[which];
  const auto* in = combs.box(at.box);
  if (!in) return;
  VerbDialog dialog(
      m_hub, QStringLiteral("combDialog"),
      tr("Comb %1 of box %2, %3, as seen")
          .arg(QString::number(at.slot), QString::number(at.box), qs(state.hive.str())),
      {}, this);
  CombModel model;
  apiary::BoxState box;
  box.position = at.box;
  box.frameType = in->frameType;
  box.frames = static_cast<int>(in->frames.size());
  model.setBoxes({box});
  std::vector<apiary::CombSide> known;
  for (int i = 0; i < 2; ++i) {
    const auto& side =
        in->frames[static_cast<std::size_t>(at.slot) - 1].sides.at(static_cast<std::size_t>(i));
    if (!side) continue;
    apiary::CombSide s = side->holds;
    s.box = at.box;
    s.slot = at.slot;
    s.side = i == 0 ? apiary::FrameSide::A : apiary::FrameSide::B;
    known.push_back(std::move(s));
  }
  model.setSides(known);
  auto* panel = new QWidget(&dialog);
  auto* grid = new QGridLayout(panel);
  grid->setContentsMargins(0, 0, 0, 0);
  for (int i = 0; i < 2; ++i) {
    const int row = 2 * (at.slot - 1) + i;
    const QString name = i == 0 ? tr("Side a") : tr("Side b");
    auto* face = new CombFaceEdit(model, panel);
    face->setObjectName(i == 0 ? QStringLiteral("faceA") : QStringLiteral("faceB"));
    face->setAccessibleName(tr("%1 in eighths").arg(name));
    face->setRow(row);
    face->setFixedSize(260, 170);
    auto* mould = new QCheckBox(i == 0 ? tr("&Mould on side a") : tr("M&ould on side b"), panel);
    mould->setObjectName(i == 0 ? QStringLiteral("mouldA") : QStringLiteral("mouldB"));
    mould->setChecked(model.side(row).mould.value_or(false));
    connect(mould, &QCheckBox::toggled, &dialog, [&model, row](bool on) {
      model.setData(model.index(row, CombModel::kMould), on ? Qt::Checked : Qt::Unchecked,
                    Qt::CheckStateRole);
    });
    grid->addWidget(new QLabel(name, panel), 0, i);
    grid->addWidget(face, 1, i);
    grid->addWidget(mould, 2, i);
  }
  auto* copy = new QPushButton(tr("&Copy side a to b"), panel);
  copy->setObjectName(QStringLiteral("copySide"));
  copy->setAutoDefault(false);
  const int rowA = 2 * (at.slot - 1);
  connect(copy, &QPushButton::clicked, &dialog, [&model, rowA] { model.copyToOtherSide(rowA); });
  grid->addWidget(copy, 3, 0);
  auto* legend = new ContentLegend(true, panel);
  grid->addWidget(legend, 4, 0, 1, 2);
  legend->setFixedWidth(526);
  legend->setFixedHeight(legend->heightForWidth(526));
  putIn(dialog, panel);
  dialog.setMinimumWidth(panel->sizeHint().width() + 40);
  dialog.addSentence(
      tr("A letter fills an eighth, Shift and the letter the whole side. It joins the day's look "
         "at the colony."));
  connect(&model, &CombModel::edited, &dialog, &VerbDialog::refresh);
  dialog.setMaker([&, this]() -> session::CommandPtr {
    std::vector<apiary::CombSide> sides;
    for (const auto& side : model.typedSides()) {
      if (side.slot == at.slot) sides.push_back(side);
    }
    return session::recordCombs(state.hive, colonyAt(state, at.box), dialog.date(),
                                std::move(sides));
  });
  dialog.findChild<CombFaceEdit*>(QStringLiteral("faceA"))->setFocus();
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void StackBoard::fillDialog() {
  const auto which = static_cast<std::size_t>(activeView());
  if (!hiveOf(activeView()) || !whyNothingMoves().isEmpty()) return;
  const auto state = m_states[which];
  VerbDialog dialog(m_hub, QStringLiteral("fillDialog"),
                    tr("A whole box of %1 as seen").arg(qs(state.hive.str())), {}, this);
  auto* box = dialog.addChoice(QStringLiteral("box"), tr("Box"));
  for (const auto& each : m_combs[which].boxes) {
    if (each.role == apiary::BoxRole::Feeder) continue;
    box->addItem(boxWords(m_hub.season(), m_combs[which], each.position), each.position);
  }
  const auto& picks = m_views[which]->picked();
  const int picked = picks.empty() ? box->count() : picks.back().box;
  box->setCurrentIndex(std::max(0, box->findData(picked)));
  auto* with = dialog.addChoice(QStringLiteral("with"), tr("All its combs are"));
  with->addItem(tr("full of honey"), static_cast<int>(Goods::Stores));
  with->addItem(tr("drawn and empty"), static_cast<int>(Goods::Drawn));
  with->addItem(tr("foundation"), static_cast<int>(Goods::Foundation));
  dialog.addSentence(tr("Both sides of every comb. It joins the day's look at the colony."));
  dialog.setMaker([=, this, &dialog] {
    const int position = box->currentData().toInt();
    return session::recordCombs(
        state.hive, colonyAt(state, position), dialog.date(),
        session::filledBox(m_hub.season(), state.hive, position,
                           static_cast<Goods>(with->currentData().toInt()), dialog.date()));
  });
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

void StackBoard::middleDialog() {
  const auto which = static_cast<std::size_t>(activeView());
  if (!hiveOf(activeView()) || !whyNothingMoves().isEmpty()) return;
  const auto hive = m_states[which].hive;
  VerbDialog dialog(
      m_hub, QStringLiteral("middleDialog"), tr("Brood of %1 to the middle").arg(qs(hive.str())),
      tr("Combs with brood stay in their order, side by side; food stays in touch with the nest on "
         "both sides. Brood is out for minutes only, from 14 to 16 °C. In the cold the nest is not "
         "taken apart."),
      this);
  auto* box = dialog.addChoice(QStringLiteral("box"), tr("In"));
  box->addItem(tr("every chamber with brood"), 0);
  for (const auto& each : m_combs[which].boxes) {
    if (each.role != apiary::BoxRole::Chamber) continue;
    box->addItem(boxWords(m_hub.season(), m_combs[which], each.position), each.position);
  }
  dialog.setMaker([=, &dialog] {
    const int position = box->currentData().toInt();
    return session::broodToMiddle(hive, position > 0 ? std::optional<int>(position) : std::nullopt,
                                  dialog.date());
  });
  if (m_hub.dialogs().run(dialog)) m_hub.execute(dialog.command(), this);
}

}  // namespace outyard::hive

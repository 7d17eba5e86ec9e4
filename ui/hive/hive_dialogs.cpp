// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLineEdit>
#include <QLocale>
#include <QPlainTextEdit>
#include <array>
#include <cmath>

#include "core/apiary/validate.h"
#include "core/sheet/walking_order.h"
#include "ui/adapt/units.h"
#include "ui/hive/hive_actions.h"
#include "ui/hive/record_words.h"
#include "ui/hive/stack_work.h"
#include "ui/hive/verb_dialog.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

// The dialogs of HiveActions. Their cautions are common practice of the trade, no source.
namespace outyard::hive {

using apiary::EventKind;
using apiary::Goods;

namespace {

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::string trimmed(const QString& text) {
  return text.trimmed().toStdString();
}

}  // namespace

void HiveActions::feed() {
  VerbDialog dialog(
      m_hub, QStringLiteral("feedDialog"), tr("Feed %1").arg(qs(hive().str())),
      tr("No syrup below 10 °C: fondant then. Feed inside and in the evening, spill nothing, keep "
         "the entrance small against robbing. No honey of unknown origin, no feed while supers "
         "for harvest are on."),
      &m_window);
  auto* what = dialog.addChoice(QStringLiteral("what"), tr("Feed"));
  for (const Goods goods : {Goods::Syrup11, Goods::Syrup21, Goods::Fondant, Goods::DrySugar,
                            Goods::HoneyComb, Goods::PollenPatty, Goods::PollenFeed}) {
    what->addItem(goodsText(goods), static_cast<int>(goods));
  }
  auto* amount = dialog.addNumber(QStringLiteral("amount"), tr("Amount"), 0, 300, 2);
  auto* unit = dialog.addChoice(QStringLiteral("unit"), tr("Unit"));
  const auto units = adapt::Units::from(m_hub.settings());
  unit->addItem(tr("litres"), static_cast<int>(apiary::Unit::L));
  unit->addItem(units.massUnit(), static_cast<int>(apiary::Unit::Kg));
  unit->addItem(tr("frames"), static_cast<int>(apiary::Unit::Frames));
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  // Syrup is measured out, everything else is weighed, combs are counted.
  connect(what, &QComboBox::currentIndexChanged, &dialog, [what, unit] {
    const auto goods = static_cast<Goods>(what->currentData().toInt());
    const auto usual = goods == Goods::Syrup11 || goods == Goods::Syrup21 ? apiary::Unit::L
                       : goods == Goods::HoneyComb                        ? apiary::Unit::Frames
                                                                          : apiary::Unit::Kg;
    unit->setCurrentIndex(unit->findData(static_cast<int>(usual)));
  });
  if (task()) {
    if (task()->what) what->setCurrentIndex(what->findData(static_cast<int>(*task()->what)));
    if (task()->unit) unit->setCurrentIndex(unit->findData(static_cast<int>(*task()->unit)));
    if (task()->amount) {
      const bool kg = task()->unit == apiary::Unit::Kg;
      const double shown = kg ? units.shown(base::Mass{*task()->amount}) : *task()->amount;
      amount->setText(QLocale().toString(shown, 'f', 1));
    }
  }
  dialog.setMaker([=, this, &dialog] {
    auto e = event(EventKind::Fed, dialog.date());
    e.what = static_cast<Goods>(what->currentData().toInt());
    e.amount = VerbDialog::number(amount);
    if (e.amount) {
      e.unit = static_cast<apiary::Unit>(unit->currentData().toInt());
      if (*e.unit == apiary::Unit::Kg) e.amount = units.massFrom(*e.amount).value;
    }
    e.detail = trimmed(detail->text());
    return session::recordEvent(e);
  });
  carryOut(dialog);
}

void HiveActions::treat() {
  VerbDialog dialog(
      m_hub, QStringLiteral("treatDialog"), tr("Treat %1").arg(qs(hive().str())),
      tr("The label goes first. Gloves and goggles; with acids an acid-proof mask, in the open, "
         "water at hand. Nothing that is not for hives. Type the waiting period from the label: no "
         "harvest before it is over."),
      &m_window);
  auto* product =
      dialog.addText(QStringLiteral("product"), tr("Product"), tr("as the label calls it"));
  auto* dose = dialog.addText(QStringLiteral("dose"), tr("Dose"), tr("as given, with its unit"));
  auto* batch = dialog.addText(QStringLiteral("batch"), tr("Batch"));
  auto* days =
      dialog.addNumber(QStringLiteral("withdrawal"), tr("Waiting period (days)"), 0, 3650, 0);
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    auto e = event(EventKind::Treated, dialog.date());
    e.method = trimmed(product->text());
    e.dose = trimmed(dose->text());
    e.batch = trimmed(batch->text());
    if (const auto n = VerbDialog::number(days)) e.withdrawalDays = static_cast<int>(*n);
    e.detail = trimmed(detail->text());
    return session::recordEvent(e);
  });
  carryOut(dialog);
}

void HiveActions::note() {
  VerbDialog dialog(m_hub, QStringLiteral("noteDialog"), tr("Note on %1").arg(qs(hive().str())), {},
                    &m_window);
  auto* text = dialog.addNotes(QStringLiteral("text"), tr("Note"));
  dialog.setMaker([=, this, &dialog]() -> session::CommandPtr {
    auto e = event(EventKind::Note, dialog.date());
    e.detail = trimmed(text->toPlainText());
    if (e.detail.empty()) return nullptr;
    return session::recordEvent(e);
  });
  text->setFocus();
  carryOut(dialog);
}

void HiveActions::wash() {
  VerbDialog dialog(
      m_hub, QStringLiteral("washDialog"), tr("Mite count of %1").arg(qs(hive().str())),
      tr("Be sure the queen is not in the cup. A wash kills its bees: never 300 bees from a colony "
         "under 4 seams. Alcohol burns: no lit smoker beside it."),
      &m_window);
  auto* method = dialog.addChoice(QStringLiteral("method"), tr("Method"));
  for (const auto m : {apiary::WashMethod::Alcohol, apiary::WashMethod::Sugar,
                       apiary::WashMethod::Co2, apiary::WashMethod::Soap}) {
    method->addItem(washMethodText(m), static_cast<int>(m));
  }
  auto* bees = dialog.addNumber(QStringLiteral("bees"), tr("Bees in the sample"), 1, 5000, 0);
  bees->setText(QStringLiteral("300"));
  auto* mites = dialog.addNumber(QStringLiteral("mites"), tr("Mites counted"), 0, 5000, 0);
  dialog.setMaker([=, this, &dialog]() -> session::CommandPtr {
    const auto b = VerbDialog::number(bees), m = VerbDialog::number(mites);
    if (!b || !m) return nullptr;  // no mites is a count of 0, not an empty field
    apiary::Wash w;
    w.hive = hive();
    w.colony = named();
    w.date = dialog.date();
    w.method = static_cast<apiary::WashMethod>(method->currentData().toInt());
    w.bees = static_cast<int>(*b);
    w.mites = static_cast<int>(*m);
    return session::recordWash(w);
  });
  mites->setFocus();
  carryOut(dialog);
}

void HiveActions::addBox() {
  const auto& season = m_hub.season();
  const auto now = state(m_hub.workingDate());
  VerbDialog dialog(
      m_hub, QStringLiteral("addBoxDialog"), tr("Add a box to %1").arg(qs(hive().str())),
      tr("Bees on 7 to 8 of 10 frames and a flow or feed first: too early chills the nest. In cold "
         "or doubt an empty chamber goes under, in a flow over. Drawn comb before foundation. Full "
         "boxes weigh up to 40 kg: lift with two."),
      &m_window);
  auto* role = dialog.addChoice(QStringLiteral("role"), tr("What"));
  role->addItem(tr("chamber"), static_cast<int>(apiary::BoxRole::Chamber));
  role->addItem(tr("super"), static_cast<int>(apiary::BoxRole::Super));
  role->addItem(tr("feeder"), static_cast<int>(apiary::BoxRole::Feeder));
  auto* spot = dialog.addChoice(QStringLiteral("spot"), tr("Where"));
  spot->addItem(tr("on top"), static_cast<int>(BoxSpot::Top));
  spot->addItem(tr("over the chambers, under the supers"), static_cast<int>(BoxSpot::OverChambers));
  spot->addItem(tr("under the lowest box"), static_cast<int>(BoxSpot::Bottom));
  auto* type = dialog.addChoice(QStringLiteral("frameType"), tr("Frames of the type"));
  for (const auto shipped : apiary::shippedFrameTypes()) {
    type->addItem(frameTypeText(season, std::string(shipped)),
                  QString::fromUtf8(shipped.data(), static_cast<qsizetype>(shipped.size())));
  }
  for (const auto& [key, own] : season.table<apiary::FrameType>()) {
    if (type->findData(qs(key)) < 0) type->addItem(frameTypeText(season, key), qs(key));
  }
  auto* frames = dialog.addNumber(QStringLiteral("frames"), tr("Frames in it"), 0, 60, 0);
  auto* beneath = dialog.addChoice(QStringLiteral("beneath"), tr("Between it and the box beneath"));
  beneath->addItem(tr("nothing"), static_cast<int>(apiary::Beneath::None));
  beneath->addItem(tr("excluder"), static_cast<int>(apiary::Beneath::Excluder));
  auto* fill = dialog.addChoice(QStringLiteral("fill"), tr("Its combs"));
  fill->addItem(tr("not told"));
  fill->addItem(tr("drawn and empty"), static_cast<int>(Goods::Drawn));
  fill->addItem(tr("foundation"), static_cast<int>(Goods::Foundation));
  fill->addItem(tr("full of honey"), static_cast<int>(Goods::HoneyComb));
  const auto usual = [=] {
    const auto box = usualBox(now, static_cast<apiary::BoxRole>(role->currentData().toInt()));
    type->setCurrentIndex(std::max(0, type->findData(qs(box.frameType))));
    frames->setText(QString::number(box.frames));
  };
  if (task() && task()->kind == "supered") {
    role->setCurrentIndex(role->findData(static_cast<int>(apiary::BoxRole::Super)));
  }
  usual();
  connect(role, &QComboBox::currentIndexChanged, &dialog, usual);
  dialog.setMaker([=, this, &dialog] {
    apiary::BoxState box;
    box.role = static_cast<apiary::BoxRole>(role->currentData().toInt());
    box.frameType = type->currentData().toString().toStdString();
    box.frames = static_cast<int>(VerbDialog::number(frames).value_or(0));
    box.beneath = static_cast<apiary::Beneath>(beneath->currentData().toInt());
    const auto at = static_cast<BoxSpot>(spot->currentData().toInt());
    box.position = positionFor(state(dialog.date()), at);
    std::optional<Goods> combs;
    if (fill->currentIndex() > 0) combs = static_cast<Goods>(fill->currentData().toInt());
    return session::setOnBox(hive(), std::move(box), combs, dialog.date());
  });
  carryOut(dialog);
}

void HiveActions::reverse() {
  VerbDialog dialog(
      m_hub, QStringLiteral("reverseDialog"),
      tr("Reverse the chambers of %1").arg(qs(hive().str())),
      tr("Only while the brood is mainly above, bees sit on 7 seams or more and the mean of the "
         "day "
         "is over 10 °C; never before a cold spell, and never so that the nest is divided. A full "
         "chamber weighs up to 40 kg: lift with two."),
      &m_window);
  dialog.addSentence(
      tr("The chambers change their order; excluders and supers stay where they "
         "are."));
  dialog.setMaker([this, &dialog]() -> session::CommandPtr {
    const auto turned = reversedChambers(state(dialog.date()), colony());
    if (!turned) return nullptr;
    return session::changeStack(hive(), dialog.date(), *turned, EventKind::Reversed);
  });
  carryOut(dialog);
}

void HiveActions::takeOff() {
  const auto who = upper(m_hub.workingDate());
  if (!who) return;
  VerbDialog dialog(m_hub, QStringLiteral("takeOffDialog"),
                    tr("Take %1 off %2").arg(qs(who->str()), qs(hive().str())),
                    tr("After 3 to 4 weeks, when both fill their chamber. See eggs above first. "
                       "Its field bees go "
                       "home to the old stand. A full chamber weighs up to 40 kg: lift with two."),
                    &m_window);
  auto* to = dialog.addChoice(QStringLiteral("toHive"), tr("To the empty hive"));
  const auto yard = state(m_hub.workingDate()).yard;
  auto standing = apiary::yardOn(m_hub.season(), yard, m_hub.workingDate());
  std::sort(standing.begin(), standing.end(), [](const auto& a, const auto& b) {
    return sheet::naturalLess(a.hive.str(), b.hive.str());
  });
  for (const auto& other : standing) {
    if (other.status == apiary::HiveStatus::Empty) to->addItem(qs(other.hive.str()));
  }
  if (to->count() == 0) {
    dialog.addSentence(tr("No empty hive stands in this yard. Set one up on the map first."));
  }
  dialog.setMaker([=, this, &dialog]() -> session::CommandPtr {
    if (to->currentText().isEmpty()) return nullptr;
    return session::takeOff(
        {hive(), *who, base::HiveId(to->currentText().toStdString()), dialog.date()});
  });
  carryOut(dialog);
}

void HiveActions::queen() {
  VerbDialog dialog(m_hub, QStringLiteral("queenDialog"), tr("Queen of %1").arg(qs(hive().str())),
                    tr("Hold the comb over the open hive. Cells are taken out only when it is "
                       "certain that a good queen lays."),
                    &m_window);
  auto* kind = dialog.addChoice(QStringLiteral("kind"), tr("What"));
  for (const EventKind k : {EventKind::QueenSeenLaying, EventKind::CellsRemoved}) {
    kind->addItem(widgets::eventText(k), static_cast<int>(k));
  }
  auto* which = dialog.addChoice(QStringLiteral("queen"), tr("Queen"));
  which->addItem(tr("not named"));
  for (const auto& [key, q] : m_hub.season().table<apiary::Queen>()) {
    which->addItem(q.line.empty() ? qs(key) : tr("%1, line %2").arg(qs(key), qs(q.line)), qs(key));
  }
  for (const auto& c : state(m_hub.workingDate()).colonies) {
    if (c.queen && c.colony == colony()) {
      which->setCurrentIndex(std::max(0, which->findData(qs(c.queen->str()))));
    }
  }
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    auto e = event(static_cast<EventKind>(kind->currentData().toInt()), dialog.date());
    const QString id = which->currentData().toString();
    if (!id.isEmpty() && e.kind != EventKind::CellsRemoved) {
      e.queen = base::QueenId(id.toStdString());
    }
    e.detail = trimmed(detail->text());
    return session::recordEvent(e);
  });
  carryOut(dialog);
}

void HiveActions::overrule() {
  VerbDialog dialog(m_hub, QStringLiteral("overruleDialog"),
                    tr("Overrule the judgement on %1").arg(qs(colony()->str())),
                    tr("The rules stay beside yours on every page. Foul brood is never overruled: "
                       "call the bee inspector."),
                    &m_window);
  auto* verdict = dialog.addChoice(QStringLiteral("verdict"), tr("In your judgement it is"));
  for (std::size_t i = 0; i < apiary::Codes<apiary::VerdictCode>::kText.size(); ++i) {
    verdict->addItem(widgets::verdictText(static_cast<apiary::VerdictCode>(i)),
                     static_cast<int>(i));
  }
  verdict->setCurrentIndex(static_cast<int>(apiary::VerdictCode::SmallSound));
  auto* reason = dialog.addText(QStringLiteral("reason"), tr("Because"), tr("what you saw"));
  dialog.setMaker([=, this, &dialog] {
    return session::overruleVerdict(
        hive(), colony().value_or(base::ColonyId{}), dialog.date(),
        static_cast<apiary::VerdictCode>(verdict->currentData().toInt()), trimmed(reason->text()));
  });
  carryOut(dialog);
}

void HiveActions::death() {
  VerbDialog dialog(
      m_hub, QStringLiteral("deathDialog"), tr("Record the death of %1").arg(qs(colony()->str())),
      tr("Close the entrance now, against robbing. Combs of a colony that died of an unknown cause "
         "go into no other hive. At any sign of foul brood nothing leaves the yard: call the bee "
         "inspector."),
      &m_window);
  auto* cause = dialog.addChoice(QStringLiteral("cause"), tr("Cause, as far as known"));
  for (const QString& text :
       {tr("unknown"), tr("starved"), tr("queen failed"), tr("too small for the winter"),
        tr("mites"), tr("nosema or dysentery"), tr("robbed out"), tr("poisoned"), tr("wet or cold"),
        tr("mice"), tr("fell over or flooded"), tr("foul brood suspected"), tr("other")}) {
    cause->addItem(text);
  }
  auto* combs = dialog.addChoice(QStringLiteral("combs"), tr("What became of the combs"));
  for (const QString& text : {tr("still in the hive, closed"), tr("stored apart"), tr("melted"),
                              tr("burnt"), tr("sample sent in")}) {
    combs->addItem(text);
  }
  auto* detail = dialog.addText(QStringLiteral("detail"), tr("Remark"));
  dialog.setMaker([=, this, &dialog] {
    QString text = tr("%1; combs: %2").arg(cause->currentText(), combs->currentText());
    if (!detail->text().trimmed().isEmpty())
      text += QStringLiteral("; ") + detail->text().trimmed();
    return session::recordDeath(hive(), colony().value_or(base::ColonyId{}), dialog.date(),
                                trimmed(text));
  });
  carryOut(dialog);
}

}  // namespace outyard::hive

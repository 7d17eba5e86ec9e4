// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pairs/pairs_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/base/text.h"
#include "core/planning/boost_rows.h"
#include "core/planning/boost_words.h"
#include "ui/adapt/words.h"

namespace outyard::pairs {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(Pairs)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

std::string csvCell(std::string text) {
  if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

}  // namespace

QString methodText(apiary::Method method) {
  return adapt::words(planning::methodWord(method));
}

QString optionText(const planning::BoostOption& option) {
  return adapt::words(planning::optionWords(option));
}

QString signedText(double difference) {
  if (std::abs(difference) < 0.005) return QStringLiteral("±0");
  const QString number = QLocale().toString(std::abs(difference), 'f', 2);
  return (difference < 0 ? QStringLiteral("−%1") : QStringLiteral("+%1")).arg(number);
}

QString secondText(const planning::BoostOption& second, const planning::BoostOption& chosen,
                   const planning::BoostProblem& problem) {
  const double more = second.net - chosen.net;
  return problem.basis == "forecast"
             ? Words::tr("%1: %2").arg(signedText(more), optionText(second))
             : Words::tr("%1 thousand bees: %2").arg(signedText(more), optionText(second));
}

QString gainText(const planning::BoostOption& option) {
  if (option.gain.high <= 0) return QStringLiteral("–");
  return adapt::band(option.gain.median, option.gain.low, option.gain.high);
}

QString worthText(double worth, const planning::BoostProblem& problem) {
  if (problem.basis != "forecast")
    return Words::tr("%1 bees").arg(adapt::roundNumber(worth * 1000));
  return Words::tr("%1 usable colonies").arg(QLocale().toString(worth, 'f', 2));
}

QString chanceText(const planning::BoostOption& option) {
  if (!option.chance) return QStringLiteral("–");
  const auto percent = [](double share) {
    return QLocale().toString(static_cast<int>(std::lround(100 * share)));
  };
  if (option.method == apiary::Method::Leave) {
    return Words::tr("%1 %").arg(percent(option.chance->receiverWithout));
  }
  if (option.method == apiary::Method::Unite) {
    // Of the colony that stays.
    return Words::tr("%1: %2 → %3 %")
        .arg(option.donorHive ? qs(option.donorHive->str()) : QString(),
             percent(option.chance->donorWithout), percent(option.chance->donorWith));
  }
  return Words::tr("%1 → %2 %")
      .arg(percent(option.chance->receiverWithout), percent(option.chance->receiverWith));
}

QString gearText(const std::string& item) {
  const auto colon = item.find(':');
  const std::string kind = item.substr(0, colon);
  QString name = qs(kind).replace(u'_', u' ');
  if (kind == "excluder") name = Words::tr("excluder");
  if (kind == "chamber") name = Words::tr("chamber");
  if (kind == "super") name = Words::tr("super");
  if (kind == "drawn_comb") name = Words::tr("drawn comb");
  if (kind == "foundation") name = Words::tr("foundation");
  if (kind == "floor") name = Words::tr("floor");
  if (kind == "cover") name = Words::tr("cover");
  if (kind == "feeder") name = Words::tr("feeder");
  if (kind == "paper") name = Words::tr("sheet of newspaper");
  if (colon == std::string::npos) return name;
  base::Message type;
  type.key = "code.frame_type." + item.substr(colon + 1);
  const QString typeName =
      adapt::hasWords(type.key) ? adapt::words(type) : qs(item.substr(colon + 1));
  return QStringLiteral("%1, %2").arg(name, typeName);
}

QString sentences(const std::vector<base::Message>& messages) {
  QStringList all;
  for (const auto& m : messages) all << adapt::words(m);
  return all.join(u' ');
}

QString colonyText(const base::ColonyId& colony, const base::HiveId& hive) {
  return colony.str() == hive.str() ? qs(hive.str())
                                    : Words::tr("%1 in %2").arg(qs(colony.str()), qs(hive.str()));
}

const strength::Judgement* judgementOf(const planning::BoostProblem& problem,
                                       const base::ColonyId& colony) {
  for (const auto& j : problem.judgements) {
    if (j.colony == colony) return &j;
  }
  return nullptr;
}

const base::Message* barOf(const planning::BoostProblem& problem, const base::ColonyId& colony) {
  for (const auto& b : problem.barred) {
    if (b.colony == colony) return &b.why;
  }
  return nullptr;
}

QString planCsv(const planning::BoostPlan& plan) {
  std::string out =
      "colony,hive,verdict,method,donor_colony,donor_hive,bees_moved,frames_moved,gain,gain_low,"
      "gain_high,donor_cost,why\n";
  for (const auto& row : planning::boostRows(plan)) {
    const auto* o = row.option;
    std::vector<std::string> cells{row.colony.str(), row.hive.str(),
                                   std::string(apiary::code(row.verdict))};
    if (o) {
      cells.insert(cells.end(), {std::string(apiary::code(o->method)),
                                 o->donorColony ? o->donorColony->str() : "",
                                 o->donorHive ? o->donorHive->str() : "",
                                 base::shortest(o->beesMoved), base::shortest(o->framesMoved),
                                 base::shortest(o->gain.median), base::shortest(o->gain.low),
                                 base::shortest(o->gain.high), base::shortest(o->donorCost)});
    } else {
      cells.insert(cells.end(), 9, std::string());
    }
    cells.push_back(sentences(row.why).toStdString());
    for (std::size_t i = 0; i < cells.size(); ++i) {
      out += (i > 0 ? "," : "") + csvCell(cells[i]);
    }
    out += '\n';
  }
  return qs(out);
}

}  // namespace outyard::pairs

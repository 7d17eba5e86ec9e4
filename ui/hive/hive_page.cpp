// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/hive/hive_page.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>

#include "core/apiary/comb_state.h"
#include "core/sheet/marks.h"
#include "ui/adapt/units.h"
#include "ui/adapt/words.h"
#include "ui/hive/estimate_words.h"
#include "ui/hive/journal_model.h"
#include "ui/hive/record_words.h"
#include "ui/print/painter.h"
#include "ui/print/paper_text.h"
#include "ui/widgets/hive_facts.h"
#include "ui/widgets/session_model.h"

namespace outyard::hive {
namespace {

struct Words {
  Q_DECLARE_TR_FUNCTIONS(HivePage)
};

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

class Html {
 public:
  void heading(const QString& text) {
    close();
    m_html += QStringLiteral("<p style='margin-top:6px; margin-bottom:2px'><b>%1</b></p>")
                  .arg(text.toHtmlEscaped());
  }
  void sentence(const QString& text) {
    if (text.isEmpty()) return;
    close();
    m_html += QStringLiteral("<p style='margin-top:2px; margin-bottom:2px'>%1</p>")
                  .arg(text.toHtmlEscaped());
  }
  void list(const QStringList& lines) {
    if (lines.isEmpty()) return;
    close();
    m_html += QStringLiteral(
        "<ul style='margin-top:2px; margin-bottom:2px; -qt-list-indent:0; "
        "margin-left:14px'>");
    for (const QString& line : lines) {
      m_html += QStringLiteral("<li>%1</li>").arg(line.toHtmlEscaped());
    }
    m_html += QStringLiteral("</ul>");
  }
  void fact(const QString& label, const QString& value) {
    if (value.isEmpty()) return;
    if (!m_table) m_html += QStringLiteral("<table cellspacing='0' cellpadding='2'>");
    m_table = true;
    m_html += QStringLiteral("<tr><td style='padding-right:14px'>%1</td><td><b>%2</b></td></tr>")
                  .arg(label.toHtmlEscaped(), value.toHtmlEscaped());
  }
  [[nodiscard]] QString text() {
    close();
    return m_html;
  }

 private:
  void close() {
    if (m_table) m_html += QStringLiteral("</table>");
    m_table = false;
  }
  QString m_html;
  bool m_table = false;
};

QString boxText(const apiary::Season& season, const apiary::BoxState& box) {
  QString role;
  switch (box.role) {
    case apiary::BoxRole::Chamber:
      role = Words::tr("chamber");
      break;
    case apiary::BoxRole::Super:
      role = Words::tr("super");
      break;
    case apiary::BoxRole::Feeder:
      return Words::tr("feeder");
  }
  const QString type = frameTypeText(season, box.frameType);
  return box.frames > 0 ? Words::tr("%1 with %2 frames, %3").arg(role).arg(box.frames).arg(type)
                        : Words::tr("%1, %2").arg(role, type);
}

QString bandText(const std::optional<strength::Estimate>& e) {
  return e ? adapt::band(e->median, e->low, e->high) : QString();
}

}  // namespace

QString colonyTabText(const apiary::ColonyState& colony) {
  const QString name = qs(colony.colony.str());
  switch (colony.place) {
    case apiary::ColonyPlace::Main:
      return Words::tr("%1, below").arg(name);
    case apiary::ColonyPlace::OverExcluder:
      return Words::tr("%1, over an excluder").arg(name);
    case apiary::ColonyPlace::OverDoubleScreen:
      return Words::tr("%1, over a double screen").arg(name);
    case apiary::ColonyPlace::OverBoard:
      return Words::tr("%1, over a board").arg(name);
    case apiary::ColonyPlace::Left:
      return Words::tr("%1, left").arg(name);
    case apiary::ColonyPlace::Right:
      return Words::tr("%1, right").arg(name);
  }
  return name;
}

QString stackSentence(const apiary::Season& season, const apiary::HiveState& hive) {
  if (hive.boxes.empty()) return Words::tr("No boxes are recorded.");
  QStringList parts;
  for (const auto& box : hive.boxes) {
    QString text = boxText(season, box);
    if (box.beneath == apiary::Beneath::Excluder) text = Words::tr("excluder, then %1").arg(text);
    if (box.beneath == apiary::Beneath::Paper) text = Words::tr("paper, then %1").arg(text);
    if (box.beneath == apiary::Beneath::DoubleScreen) {
      text = Words::tr("double screen, then %1").arg(text);
    }
    if (box.beneath == apiary::Beneath::Board) text = Words::tr("board, then %1").arg(text);
    parts << text;
  }
  return Words::tr("From below: %1.").arg(parts.join(QStringLiteral("; ")));
}

QString stackNote(const apiary::Season& season, const apiary::HiveState& hive, base::Date day) {
  if (hive.boxes.empty()) {
    return Words::tr("No boxes are recorded for this hive. Add one with Add box.");
  }
  std::optional<base::Date> first, last;
  int sides = 0;
  for (const auto& box : apiary::combsOfHive(season, hive.hive, day).boxes) {
    for (const auto& frame : box.frames) {
      for (const auto& side : frame.sides) {
        if (!side) continue;
        ++sides;
        if (!first || side->seenOn < *first) first = side->seenOn;
        if (!last || side->seenOn > *last) last = side->seenOn;
      }
    }
  }
  if (sides == 0) {
    return Words::tr(
        "No combs were recorded side by side at any look: blank faces are "
        "unknown, not empty.");
  }
  return first == last
             ? Words::tr("Combs as seen on %1 (%2 sides); blank faces are unknown.")
                   .arg(adapt::dateText(*last))
                   .arg(sides)
             : Words::tr("Combs as last seen, %1 to %2 (%3 sides); blank faces are unknown.")
                   .arg(adapt::dateText(*first), adapt::dateText(*last))
                   .arg(sides);
}

QString factsHtml(const widgets::SeasonHub& hub, const apiary::HiveState& hive,
                  const std::optional<base::ColonyId>& colony) {
  const auto facts = widgets::hiveFacts(hub, hive);
  const auto units = adapt::Units::from(hub.settings());
  Html html;
  const widgets::ColonyFacts* shown = nullptr;
  for (const auto& c : facts.colonies) {
    if (!shown || (colony && c.colony == *colony)) shown = &c;
  }
  if (!shown) {
    html.heading(facts.status);
    html.sentence(
        Words::tr("No colony lives in this hive on %1.").arg(adapt::dateText(hub.shownDate())));
  } else {
    const strength::Judgement* judgement = nullptr;
    const auto judgements = hub.judgementsOf(hive.hive);
    for (const auto& j : judgements) {
      if (j.colony == shown->colony) judgement = &j;
    }
    html.heading(shown->judgement.isEmpty() ? Words::tr("Not judged")
                                            : Words::tr("Judgement: %1").arg(shown->judgement));
    html.sentence(shown->overruled);
    html.list(shown->evidence);
    if (!shown->healthBar.isEmpty()) {
      html.sentence(Words::tr("Nothing goes in or out: %1").arg(shown->healthBar));
    }
    if (judgement && judgement->strength) {
      const auto& s = *judgement->strength;
      html.heading(Words::tr("As last seen"));
      html.fact(Words::tr("Bees"), bandText(s.bees));
      html.fact(Words::tr("Seams"), s.seams ? widgets::quarters(*s.seams) : QString());
      html.fact(Words::tr("Sealed brood, cells"), bandText(s.sealedCells));
      html.fact(Words::tr("Eggs and open brood, cells"), bandText(s.openCells));
      html.fact(Words::tr("Brood in all, cells"), bandText(s.broodCells));
      if (s.framesWithBrood) {
        html.fact(Words::tr("Combs with brood"), QString::number(*s.framesWithBrood));
      }
      if (s.broodFrames) {
        html.fact(Words::tr("Brood, full frames"), adapt::roundNumber(*s.broodFrames));
      }
      html.fact(Words::tr("Stores"), s.honeyKg ? storesText(*s.honeyKg, units) : QString());
      QStringList basis;
      for (const auto b : s.basis) basis << basisText(b);
      html.fact(Words::tr("From"), basis.join(QStringLiteral(", ")));
      html.fact(Words::tr("Last look"), shown->lastLook);
      html.fact(Words::tr("Queen"), shown->queen);
      html.sentence(looksText(s));
      html.sentence(workingsText(s, units));
      html.sentence(Words::tr("In brackets: the band that holds 8 of 10."));
    } else {
      html.fact(Words::tr("Last look"), shown->lastLook);
      html.fact(Words::tr("Queen"), shown->queen);
    }
    if (!shown->wouldChange.isEmpty()) {
      html.heading(Words::tr("What would change the judgement"));
      html.list(shown->wouldChange);
    }
  }
  html.heading(Words::tr("Hive"));
  html.fact(Words::tr("Boxes"), facts.boxes);
  html.fact(Words::tr("Stand"), facts.stand);
  html.fact(Words::tr("Marks"), facts.meanings);
  if (!facts.tasks.isEmpty()) {
    html.heading(Words::tr("Planned"));
    html.list(facts.tasks);
  }
  return html.text();
}

void printHivePage(QPagedPaintDevice& device, const widgets::SeasonHub& hub,
                   const apiary::HiveState* hive, const JournalModel& journal) {
  constexpr double kPointsPerMm = 72 / 25.4;
  constexpr double kTitlePt = 26, kStackMostPt = 220;
  print::PaperText paper(device, 10);
  if (!hive) {
    paper.print(Words::tr("No hive is chosen.").toHtmlEscaped());
    return;
  }
  const auto drawing = sheet::stackDrawing(hub.season(), *hive, hub.shownDate());
  const double perMm = std::min({kPointsPerMm, paper.page().width() / (drawing.widthMm + 4),
                                 kStackMostPt / std::max(1.0, drawing.heightMm)});
  const double stackPt = drawing.heightMm * perMm + 14;
  QString body = QStringLiteral(
                     "<p style='margin-top:0; margin-bottom:%1px; font-size:16px'>"
                     "<b>%2</b></p>")
                     .arg(std::ceil(stackPt))
                     .arg(Words::tr("Hive %1 on %2")
                              .arg(qs(hive->hive.str()), adapt::dateText(hub.shownDate()))
                              .toHtmlEscaped());
  body += stackNote(hub.season(), *hive, hub.shownDate()).toHtmlEscaped();
  body += factsHtml(hub, *hive, hub.selection().colony);
  body += QStringLiteral("<p><b>%1</b></p><table cellpadding='2'>").arg(Words::tr("Journal"));
  for (int row = 0; row < journal.rowCount(); ++row) {
    body += QStringLiteral("<tr>");
    for (int column = 0; column < journal.columnCount(); ++column) {
      body += QStringLiteral("<td>%1</td>")
                  .arg(journal.data(journal.index(row, column), Qt::DisplayRole)
                           .toString()
                           .toHtmlEscaped());
    }
    body += QStringLiteral("</tr>");
  }
  body += QStringLiteral("</table>");
  paper.print(body, [&](QPainter& painter, int page) {
    if (page > 0) return;
    painter.save();
    painter.translate(2 * perMm, kTitlePt + drawing.heightMm * perMm);
    painter.scale(perMm, perMm);
    print::paintShapes(painter, drawing.shapes, print::Palette::paper());
    painter.restore();
  });
}

}  // namespace outyard::hive

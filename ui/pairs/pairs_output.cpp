// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLabel>
#include <QSaveFile>

#include "ui/adapt/words.h"
#include "ui/pairs/pairs_models.h"
#include "ui/pairs/pairs_place.h"
#include "ui/pairs/pairs_when.h"
#include "ui/pairs/pairs_words.h"
#include "ui/print/paper_text.h"
#include "ui/widgets/session_model.h"

// The plan on paper and as a table.
namespace outyard::pairs {

bool PairsPlace::exportCsv(const QString& path) {
  if (!plan()) return false;
  // Through a temporary file: a full disk leaves an older table as it was.
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly)) return false;
  const QByteArray bytes = planCsv(*plan()).toUtf8();
  return file.write(bytes) == bytes.size() && file.commit();
}

void PairsPlace::exportTable() {
  if (!plan()) {
    m_hub.dialogs().inform(this, tr("Nothing to export"), tr("There is no plan yet."));
    return;
  }
  const QString suggestion =
      tr("pairs-%1.csv").arg(QString::fromStdString(plan()->problem.request.date.iso()));
  const QString path = m_hub.dialogs().saveFile(this, tr("Export the table of pairs"),
                                                tr("Tables (*.csv)"), suggestion);
  if (path.isEmpty()) return;
  if (!exportCsv(path)) {
    m_hub.dialogs().failure(this, tr("Not written"),
                            tr("The table could not be written to %1. Choose another folder or "
                               "free some space.")
                                .arg(path));
  }
}

void PairsPlace::printTo(QPagedPaintDevice& device) {
  print::PaperText paper(device, 9);
  const auto* made = plan();
  if (!made) {
    paper.print(m_sentence->text().toHtmlEscaped());
    return;
  }
  QString html =
      QStringLiteral("<p style='font-size:15px'><b>%1</b></p><p>%2</p>")
          .arg(tr("Pairs for %1 on %2")
                   .arg(m_yard->currentText(), adapt::dateText(made->problem.request.date))
                   .toHtmlEscaped(),
               m_sum->text().toHtmlEscaped());
  html += QStringLiteral("<table cellpadding='2' cellspacing='0'><tr>");
  for (const QString& head : pairHead()) {
    html += QStringLiteral("<th align='left'>%1</th>").arg(head.toHtmlEscaped());
  }
  html += QStringLiteral("</tr>");
  for (int row = 0; row < m_pairs->rowCount(); ++row) {
    html += QStringLiteral("<tr>");
    for (const QString& cell : m_pairs->line(row).cells) {
      html += QStringLiteral("<td>%1</td>").arg(cell.toHtmlEscaped());
    }
    html += QStringLiteral("</tr>");
  }
  paper.print(html + QStringLiteral("</table><br>") + whenHtml(*m_outcome, m_prices, *m_season));
}

}  // namespace outyard::pairs

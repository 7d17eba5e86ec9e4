// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <memory>
#include <string>

#include "app/verbs.h"
#include "core/base/clock.h"
#include "core/base/progress.h"
#include "core/exchange/tables.h"
#include "core/session/session.h"

namespace outyard::app {

/// The open season of a verb with the sources that its session needs.
struct OpenSeason {
  std::unique_ptr<session::Session> session;
  [[nodiscard]] const apiary::Season& season() const { return session->season(); }
};

/// Opens the season file, or says in one line each why it cannot.
base::Result<OpenSeason> openSeason(const QString& path);
/// Makes a new season file (never over an existing one), with the sample season when asked.
base::Result<OpenSeason> newSeason(const QString& path, bool sample);

/// Reads the exchange tables of a folder into the season, all or nothing. On failure the messages
/// are the faults, ready to print one a line ("file:line: column: what is wrong").
struct ImportSummary {
  QStringList lines;  ///< "inspections: 312 new, 4 passed over"
  QStringList faults;
};
ImportSummary importFolder(session::Session& session, const QString& folder,
                           base::Progress& progress);
/// Reads a weather file for one yard, all or nothing; `lines` also say what was left out.
ImportSummary importWeather(session::Session& session, const QString& file,
                            const exchange::WeatherAsk& ask, base::Progress& progress);
base::Result<void> exportFolder(const apiary::Season& season, const QString& folder);

/// Prints a failure on err, one line each, and gives kDataFault.
int complain(Streams streams, const base::Failure& failure);

/// The date option, or the season's working date; a wrong date is said on err.
std::optional<base::Date> dateOption(const QCommandLineParser& parser, const QString& option,
                                     std::optional<base::Date> fallback, Streams streams);
/// Progress on err, quiet when err is no terminal.
class LineProgress : public base::Progress {
 public:
  explicit LineProgress(QTextStream& err) : m_err(err) {}
  void report(double fraction) override;

 private:
  QTextStream& m_err;
  int m_shown = -1;
};

}  // namespace outyard::app

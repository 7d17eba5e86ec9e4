// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <thread>

#include "core/forecast/expected.h"
#include "core/planning/boost.h"
#include "core/session/commands.h"
#include "core/session/printed_boosts.h"
#include "ui/adapt/settings.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/pdf_writer.h"

namespace outyard::app {
namespace {

/// Year and a running number: short enough to be copied by hand ("26-0148"). `after` sheets of the
/// same print come before it.
std::string nextSheetNumber(const apiary::Season& season, base::Date date, int after) {
  const std::string prefix = fmt::format("{:02}-", date.year() % 100);
  int last = 0;
  for (const auto& [key, sheet] : season.table<apiary::SheetRow>()) {
    if (key.rfind(prefix, 0) != 0) continue;
    const std::string tail = key.substr(prefix.size());
    if (!tail.empty() && tail.find_first_not_of("0123456789") == std::string::npos &&
        tail.size() < 8) {
      last = std::max(last, std::stoi(tail));
    }
  }
  return fmt::format("{}{:04}", prefix, last + 1 + after);
}

/// Asked often whether to go on, from several threads; says nothing of how far it is.
class StopOnly : public base::Progress {
 public:
  explicit StopOnly(const base::Progress& progress) : m_progress(progress) {}
  [[nodiscard]] bool cancelled() const override { return m_progress.cancelled(); }

 private:
  const base::Progress& m_progress;
};

base::Result<sheet::YardSheet> makeYardSheet(const session::Session& session,
                                             const SheetRequest& request,
                                             const sheet::TextMeasurer& measurer, std::size_t which,
                                             const base::Progress& progress) {
  const auto& season = session.season();
  const base::YardId& yard = request.yards[which];
  if (!season.yard(yard)) {
    return base::fail(base::message("check.unknown_yard", yard.str()));
  }
  planning::BoostRequest boost;
  boost.yards = {yard};
  boost.date = request.date;
  StopOnly quiet(progress);
  const auto stopped = [&] { return base::fail(base::message("sheet.pdf_stopped")); };
  const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
  auto problem = planning::makeForecastProblem(season, boost, threads, quiet);
  if (progress.cancelled()) return stopped();
  if (!problem) return problem.failure();
  const auto plan = planning::solveBoost(std::move(*problem), quiet);
  if (progress.cancelled()) return stopped();
  if (!plan) return plan.failure();
  sheet::YardSheetInput input;
  input.season = &season;
  input.yard = yard;
  input.date = request.date;
  input.sheetNumber = nextSheetNumber(season, request.date, static_cast<int>(which));
  input.paper = request.paper;
  input.largeType = request.largeType;
  input.plan = &*plan;
  // What is known is what was entered up to the working date (the sheet of an earlier day uses
  // what was known on it).
  const auto expected =
      forecast::expectedLooks(season, yard, session.workingDate(), request.date, threads, quiet);
  if (progress.cancelled()) return stopped();
  input.expected = &expected;
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  const adapt::DeskSettings desk(adapt::DeskSettings::usualFile());
  input.usUnits = desk.get(adapt::desk::kMassUnit) == adapt::MassUnit::Pound;
  return sheet::layoutYardSheet(input);
}

}  // namespace

base::Result<std::vector<sheet::YardSheet>> makeYardSheets(const session::Session& session,
                                                           const SheetRequest& request,
                                                           base::Progress& progress) {
  const print::FontMeasurer measurer;  // one for all: yards share most of their words
  std::vector<sheet::YardSheet> sheets;
  for (std::size_t i = 0; i < request.yards.size(); ++i) {
    auto made = makeYardSheet(session, request, measurer, i, progress);
    if (!made) return made.failure();
    sheets.push_back(std::move(*made));
    progress.report(static_cast<double>(i + 1) / static_cast<double>(request.yards.size()));
  }
  return sheets;
}

base::Result<void> keepSheets(session::Session& session, const SheetRequest& request,
                              const std::vector<sheet::YardSheet>& sheets) {
  std::vector<session::SheetToKeep> kept;
  std::vector<session::HiveStep> boosts;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    session::SheetToKeep keep;
    keep.sheet.sheet = base::SheetId(sheets[i].document.sheetNumber);
    keep.sheet.yard = request.yards.at(i);
    keep.sheet.date = request.date;
    keep.sheet.paper = request.paper == sheet::Paper::Letter ? "letter" : "a4";
    for (const auto& l : sheets[i].lines) {
      keep.lines.push_back({keep.sheet.sheet, l.line, l.hive, l.colony, l.expected});
    }
    kept.push_back(std::move(keep));
    const auto& printed = sheets[i].printed;
    if (!printed.rows.empty()) {
      boosts.push_back({printed.rows.front().hive, session::keepPrintedPlan(printed)});
    }
  }
  auto keep = session::keepSheets(std::move(kept));
  if (!boosts.empty()) {
    base::Message title = keep->title();
    boosts.insert(boosts.begin(), session::HiveStep{boosts.front().hive, std::move(keep)});
    keep = session::together(std::move(title), std::move(boosts));
  }
  const auto done = session.execute(*keep);
  if (!done) return done.failure();
  return {};
}

base::Result<SheetsWritten> writeSheetFile(session::Session& session, const SheetRequest& request,
                                           const QString& path, base::Progress& progress) {
  const print::FontMeasurer measurer;
  const auto make = [&](std::size_t which) {
    return makeYardSheet(session, request, measurer, which, progress);
  };
  // Paper first: a number is kept only for a sheet that exists.
  const auto written = print::writeSheets(request.yards.size(), make, path, progress);
  if (!written) return written.failure();
  const auto kept = keepSheets(session, request, written->sheets);
  if (!kept) return kept.failure();
  SheetsWritten out;
  for (const auto& s : written->sheets) out.sheetNumbers.push_back(s.document.sheetNumber);
  out.pages = static_cast<int>(written->pages);
  return out;
}

}  // namespace outyard::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/sheet_file.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/planning/boost.h"
#include "core/session/commands.h"
#include "ui/adapt/settings.h"
#include "ui/adapt/words.h"
#include "ui/print/font_measurer.h"
#include "ui/print/pdf_writer.h"

namespace outyard::app {
namespace {

/// Year and a running number: short enough to be copied by hand ("26-0148").
std::string nextSheetNumber(const apiary::Season& season, base::Date date) {
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
  return fmt::format("{}{:04}", prefix, last + 1);
}

}  // namespace

base::Result<sheet::YardSheet> makeYardSheet(const session::Session& session,
                                             const SheetRequest& request) {
  const auto& season = session.season();
  if (!season.yard(request.yard)) {
    return base::fail(base::message("check.unknown_yard", request.yard.str()));
  }
  planning::BoostRequest boost;
  boost.yards = {request.yard};
  boost.date = request.date;
  auto problem = planning::makeBoostProblem(season, boost);
  if (!problem) return problem.failure();
  base::Progress quiet;
  const auto plan = planning::solveBoost(std::move(*problem), quiet);
  if (!plan) return plan.failure();
  const print::FontMeasurer measurer;
  sheet::YardSheetInput input;
  input.season = &season;
  input.yard = request.yard;
  input.date = request.date;
  input.sheetNumber = nextSheetNumber(season, request.date);
  input.paper = request.paper;
  input.plan = &*plan;
  input.word = adapt::wordsUtf8;
  input.text = &measurer;
  const adapt::DeskSettings desk(adapt::DeskSettings::usualFile());
  input.usUnits = desk.get(adapt::desk::kMassUnit) == adapt::MassUnit::Pound;
  return sheet::layoutYardSheet(input);
}

base::Result<SheetWritten> writeSheetFile(session::Session& session, const SheetRequest& request,
                                          const QString& path) {
  const auto made = makeYardSheet(session, request);
  if (!made) return made.failure();
  // Paper first: a number is kept only for a sheet that exists.
  const auto written = print::writePdf(made->document, path);
  if (!written) return written.failure();
  apiary::SheetRow row;
  row.sheet = base::SheetId(made->document.sheetNumber);
  row.yard = request.yard;
  row.date = request.date;
  row.paper = request.paper == sheet::Paper::Letter ? "letter" : "a4";
  std::vector<apiary::SheetLine> lines;
  for (const auto& l : made->lines) {
    lines.push_back({row.sheet, l.line, l.hive, l.colony, l.expected});
  }
  const auto kept = session.execute(*session::keepSheet(std::move(row), std::move(lines)));
  if (!kept) return kept.failure();
  return SheetWritten{made->document.sheetNumber, static_cast<int>(made->document.pages.size())};
}

}  // namespace outyard::app

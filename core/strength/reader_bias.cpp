// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/reader_bias.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"

namespace outyard::strength {
namespace {

constexpr double kUsualSpread = 0.10, kUsualWeight = 4;
/// Beyond these it is a mistyped pair or another unit, not a habit.
constexpr double kLeastBias = 0.2, kMostBias = 5;

std::optional<double> numberOf(const apiary::Season& season, const std::string& name) {
  const auto text = season.setting(name);
  return text ? base::parseNumber(*text) : std::nullopt;
}

}  // namespace

double ReaderFigures::biasSigma() const {
  return spread / std::sqrt(std::max(1, pairs));
}

double ReaderFigures::countSigma() const {
  return std::hypot(spread, biasSigma());
}

std::optional<ReaderFigures> fitReader(const std::vector<ReaderPair>& pairs) {
  std::vector<double> logs;
  for (const ReaderPair& p : pairs) {
    if (p.own > 0 && p.known > 0) logs.push_back(std::log(p.own / p.known));
  }
  const auto n = static_cast<double>(logs.size());
  if (n < kLeastReaderPairs) return std::nullopt;
  double mean = 0, squares = 0;
  for (const double v : logs) mean += v / n;
  for (const double v : logs) squares += (v - mean) * (v - mean);
  ReaderFigures f;
  f.pairs = static_cast<int>(logs.size());
  f.bias = std::clamp(std::exp(mean), kLeastBias, kMostBias);
  f.spread =
      std::sqrt((kUsualWeight * kUsualSpread * kUsualSpread + squares) / (kUsualWeight + n - 1));
  return f;
}

std::string readerSetting(std::string_view reader, std::string_view part) {
  return "reader." + std::string(reader) + "." + std::string(part);
}

std::optional<ReaderFigures> readerFigures(const apiary::Season& season, std::string_view reader) {
  if (reader.empty()) return std::nullopt;
  const auto bias = numberOf(season, readerSetting(reader, "bias"));
  if (!bias || *bias < kLeastBias || *bias > kMostBias) return std::nullopt;
  ReaderFigures f;
  f.bias = *bias;
  f.spread = std::clamp(numberOf(season, readerSetting(reader, "spread")).value_or(kUsualSpread),
                        0.02, 1.0);
  f.pairs = static_cast<int>(
      std::clamp(numberOf(season, readerSetting(reader, "pairs")).value_or(1), 1.0, 10000.0));
  return f;
}

std::vector<apiary::Setting> readerSettings(std::string_view reader,
                                            const std::optional<ReaderFigures>& figures,
                                            std::string_view source) {
  const auto row = [&](std::string_view part, double value) {
    apiary::Setting s;
    s.name = readerSetting(reader, part);
    if (figures) {
      s.value = base::shortest(value);
      s.source = std::string(source);
    }
    return s;
  };
  const ReaderFigures f = figures.value_or(ReaderFigures{});
  const auto rounded = [](double v) { return std::round(v * 10000) / 10000; };
  return {row("bias", rounded(f.bias)), row("spread", rounded(f.spread)),
          row("pairs", static_cast<double>(f.pairs))};
}

}  // namespace outyard::strength

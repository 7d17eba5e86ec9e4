// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/apiary/season.h"

/// What one reader makes of the bees on the combs beside a count that is known better. Readers
/// differ for good by up to 15 % (Bartlett et al. 2024, doi 10.1093/jisesa/ieae056, open data of
/// their trials), stable enough to be corrected (Hernandez et al. 2020, Insects 11:41).
namespace outyard::strength {

/// The reader's own count and the weighed or graded one of the same colony and day, in any unit
/// that is the same for both.
struct ReaderPair {
  double own = 0, known = 0;
};

struct ReaderFigures {
  int pairs = 0;
  double bias = 1;    ///< own count / known count: 1.12 counts 12 % too many
  double spread = 0;  ///< standard deviation of the logarithm of one count around the bias
  /// How well the bias itself is known.
  [[nodiscard]] double biasSigma() const;
  /// Error of one count after the bias is taken out.
  [[nodiscard]] double countSigma() const;
};

/// Fewer pairs than this tell chance from habit badly.
inline constexpr int kLeastReaderPairs = 3;
/// Bias as the geometric mean of own / known; the spread of few pairs is held towards the 10 % of
/// single readers (5 to 15 %, Bartlett et al. 2024) as by four pairs more. nullopt with fewer than
/// kLeastReaderPairs; pairs that are not above nought do not count.
std::optional<ReaderFigures> fitReader(const std::vector<ReaderPair>& pairs);

/// Names of the settings that hold the fit: "reader.Ann.bias", ".spread", ".pairs".
std::string readerSetting(std::string_view reader, std::string_view part);
/// The stored fit of a reader; nullopt when there is none or it cannot be read.
std::optional<ReaderFigures> readerFigures(const apiary::Season& season, std::string_view reader);
/// The fit as settings rows; without a fit, empty values that take it away.
std::vector<apiary::Setting> readerSettings(std::string_view reader,
                                            const std::optional<ReaderFigures>& figures,
                                            std::string_view source);

}  // namespace outyard::strength

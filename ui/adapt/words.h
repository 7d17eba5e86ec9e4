// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <string>

#include "core/base/date.h"
#include "core/base/message.h"
#include "core/base/result.h"

namespace outyard::adapt {

/// The sentence for a message, in the user's language; an unknown key gives the key itself and is
/// logged (a test keeps that from happening).
QString words(const base::Message& message);
/// The same for core rooms that ask for a std::string.
std::string wordsUtf8(const base::Message& message);
/// All messages of a failure, one a line.
QString words(const base::Failure& failure);
/// True when the catalogue has text for the key.
bool hasWords(const std::string& key);

/// Whole numbers with group separators, two significant figures for estimates ("14,000").
QString roundNumber(double value);
/// "7,200–11,000", and "−280 to 14,000" where it begins below zero.
QString fromTo(double low, double high);
/// "9,000 (7,200–11,000)".
QString band(double median, double low, double high);
QString dateText(base::Date date);  ///< short, unambiguous: 25 Apr 2026

}  // namespace outyard::adapt

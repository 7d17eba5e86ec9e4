// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adapt/words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <array>
#include <cmath>
#include <string_view>
#include <unordered_map>

#include "core/base/log.h"
#include "ui/adapt/catalogue.h"
#include "ui/adapt/system_clock.h"

namespace outyard::adapt {

std::vector<std::span<const CatalogueEntry>> everyCatalogue() {
  return {apiaryWords(), sessionWords(), titleWords(),    entryWords(),    visitWords(),
          queenWords(),  storageWords(), exchangeWords(), strengthWords(), planningWords(),
          dueWords(),    followWords(),  deskWords(),     sheetWords(),    codeWords()};
}

namespace {

using Catalogue = std::unordered_map<std::string_view, const char*>;

const Catalogue& catalogue() {
  static const Catalogue joined = [] {
    Catalogue all;
    for (const auto list : everyCatalogue()) {
      for (const CatalogueEntry& entry : list) all.emplace(entry.key, entry.text);
    }
    return all;
  }();
  return joined;
}

/// A minus is as wide as a plus and not taken for a dash: U+2212, whatever the locale writes.
QString withMinus(QString text) {
  const QString own = QLocale().negativeSign();
  if (text.startsWith(own)) text.replace(0, own.size(), QChar(0x2212));
  return text;
}

/// With group separators, as estimates have them; core hands years over as text.
QString wholeNumber(qint64 number) {
  return withMinus(QLocale().toString(number));
}

/// At most two decimals, and none that say nothing.
QString realNumber(double number) {
  if (number == std::round(number) && std::abs(number) < 1e15) {
    return wholeNumber(static_cast<qint64>(number));
  }
  if (std::abs(number) < 0.005) return wholeNumber(0);
  const QLocale locale;
  QString text = locale.toString(number, 'f', 2);
  while (text.endsWith(locale.zeroDigit())) text.chop(1);
  if (text.endsWith(locale.decimalPoint())) text.chop(1);
  return withMinus(text);
}

QString argText(const base::Message::Arg& arg) {
  struct Visitor {
    QString operator()(const std::string& text) const {
      // Core hands dates over as ISO text; people read them in their own way.
      if (const auto date = base::Date::parse(text)) return dateText(*date);
      return QString::fromStdString(text);
    }
    QString operator()(std::int64_t number) const { return wholeNumber(number); }
    QString operator()(double number) const { return realNumber(number); }
    QString operator()(const base::Message& message) const { return words(message); }
  };
  return std::visit(Visitor{}, arg);
}

std::optional<double> argNumber(const base::Message::Arg& arg) {
  if (const auto* whole = std::get_if<std::int64_t>(&arg)) return static_cast<double>(*whole);
  if (const auto* real = std::get_if<double>(&arg)) return *real;
  return std::nullopt;
}

int firstWhole(const base::Message& message) {
  for (const auto& arg : message.args) {
    if (const auto* whole = std::get_if<std::int64_t>(&arg)) return static_cast<int>(*whole);
  }
  return -1;
}

struct Ending {
  QStringView written;  ///< as it stands in the English text
  QStringView many;
  int cut;  ///< letters before it that the plural replaces
};
/// "frame(s)", "box(es)", "colony(ies)".
constexpr std::array<Ending, 3> kEndings{Ending{u"(s)", u"s", 0}, Ending{u"(es)", u"es", 0},
                                         Ending{u"(ies)", u"ies", 1}};

/// Puts the arguments in, and the English endings in singular or plural by the number before them.
/// A translation has its own plural forms and no bracketed endings.
QString filled(const QString& text, const base::Message& message) {
  const int whole = firstWhole(message);
  double counted = whole < 0 ? 2 : whole;
  QString out;
  for (qsizetype i = 0; i < text.size(); ++i) {
    const QChar c = text.at(i);
    if (c == u'%' && i + 1 < text.size()) {
      const QChar next = text.at(i + 1);
      if (next == u'n' && whole >= 0) {
        out += wholeNumber(whole);
        counted = whole;
        ++i;
        continue;
      }
      const int index = next.digitValue() - 1;
      if (index >= 0 && static_cast<std::size_t>(index) < message.args.size()) {
        const auto& arg = message.args[static_cast<std::size_t>(index)];
        out += argText(arg);
        if (const auto number = argNumber(arg)) counted = *number;
        ++i;
        continue;
      }
    }
    bool ending = false;
    if (c == u'(') {
      for (const Ending& e : kEndings) {
        if (!QStringView(text).sliced(i).startsWith(e.written)) continue;
        if (counted != 1.0) {
          out.chop(e.cut);
          out += e.many;
        }
        i += e.written.size() - 1;
        ending = true;
        break;
      }
    }
    if (!ending) out += c;
  }
  return out;
}

}  // namespace

QString words(const base::Message& message) {
  const auto it = catalogue().find(message.key);
  if (it == catalogue().end()) {
    base::log("words: no text for " + message.key);
    return QString::fromStdString(message.key);
  }
  // The number is handed over so that a translator's plural form is chosen; %n itself is put in by
  // filled() when no translation is loaded.
  return filled(QCoreApplication::translate("Messages", it->second, nullptr, firstWhole(message)),
                message);
}

std::string wordsUtf8(const base::Message& message) {
  return words(message).toStdString();
}

QString words(const base::Failure& failure) {
  QStringList lines;
  for (const auto& message : failure.messages) lines << words(message);
  return lines.join(u'\n');
}

bool hasWords(const std::string& key) {
  return catalogue().count(key) > 0;
}

QString roundNumber(double value) {
  if (!std::isfinite(value)) return QStringLiteral("–");
  if (value == 0.0) return QLocale().toString(0);
  const int digits = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  if (digits <= 1) {
    // 3.46 -> 3.5, 0.0346 -> 0.035
    QString text = QLocale().toString(value, 'f', std::min(2 - digits, 6));
    const QLocale locale;
    while (text.contains(locale.decimalPoint()) && text.endsWith(locale.zeroDigit())) text.chop(1);
    if (text.endsWith(locale.decimalPoint())) text.chop(1);
    return withMinus(text);
  }
  const double step = std::pow(10.0, digits - 2);
  return wholeNumber(std::llround(value / step) * std::llround(step));
}

QString fromTo(double low, double high) {
  const QString from = roundNumber(low), to = roundNumber(high);
  if (from == to) return from;
  // A dash beside a minus cannot be read.
  if (low < 0 || high < 0) {
    //: A range that begins below zero: "−280 to 14,000".
    return QCoreApplication::translate("Numbers", "%1 to %2").arg(from, to);
  }
  return QStringLiteral("%1–%2").arg(from, to);
}

QString band(double median, double low, double high) {
  return QStringLiteral("%1 (%2)").arg(roundNumber(median), fromTo(low, high));
}

QString dateText(base::Date date) {
  //: Day, month, year: unambiguous, never all digits. See QLocale::toString.
  return QLocale().toString(toQDate(date), QCoreApplication::translate("Dates", "d MMM yyyy"));
}

}  // namespace outyard::adapt

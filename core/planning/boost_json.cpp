// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/planning/boost_json.h"

#include "core/base/text.h"

namespace outyard::planning {
namespace {

/// Writes JSON (RFC 8259) piece by piece, two blanks a level.
class Writer {
 public:
  void open(char bracket) {
    next();
    m_out += bracket;
    m_fresh = true;
    m_depth += 1;
  }
  void close(char bracket) {
    m_depth -= 1;
    if (!m_fresh) line();
    m_out += bracket;
    m_fresh = false;
  }
  void key(const std::string& name) {
    next();
    quote(name);
    m_out += ": ";
    m_keyed = true;
  }
  void text(const std::string& value) {
    next();
    quote(value);
  }
  void number(double value) {
    next();
    m_out += base::shortest(value);
  }
  void null() {
    next();
    m_out += "null";
  }
  void texts(const std::vector<std::string>& values) {
    open('[');
    for (const auto& v : values) text(v);
    close(']');
  }
  std::string take() { return std::move(m_out) + "\n"; }

 private:
  void line() {
    m_out += '\n';
    m_out.append(2 * m_depth, ' ');
  }
  void next() {
    if (m_keyed) {
      m_keyed = false;
      return;
    }
    if (m_depth == 0) return;
    if (!m_fresh) m_out += ',';
    m_fresh = false;
    line();
  }
  void quote(const std::string& value) {
    static constexpr char kHex[] = "0123456789abcdef";
    m_out += '"';
    for (const char c : value) {
      const auto u = static_cast<unsigned char>(c);
      if (c == '"' || c == '\\') {
        m_out += '\\';
        m_out += c;
      } else if (c == '\n') {
        m_out += "\\n";
      } else if (c == '\t') {
        m_out += "\\t";
      } else if (u < 0x20) {
        m_out += "\\u00";
        m_out += kHex[u >> 4U];
        m_out += kHex[u & 15U];
      } else {
        m_out += c;
      }
    }
    m_out += '"';
    m_fresh = false;
  }
  std::string m_out;
  std::size_t m_depth = 0;
  bool m_fresh = true, m_keyed = false;
};

void writeOption(Writer& w, const BoostOption& o) {
  const bool visit = isVisit(o);
  w.open('{');
  const auto text = [&](const char* name, const std::string& value) {
    w.key(name);
    value.empty() ? w.null() : w.text(value);
  };
  const auto number = [&](const char* name, double value) {
    w.key(name);
    w.number(value);
  };
  text("id", o.id);
  text("colony", o.colony.str());
  text("hive", o.hive.str());
  text("method", visit ? "visit" : std::string(apiary::code(o.method)));
  text("donor_colony", o.donorColony ? o.donorColony->str() : "");
  text("donor_hive", o.donorHive ? o.donorHive->str() : "");
  number("benefit", o.benefit);
  number("donor_cost", o.donorCost);
  number("other_cost", o.otherCost);
  number("net", o.net);
  if (!visit) {
    number("gain", o.gain.median);
    number("gain_low", o.gain.low);
    number("gain_high", o.gain.high);
  }
  if (o.chance) {
    w.key("chance");
    w.open('{');
    number("receiver_without", o.chance->receiverWithout);
    number("receiver_with", o.chance->receiverWith);
    number("donor_without", o.chance->donorWithout);
    number("donor_with", o.chance->donorWith);
    number("more_bees", o.chance->better);
    w.close('}');
  }
  w.key("uses");
  w.open('{');
  for (const auto& [item, n] : o.gear) {
    w.key(item);
    w.number(n);
  }
  number("hours", o.hours);
  w.close('}');
  w.key("takes");
  w.open('{');
  number("bees", o.takes.bees);
  number("brood_frames", o.takes.broodFrames);
  number("stack", o.takes.stack);
  w.close('}');
  w.close('}');
}

void writeLimits(Writer& w, const BoostProblem& p) {
  w.open('{');
  w.key("gear");
  w.open('{');
  for (const auto& [item, n] : p.gear) {
    w.key(item);
    w.number(n);
  }
  w.close('}');
  w.key("hours");
  p.hours ? w.number(*p.hours) : w.null();
  w.key("donors");
  w.open('{');
  for (const auto& [colony, cap] : p.donors) {
    w.key(colony);
    w.open('{');
    w.key("bees");
    w.number(cap.bees);
    w.key("brood_frames");
    w.number(cap.broodFrames);
    w.key("stack");
    w.number(cap.stack);
    w.close('}');
  }
  w.close('}');
  w.close('}');
}

}  // namespace

std::string boostJson(const BoostPlan& plan,
                      const std::function<std::string(const base::Message&)>& word) {
  const BoostProblem& p = plan.problem;
  Writer w;
  const auto text = [&](const char* name, const std::string& value) {
    w.key(name);
    w.text(value);
  };
  const auto number = [&](const char* name, double value) {
    w.key(name);
    w.number(value);
  };
  w.open('{');
  number("format", 1);
  text("unit", p.basis == "forecast" ? "expected usable colonies" : "thousand bees covering brood");
  text("basis", p.basis);
  if (p.basis == "forecast") {
    w.key("usable");
    w.open('{');
    number("seams", p.usableSeams);
    number("brood_combs", p.usableBroodCombs);
    w.close('}');
  }
  text("status", plan.optimal ? "optimal" : "feasible");
  number("bound", plan.bound);
  number("gap", plan.gap);
  w.key("yards");
  w.open('[');
  for (const auto& y : p.request.yards) w.text(y.str());
  w.close(']');
  text("date", p.request.date.iso());
  text("target", p.target.iso());
  w.key("pins");
  w.texts(p.request.pins);
  w.key("forbids");
  w.texts(p.request.forbids);
  number("objective", plan.objective);
  w.key("options");
  w.open('[');
  for (const auto& o : p.options) writeOption(w, o);
  w.close(']');
  w.key("limits");
  writeLimits(w, p);
  w.key("rules");
  w.open('[');
  const auto standing = standingRules(p);
  for (const auto* rules : {&standing, &p.rules}) {
    for (const auto& rule : *rules) {
      w.open('{');
      text("why", word(rule.why));
      w.key("ids");
      w.texts(rule.ids);
      if (!rule.coefs.empty()) {
        w.key("coefs");
        w.open('[');
        for (const double c : rule.coefs) w.number(c);
        w.close(']');
      }
      number("at_most", rule.atMost);
      w.close('}');
    }
  }
  w.close(']');
  w.key("chosen");
  w.texts(plan.chosen);
  w.key("barred");
  w.open('[');
  for (const auto& b : p.barred) {
    w.open('{');
    text("colony", b.colony.str());
    text("hive", b.hive.str());
    text("why", word(b.why));
    w.close('}');
  }
  w.close(']');
  w.key("notes");
  w.open('[');
  for (const auto& n : p.notes) w.text(word(n));
  w.close(']');
  w.close('}');
  return w.take();
}

}  // namespace outyard::planning

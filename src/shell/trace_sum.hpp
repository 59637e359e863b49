// Sums of any number of parts in the record: a flat list up to eight, a tree beyond.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "basinwright/trace/trace.hpp"

namespace basinwright::shell {

/// A recorded part: its key and value.
template <class Q>
struct Term {
  std::string key;
  Q value;
};

inline constexpr std::size_t terms_at_once = 8;

/// Records `key` = part_1 + part_2 + ... over at most eight parts.
template <class Q>
void note_terms(trace::Trace& trace,
                const std::string& key,
                Q total,
                const std::vector<Term<Q>>& terms) {
  static constexpr std::string_view names[] = {
      "part_1", "part_2", "part_3", "part_4", "part_5", "part_6", "part_7", "part_8"};
  std::string formula(terms.empty() ? "0" : names[0]);
  for (std::size_t i = 1; i < terms.size(); ++i) formula += " + " + std::string(names[i]);
  const auto part = [&](std::size_t i) {
    return trace::Operand(names[i], terms[i].value, trace::From{terms[i].key});
  };
  switch (terms.size()) {
    case 0:
      trace.note(key, total, formula, {});
      break;
    case 1:
      trace.note(key, total, formula, {part(0)});
      break;
    case 2:
      trace.note(key, total, formula, {part(0), part(1)});
      break;
    case 3:
      trace.note(key, total, formula, {part(0), part(1), part(2)});
      break;
    case 4:
      trace.note(key, total, formula, {part(0), part(1), part(2), part(3)});
      break;
    case 5:
      trace.note(key, total, formula, {part(0), part(1), part(2), part(3), part(4)});
      break;
    case 6:
      trace.note(key, total, formula, {part(0), part(1), part(2), part(3), part(4), part(5)});
      break;
    case 7:
      trace.note(
          key, total, formula, {part(0), part(1), part(2), part(3), part(4), part(5), part(6)});
      break;
    default:
      trace.note(key,
                 total,
                 formula,
                 {part(0), part(1), part(2), part(3), part(4), part(5), part(6), part(7)});
  }
}

/// Records `key` as the sum of all terms, in groups of eight where there are more.
template <class Q>
void note_sum(trace::Trace& trace, const std::string& key, Q total, std::vector<Term<Q>> terms) {
  for (int level = 1; terms.size() > terms_at_once; ++level) {
    std::vector<Term<Q>> groups;
    for (std::size_t i = 0; i < terms.size(); i += terms_at_once) {
      const std::size_t end = std::min(i + terms_at_once, terms.size());
      std::vector<Term<Q>> group(terms.begin() + static_cast<std::ptrdiff_t>(i),
                                 terms.begin() + static_cast<std::ptrdiff_t>(end));
      Q sum{};
      for (const Term<Q>& term : group) sum += term.value;
      const std::string name =
          key + ".sum_" + std::to_string(level) + "_" + std::to_string(groups.size() + 1);
      note_terms(trace, name, sum, group);
      groups.push_back({name, sum});
    }
    terms = std::move(groups);
  }
  note_terms(trace, key, total, terms);
}

}  // namespace basinwright::shell

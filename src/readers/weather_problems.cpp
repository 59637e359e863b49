#include "weather_problems.hpp"

#include <algorithm>

namespace basinwright::readers {

void WeatherProblems::tell(Complaint complaint) {
  ++count_;
  const auto is_same = [&](const Kind& kind) { return kind.code.word == complaint.code.word; };
  auto kind = std::ranges::find_if(kinds_, is_same);
  if (kind == kinds_.end()) kind = kinds_.insert(kinds_.end(), Kind{complaint.code});
  if (++kind->count <= told_of_each) {
    readers::tell(source_, problems_, std::move(complaint));
    return;
  }
  if (kind->count == told_of_each + 1) kind->first_unsaid = complaint.at;
  // A code can be a warning here and an error there: what is unsaid counts as the worse.
  const bool first = kind->count == told_of_each + 1;
  kind->severity = first ? complaint.severity : std::min(kind->severity, complaint.severity);
}

void WeatherProblems::finish() {
  for (const Kind& kind : kinds_) {
    if (kind.count <= told_of_each) continue;
    std::string more = grouped(kind.count - told_of_each) + " more of this kind";
    if (is_hopeless()) more += ", and the file was not read to its end";
    readers::tell(source_,
                  problems_,
                  {.code = kind.code,
                   .at = kind.first_unsaid,
                   .message = "And " + more,
                   .severity = kind.severity});
  }
}

std::string grouped(std::size_t number) {
  constexpr std::size_t group = 3;
  std::string out = std::to_string(number);
  for (std::size_t at = out.size(); at > group;) out.insert(at -= group, ",");
  return out;
}

}  // namespace basinwright::readers

// How weather is said: what closed an hour, what dates rest on, what excludes what.
#pragma once

#include <string>
#include <string_view>

#include "basinwright/job/plan.hpp"
#include "basinwright/units/parse.hpp"

namespace basinwright::report {

/// The moment at which an hour begins.
[[nodiscard]] dates::Moment moment_of(weather::HourNumber hour);
/// What closed a gate, its figure and its hour: "rain Thu 13 May 14:00, 1.2 mm".
[[nodiscard]] std::string closed_by(const weather::Verdict& verdict, units::System system);
/// "forecast", "observed", "climatology" or "calendar".
[[nodiscard]] std::string_view rests_on(weather::Quality quality);
/// A code for machines, words for people.
[[nodiscard]] std::string_view code(sequence::WeatherBasis basis);
[[nodiscard]] std::string basis(const sequence::Programme& programme);
[[nodiscard]] std::string_view code(sequence::Hardener::Kind kind);
[[nodiscard]] std::string hardener(const sequence::Hardener& hardener, units::System system);
[[nodiscard]] std::string_view code(sequence::Constraint constraint);
[[nodiscard]] std::string_view words(sequence::Constraint constraint);
[[nodiscard]] std::string_view code(sequence::WayOut::How how);
/// "with Saturday work: full Sun 23 May 2027".
[[nodiscard]] std::string way_out(const sequence::WayOut& way);

}  // namespace basinwright::report

// Words of explanations and defaults.
#pragma once

namespace basinwright::report::say {

inline constexpr char one_kilogram_per[] = "1 kg per ";
inline constexpr char defaults_used_nobody_gave_these_each[] =
    "Defaults used (nobody gave these; each can be set at its key)";
inline constexpr char key[] = "Key";
inline constexpr char value[] = "Value";
inline constexpr char how_and_where_from[] = "How, and where from";
inline constexpr char computed[] = "computed: ";
inline constexpr char given[] = "given: ";
inline constexpr char default_not_given_at[] = "default, not given at ";
inline constexpr char what_can_be_explained[] = "What can be explained";
inline constexpr char ask_for_one_basinwright_explain_job[] =
    "Ask for one: basinwright explain JOB QUANTITY";
inline constexpr char handbook_short_cut[] = "Handbook short cut";
inline constexpr char volume[] = "Volume";
inline constexpr char misses_by[] = "Misses by";
inline constexpr char beside_it[] = "Beside it";
inline constexpr char how_before[] = "How ";
inline constexpr char came_about[] = " came about";
inline constexpr char held_because_of[] = "not earlier because of: ";

}  // namespace basinwright::report::say

// Words of the refill and the new water.
#pragma once

namespace basinwright::report::say {

inline constexpr char tap[] = "Tap";
inline constexpr char hours_at_that_rate[] = "Hours at that rate";
inline constexpr char on_the_meter[] = "On the meter";
inline constexpr char water_at_cost[] = "Water, at cost";
inline constexpr char no_price_given[] = "no price given";
inline constexpr char nothing_but_salt_or_chlorine_before[] = "Nothing but salt or chlorine before";
inline constexpr char after_six_hours_read_again_then_by_the[] =
    "after six hours, read again; then by the reading, the same way";
inline constexpr char one_chemical_a_working_day_in_this[] =
    "One chemical a working day, in this order; bought with the materials, dosed by the reading";
inline constexpr char how_much[] = "How much";
inline constexpr char changes[] = "Changes";
inline constexpr char how[] = "How";
inline constexpr char dose_from_to[] = "{} {} to {}{}";
inline constexpr char mg_l[] = " mg/L";
inline constexpr char saturation_index_above_0_the_water[] =
    "Saturation index: above 0 the water leaves scale, below it dissolves lime";
inline constexpr char method[] = "Method";
inline constexpr char index[] = "Index";
inline constexpr char as_it_fills[] = "as it fills";
inline constexpr char at_its_targets[] = "at its targets";
inline constexpr char measure_the_fill_water_first_without[] =
    "Measure the fill water first: without its {} nothing is added for it here.";
inline constexpr char refill_and_start_up[] = "Refill and start-up";
inline constexpr char thousand_us_gallons[] = "1000 US gal";

}  // namespace basinwright::report::say

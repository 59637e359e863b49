// Words of price, orders and result lines.
#pragma once

namespace basinwright::report::say {

inline constexpr char stock_does_not_reach[] = "stock does not reach";
inline constexpr char no_price[] = "no price";
inline constexpr char sum[] = "Sum";
inline constexpr char painted_after[] = " painted";
inline constexpr char abraded[] = " abraded";
inline constexpr char etched[] = " etched";
inline constexpr char of_edge[] = " of edge";
inline constexpr char coat_session[] = "coat session";
inline constexpr char of_tread[] = " of tread";
inline constexpr char of_step_edge[] = " of step edge";
inline constexpr char per_of[] = "{:.3g} per {}{}";
inline constexpr char per[] = "{:g} per {}";
inline constexpr char need[] = "Need";
inline constexpr char packs[] = "Packs";
inline constexpr char left_over[] = "Left over";
inline constexpr char worth[] = "Worth";
inline constexpr char supplier[] = "Supplier";
inline constexpr char order_by[] = "Order by";
inline constexpr char materials_whole_packs[] = "Materials, whole packs";
inline constexpr char consumables[] = "Consumables";
inline constexpr char protection[] = "Protection";
inline constexpr char days[] = "Days";
inline constexpr char hire[] = "Hire";
inline constexpr char crew_hours[] = "Crew hours";
inline constexpr char wages[] = "Wages";
inline constexpr char labour[] = "Labour";
inline constexpr char until_the_test_is_made_one_of_these[] =
    "Until the test is made, one of these";
inline constexpr char open[] = "open";
inline constexpr char price_of[] = "Price, {}";
inline constexpr char net[] = "Net";
inline constexpr char tax_none_in_the_rate_book[] = "Tax (none in the rate book)";
inline constexpr char payments[] = "Payments";
inline constexpr char area_anywhere_within_the_tapes[] =
    "Area anywhere within the tape's tolerance, cover anywhere within the data sheet's range, "
    "every value as likely as another (JCGM 100, 4.3.7) and one cover for all coats: the chance is "
    "the part of that rectangle in which area over cover is more than the kits, worked exactly.";
inline constexpr char in_all[] = "In all";
inline constexpr char chance_of_running_short[] = "Chance of running short";
inline constexpr char choice[] = "Choice";
inline constexpr char of_them_in_case[] = ", {} of them in case";
inline constexpr char confidence_wanted[] = "Confidence wanted";
inline constexpr char kits_least_area_and_most_cover[] = "Kits, least area and most cover";
inline constexpr char kits_as_measured_and_expected[] = "Kits, as measured and expected";
inline constexpr char kits_most_area_and_least_cover[] = "Kits, most area and least cover";
inline constexpr char ordered[] = "Ordered";
inline constexpr char late_after[] = ", late";
inline constexpr char batch_after[] = " (batch {})";
inline constexpr char orders[] = "Orders";
inline constexpr char lead[] = "Lead";
inline constexpr char on_the_yard[] = "On the yard";
inline constexpr char none_named[] = "none named";
inline constexpr char lead_not_known[] = "lead not known";
inline constexpr char what_to_order_and_by_when[] = "What to order, and by when";
inline constexpr char on_delivery[] = "On delivery";
inline constexpr char where_it_stands[] = "Where it stands";
inline constexpr char what_is_left[] = "What is left";
inline constexpr char price_from_to[] = "{} to {} · {} {}";
inline constexpr char one_of_the_two_has_no_price[] = "One of the two has no price";

}  // namespace basinwright::report::say

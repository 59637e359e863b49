// Words of the quotation and its variations.
#pragma once

namespace basinwright::report::say {

inline constexpr char the_price_either_way[] = "The price either way";
inline constexpr char to_be_given[] = "to be given";
inline constexpr char to_be_agreed[] = "to be agreed";
inline constexpr char on_after[] = " on ";
inline constexpr char rate[] = "Rate";
inline constexpr char on[] = "On";
inline constexpr char price_before[] = "Price, ";
inline constexpr char without_tax[] = "Without tax";
inline constexpr char tax_none[] = "Tax (none)";
inline constexpr char to_be_paid[] = "To be paid";
inline constexpr char dates[] = "Dates";
inline constexpr char we_start[] = "We start";
inline constexpr char the_pool_is_filled_from[] = "The pool is filled from";
inline constexpr char we_hand_over[] = "We hand over";
inline constexpr char these_dates_rest_on[] = "These dates rest on";
inline constexpr char terms[] = "Terms";
inline constexpr char warranty[] = "Warranty";
inline constexpr char cancellation[] = "Cancellation";
inline constexpr char acceptance[] = "Acceptance";
inline constexpr char i_accept_this_and_its_terms[] = "I accept this {} and its terms.";
inline constexpr char revision[] = "Revision";
inline constexpr char valid_until[] = "Valid until";
inline constexpr char address[] = "Address";
inline constexpr char registration[] = "Registration";
inline constexpr char insurance[] = "Insurance";
inline constexpr char pool[] = "Pool";
inline constexpr char what_we_paint[] = "What we paint";
inline constexpr char made_of[] = "Made of";
inline constexpr char painted_in_all[] = "Painted in all";
inline constexpr char two_part_epoxy_to_be_chosen[] = "two-part epoxy, to be chosen";
inline constexpr char two_part_epoxy[] = ", two-part epoxy";
inline constexpr char to_be_chosen_before_we_order[] = "to be chosen before we order";
inline constexpr char slip_resistant[] = "Slip-resistant";
inline constexpr char why_there_is_no_price_yet[] = "Why there is no price yet";
inline constexpr char needed_first[] = "Needed first";
inline constexpr char still_open[] = "Still open";
inline constexpr char what_we_do_not_know_yet[] = "What we do not know yet";
inline constexpr char unpriced[] = "unpriced";
inline constexpr char part_of_the_material_has_no_price_yet[] =
    "Part of the material has no price yet and is not in the total.";
inline constexpr char what_you_may_add[] = "What you may add";
inline constexpr char option[] = "Option";
inline constexpr char adds_to_the_total[] = "Adds to the total";
inline constexpr char one_coat_more[] = "One coat more";
inline constexpr char in_all_may_last_to_years[] = " ({} in all, may last {} to {} years)";
inline constexpr char permits_in_hand_before_we_start[] = "Permits in hand before we start: ";
inline constexpr char quotation[] = "Quotation";
inline constexpr char estimate[] = "Estimate";
inline constexpr char repainting_of_a_swimming_pool[] = "Repainting of a swimming pool";
inline constexpr char demonstration_rates_every_price_and[] =
    "Demonstration rates: every price and data sheet on this page is invented.";
inline constexpr char this_is_an_estimate_what_is_still_open[] =
    "This is an estimate: what is still open is listed, and may change it.";
inline constexpr char no_price_can_be_given_yet[] = "No price can be given yet";
inline constexpr char included[] = "Included";
inline constexpr char not_included[] = "Not included";
inline constexpr char sums_allowed_for[] = "Sums allowed for";
inline constexpr char what_this_rests_on[] = "What this rests on";
inline constexpr char care_and_what_to_expect[] = "Care and what to expect";
inline constexpr char total_valid_until[] = "Total {}{} · valid until {}";
inline constexpr char estimate_after[] = " (estimate)";
inline constexpr char quoted[] = "Quoted";
inline constexpr char variation[] = "Variation";
inline constexpr char demonstration_rates_every_price_on[] =
    "Demonstration rates: every price on this page is invented.";
inline constexpr char what_changes_since_the_quotation[] = "What changes since the quotation";
inline constexpr char added[] = "Added";
inline constexpr char left_out[] = "Left out";

}  // namespace basinwright::report::say

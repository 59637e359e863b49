// Words of the coating record.
#pragma once

namespace basinwright::report::say {

inline constexpr char conditions[] = "Conditions";
inline constexpr char limits_air_to_shell_to_humidity_at[] =
    "Limits: air {} to {}, shell {} to {}, humidity at most {:.0f} %, shell at least {} above the "
    "dew point.";
inline constexpr char cannot_be_told[] = "cannot be told";
inline constexpr char no_conditions_were_read[] = "no conditions were read";
inline constexpr char deliveries[] = "Deliveries";
inline constexpr char batch[] = "Batch";
inline constexpr char kind[] = "Kind";
inline constexpr char delivery_of[] = "delivery of ";
inline constexpr char no_delivery_was_recorded[] = "no delivery was recorded";
inline constexpr char mixed[] = "Mixed";
inline constexpr char part_a[] = "Part A";
inline constexpr char rolled_out[] = "Rolled out";
inline constexpr char mix_at_after[] = ", mix at ";
inline constexpr char batch_of_part_a[] = ": batch of Part A";
inline constexpr char batch_of_part_b[] = ": batch of Part B";
inline constexpr char no_mix_was_recorded[] = "no mix was recorded";
inline constexpr char film_readings[] = "Film readings";
inline constexpr char wet_film_at_the_data_sheets_cover_to_m[] =
    "Wet film at the data sheet's cover: {:.0f} to {:.0f} µm a coat; for the dry film the sheet "
    "decides.";
inline constexpr char wet[] = "Wet";
inline constexpr char dry[] = "Dry";
inline constexpr char against_the_sheet[] = "Against the sheet";
inline constexpr char the_sheet_decides[] = "the sheet decides";
inline constexpr char too_thin[] = "too thin";
inline constexpr char too_thick[] = "too thick";
inline constexpr char no_film_was_read[] = "no film was read";
inline constexpr char water_readings[] = "Water readings";
inline constexpr char chlorine[] = "Chlorine";
inline constexpr char groundwater_below_rim[] = "Groundwater below rim";
inline constexpr char mg_l_of[] = "{:.1f} mg/L";
inline constexpr char notes[] = "Notes";
inline constexpr char coating_record[] = "Coating record";
inline constexpr char written_from_the_site_log_what_nobody[] =
    "Written from the site log. What nobody recorded is shown as missing, never filled in.";
inline constexpr char the_record_is_whole[] = "The record is whole.";
inline constexpr char missing_from_the_record[] = "{} {} missing from the record.";
inline constexpr char item_is[] = "item is";
inline constexpr char items_are[] = "items are";
inline constexpr char not_started[] = ": not started";
inline constexpr char no_end[] = ": no end";
inline constexpr char no_mixes[] = ": no mixes";
inline constexpr char air_shell_and_humidity[] = ": air, shell and humidity";
inline constexpr char wet_film_after[] = ": wet film";
inline constexpr char hold_points[] = "Hold points";
inline constexpr char hold_point[] = "Hold point";
inline constexpr char released_by[] = "Released by";
inline constexpr char hold_point_before[] = "hold point ";
inline constexpr char who_and_when[] = ": who and when";
inline constexpr char used_against_planned[] = "Used against planned";
inline constexpr char used[] = "Used";
inline constexpr char planned[] = "Planned";
inline constexpr char litres_of_paint[] = "Litres of paint";
inline constexpr char litres_of_primer[] = "Litres of primer";
inline constexpr char person_hours_after[] = ", person-hours";
inline constexpr char batch_of_it[] = ": batch";
inline constexpr char inside[] = "inside";

}  // namespace basinwright::report::say

// The parts of the job sheet, each a section of the page and a member of its JSON.
#pragma once

#include "basinwright/report/pages.hpp"
#include "cells.hpp"

namespace basinwright::report {

[[nodiscard]] document::Section heading_section(const Subject& s);
[[nodiscard]] document::Section version_section();
[[nodiscard]] document::Section take_off_section(const Subject& s, bool whole);
[[nodiscard]] document::Section route_section(const Subject& s);
[[nodiscard]] document::Section quantities_section(const Subject& s);
[[nodiscard]] document::Section mixes_section(const Subject& s);
[[nodiscard]] document::Section mixing_section(const Subject& s);
[[nodiscard]] document::Section wash_water_section(const Subject& s);
[[nodiscard]] document::Section refill_section(const Subject& s);
[[nodiscard]] document::Section coats_section(const Subject& s);
[[nodiscard]] document::Section purchases_section(const Subject& s);
[[nodiscard]] document::Section orders_section(const Subject& s);
[[nodiscard]] document::Section consumables_section(const Subject& s);
[[nodiscard]] document::Section protection_section(const Subject& s);
[[nodiscard]] document::Section hire_section(const Subject& s);
[[nodiscard]] document::Section instruments_section(const Subject& s);
[[nodiscard]] document::Section waste_section(const Subject& s);
[[nodiscard]] document::Section labour_section(const Subject& s);
[[nodiscard]] document::Section price_section(const Subject& s);
[[nodiscard]] document::Section programme_section(const Subject& s);
[[nodiscard]] document::Section cautions_section(const Subject& s);
[[nodiscard]] document::Section defaults_section(const Subject& s);
/// Which goods are late: by the day they were to be ordered, or the page says it by its log.
enum class Goods { by_order, by_log };
/// What every page rests on, said before any number.
[[nodiscard]] std::vector<std::string> notices(const Subject& s, Goods goods = Goods::by_order);

/// Number, client and address on one line.
[[nodiscard]] std::string subtitle_of(const job::Job& job);

/// What goes into each vessel for one wash; for every wash when `wash` is empty.
[[nodiscard]] document::Table mix_table(const Subject& s, std::string_view wash);

/// Whole millilitres, grams or pieces as people say them.
[[nodiscard]] std::string amount(quote::Measure measure, std::int64_t n, units::System system);

/// The same in the unit that machines read, and that unit's name.
[[nodiscard]] double in_key_unit(quote::Measure measure, std::int64_t n);
[[nodiscard]] const char* unit_of(quote::Measure measure);

/// "17.00 %", and "8.875 %" where two decimals do not hold it.
[[nodiscard]] std::string percent_text(money::Percentage rate);

/// What the dates rest on: the calendar alone, or weather.
[[nodiscard]] Cell weather_basis(const Subject& s);

/// An amount of any dimension as people read it.
[[nodiscard]] std::string shown(const trace::Amount& amount,
                                std::string_view name,
                                const Subject& s);

}  // namespace basinwright::report

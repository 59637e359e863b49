#include <array>

#include "basinwright/readers/field.hpp"
#include "product_fields.hpp"

namespace basinwright::readers {
namespace {

using namespace tables;

// 3,600 square metres or metres an hour: nobody works faster by hand.
constexpr double fastest = 1.0;
// Amounts of money; the least valued currencies need millions for an hour's hire.
constexpr double largest_amount = 1e9;

constexpr Field rate(std::string_view key, std::string_view doc) {
  return {.key = key,
          .type = Type::work_rate,
          .doc = doc,
          .low = 0,
          .high = fastest,
          .above_low = true,
          .fallback = "assumed"};
}
constexpr Field task_hours(std::string_view key, std::string_view doc) {
  return time(key, doc, "assumed");
}
constexpr Field reach(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key, .type = Type::length, .doc = doc, .low = 0, .high = 1, .fallback = fallback};
}

constexpr Field heaviness(std::string_view key, std::string_view doc, std::string_view fallback) {
  return {.key = key,
          .type = Type::concentration,
          .doc = doc,
          .low = 500,
          .high = 4000,
          .fallback = fallback};
}

constexpr std::array productivity{
    rate("chlorine_wash", "A person"),
    rate("degrease", "A person, rinse included"),
    rate("loose_paint", "A person"),
    rate("repair", "A person, area worked over"),
    rate("strip", "A person"),
    rate("abrade", "A person"),
    rate("dust_removal", "A person"),
    rate("pressure_clean", "A person"),
    rate("etch", "A person, rinse included"),
    rate("neutralise", "A person, rinse included"),
    Field{.key = "mask",
          .type = Type::edge_rate,
          .doc = "Metres of edge a person",
          .low = 0,
          .high = fastest,
          .above_low = true,
          .fallback = "assumed"},
    rate("vacuum", "A person"),
    rate("prime", "A painter"),
    rate("coat", "A painter, cutting in included"),
    rate("unmask", "A person, cleaning included"),
    task_hours("set_out", "Person-hours to set out and isolate"),
    task_hours("coating_test", "Person-hours"),
    task_hours("dryness_test", "Person-hours"),
    task_hours("refit", "Person-hours"),
    task_hours("fill", "Person-hours"),
    task_hours("start_up", "Person-hours"),
    task_hours("handover", "Person-hours"),
    task_hours("daily_set_up", "Each person each day, set-up and clean-up"),
    flow("drain_pump", "What the pump lifts while draining", "10 m3/h, assumed")};

constexpr Field premium(std::string_view key) {
  return {.key = key,
          .type = Type::fraction,
          .doc = "Of the wage on that day",
          .low = 0,
          .high = 10,
          .fallback = "100 %"};
}
constexpr std::array weekdays{premium("monday"),
                              premium("tuesday"),
                              premium("wednesday"),
                              premium("thursday"),
                              premium("friday"),
                              premium("saturday"),
                              premium("sunday")};
constexpr std::array labour{Field{.key = "hour",
                                  .type = Type::money,
                                  .doc = "Wage of a person-hour, on-costs included",
                                  .low = 0,
                                  .high = largest_amount,
                                  .required = true},
                            Field{.key = "outside_hours",
                                  .type = Type::fraction,
                                  .doc = "Of the wage outside the crew's hours, where painting "
                                         "begins at first light",
                                  .low = 0,
                                  .high = 10,
                                  .fallback = "100 %"},
                            Field{.key = "weekday",
                                  .type = Type::object,
                                  .doc = "What each day of the week costs",
                                  .fallback = "100 %",
                                  .fields = weekdays}};

constexpr std::array hire{
    Field{.key = "item", .type = Type::text, .doc = "What is hired", .required = true},
    Field{.key = "task",
          .type = Type::choice,
          .doc = "Task it is needed for",
          .choices = "set-out drain coating-test strip chlorine-wash degrease loose-paint repair "
                     "abrade dust-removal pressure-clean etch-walls etch-floor neutralise dry "
                     "dryness-test vacuum mask prime coat-1 coat-2 coat-3 coat-4 coat-5 coat-6 "
                     "unmask cure refit fill start-up handover",
          .fallback = "all days on site"},
    Field{.key = "day",
          .type = Type::money,
          .doc = "Price of a day",
          .low = 0,
          .high = largest_amount,
          .required = true}};
constexpr std::array rule{
    Field{.key = "item", .type = Type::text, .doc = "What is used up or worn", .required = true},
    Field{.key = "per",
          .type = Type::choice,
          .doc = "What the count goes by",
          .choices =
              "job day person painter painted_area abraded_area etched_area edge coat_session kit "
              "tread_area step_edge",
          .required = true},
    Field{.key = "rate",
          .type = Type::number,
          .doc = "Pieces for each; areas in m2 and lengths in m, or ft2 and ft where the file is "
                 "in US units",
          .low = 0,
          .high = 1e4,
          .fallback = "1"},
    price("price", "Of one piece", "0")};
constexpr std::array supplier{lead};
constexpr Field tax_rate(std::string_view doc) {
  return {.key = "rate", .type = Type::fraction, .doc = doc, .low = 0, .high = 1, .required = true};
}
constexpr std::array other_rate{
    words("name", "What that tax is called"),
    tax_rate("Of its part of the net price; 0 % for what is free of it"),
    Field{.key = "on",
          .type = Type::list,
          .doc = "Costs under it, with their part of contingency, mark-up and discount",
          .choices = "materials consumables protection labour hire disposal travel fill_water",
          .required = true,
          .element = Type::choice}};
constexpr std::array tax{words("name", "What the tax is called"),
                         tax_rate("Of the net price"),
                         Field{.key = "other_rates",
                               .type = Type::list,
                               .doc = "Rates of their own for some of the costs",
                               .fallback = "none",
                               .element = Type::object,
                               .fields = other_rate}};
constexpr std::array overheads{Field{.key = "markup",
                                     .type = Type::fraction,
                                     .doc = "On cost; never with margin",
                                     .low = 0,
                                     .high = 10,
                                     .fallback = "none"},
                               share("margin", "On price; never with markup", "none"),
                               share("contingency", "On cost", "none"),
                               price("call_out", "Least charge for labour", "none"),
                               price("travel", "Each day on site", "none")};

constexpr std::array waits{
    time(
        "recoat_reserve", "Kept at both ends of every recoat and primer window", "30 min, assumed"),
    time("dry", "Without rain before the dryness test", "48 h, assumed"),
    time("dryness_test", "Sheets down", "16 h"),
    time("coat_within", "Of the etch", "7 d, assumed"),
    time("after_chlorine", "Before anything else goes on the shell", "12 h"),
    time("filler_cure", "Before sanding", "12 h"),
    time("start_up", "From full to handover", "5 d"),
    time("rework_dry",
         "After a section whose window was lost is abraded and cleaned, before its coat",
         "2 h, assumed"),
    time("rework_coat_within", "Of abrading and cleaning that section", "24 h, assumed"),
    time("delivered_before", "Goods on the yard before their first use", "1 d, assumed")};
constexpr std::array weather{
    Field{.key = "least_rain",
          .type = Type::length,
          .doc = "The least rain of an hour that counts as rain",
          .low = 0,
          .high = 0.01,
          .above_low = true,
          .fallback = "0.1 mm, assumed"},
    Field{.key = "shell_lag",
          .type = Type::duration,
          .doc = "Time constant with which a drained shell follows the air",
          .low = 0,
          .high = 86400.0 * 10,
          .above_low = true,
          .fallback = "15 h, assumed"},
    Field{.key = "frost",
          .type = Type::temperature,
          .doc = "No etch and no rinse in colder air",
          .low = coldest,
          .high = hottest,
          .fallback = "0 C, assumed"},
    reach("heavy_rain", "So much rain before the drain is said", "25 mm, assumed"),
    time("heavy_rain_within", "Looked back so long before the drain", "48 h, assumed")};
constexpr std::array thresholds{
    Field{.key = "lead_until",
          .type = Type::whole,
          .doc = "Paint of this year and before may hold lead",
          .low = 1900,
          .high = 2200,
          .fallback = "1978"},
    reach("crack_hairline", "The coating bridges narrower ones", "1 mm"),
    reach("crack_widest", "Wider ones stop the job", "5 mm"),
    reach("divot_filler", "Deeper ones are filled with mortar", "10 mm"),
    share("strip_share", "Loose paint above it: strip all", "25 %"),
    share("prime_share", "Bare area above it: prime", "10 %, assumed"),
    time("cement_age", "New cement before acid and paint", "28 d"),
    share("drummy_share", "Hollow render above it stops the job", "5 %, assumed"),
    reach("crack_opening", "Depth a crack is opened to when not measured", "10 mm, assumed"),
    reach("crack_worked", "Width worked over along a crack", "0.1 m, assumed"),
    reach("render_thickness", "Render cut out", "20 mm, assumed"),
    Field{.key = "filler_work",
          .type = Type::duration,
          .doc = "Mixed filler is used within",
          .low = 0,
          .high = 86400,
          .above_low = true,
          .fallback = "30 min"},
    volume("filler_batch", "Filler mixed at once, at most", "0.5 L, assumed"),
    heaviness("mortar_density", "Sand and cement as laid", "2000 g/L"),
    reach("old_film", "Old paint that stripping takes off", "0.5 mm, assumed"),
    reach("abraded_film", "Old paint that abrading takes off", "0.05 mm, assumed"),
    heaviness("film_density", "Dry paint", "1500 g/L, assumed")};

constexpr std::array rate_book_top{
    Field{.key = "$schema", .type = Type::text, .doc = "For editors", .fallback = "none"},
    Field{.key = "basinwright_rates",
          .type = Type::whole,
          .doc = "Version of this format",
          .low = 1,
          .high = 1,
          .fallback = "1"},
    words("name", "Name of the book"),
    yes_no("demonstration", "Whether the figures are invented; every page then says so", "false"),
    Field{.key = "units",
          .type = Type::choice,
          .doc = "Unit system of bare numbers",
          .choices = "metric us",
          .fallback = "metric"},
    Field{.key = "currency", .type = Type::text, .doc = "ISO 4217 code", .required = true},
    Field{.key = "rounding",
          .type = Type::choice,
          .doc = "How half a minor unit is rounded",
          .choices = "half_away half_even",
          .fallback = "half_away"},
    Field{.key = "tax",
          .type = Type::object,
          .doc = "On the net price",
          .fallback = "none",
          .fields = tax},
    Field{.key = "coating_systems",
          .type = Type::map,
          .doc = "Data sheets by name",
          .fallback = "none",
          .fields = system_keys},
    Field{.key = "chemicals",
          .type = Type::object,
          .doc = "Strengths and rates",
          .fallback = "usual",
          .fields = chemicals},
    Field{.key = "packs",
          .type = Type::map,
          .doc = "Packs by item: coating, primer, thinner, filler, mortar, acid, hypochlorite, "
                 "degreaser, bicarbonate; or a system's name, with primer or thinner behind it",
          .fallback = "none",
          .fields = pack,
          .many = true},
    Field{.key = "suppliers",
          .type = Type::map,
          .doc = "Suppliers by name",
          .fallback = "none",
          .fields = supplier},
    Field{.key = "productivity",
          .type = Type::object,
          .doc = "What one person does in an hour",
          .fallback = "assumed",
          .fields = productivity},
    Field{
        .key = "labour", .type = Type::object, .doc = "Wages", .required = true, .fields = labour},
    Field{.key = "hire",
          .type = Type::list,
          .doc = "Hired by the day",
          .fallback = "none",
          .element = Type::object,
          .fields = hire},
    Field{.key = "consumables",
          .type = Type::list,
          .doc = "Used up, each with the rule for its count",
          .fallback = "none",
          .element = Type::object,
          .fields = rule},
    Field{.key = "protection",
          .type = Type::list,
          .doc = "Worn, each with the rule for its count",
          .fallback = "none",
          .element = Type::object,
          .fields = rule},
    Field{.key = "options",
          .type = Type::list,
          .doc = "What a client may add, each with the rule for its count",
          .fallback = "none",
          .element = Type::object,
          .fields = rule},
    price("disposal", "Of waste, for the job", "none"),
    Field{.key = "overheads",
          .type = Type::object,
          .doc = "From cost to price",
          .fallback = "none",
          .fields = overheads},
    Field{.key = "waits",
          .type = Type::object,
          .doc = "Waits that belong to no product",
          .fallback = "usual",
          .fields = waits},
    Field{.key = "weather",
          .type = Type::object,
          .doc = "Rules of the weather that belong to no product",
          .fallback = "usual",
          .fields = weather},
    Field{.key = "thresholds",
          .type = Type::object,
          .doc = "Where the rules of thumb turn over",
          .fallback = "usual",
          .fields = thresholds},
    Field{.key = "order_confidence",
          .type = Type::fraction,
          .doc = "Chance wanted that the kits ordered are enough",
          .low = 0.5,
          .high = 1,
          .fallback = "50 %: at the expected cover"}};

}  // namespace

std::span<const Field> rate_book_fields() {
  return rate_book_top;
}

}  // namespace basinwright::readers

#include "basinwright/readers/key_page.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "basinwright/readers/crews_file.hpp"
#include "basinwright/readers/field.hpp"
#include "basinwright/readers/site_log.hpp"
#include "measures.hpp"

namespace basinwright::readers {

std::string limits_of(const Field& field) {
  const double least = least_of(field);
  const bool low = std::isfinite(least);
  const bool high = std::isfinite(field.high);
  const bool over = field.above_low && least == field.low;
  Field measured = field;
  if (field.type == Type::list) measured.type = field.element;
  if (low && high && !over) {
    return limit_words(measured, least) + " to " + limit_words(measured, field.high);
  }
  std::string words;
  if (low) words = (over ? "over " : "from ") + limit_words(measured, least);
  if (high) words += (words.empty() ? "up to " : ", up to ") + limit_words(measured, field.high);
  return words;
}

namespace {

constexpr std::string_view opening =
    R"(# The job file, the rate book, the site log and the crews file, key by key

This page is made from the table that the program reads with; a test holds the two together.

The files are JSON in UTF-8. A measure is a text with its unit (`"9.2 m"`, `"30 ft 6 in"`, `"150 mm"`, `"20 L/min"`,
`"24 h"`, `"18 C"`, `"64 F"`) or a bare number in the file's unit system: metric m, m2, L, kg, C, L/min, m2/h; us ft, ft2,
US gal, lb, F, US gal/min, ft2/h; times in hours in both. A bare `gal` is refused: write `US gal` or `imp gal`. A share is
`"5 %"` or 0.05. A day is `"2027-05-31"`, a time `"2027-05-31T08:15"` on a quarter hour, hours `["07:00", "16:00"]`.
Amounts of money are texts (`"12.50"`) or numbers, never more decimals than the currency has. Keys that are not listed here
are refused, with the nearest one named.
)";

constexpr std::array<std::pair<Type, std::string_view>, 34> type_names{{
    {Type::object, "object"},
    {Type::map, "object, free keys"},
    {Type::list, "list"},
    {Type::tuple, "list in order"},
    {Type::variant, "object with `kind`"},
    {Type::one_or_many, "object, or list of them"},
    {Type::by_month, "object, months 1 to 12"},
    {Type::text, "text"},
    {Type::number, "number"},
    {Type::whole, "whole number"},
    {Type::boolean, "true or false"},
    {Type::choice, "one of"},
    {Type::date, "day"},
    {Type::moment, "time"},
    {Type::clock, "time of day"},
    {Type::length, "length"},
    {Type::area, "area"},
    {Type::volume, "volume"},
    {Type::mass, "mass"},
    {Type::duration, "duration"},
    {Type::flow, "flow"},
    {Type::temperature, "temperature"},
    {Type::temperature_difference, "temperature difference"},
    {Type::concentration, "concentration"},
    {Type::work_rate, "area a time"},
    {Type::edge_rate, "length a time"},
    {Type::speed, "speed"},
    {Type::spreading_rate, "area a volume"},
    {Type::application_rate, "volume an area"},
    {Type::fraction, "share"},
    {Type::pack_size, "volume, mass or pieces"},
    {Type::money, "amount"},
    {Type::hours, "hours"},
    {Type::year, "year"},
}};

std::string name_of(Type type) {
  const auto it = std::ranges::find(type_names, type, &std::pair<Type, std::string_view>::first);
  return it == type_names.end() ? "" : std::string(it->second);
}

std::string kind_of(const Field& field) {
  std::string kind = name_of(field.type);
  const bool holds_elements = field.type == Type::list || field.type == Type::by_month;
  if (holds_elements) kind += " of " + name_of(field.element);
  if (!field.choices.empty()) kind += " `" + std::string(field.choices) + "`";
  return kind;
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|') out += '\\';
    out += c;
  }
  return out;
}

struct Pending {
  std::string title;
  std::span<const Field> fields;
};

class Page {
 public:
  void table(const std::string& title, std::span<const Field> fields, int level) {
    text_ += fmt::format("\n{} {}\n\n", std::string(static_cast<std::size_t>(level), '#'), title);
    text_ += "| key | kind | limits | without it | meaning |\n| --- | --- | --- | --- | --- |\n";
    std::vector<Pending> below;
    for (const Field& field : fields) {
      row(field);
      queue(title, field, below);
    }
    for (const Pending& p : below) table(p.title, p.fields, std::min(level + 1, deepest_heading));
  }
  [[nodiscard]] std::string text() && { return std::move(text_); }

 private:
  static constexpr int deepest_heading = 4;

  void row(const Field& f) {
    const std::string without = f.required ? "**refused**" : escaped(f.fallback);
    text_ += fmt::format("| `{}` | {} | {} | {} | {} |\n",
                         f.key,
                         escaped(kind_of(f)),
                         limits_of(f),
                         without,
                         escaped(f.doc));
  }

  static void queue(const std::string& title, const Field& f, std::vector<Pending>& below) {
    const std::string name = title.starts_with('`') ? title.substr(0, title.size() - 1) + "." : "`";
    const std::string here = name + std::string(f.key);
    const std::span<const Field> fields =
        f.key == "pool" && f.type == Type::one_or_many ? pool_fields() : f.fields;
    if (!fields.empty()) below.push_back({here + "`", fields});
    for (const Alternative& a : f.alternatives) {
      below.push_back({here + ", kind " + std::string(a.kind) + "`", a.fields});
    }
  }

  std::string text_;
};

}  // namespace

std::string key_page() {
  Page page;
  page.table("Job file", job_fields(), 2);
  page.table("Rate book", rate_book_fields(), 2);
  page.table("Site log, one entry a line", site_log_fields(), 2);
  page.table("Crews file of a season", crews_fields(), 2);
  return std::string(opening) + std::move(page).text();
}

}  // namespace basinwright::readers

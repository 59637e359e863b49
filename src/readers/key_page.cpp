#include "basinwright/readers/key_page.hpp"

#include <fmt/format.h>
#include <cmath>
#include <vector>

#include "basinwright/readers/field.hpp"
#include "measures.hpp"

namespace basinwright::readers {
namespace {

constexpr std::string_view opening = R"(# The job file and the rate book, key by key

This page is made from the table that the program reads with; a test holds the two together.

Both files are JSON in UTF-8. A measure is a text with its unit (`"9.2 m"`, `"30 ft 6 in"`, `"150 mm"`, `"20 L/min"`,
`"24 h"`, `"18 C"`, `"64 F"`) or a bare number in the file's unit system: metric m, m2, L, kg, C, L/min, m2/h; us ft, ft2,
US gal, lb, F, US gal/min, ft2/h; times in hours in both. A bare `gal` is refused: write `US gal` or `imp gal`. A share is
`"5 %"` or 0.05. A day is `"2027-05-31"`, a time `"2027-05-31T08:15"` on a quarter hour, hours `["07:00", "16:00"]`.
Amounts of money are texts (`"12.50"`) or numbers, never more decimals than the currency has. Keys that are not listed here
are refused, with the nearest one named.
)";

std::string name_of(Type type) {
  switch (type) {
    case Type::object:
      return "object";
    case Type::map:
      return "object, free keys";
    case Type::list:
      return "list";
    case Type::tuple:
      return "list in order";
    case Type::variant:
      return "object with `kind`";
    case Type::one_or_many:
      return "object, or list of them";
    case Type::by_month:
      return "object, months 1 to 12";
    case Type::text:
      return "text";
    case Type::number:
      return "number";
    case Type::whole:
      return "whole number";
    case Type::boolean:
      return "true or false";
    case Type::choice:
      return "one of";
    case Type::date:
      return "day";
    case Type::moment:
      return "time";
    case Type::clock:
      return "time of day";
    case Type::length:
      return "length";
    case Type::area:
      return "area";
    case Type::volume:
      return "volume";
    case Type::mass:
      return "mass";
    case Type::duration:
      return "duration";
    case Type::flow:
      return "flow";
    case Type::temperature:
      return "temperature";
    case Type::temperature_difference:
      return "temperature difference";
    case Type::concentration:
      return "concentration";
    case Type::work_rate:
      return "area a time";
    case Type::edge_rate:
      return "length a time";
    case Type::spreading_rate:
      return "area a volume";
    case Type::application_rate:
      return "volume an area";
    case Type::fraction:
      return "share";
    case Type::pack_size:
      return "volume, mass or pieces";
    case Type::money:
      return "amount";
    case Type::hours:
      return "hours";
    case Type::year:
      return "year";
  }
  return "";
}

std::string kind_of(const Field& field) {
  std::string kind = name_of(field.type);
  const bool holds_elements = field.type == Type::list || field.type == Type::by_month;
  if (holds_elements) kind += " of " + name_of(field.element);
  if (!field.choices.empty()) kind += " `" + std::string(field.choices) + "`";
  return kind;
}

std::string limits_of(const Field& field) {
  const bool low = std::isfinite(field.low);
  const bool high = std::isfinite(field.high);
  Field measured = field;
  if (field.type == Type::list) measured.type = field.element;
  if (low && high && !field.above_low) {
    return limit_words(measured, field.low) + " to " + limit_words(measured, field.high);
  }
  std::string words;
  if (low) words = (field.above_low ? "over " : "from ") + limit_words(measured, field.low);
  if (high) words += (words.empty() ? "up to " : ", up to ") + limit_words(measured, field.high);
  return words;
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
  return std::string(opening) + std::move(page).text();
}

}  // namespace basinwright::readers

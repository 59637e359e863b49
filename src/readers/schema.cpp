#include "basinwright/readers/schema.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "basinwright/readers/crews_file.hpp"
#include "basinwright/readers/field.hpp"
#include "basinwright/readers/site_log.hpp"
#include "basinwright/units/unit.hpp"
#include "measures.hpp"

namespace basinwright::readers {
namespace {

using OrderedJson = nlohmann::ordered_json;

// The patterns are ECMA-262, as the drafts ask; they know the shape of a text and not its unit.
constexpr const char* day_pattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";
constexpr const char* moment_pattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}(T[0-9]{2}:(00|15|30|45))?$";
constexpr const char* clock_pattern = "^[0-9]{2}:(00|15|30|45)$";
constexpr const char* year_pattern = "^(unknown|[0-9]{4}(-[0-9]{2}-[0-9]{2})?)$";
constexpr const char* amount_pattern = "^-?[0-9]*\\.?[0-9]*$";
constexpr const char* share_pattern = "^\\s*[-+]?[0-9.].*(%|cent|pct)\\s*$";
constexpr const char* measure_pattern = "^\\s*[-+]?\\.?[0-9]+[^,]*[^0-9,.\\s]";
// A minus before any number but nought.
constexpr const char* negative_pattern = "^\\s*-[0-9.]*[1-9]";
constexpr const char* month_pattern =
    "^(0?[1-9]|1[0-2]|january|february|march|april|may|june|july|august|september|october|"
    "november|december)$";

OrderedJson words_of(std::string_view words) {
  OrderedJson out = OrderedJson::array();
  while (!words.empty()) {
    const std::size_t space = std::min(words.find(' '), words.size());
    out.push_back(std::string(words.substr(0, space)));
    words.remove_prefix(std::min(space + 1, words.size()));
  }
  return out;
}

void limit(OrderedJson& out, double low, double high, bool above_low) {
  if (std::isfinite(low)) out[above_low ? "exclusiveMinimum" : "minimum"] = low;
  if (std::isfinite(high)) out["maximum"] = high;
}

OrderedJson text_like(const char* pattern) {
  return {{"type", "string"}, {"pattern", pattern}};
}

// What a bare number of the row counts in, where that is the same in both unit systems.
double bare_unit(Type type) {
  switch (type) {
    case Type::duration:
      return units::hours(1).si();
    case Type::concentration:
    case Type::fraction:
      return 1.0;
    default:
      return 0.0;
  }
}

// A text with its unit, or a bare number.
OrderedJson measure(const Field& field, Type type) {
  OrderedJson out{{"type", {"string", "number"}},
                  {"pattern", type == Type::fraction ? share_pattern : measure_pattern}};
  if (field.low >= 0.0 && type != Type::temperature) out["not"] = text_like(negative_pattern);
  if (const double unit = bare_unit(type); unit > 0.0) {
    limit(out, field.low / unit, field.high / unit, field.above_low);
  } else if (field.low >= 0.0 && type != Type::temperature) {
    out[field.above_low ? "exclusiveMinimum" : "minimum"] = 0;
  }
  return out;
}

class Schema {
 public:
  explicit Schema(Draft draft) : later_(draft == Draft::draft_2020_12) {}

  OrderedJson whole(const std::string& title, std::span<const Field> fields) {
    OrderedJson out{{"$schema",
                     later_ ? "https://json-schema.org/draft/2020-12/schema"
                            : "http://json-schema.org/draft-07/schema#"},
                    {"title", title}};
    out.update(object(fields));
    if (!defined_.empty()) out[later_ ? "$defs" : "definitions"] = std::move(defined_);
    return out;
  }

 private:
  // An editor may want its `$schema` in any object.
  OrderedJson object(std::span<const Field> fields,
                     std::span<const Field> more = {},
                     std::string_view kind = {}) {
    OrderedJson properties = OrderedJson::object();
    OrderedJson required = OrderedJson::array();
    if (!kind.empty()) {
      properties["kind"] = {{"const", std::string(kind)}};
      required.push_back("kind");
    }
    for (const auto& rows : {fields, more}) {
      for (const Field& field : rows) {
        properties[std::string(field.key)] = described(field);
        if (field.required) required.push_back(std::string(field.key));
      }
    }
    OrderedJson out{{"type", "object"}, {"properties", std::move(properties)}};
    if (!required.empty()) out["required"] = std::move(required);
    out["patternProperties"] = {{"^\\$schema$", true}};
    out["additionalProperties"] = false;
    return out;
  }

  OrderedJson described(const Field& field) {
    OrderedJson out{{"description", description(field)}};
    out.update(value(field, field.type));
    return out;
  }

  static std::string description(const Field& field) {
    std::string out = std::string(field.doc) + ".";
    const std::string limits = limits_of(field);
    if (!limits.empty()) out += " Limits: " + limits + ".";
    if (!field.required && !field.fallback.empty())
      out += " Without it: " + std::string(field.fallback) + ".";
    return out;
  }

  OrderedJson value(const Field& field, Type type) {
    switch (type) {
      case Type::object:
        return object(field.fields);
      case Type::map:
        return map(field);
      case Type::list:
        return {{"type", "array"}, {"items", value(field, field.element)}};
      case Type::tuple:
        return tuple(field);
      case Type::variant:
        return variant(field);
      case Type::one_or_many:
        return one_or_many(field);
      case Type::by_month:
        return {{"type", "object"},
                {"patternProperties", {{month_pattern, value(field, field.element)}}},
                {"additionalProperties", false}};
      default:
        return plain(field, type);
    }
  }

  static OrderedJson plain(const Field& field, Type type) {
    switch (type) {
      case Type::text:
        return {{"type", "string"}};
      case Type::boolean:
        return {{"type", "boolean"}};
      case Type::choice:
        return {{"enum", words_of(field.choices)}};
      case Type::date:
        return text_like(day_pattern);
      case Type::moment:
        return text_like(moment_pattern);
      case Type::clock:
        return text_like(clock_pattern);
      case Type::hours:
        return {{"type", "array"},
                {"items", text_like(clock_pattern)},
                {"minItems", 2},
                {"maxItems", 2}};
      default:
        return numeric(field, type);
    }
  }

  static OrderedJson numeric(const Field& field, Type type) {
    OrderedJson out;
    switch (type) {
      case Type::number:
      case Type::whole:
        out["type"] = type == Type::whole ? "integer" : "number";
        limit(out, field.low, field.high, field.above_low);
        return out;
      case Type::year:
        out = {{"type", {"integer", "string"}}, {"pattern", year_pattern}};
        limit(out, field.low, field.high, field.above_low);
        return out;
      case Type::money:
        out = {{"type", {"string", "number"}}, {"pattern", amount_pattern}};
        limit(out, field.low, field.high, field.above_low);
        return out;
      case Type::pack_size:
        return {
            {"type", {"string", "number"}}, {"pattern", measure_pattern}, {"exclusiveMinimum", 0}};
      default:
        return measure(field, type);
    }
  }

  OrderedJson map(const Field& field) {
    OrderedJson item = object(field.fields);
    if (field.many) item = {{"type", "array"}, {"items", std::move(item)}};
    return {{"type", "object"}, {"additionalProperties", std::move(item)}};
  }

  // 2020-12 calls `prefixItems` what was `items` before, and `items` what was `additionalItems`.
  OrderedJson tuple(const Field& field) {
    OrderedJson items = OrderedJson::array();
    for (const Field& f : field.fields) items.push_back(described(f));
    OrderedJson out{{"type", "array"}};
    out[later_ ? "prefixItems" : "items"] = std::move(items);
    out[later_ ? "items" : "additionalItems"] = false;
    out["minItems"] = std::ranges::count_if(field.fields, &Field::required);
    return out;
  }

  OrderedJson variant(const Field& field) {
    OrderedJson forms = OrderedJson::array();
    for (const Alternative& a : field.alternatives)
      forms.push_back(object(a.fields, field.fields, a.kind));
    return {{"type", "object"},
            {"required", OrderedJson::array({"kind"})},
            {"oneOf", std::move(forms)}};
  }

  OrderedJson one_or_many(const Field& field) {
    const std::string name(field.key);
    if (!defined_.contains(name))
      defined_[name] = object(field.key == "pool" ? pool_fields() : field.fields);
    const OrderedJson one{{"$ref", (later_ ? "#/$defs/" : "#/definitions/") + name}};
    return {
        {"if", {{"type", "array"}}}, {"then", {{"items", one}, {"minItems", 1}}}, {"else", one}};
  }

  bool later_;
  OrderedJson defined_ = OrderedJson::object();
};

}  // namespace

std::string schema(Subject subject, Draft draft) {
  Schema made(draft);
  constexpr int indent = 1;
  switch (subject) {
    case Subject::job_file:
      return made.whole("Job file", job_fields()).dump(indent) + "\n";
    case Subject::rate_book:
      return made.whole("Rate book", rate_book_fields()).dump(indent) + "\n";
    case Subject::crews_file:
      return made.whole("Crews file of a season", crews_fields()).dump(indent) + "\n";
    case Subject::site_log:
      break;
  }
  return made.whole("Site log, one entry a line", site_log_fields()).dump(indent) + "\n";
}

}  // namespace basinwright::readers

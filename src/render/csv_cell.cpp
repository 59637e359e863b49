#include "csv_cell.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include "json_value.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

using document::Value;

/// Digits, with a sign in front and one decimal point among them at most.
bool is_decimal(std::string_view text) {
  if (text.starts_with('-')) text.remove_prefix(1);
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::string_view whole = text.substr(0, point);
  const std::string_view part = point < text.size() ? text.substr(point + 1) : "0";
  return !whole.empty() && !part.empty() && std::ranges::all_of(whole, is_digit) &&
         std::ranges::all_of(part, is_digit);
}

template <class Number>
std::string digits(Number number) {
  std::array<char, 32> buffer{};
  const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), number).ptr;
  return {buffer.data(), end};
}

std::string field(std::nullptr_t) {
  return "";
}
std::string field(bool yes) {
  return yes ? "true" : "false";
}
std::string field(std::int64_t number) {
  return digits(number);
}
std::string field(const std::string& text) {
  return guarded(repaired(text));
}
std::string field(const document::Object& object) {
  return json_line(object);
}

std::string field(double number) {
  if (!std::isfinite(number)) throw std::logic_error("a number for CSV is not finite");
  return digits(number);
}

bool is_nested(const Value& value) {
  return std::holds_alternative<document::Array>(value.data()) ||
         std::holds_alternative<document::Object>(value.data());
}

std::string joined(const document::Array& array) {
  std::string result;
  for (const Value& item : array) {
    if (&item != &array.front()) result += "; ";
    const auto* const words = std::get_if<std::string>(&item.data());
    result += words != nullptr ? repaired(*words) : csv_field(item);
  }
  return guarded(result);
}

std::string field(const document::Array& array) {
  return std::ranges::any_of(array, is_nested) ? json_line(array) : joined(array);
}

}  // namespace

std::string guarded(std::string_view text) {
  constexpr std::string_view formula_starts = "=+-@\t\r";
  const bool formula = !text.empty() && formula_starts.find(text.front()) != std::string_view::npos;
  return (formula && !is_decimal(text) ? "'" : "") + std::string(text);
}

std::string quoted(std::string_view field) {
  if (field.find_first_of("\",\r\n") == std::string_view::npos) return std::string(field);
  std::string result = "\"";
  for (const char byte : field) {
    if (byte == '"') result += '"';
    result += byte;
  }
  return result += '"';
}

std::string csv_field(const Value& value) {
  return std::visit([](const auto& data) { return field(data); }, value.data());
}

}  // namespace basinwright::render

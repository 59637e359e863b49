#include "plain_ascii.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "display_width.hpp"
#include "utf8.hpp"

namespace basinwright::render {
namespace {

constexpr char32_t no_break_space = 0xA0;
constexpr char32_t degree = 0xB0;

struct Spelling {
  char32_t sign;
  std::string_view ascii;
};

constexpr Spelling spellings[] = {
    {U'–', "-"},   {U'—', "-"},      {U'‐', "-"},   {U'‒', "-"},    {U'−', "-"},   {U'×', "x"},
    {U'÷', "/"},   {U'·', "."},      {U'²', "2"},   {U'³', "3"},    {U'¹', "1"},   {U'µ', "u"},
    {U'μ', "u"},   {U'≥', ">="},     {U'≤', "<="},  {U'≠', "!="},   {U'≈', "~"},   {U'±', "+/-"},
    {U'→', "->"},  {U'←', "<-"},     {U'⇒', "=>"},  {U'…', "..."},  {U'•', "*"},   {U'“', "\""},
    {U'”', "\""},  {U'„', "\""},     {U'«', "\""},  {U'»', "\""},   {U'‘', "'"},   {U'’', "'"},
    {U'‚', "'"},   {U'′', "'"},      {U'″', "\""},  {U'½', "1/2"},  {U'¼', "1/4"}, {U'¾', "3/4"},
    {U'⅛', "1/8"}, {U'⅜', "3/8"},    {U'⅝', "5/8"}, {U'⅞', "7/8"},  {U'⁄', "/"},   {U'€', "EUR"},
    {U'£', "GBP"}, {U'©', "(c)"},    {U'®', "(R)"}, {U'™', "(TM)"}, {U'§', "s."},  {U'√', "sqrt "},
    {U'π', "pi"},  {U'Δ', "delta "}, {U'∞', "inf"}, {U'✓', "ok"},   {U'✕', "X"},   {U'▲', "^"},
    {U'─', "-"},   {U'│', "|"},      {U'☐', "[ ]"}, {U'☑', "[x]"},  {U'Æ', "AE"},  {U'Þ', "Th"},
    {U'ß', "ss"},  {U'æ', "ae"},     {U'þ', "th"},  {U'Ĳ', "IJ"},   {U'ĳ', "ij"},  {U'ŉ', "'n"},
    {U'Œ', "OE"},  {U'œ', "oe"}};

/// Base letters of U+00C0 to U+017F; a question mark where one letter is not enough.
constexpr char32_t first_letter = 0xC0;
constexpr std::string_view letters =
    "AAAAAA?CEEEEIIIIDNOOOOOxOUUUUY??aaaaaa?ceeeeiiiidnooooo/ouuuuy?y"
    "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIi??JjKkkLlLlLlL"
    "lLlNnNnNn?NnOoOoOo??RrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs";

bool is_fraction(char32_t sign) {
  return (sign >= 0xBC && sign <= 0xBE) || (sign >= 0x215B && sign <= 0x215E);
}

bool is_wide_space(char32_t scalar) {
  return scalar == no_break_space || scalar == 0x202F || (scalar >= 0x2000 && scalar <= 0x200A);
}

/// `18 °C` becomes `18 C`, as in the job file; a degree of arc is named.
std::string_view degree_spelling(std::string_view before, std::string_view after) {
  if (!after.empty() && (after.front() == 'C' || after.front() == 'F')) return "";
  const bool spaced = before.empty() || before.back() == ' ' || before.ends_with("\xC2\xA0");
  return spaced ? "deg" : " deg";
}

std::string spelling(char32_t scalar) {
  const auto* const known = std::ranges::find(spellings, scalar, &Spelling::sign);
  if (known != std::ranges::end(spellings)) return std::string(known->ascii);
  if (scalar >= first_letter && scalar - first_letter < letters.size()) {
    return {letters[scalar - first_letter]};
  }
  if (scalar == no_break_space || scalar == 0x202F) return "\xC2\xA0";
  if (is_wide_space(scalar)) return " ";
  if (display_width(scalar) == 0) return "";
  return fmt::format("\\u{:04x}", static_cast<unsigned>(scalar));
}

}  // namespace

std::string plain_ascii(std::string_view text) {
  std::string result;
  result.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const Scalar scalar = scalar_at(text, at);
    at += scalar.length;
    const std::string_view after = text.substr(at);
    const bool number_before = !result.empty() && is_digit(result.back());
    const bool number_after = !after.empty() && is_digit(after.front());
    if (scalar.value < 0x80) {
      result += static_cast<char>(scalar.value);
    } else if (scalar.value == degree) {
      result += degree_spelling(result, after);
    } else if (is_fraction(scalar.value) && number_before) {
      result += ' ' + spelling(scalar.value);
    } else {
      result += spelling(scalar.value);
      const bool currency = scalar.value == U'€' || scalar.value == U'£';
      if (currency && number_after) result += ' ';
    }
  }
  return result;
}

}  // namespace basinwright::render

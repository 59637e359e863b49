#include "markup_text.hpp"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

#include "utf8.hpp"
#include "visible.hpp"

namespace basinwright::render {
namespace {

/// U+FFFE, U+FFFF: Unicode has them, XML 1.0 (section 2.2) has not.
constexpr bool is_no_character(char32_t scalar) {
  return scalar == 0xFFFE || scalar == 0xFFFF;
}

}  // namespace

std::string svg_number(double value) {
  if (!std::isfinite(value)) throw std::logic_error("a number for SVG is not finite");
  std::string text = fmt::format("{:.3f}", value);
  return text == "-0.000" ? text.substr(1) : text;
}

std::string markup_text(std::string_view text) {
  constexpr char32_t replacement = 0xFFFD;
  const std::string clean = visible(text);
  std::string out;
  out.reserve(clean.size());
  for (std::size_t at = 0; at < clean.size();) {
    const Scalar scalar = scalar_at(clean, at);
    at += scalar.length;
    switch (scalar.value) {
      case U'&':
        out += "&amp;";
        break;
      case U'<':
        out += "&lt;";
        break;
      case U'>':
        out += "&gt;";
        break;
      case U'"':
        out += "&quot;";
        break;
      case U'\'':
        out += "&#39;";
        break;
      case U'\n':
        out += ' ';
        break;
      default:
        append_scalar(out, is_no_character(scalar.value) ? replacement : scalar.value);
    }
  }
  return out;
}

std::string markup_attribute(std::string_view name, std::string_view value) {
  return fmt::format(" {}=\"{}\"", name, markup_text(value));
}

}  // namespace basinwright::render

#include <algorithm>
#include <array>

#include "basinwright/money/money.hpp"

namespace basinwright::money {
namespace {

// ISO 4217 table A.1 (list one of 25 June 2024): every code whose minor unit is not a hundredth.
constexpr std::array<std::string_view, 17> no_decimals{"BIF",
                                                       "CLP",
                                                       "DJF",
                                                       "GNF",
                                                       "ISK",
                                                       "JPY",
                                                       "KMF",
                                                       "KRW",
                                                       "PYG",
                                                       "RWF",
                                                       "UGX",
                                                       "UYI",
                                                       "VND",
                                                       "VUV",
                                                       "XAF",
                                                       "XOF",
                                                       "XPF"};
constexpr std::array<std::string_view, 7> three_decimals{
    "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
constexpr std::array<std::string_view, 2> four_decimals{"CLF", "UYW"};

bool listed(const auto& codes, std::string_view code) {
  return std::ranges::find(codes, code) != codes.end();
}

int decimals_of(std::string_view code) {
  constexpr int none = 0;
  constexpr int usual = 2;
  constexpr int thousandths = 3;
  constexpr int ten_thousandths = 4;
  if (listed(no_decimals, code)) return none;
  if (listed(three_decimals, code)) return thousandths;
  return listed(four_decimals, code) ? ten_thousandths : usual;
}

}  // namespace

std::optional<Currency> currency(std::string_view code) {
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (code.size() != 3 || !std::ranges::all_of(code, capital)) return std::nullopt;
  return Currency{{code[0], code[1], code[2], '\0'}, decimals_of(code)};
}

}  // namespace basinwright::money

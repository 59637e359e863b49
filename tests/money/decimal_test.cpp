#include <cstdint>
#include <limits>
#include <optional>
#include <random>
#include <string>

#include "basinwright/money/money.hpp"
#include "support/catch.hpp"

using namespace basinwright::money;

namespace {

Currency of(std::string_view code) {
  return currency(code).value();
}

std::optional<std::int64_t> read(std::string_view text, std::string_view code) {
  const auto amount = parse(text, of(code));
  return amount ? std::optional(amount->minor()) : std::nullopt;
}

std::string written(std::int64_t units, std::string_view code) {
  return plain(Money::of_minor(units), of(code));
}

}  // namespace

TEST_CASE("currencies have the decimals of ISO 4217") {
  // ISO 4217 list one of 25 June 2024, column minor unit, as the npm package currency-codes has it.
  for (const std::string_view code : {"BIF",
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
                                      "XPF"}) {
    INFO(code);
    CHECK(of(code).decimals == 0);
  }
  for (const std::string_view code : {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}) {
    INFO(code);
    CHECK(of(code).decimals == 3);
  }
  for (const std::string_view code : {"CLF", "UYW"}) CHECK(of(code).decimals == 4);
  for (const std::string_view code : {"EUR",
                                      "USD",
                                      "GBP",
                                      "AUD",
                                      "NZD",
                                      "ZAR",
                                      "HUF",
                                      "CVE",
                                      "MGA",
                                      "MRU",
                                      "IDR",
                                      "LAK",
                                      "TWD",
                                      "UYU"}) {
    INFO(code);
    CHECK(of(code).decimals == 2);
  }
  CHECK(of("NZD").name() == "NZD");
}

TEST_CASE("what is not three capitals is no currency") {
  for (const std::string_view code : {"", "EU", "EURO", "eur", "E R", "12A", "\xC3\x84U"}) {
    INFO(code);
    CHECK_FALSE(currency(code).has_value());
  }
}

TEST_CASE("amounts are read exactly") {
  CHECK(read("1234.50", "EUR") == 123450);
  CHECK(read("1234.5", "EUR") == 123450);
  CHECK(read("1234", "EUR") == 123400);
  CHECK(read("-0.05", "EUR") == -5);
  CHECK(read("-0", "EUR") == 0);
  CHECK(read("120", "JPY") == 120);
  CHECK(read("0.001", "KWD") == 1);
  CHECK(read("1.2345", "CLF") == 12345);
  CHECK(read("007.10", "EUR") == 710);
  CHECK(read("92233720368547758.07", "EUR") == std::numeric_limits<std::int64_t>::max());
  CHECK(read("-92233720368547758.08", "EUR") == std::numeric_limits<std::int64_t>::min());
}

TEST_CASE("what is no exact amount of the currency is refused") {
  for (const std::string_view text :
       {"",
        "-",
        ".",
        "1.",
        ".5",
        "1.234",
        "1.000",
        "1e3",
        "+1",
        " 1",
        "1 ",
        "1,50",
        "1.2.3",
        "0x1",
        "--1",
        "1-",
        "inf",
        "92233720368547758.08",
        "-92233720368547758.09",
        "1000000000000000000000",
        "9999999999999999999999999999999999999999999999999999999999"}) {
    INFO(text);
    CHECK_FALSE(read(text, "EUR").has_value());
  }
  CHECK_FALSE(read("120.0", "JPY").has_value());
}

TEST_CASE("amounts are written with the decimals of their currency") {
  CHECK(written(123450, "EUR") == "1234.50");
  CHECK(written(-5, "EUR") == "-0.05");
  CHECK(written(0, "EUR") == "0.00");
  CHECK(written(120, "JPY") == "120");
  CHECK(written(-1, "KWD") == "-0.001");
  CHECK(written(12345, "CLF") == "1.2345");
  CHECK(written(std::numeric_limits<std::int64_t>::min(), "EUR") == "-92233720368547758.08");
}

TEST_CASE("what is written reads back") {
  std::mt19937_64 random(3);
  for (int round = 0; round < 4000; ++round) {
    const auto units = static_cast<std::int64_t>(random() >> (random() % 60U));
    for (const std::string_view code : {"EUR", "JPY", "KWD", "CLF"}) {
      REQUIRE(read(written(units, code), code) == units);
    }
  }
}

#include <sstream>
#include <string>
#include <vector>

#include "basinwright/money/money.hpp"
#include "support/catch.hpp"
#include "units/outside.hpp"

// Outside source: Python's decimal module (General Decimal Arithmetic), through oracle.py.

using namespace basinwright::money;

namespace {

struct Case {
  std::string operation;
  Rounding rounding = Rounding::half_away;
  std::vector<std::int64_t> arguments;
  std::string expected;
};

Case read_row(const std::string& line) {
  const std::size_t equals = line.find(" = ");
  std::istringstream fields(line.substr(0, equals));
  Case out;
  std::string rule;
  fields >> out.operation >> rule;
  out.rounding = rule == "even" ? Rounding::half_even : Rounding::half_away;
  for (std::int64_t number = 0; fields >> number;) out.arguments.push_back(number);
  out.expected = line.substr(equals + 3);
  return out;
}

std::string text(const std::vector<Money>& amounts) {
  std::string out;
  for (const Money& amount : amounts) {
    if (!out.empty()) out += ' ';
    out += std::to_string(amount.minor());
  }
  return out;
}

Currency with_decimals(std::int64_t decimals) {
  return {{'Z', 'Z', 'Z', '\0'}, static_cast<int>(decimals)};
}

std::string ours(const Case& c) {
  const std::vector<std::int64_t>& a = c.arguments;
  const Money amount = Money::of_minor(a.at(0));
  if (c.operation == "share") return text({share(amount, {a.at(1)}, c.rounding)});
  if (c.operation == "scaled") return text({scaled(amount, a.at(1), a.at(2), c.rounding)});
  if (c.operation == "markup") return text({with_markup(amount, {a.at(1)}, c.rounding)});
  if (c.operation == "margin") return text({with_margin(amount, {a.at(1)}, c.rounding)});
  if (c.operation == "split") return text(split(amount, {a.begin() + 1, a.end()}));
  if (c.operation == "plain") return plain(amount, with_decimals(a.at(1)));
  if (c.operation != "gross") return "no such operation";
  const GrossParts parts = inside_gross(amount, {a.at(1)}, c.rounding);
  return text({parts.net, parts.tax});
}

}  // namespace

TEST_CASE("money agrees with the decimal module of Python") {
  if (!outside::has_python()) return;
  const std::string cases = outside::cases("7000");
  const auto lines = outside::python_lines("money/oracle.py", cases);
  REQUIRE(lines.has_value());
  REQUIRE(lines->size() == std::stoul(cases));
  for (const std::string& line : *lines) {
    const Case c = read_row(line);
    INFO(line);
    REQUIRE(ours(c) == c.expected);
    if (c.operation == "plain") {
      REQUIRE(parse(c.expected, with_decimals(c.arguments.at(1))) ==
              Money::of_minor(c.arguments.at(0)));
    }
  }
}

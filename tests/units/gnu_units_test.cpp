#include <cmath>
#include <fstream>
#include <map>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "basinwright/units/parse.hpp"
#include "basinwright/units/show.hpp"
#include "basinwright/units/unit.hpp"
#include "support/catch.hpp"
#include "support/places.hpp"
#include "units/names.hpp"
#include "units/outside.hpp"

// Outside source: the program GNU units 2.22 and its definitions file. It prints 15 digits, so it
// may be off by 5e-15 of the value; 1e-14 leaves room for our own last digit.

using namespace basinwright::units;

namespace {

constexpr double tolerance = 1e-14;

const std::map<std::string_view, std::string> in_gnu{{"m", "m"},
                                                     {"mm", "mm"},
                                                     {"cm", "cm"},
                                                     {"ft", "foot"},
                                                     {"in", "inch"},
                                                     {"yd", "yard"},
                                                     {"mil", "mil"},
                                                     {"um", "micrometer"},
                                                     {"km", "km"},
                                                     {"mi", "mile"},
                                                     {"m2", "m^2"},
                                                     {"ft2", "foot^2"},
                                                     {"cm2", "cm^2"},
                                                     {"yd2", "yard^2"},
                                                     {"in2", "inch^2"},
                                                     {"L", "liter"},
                                                     {"m3", "m^3"},
                                                     {"mL", "ml"},
                                                     {"US gal", "usgallon"},
                                                     {"imp gal", "brgallon"},
                                                     {"US qt", "usquart"},
                                                     {"US pt", "uspint"},
                                                     {"US fl oz", "usfloz"},
                                                     {"imp qt", "brquart"},
                                                     {"imp pt", "brpint"},
                                                     {"imp fl oz", "brfloz"},
                                                     {"ft3", "foot^3"},
                                                     {"yd3", "yard^3"},
                                                     {"kL", "kiloliter"},
                                                     {"kg", "kg"},
                                                     {"g", "gram"},
                                                     {"lb", "pound"},
                                                     {"oz", "ounce"},
                                                     {"t", "tonne"},
                                                     {"mg", "milligram"},
                                                     {"h", "hour"},
                                                     {"min", "minute"},
                                                     {"d", "day"},
                                                     {"wk", "week"},
                                                     {"s", "second"},
                                                     {"C", "degC"},
                                                     {"F", "degF"},
                                                     {"K", "K"},
                                                     {"%", "percent"}};

const std::map<Kind, std::string> si_of{{Kind::length, "m"},
                                        {Kind::area, "m^2"},
                                        {Kind::volume, "m^3"},
                                        {Kind::mass, "kg"},
                                        {Kind::duration, "s"},
                                        {Kind::degree, "K"},
                                        {Kind::share, "percent"}};

/// A conversion asked of the program, and our answer.
struct Question {
  std::string have, want;
  double ours;
};

void compare(const std::vector<Question>& questions, const std::string& file) {
  const std::string path = places::binary() + "/" + file;
  std::ofstream input(path);
  for (const Question& q : questions) input << q.have << "\n" << q.want << "\n";
  input.close();
  const auto answers = outside::lines_of("units -t -o '%.15g' < '" + path + "'");
  REQUIRE(answers.has_value());
  REQUIRE(answers->size() == questions.size());
  for (std::size_t i = 0; i < questions.size(); ++i) {
    INFO(questions[i].have << " in " << questions[i].want);
    CHECK(questions[i].ours == Approx(std::stod((*answers)[i])).epsilon(tolerance).margin(1e-300));
  }
}

double si_value(Kind kind, const std::string& text) {
  switch (kind) {
    case Kind::length:
      return std::get<Length>(parse_length(text)).si();
    case Kind::area:
      return std::get<Area>(parse_area(text)).si();
    case Kind::volume:
      return std::get<Volume>(parse_volume(text)).si();
    case Kind::mass:
      return std::get<Mass>(parse_mass(text)).si();
    case Kind::duration:
      return std::get<Duration>(parse_duration(text)).si();
    case Kind::degree:
      return std::get<TemperatureDifference>(parse_temperature_difference(text)).si();
    case Kind::share:
      return std::get<Fraction>(parse_fraction(text)).in_percent();
    case Kind::none:
      break;
  }
  return std::nan("");
}

template <class Q>
Question one(const Unit<Q>& unit, const std::string& have, const std::string& want) {
  return {have, want, unit(1.0).si()};
}

}  // namespace

TEST_CASE("every unit in the tables agrees with GNU units") {
  if (!outside::present("units --version", "GNU units")) return;
  std::mt19937_64 random(20240607);
  std::vector<Question> questions;
  for (const auto& [kind, si] : si_of) {
    for (const UnitName& name : names_of(kind)) {
      if (!name.instead.empty()) continue;
      INFO(name.symbol);
      REQUIRE(in_gnu.count(name.symbol) == 1);
      for (int i = 0; i < 25; ++i) {
        const std::string number =
            i == 0 ? "1" : fixed(static_cast<double>(random() % 100000000) / 1e4, 4);
        const std::string text = number + " " + std::string(name.symbol);
        questions.push_back({number + " " + in_gnu.at(name.symbol), si, si_value(kind, text)});
      }
    }
  }
  CHECK(questions.size() > 1000);
  compare(questions, "gnu-units-names.txt");
}

TEST_CASE("every named unit of a rate agrees with GNU units") {
  if (!outside::present("units --version", "GNU units")) return;
  compare({one(square_metres_per_litre, "m^2/liter", "1/m"),
           one(square_feet_per_us_gallon, "foot^2/usgallon", "1/m"),
           one(litres_per_square_metre, "liter/m^2", "m"),
           one(us_gallons_per_square_foot, "usgallon/foot^2", "m"),
           one(kilograms_per_square_metre, "kg/m^2", "kg/m^2"),
           one(kilograms_per_cubic_metre, "kg/m^3", "kg/m^3"),
           one(grams_per_litre, "gram/liter", "kg/m^3"),
           one(milligrams_per_litre, "milligram/liter", "kg/m^3"),
           one(cubic_metres_per_hour, "m^3/hour", "m^3/s"),
           one(litres_per_minute, "liter/minute", "m^3/s"),
           one(us_gallons_per_minute, "usgallon/minute", "m^3/s"),
           one(square_metres_per_hour, "m^2/hour", "m^2/s"),
           one(square_feet_per_hour, "foot^2/hour", "m^2/s"),
           one(metres_per_hour, "m/hour", "m/s")},
          "gnu-units-rates.txt");
}

TEST_CASE("temperatures as points agree with GNU units") {
  if (!outside::present("units --version", "GNU units")) return;
  std::vector<Question> questions;
  for (int tenth = -400; tenth <= 1300; tenth += 7) {
    const std::string number = fixed(tenth / 10.0, 1);
    for (const std::string scale : {"C", "F"}) {
      const double ours = std::get<Temperature>(parse_temperature(number + " " + scale)).si();
      questions.push_back({"temp" + scale + "(" + number + ")", "K", ours});
    }
  }
  compare(questions, "gnu-units-points.txt");
}

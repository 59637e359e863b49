// Figures that no shell, sewer or water has are refused where they stand: shares outside 0 to 1, pH
// outside 0 to 14, lengths and doses under nothing.
#include "readers/reading.hpp"

using namespace reading;

namespace {

void refused(const std::string& key,
             const std::string& value,
             const std::string& code,
             const std::string& pointer) {
  json file = plain_job();
  file[key] = json::parse(value);
  const std::string text = file.dump(1);
  Problems problems;
  INFO(key << " " << value);
  CHECK_FALSE(job(text, problems).has_value());
  REQUIRE(problems.size() == 1);
  const Diagnostic& d = problems.all()[0];
  CHECK(d.code == code);
  CHECK(d.pointer == pointer);
  const auto here = readers::place_of({"f", text}, pointer);
  CHECK(here.line > 1);
  CHECK(d.at.line == here.line);
  CHECK(d.at.column == here.column);
}

}  // namespace

TEST_CASE("shares outside a whole are refused in place") {
  for (const char* share : {"bare_share", "loose_share"}) {
    const std::string at = "/surfaces/0/" + std::string(share);
    const auto with = [&](const char* v) {
      return R"([{"coating": "epoxy", ")" + std::string(share) + R"(": )" + v + "}]";
    };
    refused("surfaces", with("-0.1"), "negative", at);
    refused("surfaces", with("1.01"), "out-of-range", at);
    refused("surfaces", with("\"101 %\""), "out-of-range", at);
  }
  refused("refill", R"({"first_share": 0})", "not-positive", "/refill/first_share");
  refused("refill", R"({"first_share": 1.1})", "out-of-range", "/refill/first_share");
}

TEST_CASE("no water reads pH 15 or under nothing") {
  refused("site", R"({"sewer": {"ph_min": 15}})", "out-of-range", "/site/sewer/ph_min");
  refused("site", R"({"sewer": {"ph_max": -1}})", "negative", "/site/sewer/ph_max");
  refused("refill", R"({"analysis": {"ph": 15}})", "out-of-range", "/refill/analysis/ph");
  refused("refill", R"({"targets": {"ph": 14.1}})", "out-of-range", "/refill/targets/ph");
  refused(
      "refill", R"({"analysis": {"alkalinity": -5}})", "negative", "/refill/analysis/alkalinity");
  refused("refill",
          R"({"analysis": {"temperature": "60 C"}})",
          "out-of-range",
          "/refill/analysis/temperature");
}

TEST_CASE("no chlorine is sold so strong, or of no strength") {
  const std::string at = "/refill/chlorine/strength";
  refused("refill", R"({"chlorine": {"strength": "0 %"}})", "not-positive", at);
  refused("refill", R"({"chlorine": {"strength": "30 %"}})", "out-of-range", at);
  refused("refill",
          R"({"chlorine": {"kind": "calcium_hypochlorite", "strength": "99.9 %"}})",
          "out-of-range",
          at);
}

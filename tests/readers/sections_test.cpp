// Sections of the coat against the pool they cut, and what is taken off a surface. Geometry by
// hand.
#include "readers/reading.hpp"

using namespace reading;

namespace {

// 8 x 4 x 1.5 m; of equal depth, the far end counts as the deep one.
Found sections(const std::string& list, const std::string& more = "{}") {
  json file = plain_job();
  file["coating"]["sections"] = json::parse(list);
  file["pool"].update(json::parse(more));
  return problems_of_job(file);
}

Found adjusted(const std::string& list, const std::string& more = "{}") {
  json file = plain_job();
  file["pool"]["adjust"] = json::parse(list);
  file["pool"].update(json::parse(more));
  return problems_of_job(file);
}

Found refused(const std::string& pointer) {
  return {"deduction-too-large /pool/adjust" + pointer};
}

}  // namespace

TEST_CASE("sections run from the deep end to the shallow end") {
  CHECK(sections(R"([{"name": "a", "to": 5}, {"name": "b", "to": 0}])").empty());
  CHECK(sections(R"([{"name": "a", "to": 5}, {"name": "b", "to": -1}])").empty());
  CHECK(sections(R"([{"name": "a", "to": 0}])").empty());
  const auto at = [](const std::string& i) {
    return Found{"sections-do-not-fit /coating/sections/" + i + "/to"};
  };
  CHECK(sections(R"([{"name": "a", "to": 8}, {"name": "b", "to": 0}])") == at("0"));
  CHECK(sections(R"([{"name": "a", "to": 9}, {"name": "b", "to": 0}])") == at("0"));
  CHECK(sections(R"([{"name": "a", "to": 4}, {"name": "b", "to": 5}, {"name": "c", "to": 0}])") ==
        at("1"));
  CHECK(sections(R"([{"name": "a", "to": 0}, {"name": "b", "to": -1}])") == at("0"));
  CHECK(sections(R"([{"name": "a", "to": 5}, {"name": "b", "to": 1}])") == at("1"));
}

TEST_CASE("sections of a pool that is deep at its near end run the other way") {
  const std::string floor = R"({"floor": {"kind": "breaks", "points": [[0, 2.0], [8, 1.1]]}})";
  CHECK(sections(R"([{"name": "a", "to": 3}, {"name": "b", "to": 8}])", floor).empty());
  CHECK(sections(R"([{"name": "a", "to": 5}, {"name": "b", "to": 0}])", floor) ==
        Found{"sections-do-not-fit /coating/sections/1/to"});
}

TEST_CASE("a place on the shell is a part, a section or a further body of water") {
  json file = plain_job();
  json spa = file["pool"];
  spa["name"] = "spa";
  file["pool"] = json::array({file["pool"], spa});
  file["surfaces"] = json::parse(R"([{"where": "spa"}, {"where": "deep"}, {"where": "dep"}])");
  CHECK(problems_of_job(file) == Found{"not-a-choice /surfaces/0/where",
                                       "not-a-choice /surfaces/1/where",
                                       "not-a-choice /surfaces/2/where"});
  file["coating"]["sections"] =
      json::parse(R"([{"name": "deep", "to": 4}, {"name": "b", "to": 0}])");
  CHECK(problems_of_job(file) == Found{"not-a-choice /surfaces/2/where"});
}

TEST_CASE("no more is taken off a surface than it has") {
  // Walls 36, floor 32 m2, no steps.
  CHECK(adjusted(R"([{"name": "a", "area": -36}])").empty());
  CHECK(adjusted(R"([{"name": "a", "area": -36.1}])") == refused("/0/area"));
  CHECK(adjusted(R"([{"name": "a", "area": -36.1}, {"name": "b", "area": 1}])").empty());
  CHECK(adjusted(R"([{"name": "a", "area": -33, "where": "floor"}])") == refused("/0/area"));
  CHECK(adjusted(R"([{"name": "a", "area": -1, "where": "steps"}])") == refused("/0/area"));
  CHECK(adjusted(R"([{"name": "a", "area": -20}, {"name": "b", "area": -30}])") ==
        refused("/1/area"));
  CHECK(adjusted(R"([{"name": "a", "area": -36}, {"name": "b", "area": -32, "where": "floor"}])") ==
        refused(""));
  CHECK(adjusted(R"([{"name": "a", "area": -1, "where": "roof"}])") ==
        Found{"not-a-choice /pool/adjust/0/where"});
  // Half of a cove's change counts with the walls: (pi/2 - 2) x 0.1 x 24 / 2 = -0.515 m2.
  CHECK(adjusted(R"([{"name": "a", "area": -35.6}])", R"({"cove_radius": 0.1})") ==
        refused("/0/area"));
  CHECK(adjusted(R"([{"name": "a", "area": -35.4}])", R"({"cove_radius": 0.1})").empty());
}

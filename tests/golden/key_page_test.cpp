#include "basinwright/readers/key_page.hpp"

#include <cstdlib>
#include <fstream>

#include "support/catch.hpp"
#include "support/places.hpp"
#include "support/plans.hpp"

TEST_CASE("the key by key page is the one the table makes") {
  const std::string page = basinwright::readers::key_page();
  const char* update = std::getenv("UPDATE_GOLDENS");
  if (update != nullptr && *update == '1') {
    std::ofstream(places::source() + "/docs/jobfile.md", std::ios::binary) << page;
  }
  CHECK(basinwright::test::file_text("docs/jobfile.md") == page);
}

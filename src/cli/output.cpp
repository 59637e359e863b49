#include "output.hpp"

#include <sys/ioctl.h>
#include <unistd.h>
#include <algorithm>
#include <cstdlib>
#include <optional>
#include <string_view>

#include "basinwright/render/csv.hpp"
#include "basinwright/render/html.hpp"
#include "basinwright/render/icalendar.hpp"
#include "basinwright/render/json.hpp"
#include "basinwright/render/markdown.hpp"
#include "basinwright/render/svg.hpp"
#include "basinwright/render/text.hpp"
#include "files.hpp"
#include "inputs.hpp"

namespace basinwright::cli {
namespace {

int columns() {
  constexpr int narrow = 80;
  constexpr int widest = 140;
  winsize size{};
  if (::isatty(STDOUT_FILENO) == 0 || ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0) return narrow;
  return size.ws_col < narrow ? narrow : (size.ws_col > widest ? widest : size.ws_col);
}

bool wants_colour(const Request& r) {
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  const bool refuses = r.no_color || (no_color != nullptr && *no_color != '\0');
  const bool dumb = term == nullptr || std::string_view(term) == "dumb";
  return !refuses && !dumb && !r.output && ::isatty(STDOUT_FILENO) == 1;
}

}  // namespace

std::string rendered(const Request& r, const document::Document& page) {
  switch (r.format) {
    case Format::markdown:
      return render::markdown(page);
    case Format::json:
      return render::json(page);
    case Format::csv:
      return r.table.empty() ? render::csv(page) : render::csv(page, r.table);
    case Format::svg:
      return render::svg(page);
    case Format::html:
      return render::html(page, {r.paper});
    case Format::ics:
      return render::icalendar(page);
    case Format::text:
      break;
  }
  return render::text(page, {columns(), wants_colour(r), false});
}

Status put(const Request& r, const document::Document& page) {
  if (!r.table.empty()) {
    const std::vector<std::string> tables = render::csv_tables(page);
    if (std::ranges::find(tables, r.table) == tables.end()) {
      std::string known;
      for (const std::string& name : tables) known += (known.empty() ? "" : ", ") + name;
      complain("basinwright: this page has no table \"" + r.table + "\"; it has " + known + "\n");
      return Status::misuse;
    }
  }
  return put(r, rendered(r, page));
}

Status put(const Request& r, const std::string& bytes) {
  if (r.output && *r.output != "-") {
    std::vector<std::string> inputs = r.weather;
    inputs.insert(inputs.end(),
                  {r.job,
                   r.rates.value_or(r.job),
                   r.other.value_or(r.job),
                   r.was.value_or(r.job),
                   r.log.empty() ? r.job : r.log});
    for (const std::string& input : inputs) {
      if (input == *r.output) {
        complain("basinwright: " + *r.output +
                 " is read by this command; it is not written over\n");
        return Status::misuse;
      }
    }
    const std::string reason = write_file(*r.output, bytes);
    if (reason.empty()) return Status::done;
    complain("basinwright: " + *r.output + ": " + reason + "\n");
    return Status::file;
  }
  if (print_out(bytes) != Printed::failed) return Status::done;
  complain("basinwright: standard output could not be written\n");
  return Status::file;
}

}  // namespace basinwright::cli

#include <algorithm>
#include <array>

#include "basinwright/readers/crews_file.hpp"
#include "field_parts.hpp"
#include "view.hpp"

namespace basinwright::readers {
namespace {

constexpr std::array one_crew{
    Field{.key = "name", .type = Type::text, .doc = "As people call it", .required = true},
    Field{.key = "people",
          .type = Type::whole,
          .doc = "Of the crew",
          .low = 1,
          .high = 50,
          .fallback = "each job file's"},
    Field{.key = "painters",
          .type = Type::whole,
          .doc = "Of them, how many paint",
          .low = 1,
          .high = 50,
          .fallback = "each job file's"},
    Field{.key = "hours", .type = Type::hours, .doc = "From and to", .fallback = "each job file's"},
    Field{.key = "working_days",
          .type = Type::list,
          .doc = "Days of the week worked",
          .choices = "monday tuesday wednesday thursday friday saturday sunday",
          .fallback = "each job file's",
          .element = Type::choice},
    Field{.key = "closed",
          .type = Type::list,
          .doc = "Days on which it does not work",
          .fallback = "none",
          .element = Type::date},
    tables::day("from", "Its first working day", "the season's first"),
    tables::day("until", "Its last working day", "none"),
    Field{.key = "hour",
          .type = Type::money,
          .doc = "What an hour of the whole crew costs",
          .low = 0,
          .high = 1e9,
          .fallback = "people times the rate book's wage"}};

constexpr Field way_field(std::string_view key, bool required, std::string_view fallback) {
  return {.key = key,
          .type = Type::duration,
          .doc = "From one site to another, door to door",
          .low = 0,
          .high = 86400,
          .fallback = fallback,
          .required = required};
}
constexpr std::array one_way{
    Field{.key = "from", .type = Type::text, .doc = "A job", .required = true},
    Field{.key = "to", .type = Type::text, .doc = "Another; both ways", .required = true},
    way_field("time", true, "")};
constexpr std::array travel{way_field("usual", false, "30 min, assumed"),
                            Field{.key = "between",
                                  .type = Type::list,
                                  .doc = "Ways that take another time",
                                  .fallback = "none",
                                  .element = Type::object,
                                  .fields = one_way}};
constexpr std::array one_job{
    Field{.key = "job",
          .type = Type::text,
          .doc = "Its number, or its file's name",
          .required = true},
    tables::day("promised", "The last day on which the pool is full in time", "no promise"),
    Field{.key = "priority",
          .type = Type::whole,
          .doc = "What a day late counts",
          .low = 1,
          .high = 9,
          .fallback = "1"},
    tables::day("not_before", "Nothing is done before", "none"),
    tables::day("materials", "Nothing is coated before: kits are on the yard", "none"),
    Field{.key = "crew", .type = Type::text, .doc = "The crew it is bound to", .fallback = "any"}};
constexpr std::array top_fields{
    Field{.key = "basinwright",
          .type = Type::whole,
          .doc = "Format version",
          .low = 1,
          .high = 1,
          .fallback = "1"},
    tables::words("$schema", "For editors"),
    Field{.key = "crews",
          .type = Type::list,
          .doc = "The crews",
          .required = true,
          .element = Type::object,
          .fields = one_crew},
    Field{.key = "travel",
          .type = Type::object,
          .doc = "Ways between sites; leaving one takes the day's clean-up too",
          .fallback = "30 min, assumed",
          .fields = travel},
    Field{.key = "jobs",
          .type = Type::list,
          .doc = "What was promised, job by job",
          .fallback = "no promises",
          .element = Type::object,
          .fields = one_job}};

class CrewsReader {
 public:
  CrewsReader(View& top, const std::vector<NamedJob>& jobs, const money::Currency& currency)
      : top_(top), jobs_(jobs), currency_(currency) {}

  job::SeasonQuestion read() {
    static_cast<void>(top_.whole("basinwright"));
    static_cast<void>(top_.text("$schema"));
    q_.jobs.resize(jobs_.size());
    for (View& view : top_.objects("crews")) read_crew(view);
    const Node* crews = top_.node("crews");
    if (crews != nullptr && crews->kind == Node::Kind::list && crews->items.empty())
      top_.context().report(codes::empty_list, *crews, "/crews", "The list of crews is empty");
    read_travel();
    std::vector<char> told(jobs_.size(), 0);
    for (View& view : top_.objects("jobs")) read_job(view, told);
    top_.finish();
    return std::move(q_);
  }

 private:
  void read_crew(View& view) {
    job::SeasonCrew crew;
    crew.name = view.text("name").value_or("");
    for (const job::SeasonCrew& other : q_.crews) {
      if (!crew.name.empty() && other.name == crew.name)
        refuse(
            view, "name", "There are two crews \"" + crew.name + "\"", "Give each its own name.");
    }
    crew.people = view.whole("people");
    crew.painters = view.whole("painters");
    if (crew.people && crew.painters && *crew.painters > *crew.people)
      view.clash("painters",
                 "people",
                 "There are more painters than people",
                 "Painters are part of the crew.");
    if (const auto hours = view.hours("hours"))
      crew.hours = dates::Hours{hours->first, hours->second};
    if (view.has("working_days")) {
      crew.working.emplace().fill(false);
      for (const std::size_t day : view.choices("working_days")) (*crew.working)[day] = true;
    }
    crew.closed = view.dates("closed");
    crew.from = view.date("from");
    crew.until = view.date("until");
    if (crew.from && crew.until && *crew.until < *crew.from)
      view.clash("until", "from", "The crew's last day is before its first");
    if (const auto hour = view.money("hour")) {
      crew.hour = money::parse(*hour, currency_);
      if (!crew.hour)
        refuse(view, "hour", "\"" + *hour + "\" has more decimals than the rate book's currency");
    }
    view.finish();
    q_.crews.push_back(std::move(crew));
  }

  void read_travel() {
    auto view = top_.object("travel");
    if (!view) return;
    view->set("usual", q_.travel);
    for (View& way : view->objects("between")) {
      const auto from = job_at(way, "from");
      const auto to = job_at(way, "to");
      const auto time = way.measure<units::Duration>("time");
      if (from && to && *from == *to)
        way.clash("to", "from", "This way leads from a job to itself");
      if (from && to && time) q_.between.push_back({*from, *to, *time});
      way.finish();
    }
    view->finish();
  }

  void read_job(View& view, std::vector<char>& told) {
    const auto at = job_at(view, "job");
    job::SeasonJob ignored;
    job::SeasonJob& job = at ? q_.jobs[*at] : ignored;
    if (at && told[*at] != 0) refuse(view, "job", "This job was told of before");
    if (at) told[*at] = 1;
    job.promised = view.date("promised");
    job.priority = view.whole("priority").value_or(1);
    job.not_before = view.date("not_before");
    job.materials = view.date("materials");
    if (const auto crew = view.text("crew")) {
      const auto found = std::ranges::find(q_.crews, *crew, &job::SeasonCrew::name);
      if (found != q_.crews.end()) {
        job.crew = static_cast<std::size_t>(found - q_.crews.begin());
      } else {
        std::vector<std::string_view> names;
        for (const job::SeasonCrew& known : q_.crews) names.push_back(known.name);
        refuse_word(view, "crew", *crew, "crew of this file", names);
      }
    }
    view.finish();
  }

  // By number, path or file name.
  std::optional<std::size_t> job_at(View& view, std::string_view key) {
    const auto word = view.text(key);
    if (!word) return {};
    std::vector<std::size_t> found;
    std::vector<std::string_view> names;
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
      const std::string_view path = jobs_[j].file;
      const std::string_view file = path.substr(path.rfind('/') + 1);
      names.push_back(jobs_[j].number.empty() ? file : std::string_view(jobs_[j].number));
      if (*word == jobs_[j].number || *word == path || *word == file) found.push_back(j);
    }
    if (found.size() == 1) return found.front();
    if (found.empty()) {
      refuse_word(view, key, *word, "job of this season", names);
    } else {
      refuse(view,
             key,
             "\"" + *word + "\" is more than one job of this season",
             "Name it by its file.");
    }
    return {};
  }

  static void refuse(View& view, std::string_view key, std::string message, std::string hint = {}) {
    view.context().report(codes::facts_clash,
                          *view.node(key),
                          view.pointer(key),
                          std::move(message),
                          std::move(hint));
  }

  static void refuse_word(View& view,
                          std::string_view key,
                          const std::string& word,
                          std::string_view what,
                          const std::vector<std::string_view>& known) {
    const std::string_view near = diagnostics::nearest(word, known);
    std::string hint;
    for (const std::string_view name : known)
      hint.append(hint.empty() ? "Known are: " : ", ").append(name);
    view.context().report(codes::not_a_choice,
                          *view.node(key),
                          view.pointer(key),
                          "\"" + word + "\" is no " + std::string(what),
                          near.empty() ? hint : "Did you mean \"" + std::string(near) + "\"?");
  }

  View& top_;
  const std::vector<NamedJob>& jobs_;
  const money::Currency& currency_;
  job::SeasonQuestion q_;
};

}  // namespace

std::span<const Field> crews_fields() {
  return top_fields;
}

std::optional<job::SeasonQuestion> read_crews(const Input& input,
                                              const std::vector<NamedJob>& jobs,
                                              const money::Currency& currency,
                                              diagnostics::Problems& problems) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems found;
  Node root;
  std::optional<job::SeasonQuestion> question;
  if (parse_json(source, root, found)) {
    Context context{source, found};
    if (root.kind == Node::Kind::object) {
      View top(root, crews_fields(), "", context);
      question = CrewsReader(top, jobs, currency).read();
    } else {
      context.report(codes::wrong_type, root, "", "A crews file is a JSON object");
    }
  }
  if (found.has_errors()) question.reset();
  problems.append(found);
  return question;
}

}  // namespace basinwright::readers

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <filesystem>
#include <map>
#include <optional>
#include <string_view>
#include <utility>

#include "basinwright/readers/starter.hpp"
#include "basinwright/report/pages.hpp"
#include "command_line.hpp"
#include "mistyped.hpp"

namespace basinwright::cli {
namespace {

// The words there are stand in the option's type already.
CLI::Validator one_of(std::vector<std::string> words) {
  CLI::Validator validator = CLI::IsMember(std::move(words));
  validator.description("");
  return validator;
}

/// The formats a command can make.
std::vector<std::string> formats_of(Command command) {
  std::vector<std::string> forms(formats.begin(), formats.end());
  const bool draws = command == Command::takeoff || command == Command::jobsheet;
  const bool dates =
      command == Command::jobsheet || command == Command::checklist || command == Command::replan;
  if (!draws) std::erase(forms, "svg");
  if (!dates) std::erase(forms, "ics");
  return forms;
}

bool has_log(Command command) {
  return command == Command::record || command == Command::replan || command == Command::today ||
         command == Command::coating_record || command == Command::handover ||
         command == Command::checklist;
}

void add_log_options(CLI::App& sub, Command command, Texts& t) {
  auto* log = sub.add_option("--log", t.log, "The site log, one JSON object a line");
  log->type_name("FILE")->required(command != Command::handover && command != Command::checklist);
  sub.add_option("--now", t.now, "The time now, instead of the clock's, such as 2027-05-31T06:00")
      ->type_name("TIME");
  if (command == Command::record) {
    sub.add_option("ENTRY",
                   t.entry,
                   "What happened (started, finished, stopped, reading, delivery, mix, "
                   "hold_released, note) and its values as KEY=VALUE, such as task=coat-1; or - "
                   "for entries as JSON lines from standard input")
        ->required();
  }
  if (command == Command::replan) {
    sub.add_option("--was", t.was, "The programme until now, as jobsheet or replan gave it in JSON")
        ->type_name("FILE");
  }
}

// Past years, for the pages that say how sure a date is.
void add_years(CLI::App& sub, Command command, Texts& t) {
  const bool shows_dates = command == Command::jobsheet || command == Command::quote;
  if (!shows_dates && command != Command::odds && command != Command::check) return;
  auto* years = sub.add_option("--years",
                               t.years,
                               "Hours or days of past years: the job is replayed over each; may be "
                               "given again")
                    ->type_name("FILE")
                    ->expected(1)
                    ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  if (command != Command::odds) return;
  constexpr int most_weeks = 53;
  years->required();
  sub.add_option("--by", t.by, "A promised day: in how many years it was met")->type_name("DATE");
  sub.add_option("--weeks", t.weeks, "Compare so many start weeks from the start on")
      ->check(CLI::Range(0, most_weeks))
      ->type_name("NUMBER");
}

// All jobs on shared crews.
void add_season_options(CLI::App& sub, Texts& t) {
  auto* programme =
      sub.add_flag("--programme", t.programme, "Book all jobs on the crews over a season");
  const auto goes_with = [&](CLI::Option* option) { return option->needs(programme); };
  auto* crews = goes_with(sub.add_option(
      "--crews", t.crews, "Crews, ways between sites, promises and priorities (JSON)"));
  crews->type_name("FILE");
  programme->needs(crews);
  goes_with(sub.add_option("--crew", t.crew, "Only this crew's calendar (ics)"))->type_name("NAME");
  const auto again = [&](CLI::Option* option, const char* type) {
    goes_with(option)->type_name(type)->expected(1)->multi_option_policy(
        CLI::MultiOptionPolicy::TakeAll);
  };
  again(sub.add_option(
            "--log",
            t.logs,
            "The site log of a job that has begun: what is done stays; may be given again"),
        "JOB=FILE");
  again(
      sub.add_option("--years",
                     t.years,
                     "Hours or days of past years: in how many each promise is kept; may be given "
                     "again"),
      "FILE");
  goes_with(sub.add_option("--now", t.now, "The time now, for the logs"))->type_name("TIME");
  goes_with(sub.add_option("--table", t.table, "The one table that csv is to hold, such as jobs"))
      ->type_name("NAME");
}

void add_batch_options(CLI::App& sub, Texts& t) {
  sub.add_option(
         "JOB", t.jobs, "Job files, folders of them, or - for one job a line on standard input")
      ->required();
  sub.add_option("--jobs", t.threads, "How many are worked on at a time; the output is the same")
      ->check(CLI::Range(1, 256))
      ->type_name("N");
  sub.add_option("--output-dir", t.folder, "Write a document for each job into this folder too")
      ->type_name("FOLDER");
  sub.add_option("--document", t.document, "Which document")
      ->check(one_of({"jobsheet", "quote", "takeoff", "checklist"}))
      ->type_name("jobsheet|quote|takeoff|checklist");
  sub.add_option("--document-format", t.document_format, "Form of the documents")
      ->check(one_of({"text", "markdown", "html", "json", "csv"}))
      ->type_name("text|markdown|html|json|csv");
  sub.add_option("--format",
                 t.batch_format,
                 "Form of the result lines: one object a line, or a table; of a season, any page")
      ->check(one_of({"text", "markdown", "json", "csv", "svg", "html", "ics"}))
      ->type_name("json|csv|text|markdown|svg|html|ics");
  sub.add_option("--output", t.output, "Write the result lines here, whole or not at all")
      ->type_name("FILE|-");
  add_season_options(sub, t);
  sub.add_flag("--fail-fast", t.fail_fast, "End at the first job that has problems");
  sub.add_flag("--resume", t.resume, "Pass over what an earlier run with the same inputs has done");
}

void add_job_options(CLI::App& sub, Command command, Texts& t) {
  if (command == Command::batch) {
    add_batch_options(sub, t);
  } else {
    sub.add_option("JOB", t.job, "Job file (JSON), or - for standard input")->required();
  }
  if (has_log(command)) add_log_options(sub, command, t);
  if (command == Command::explain)
    sub.add_option("QUANTITY", t.quantity, "What to explain, such as quantities.kits");
  if (command == Command::compare) {
    sub.add_option("OTHER", t.other, "The job file it is compared with");
    sub.add_option("--set",
                   t.sets,
                   "Compare with the same job changed at a place, such as /coating/coats=3; may be "
                   "given again")
        ->type_name("/PLACE=VALUE")
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  }
  if (command == Command::quote) {
    sub.add_option("--variation-from", t.other, "The job file as it was quoted: what changes since")
        ->type_name("FILE");
  }
  sub.add_option("--rates", t.rates, "Rate book; without one, demonstration rates")
      ->type_name("FILE");
  sub.add_option("--weather",
                 t.weather,
                 "Hours of weather: forecast, table or typical year; may be given again")
      ->type_name("FILE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  add_years(sub, command, t);
  sub.add_option("--start", t.start, "First working day, over the job's own")->type_name("DATE");
  sub.add_option("--today", t.today, "Day to plan from, instead of the clock's")->type_name("DATE");
  std::vector<std::string> systems{"metric", "us"};
  if (command == Command::takeoff) systems.emplace_back("both");
  sub.add_option("--units", t.units, "Units of the output")
      ->check(one_of(systems))
      ->type_name(CLI::detail::join(systems, "|"));
  if (command != Command::check && command != Command::batch && command != Command::record) {
    const std::vector<std::string> forms = formats_of(command);
    sub.add_option("--format", t.format, "Form of the output")
        ->check(one_of(forms))
        ->type_name(CLI::detail::join(forms, "|"));
    sub.add_option("--table", t.table, "The one table that csv is to hold, such as purchases")
        ->type_name("NAME");
    sub.add_option("--output", t.output, "Write here, whole or not at all")->type_name("FILE|-");
  }
  if (command != Command::check) {
    sub.add_option("--paper", t.paper, "What pages and drawings are laid out on (html, svg)")
        ->check(one_of({"A4", "letter"}))
        ->type_name("A4|letter");
  }
  sub.add_option("--diagnostics", t.diagnostics, "Form of problems")
      ->check(one_of({"text", "json"}))
      ->type_name("text|json");
  sub.add_flag("--strict", t.strict, "Warnings are errors");
  sub.add_flag("--no-color", t.no_color, "No colour on a terminal");
  sub.add_flag("--quiet", t.quiet, "No warnings");
}

void add_choice(CLI::App& sub,
                const std::string& name,
                std::string& target,
                const std::string& help,
                const std::vector<std::string>& choices) {
  sub.add_option(name, target, help)
      ->check(one_of(choices))
      ->type_name(CLI::detail::join(choices, "|"));
}

void add_starter_options(CLI::App& sub, Texts& t) {
  for (const readers::StarterQuestion& q : readers::starter_questions()) {
    std::string& answer = t.starter[q.key];
    if (q.choices.empty()) {
      sub.add_option("--" + q.key, answer, q.words)->type_name(q.is_measure ? "LENGTH" : "TEXT");
    } else {
      add_choice(sub, "--" + q.key, answer, q.words, q.choices);
    }
  }
  sub.add_option("--rates", t.rates, "Rate book whose coating systems may be named")
      ->type_name("FILE");
  sub.add_flag("--force", t.force, "Write over a file that is there");
}

void add_topic(CLI::App& sub, Command command, Texts& t) {
  if (command == Command::completions) {
    add_choice(sub, "SHELL", t.topic, "The shell", {"bash", "zsh", "fish"});
    sub.get_option("SHELL")->required();
  } else if (command == Command::schema) {
    add_choice(
        sub, "SUBJECT", t.topic, "What it is of; job without it", {"job", "rates", "log", "crews"});
    add_choice(sub, "--draft", t.draft, "The draft of JSON Schema", {"2020-12", "07"});
  }
}

void add_options(CLI::App& sub, Command command, Texts& t) {
  const bool of_itself = command == Command::schema || command == Command::completions ||
                         command == Command::manual_page;
  if (!of_itself && command != Command::starter) return add_job_options(sub, command, t);
  if (of_itself) add_topic(sub, command, t);
  if (command == Command::starter) add_starter_options(sub, t);
  sub.add_option("--output", t.output, "Write here, whole or not at all")->type_name("FILE|-");
  sub.add_flag("--quiet", t.quiet, "Say nothing beside the result");
}

// Every command on its own: what CLI11 parses, and what the tree is read from.
class Program {
 public:
  Program()
      : app_("Basinwright plans the repainting of a swimming pool.\n\n" + first_examples(),
             "basinwright") {
    app_.set_version_flag("--version", "basinwright " + std::string(report::version()));
    app_.require_subcommand(1);
    for (const CommandRow& row : commands()) {
      add_options(
          *app_.add_subcommand(std::string(row.name), std::string(row.help)), row.command, texts_);
    }
  }
  [[nodiscard]] CLI::App& app() { return app_; }
  [[nodiscard]] const Texts& texts() const { return texts_; }

 private:
  Texts texts_;
  CLI::App app_;
};

// CLI11 puts what it checks by behind the name of the type.
std::string type_of(const CLI::Option& option) {
  const std::string type = option.get_type_name();
  return type.substr(0, type.find(':'));
}

// A type name such as A4|letter lists all there is; FILE|- does not.
std::vector<std::string> choices_in(const std::string& type) {
  if (type.find('|') == std::string::npos || type.starts_with("FILE")) return {};
  return CLI::detail::split(type, '|');
}

OptionPage page_of(const CLI::Option& option) {
  const bool operand = option.get_positional();
  OptionPage page;
  page.name = operand ? option.get_name(true) : "--" + option.get_lnames().front();
  page.value = option.get_items_expected_max() == 0 ? "" : type_of(option);
  page.help = option.get_description();
  page.choices = choices_in(page.value);
  page.required = option.get_required();
  page.many = option.get_items_expected_max() > 1 ||
              option.get_multi_option_policy() == CLI::MultiOptionPolicy::TakeAll;
  return page;
}

CommandPage page_of(const CommandRow& row, CLI::App& sub) {
  CommandPage page{std::string(row.name), std::string(row.help), examples_of(row), {}, {}};
  for (const CLI::Option* option : sub.get_options()) {
    if (option->get_lnames() == std::vector<std::string>{"help"}) continue;
    (option->get_positional() ? page.operands : page.options).push_back(page_of(*option));
  }
  return page;
}

// CLI11 takes the words from the back.
std::vector<std::string> reversed(std::vector<std::string> words) {
  std::ranges::reverse(words);
  return words;
}

std::string first_line(const std::string& text) {
  return text.substr(0, text.find('\n'));
}

std::variant<Request, Leave> parsed(Program& program, std::vector<std::string> words) {
  CLI::App& app = program.app();
  if (const CommandRow* row = row_of(words.front())) {
    CLI::App* sub = app.get_subcommand(words.front());
    if (auto leave = mistyped(words, page_of(*row, *sub))) return *std::move(leave);
  }
  try {
    app.parse(reversed(std::move(words)));
  } catch (const CLI::CallForHelp&) {
    const auto chosen = app.get_subcommands();
    if (chosen.empty()) return Leave{Status::done, app.help()};
    return Leave{Status::done,
                 "Try:\n" + examples_of(*row_of(chosen.front()->get_name())) + "\n" +
                     chosen.front()->help("basinwright")};
  } catch (const CLI::CallForVersion& version) {
    return Leave{Status::done, std::string(version.what()) + "\n"};
  } catch (const CLI::ParseError& error) {
    return misuse(first_line(error.what()) + " See basinwright --help.");
  }
  return settle(row_of(app.get_subcommands().front()->get_name())->command, program.texts());
}

}  // namespace

std::vector<CommandPage> command_tree() {
  Program program;
  std::vector<CommandPage> tree;
  for (const CommandRow& row : commands())
    tree.push_back(page_of(row, *program.app().get_subcommand(std::string(row.name))));
  return tree;
}

std::variant<Request, Leave> parse_arguments(const std::vector<std::string>& arguments) {
  if (arguments.empty()) {
    return Leave{Status::done,
                 "Basinwright plans the repainting of a swimming pool.\n\n" + first_examples() +
                     "\nbasinwright --help lists the commands.\n"};
  }
  std::vector<std::string> words = arguments;
  const std::string first = words.front();
  const bool option = first.size() > 1 && first.front() == '-';
  const bool general = first == "--help" || first == "-h" || first == "--version";
  if (row_of(first) == nullptr && !general) {
    std::error_code ignored;
    if (!option && first != "-" && !std::filesystem::exists(first, ignored))
      return unknown_word(first);
    words.insert(words.begin(), "jobsheet");
  }
  Program program;
  return parsed(program, std::move(words));
}

}  // namespace basinwright::cli

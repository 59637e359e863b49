#include "basinwright/readers/programme_file.hpp"
#include "view.hpp"

namespace basinwright::readers {
namespace {

std::string text_at(const Node& node, std::string_view key) {
  const Node* at = node.find(key);
  return at != nullptr && at->kind == Node::Kind::text ? at->text : "";
}

class ProgrammeReader {
 public:
  ProgrammeReader(const Node& root, Context& context) : root_(root), context_(context) {}

  job::Promised read() {
    const Node* programme = root_.kind == Node::Kind::object ? root_.find("programme") : nullptr;
    const Node* tasks = programme == nullptr ? nullptr : node_at(*programme, "/tasks");
    if (tasks == nullptr || tasks->kind != Node::Kind::list) {
      context_.report(codes::missing_key,
                      root_,
                      "",
                      "There is no programme with tasks in this file",
                      "Give what jobsheet or replan wrote with --format json.");
      return {};
    }
    job::Promised was;
    for (const Node& task : tasks->items) {
      const auto start = moment(task, "start");
      if (start) was.tasks.push_back({text_at(task, "task"), text_at(task, "section"), *start});
      if (start && was.tasks.back().task == "handover") was.handover = *start;
    }
    if (programme->find("refill_done") != nullptr)
      was.refill_done = moment(*programme, "refill_done");
    was.first_swim = dates::parse_date(text_at(*programme, "first_swim"));
    return was;
  }

 private:
  std::optional<dates::Moment> moment(const Node& node, std::string_view key) {
    const Node* at = node.find(key);
    if (at != nullptr && at->kind == Node::Kind::null) return {};
    const auto read = dates::parse_moment(text_at(node, key));
    if (!read) {
      context_.report(codes::not_a_date,
                      at == nullptr ? node : *at,
                      "",
                      "There is no time on a quarter hour at \"" + std::string(key) + "\"");
    }
    return read;
  }

  const Node& root_;
  Context& context_;
};

}  // namespace

std::optional<job::Promised> read_programme(const Input& input, diagnostics::Problems& problems) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems found;
  Node root;
  std::optional<job::Promised> was;
  if (parse_json(source, root, found)) {
    Context context{source, found};
    was = ProgrammeReader(root, context).read();
  }
  if (found.has_errors()) was.reset();
  problems.append(found);
  return was;
}

}  // namespace basinwright::readers

#include <algorithm>

#include "basinwright/readers/read.hpp"
#include "pool_reader.hpp"
#include "site_reader.hpp"
#include "surface_reader.hpp"

namespace basinwright::readers {
namespace {

bool is_object(const Node& root, Context& context, std::string message) {
  if (root.kind == Node::Kind::object) return true;
  context.report("wrong-type", root, "", std::move(message));
  return false;
}

// The pool's own table stands behind `pool`, whose row only says that it is one or many.
std::vector<View> bodies(View& top) {
  std::vector<View> out;
  for (View& view : top.objects("pool")) {
    out.emplace_back(view.raw(), pool_fields(), view.pointer(), top.context());
  }
  return out;
}

void read_pools(View& top, job::Job& job) {
  for (View& view : bodies(top)) {
    if (auto body = read_body(view, job)) job.bodies.push_back(std::move(*body));
  }
  const Node* pool = top.node("pool");
  if (pool != nullptr && pool->kind == Node::Kind::list && pool->items.empty()) {
    top.context().report("missing-key", *pool, "/pool", "The list of pools is empty");
  }
}

// A surface may be a part of the shell or a section by its name.
void check_places(View& top, const job::Job& job) {
  std::vector<std::string_view> known{"all", "walls", "floor", "steps"};
  for (const auto& section : job.coating.sections) known.emplace_back(section.name);
  for (View& view : top.objects("surfaces")) {
    const Node* at = view.raw().find("where");
    if (at == nullptr || at->kind != Node::Kind::text) continue;
    if (std::ranges::find(known, at->text) != known.end()) continue;
    const std::string_view near = diagnostics::nearest(at->text, known);
    view.context().report("not-a-choice",
                          *at,
                          view.pointer("where"),
                          "\"" + at->text + "\" is neither a part of the shell nor a section",
                          near.empty() ? "Write all, walls, floor, steps, or the name of a section."
                                       : "Did you mean \"" + std::string(near) + "\"?");
  }
}

job::Job read_all(View& top, const Node& root) {
  job::Job job;
  Context& context = top.context();
  static_cast<void>(top.whole("basinwright"));
  if (top.choice("units").value_or(0) == 1) job.units = context.system = units::System::us;
  read_heading(top, job);
  read_site(top, job);
  read_pools(top, job);
  read_surfaces(top, job);
  read_condition(top, job);
  read_coating(top, job);
  read_crew(top, job);
  read_calendar(top, job);
  read_refill(top, job);
  read_terms(top, job);
  check_places(top, job);
  top.finish();
  for (const job::Body& body : job.bodies) check_geometry(body.pool, body.pointer, root, context);
  return job;
}

}  // namespace

std::optional<job::Job> read_job(const Input& input, diagnostics::Problems& problems) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems found;
  Node root;
  std::optional<job::Job> job;
  if (parse_json(source, root, found)) {
    Context context{source, found};
    if (is_object(root, context, "A job file is a JSON object")) {
      View top(root, job_fields(), "", context);
      job = read_all(top, root);
      job->places = context.places;
    }
  }
  if (found.has_errors()) job.reset();
  problems.append(found);
  return job;
}

std::optional<shell::Pool> read_pool(const Input& input, diagnostics::Problems& problems) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems found;
  Node root;
  std::optional<shell::Pool> pool;
  if (parse_json(source, root, found)) {
    Context context{source, found};
    if (is_object(root, context, "A pool is a JSON object")) {
      View view(root, pool_fields(), "", context);
      if (auto body = read_body(view, {})) {
        check_geometry(body->pool, "", root, context);
        pool = std::move(body->pool);
      }
    }
  }
  if (found.has_errors()) pool.reset();
  problems.append(found);
  return pool;
}

diagnostics::Position place_of(const Input& input, std::string_view pointer) {
  const SourceText source(input.name, input.bytes);
  diagnostics::Problems ignored;
  Node root;
  if (!parse_json(source, root, ignored)) return {input.name, 0, 0, 1};
  const Node& at = nearest_node(root, pointer);
  return source.at(at.begin, at.end);
}

}  // namespace basinwright::readers

#include <fmt/format.h>
#include <algorithm>

#include "basinwright/job/sections.hpp"
#include "basinwright/readers/read.hpp"
#include "basinwright/shell/parts.hpp"
#include "pool_reader.hpp"
#include "site_reader.hpp"
#include "surface_reader.hpp"

namespace basinwright::readers {
namespace {

bool is_object(const Node& root, Context& context, std::string message) {
  if (root.kind == Node::Kind::object) return true;
  context.report(codes::wrong_type, root, "", std::move(message));
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
    top.context().report(codes::empty_list, *pool, "/pool", "The list of pools is empty");
  }
}

// Words that name a place on the shell: a part of it, or a section by its name.
class Places {
 public:
  Places(const job::Job& job, Context& context)
      : names_(job::section_names(job)), context_(context) {
    known_.insert(known_.end(), names_.begin(), names_.end());
  }

  void check(const Node& at, std::string pointer) {
    if (at.kind != Node::Kind::text || std::ranges::find(known_, at.text) != known_.end()) return;
    const std::string_view near = diagnostics::nearest(at.text, known_);
    context_.report(codes::not_a_choice,
                    at,
                    std::move(pointer),
                    "\"" + at.text + "\" is neither a part of the shell nor a section",
                    near.empty() ? "Write all, walls, floor, steps, or the name of a section."
                                 : "Did you mean \"" + std::string(near) + "\"?");
  }

 private:
  std::vector<std::string> names_;
  std::vector<std::string_view> known_{"all", "walls", "floor", "steps"};
  Context& context_;
};

void check_places(const Node& root, const job::Job& job, Context& context) {
  Places places(job, context);
  const auto items_at = [&](std::string_view pointer) {
    const Node* list = node_at(root, pointer);
    return list == nullptr ? std::span<const Node>() : std::span<const Node>(list->items);
  };
  const auto surfaces = items_at("/surfaces");
  for (std::size_t i = 0; i < surfaces.size(); ++i) {
    const Node* where = surfaces[i].find("where");
    if (where != nullptr) places.check(*where, "/surfaces/" + std::to_string(i) + "/where");
  }
  const auto slip_resistant = items_at("/coating/slip_resistant");
  for (std::size_t i = 0; i < slip_resistant.size(); ++i) {
    places.check(slip_resistant[i], "/coating/slip_resistant/" + std::to_string(i));
  }
}

// Sections run from the deep end to the shallow one along the first body's axis, the last to its
// end, and each has something to paint.
void check_sections(const Node& root, const job::Job& job, Context& context) {
  const auto& sections = job.coating.sections;
  if (sections.empty() || job.bodies.empty() || context.problems.has_errors()) return;
  const shell::SectionAxis axis = shell::section_axis(job.bodies.front().pool);
  const double away = axis.deep_end_last ? -1.0 : 1.0;  // sign of going away from the deep end
  const units::Length end = axis.deep_end_last ? axis.first : axis.last;
  units::Length from = axis.deep_end_last ? axis.last : axis.first;
  constexpr double hair = 1e-6;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    const std::string pointer = "/coating/sections/" + std::to_string(i) + "/to";
    const bool last = i + 1 == sections.size();
    const double length = away * (sections[i].to - from).si();
    const double short_of = away * (end - sections[i].to).si();
    std::string message;
    if (!(length > hair)) {
      message = fmt::format(
          "This section ends at {:.2f} m, no farther from the deep end than it "
          "begins, at {:.2f} m",
          sections[i].to.si(),
          from.si());
    } else if (!last && !(short_of > hair)) {
      message = fmt::format(
          "This section reaches the end of the pool at {:.2f} m, so nothing is "
          "left for the next",
          end.si());
    } else if (last && short_of > hair) {
      message = fmt::format(
          "The last section ends {:.2f} m short of the pool's end at {:.2f} m", short_of, end.si());
    }
    if (!message.empty()) {
      context.report(codes::sections_do_not_fit,
                     *node_at(root, pointer),
                     pointer,
                     std::move(message),
                     "Sections go from the deep end to the shallow end; \"to\" is measured like "
                     "the floor's break points.");
      return;
    }
    from = sections[i].to;
  }
}

job::Job read_job_object(View& top) {
  job::Job job;
  static_cast<void>(top.whole("basinwright"));
  if (top.choice("units").value_or(0) == 1) job.units = top.context().system = units::System::us;
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
  check_places(top.raw(), job, top.context());
  check_sections(top.raw(), job, top.context());
  top.finish();
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
      job = read_job_object(top);
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
      if (auto body = read_body(view, {})) pool = std::move(body->pool);
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
  const Node* at = node_at(root, pointer);
  return at == nullptr ? diagnostics::Position{input.name, 0, 0, 1} : source.at(at->begin, at->end);
}

}  // namespace basinwright::readers

#include <array>

#include "basinwright/readers/field.hpp"
#include "site_fields.hpp"
#include "surface_fields.hpp"
#include "work_fields.hpp"

namespace basinwright::readers {
namespace {

using namespace tables;

constexpr std::array job_top{
    Field{.key = "$schema", .type = Type::text, .doc = "For editors", .fallback = "none"},
    Field{.key = "basinwright",
          .type = Type::whole,
          .doc = "Version of this format",
          .low = 1,
          .high = 1,
          .fallback = "1"},
    Field{.key = "units",
          .type = Type::choice,
          .doc = "Unit system of bare numbers and of the output",
          .choices = "metric us",
          .fallback = "metric"},
    Field{.key = "job",
          .type = Type::object,
          .doc = "Who, what and when",
          .fallback = "not said",
          .fields = heading},
    Field{.key = "site",
          .type = Type::object,
          .doc = "The place",
          .fallback = "not said",
          .fields = site},
    Field{.key = "pool",
          .type = Type::one_or_many,
          .doc = "One body of water or several",
          .required = true},
    Field{.key = "surfaces",
          .type = Type::list,
          .doc = "What is on the shell, part by part",
          .fallback = "old cement render, painted with epoxy before, acetone test not done",
          .element = Type::object,
          .fields = surface},
    Field{.key = "condition",
          .type = Type::object,
          .doc = "Damage and dirt",
          .fallback = "sound, no algae",
          .fields = condition},
    Field{.key = "coating",
          .type = Type::object,
          .doc = "What is to go on",
          .fallback = "two coats of a usual system, assumed",
          .fields = coating},
    Field{.key = "crew",
          .type = Type::object,
          .doc = "Who works when",
          .fallback = "three people, two of them painters",
          .fields = crew},
    Field{.key = "calendar",
          .type = Type::object,
          .doc = "Closed days and painting hours",
          .fallback = "none closed",
          .fields = calendar},
    Field{.key = "refill",
          .type = Type::object,
          .doc = "Filling and the water",
          .fallback = "tap flow assumed",
          .fields = refill},
    Field{.key = "terms",
          .type = Type::object,
          .doc = "How it is paid",
          .fallback = "all on handover",
          .fields = terms}};

}  // namespace

std::span<const Field> job_fields() {
  return job_top;
}

}  // namespace basinwright::readers

#pragma once

#include "basinwright/job/job.hpp"
#include "view.hpp"

namespace basinwright::readers {

/// Reads a body of water; parts that cannot be read are left out and reported.
[[nodiscard]] std::optional<job::Body> read_body(View& view, const job::Job& defaults);

/// Takes the pool off and reports what the geometry refuses, each at its own value.
void check_geometry(const shell::Pool& pool,
                    const std::string& pointer,
                    const Node& root,
                    Context& context);

/// The node at a JSON Pointer, or the nearest one above it.
[[nodiscard]] const Node& nearest_node(const Node& root, std::string_view pointer);

}  // namespace basinwright::readers

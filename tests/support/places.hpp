// Where the source, the build and the compiler are. Behind functions, so that one object file knows
// and every other compiles the same wherever the tree stands.
#pragma once

#include <string>

namespace places {
std::string source();
std::string binary();
std::string compiler();
}  // namespace places

// Where the source, the build and the compiler are, and whether the build is slow. Behind
// functions, so that one object file knows and every other compiles the same wherever the tree
// stands.
#pragma once

#include <string>

namespace places {
std::string source();
std::string binary();
std::string compiler();
/// How many of `all` random cases to run: a few where sanitizers make each forty times slower.
int some_of(int all);
}  // namespace places

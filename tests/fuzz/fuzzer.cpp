// libFuzzer's entry. The target is named by BASINWRIGHT_FUZZ, so that one program holds them all.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <exception>

#include "fuzz/targets.hpp"

namespace {

const basinwright::fuzz::Target& chosen() {
  const char* name = std::getenv("BASINWRIGHT_FUZZ");
  return basinwright::fuzz::target_named(name == nullptr ? "" : name);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const basinwright::fuzz::Target& target = chosen();
  target.examine({reinterpret_cast<const char*>(data), size});
  return 0;
}

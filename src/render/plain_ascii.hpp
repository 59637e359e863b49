// A plain spelling for terminals and printers that know nothing beyond ASCII.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::render {

/// The text in ASCII: signs spelt out (`m²` as `m2`, `18 °C` as `18 C`, `≥` as `>=`, `–` as `-`),
/// accents taken off Latin letters, anything else as `\uNNNN`. Only the no-break space is left as
/// it is, so that lines can still be broken with it in mind.
[[nodiscard]] std::string plain_ascii(std::string_view text);

}  // namespace basinwright::render

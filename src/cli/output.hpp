// A page on its way out: its format, the terminal, the file.
#pragma once

#include <string>

#include "basinwright/cli/request.hpp"
#include "basinwright/document/document.hpp"

namespace basinwright::cli {

/// The page's bytes in the request's format, as wide and coloured as the terminal allows.
[[nodiscard]] std::string rendered(const Request& request, const document::Document& page);

/// Puts the page where the request wants it, in its format, as wide and coloured as the terminal
/// allows; what goes wrong is said.
[[nodiscard]] Status put(const Request& request, const document::Document& page);

/// The same with bytes that are made already.
[[nodiscard]] Status put(const Request& request, const std::string& bytes);

}  // namespace basinwright::cli

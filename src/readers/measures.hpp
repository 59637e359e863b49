// Which parser and which bare unit belongs to a row of the table, and how its limits are said.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "view.hpp"

namespace basinwright::readers {

/// A limit of a row in the unit people would say it in.
[[nodiscard]] std::string limit_words(const Field& field, double si);

/// Both limits of a row, as a page says them; empty when it has none.
[[nodiscard]] std::string limits_of(const Field& field);

/// The least value that a row takes, in SI. Of what must be over nought it is the least that a
/// tape, a scale or a tap could give: quotients of it stay finite.
[[nodiscard]] double least_of(const Field& field);

/// Code and message for a value outside its row's limits.
[[nodiscard]] std::pair<Code, std::string> outside(const Field& field, double si);

/// The position of a word among a row's choices; reports a word that is none of them.
[[nodiscard]] std::optional<std::size_t> choice_of(const Field& field,
                                                   const Node& at,
                                                   const Where& where,
                                                   Context& context);

/// The day that a text names; reports a text that is none.
[[nodiscard]] std::optional<dates::Date> date_of(const Node& at,
                                                 const Where& where,
                                                 Context& context);

}  // namespace basinwright::readers

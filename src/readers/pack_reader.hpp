#pragma once

#include "basinwright/job/rate_book.hpp"
#include "view.hpp"

namespace basinwright::readers {

/// The rate book's `packs`; the currency and the coating systems must have been read.
void read_packs(View& top, job::RateBook& book);

/// The packs that stand with a chemical; `packs` is where they might stand too.
void read_own_packs(View& chemical,
                    const std::string& item,
                    const Node* packs,
                    job::RateBook& book);

}  // namespace basinwright::readers

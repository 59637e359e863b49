// Parts that the client's pages share.
#pragma once

#include <string>
#include <vector>

#include "basinwright/report/pages.hpp"
#include "cells.hpp"

namespace basinwright::report {

/// Short lines under a title, an array at `key` for machines; nothing shown when there are none.
[[nodiscard]] document::Section list_section(const std::string& key,
                                             const std::string& title,
                                             const std::vector<std::string>& lines);
/// Both ways an open test can turn out, with their totals.
void add_either(const Subject& s, document::Section& section);
/// Without tax, tax, with tax, and when each part falls due.
[[nodiscard]] document::Section client_price(const Subject& s);
/// Start, fill, full again and first swim, with what they rest on.
[[nodiscard]] document::Section client_dates(const Subject& s);
/// Warranty, cancellation and whatever else the contractor says.
[[nodiscard]] document::Section terms_section(const Subject& s);
/// Lines to sign on.
[[nodiscard]] document::Section acceptance(const std::string& key, const std::string& page);
/// "VAT 17.00 %", with "on 1,000.00" where there are other rates beside it.
[[nodiscard]] std::string tax_words(const Cells& c,
                                    const quote::Price& price,
                                    const quote::Taxed& tax);
/// Rates, subtotals and taxes for machines.
[[nodiscard]] document::Table taxes_table(const Cells& c,
                                          const quote::Price& price,
                                          std::string key);

}  // namespace basinwright::report

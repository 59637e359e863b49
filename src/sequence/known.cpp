#include "known.hpp"

#include <algorithm>

#include "bytes.hpp"

namespace basinwright::sequence {
namespace {

void write_day(dates::Date day, ByteWriter& out) {
  out.number(day.time_since_epoch().count());
}

dates::Date read_day(ByteReader& in) {
  return dates::Date(std::chrono::days{in.number()});
}

}  // namespace

Known known_in(std::string_view bytes) {
  ByteReader in(bytes);
  Known known;
  known.region.start = read_day(in);
  known.region.last_start = read_day(in);
  known.region.drain = in.number();
  known.region.longest_drain = in.number();
  known.answer = in.text();
  if (!in.at_end()) known.fill_start = dates::Moment::of_quarters(in.number());
  return known;
}

std::string bytes_of(const Known& known) {
  ByteWriter out;
  write_day(known.region.start, out);
  write_day(known.region.last_start, out);
  out.number(known.region.drain);
  out.number(known.region.longest_drain);
  out.text(known.answer);
  if (known.fill_start) out.number(known.fill_start->quarters());
  return out.take();
}

void Like::met(const Known& known) {
  if (!dates_) dates_ = known.fill_start.has_value();
  if (!known.fill_start) return;
  const dates::Moment fill = *known.fill_start;
  // Who begins later and drains longer is filled no sooner: the first of these is far enough ahead.
  if (known.region.last_start >= start_ && known.region.longest_drain >= drain_) {
    no_sooner_ = std::min(no_sooner_.value_or(fill), fill);
    return;
  }
  const std::chrono::days behind = std::max(std::chrono::days{}, start_ - known.region.last_start);
  const dates::Moment then(fill.date() + behind, fill.quarter());
  others_ = std::max(others_.value_or(then), then);
}

Likely Like::likely() const {
  Likely likely;
  // The calendar is asked at once where there were no dates.
  if (dates_) likely.calendar_after = *dates_ ? 2 : 0;
  likely.fill_start = no_sooner_ ? no_sooner_ : others_;
  return likely;
}

}  // namespace basinwright::sequence

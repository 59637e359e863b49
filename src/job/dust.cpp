#include "dust.hpp"

namespace basinwright::job {

units::Mass dust_of(const GroundOff& areas, const preparation::Thresholds& t, trace::Trace& trace) {
  const units::Area off = areas.stripped;
  const units::Area sanded = areas.abraded;
  if (off + sanded <= units::Area()) return {};
  if (off > units::Area()) trace.use("thresholds.old_film", t.old_film);
  if (sanded > units::Area()) trace.use("thresholds.abraded_film", t.abraded_film);
  trace.use("thresholds.film_density", t.film_density);
  const sources::Source surfaces{sources::Kind::given, "", "/surfaces"};
  return trace.note("quantities.dust_kg",
                    (off * t.old_film.value + sanded * t.abraded_film.value) * t.film_density.value,
                    "(stripped * film + abraded * skin) * density",
                    {{"stripped", off, surfaces},
                     {"film", t.old_film},
                     {"abraded", sanded, surfaces},
                     {"skin", t.abraded_film},
                     {"density", t.film_density}});
}

}  // namespace basinwright::job

#pragma once

#include "basinwright/job/job.hpp"
#include "view.hpp"

namespace basinwright::readers {

void read_surfaces(View& top, job::Job& job);
void read_condition(View& top, job::Job& job);
void read_coating(View& top, job::Job& job);
void read_refill(View& top, job::Job& job);
void read_terms(View& top, job::Job& job);

}  // namespace basinwright::readers

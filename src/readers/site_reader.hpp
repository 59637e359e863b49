#pragma once

#include "basinwright/job/job.hpp"
#include "view.hpp"

namespace basinwright::readers {

void read_heading(View& top, job::Job& job);
void read_site(View& top, job::Job& job);
void read_crew(View& top, job::Job& job);
void read_calendar(View& top, job::Job& job);

}  // namespace basinwright::readers

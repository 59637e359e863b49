// JSON Schemas of the files, made from the table the readers use.
#pragma once

#include <string>

namespace basinwright::readers {

/// What a schema is of: the job file, the rate book, or one line of the site log.
enum class Subject { job_file, rate_book, site_log, crews_file };

/// The draft of JSON Schema it is written in.
enum class Draft { draft_07, draft_2020_12 };

/// The schema as JSON. Whatever it refuses the reader refuses too; the reader refuses more: what
/// hangs on the unit of a text, on other keys or on geometry no schema can say.
/// @source JSON Schema drafts 2020-12 and 07, json-schema.org
[[nodiscard]] std::string schema(Subject subject, Draft draft);

}  // namespace basinwright::readers

#pragma once

#include <string>
#include <string_view>
#include <variant>

namespace basinwright::cli {

/// Why a file could not be read or written, in the system's words.
struct FileError {
  std::string message;
};

/// The whole file, or standard input for `-`. Refuses folders, and files over the reader's limit.
[[nodiscard]] std::variant<std::string, FileError> read_file(const std::string& path);

/// Writes the whole file or nothing: a temporary beside it, synced, renamed over it, the folder
/// synced. @return empty when done, else the reason
[[nodiscard]] std::string write_file(const std::string& path, std::string_view bytes);

/// The folder that `path` lies in, `.` where it names none.
[[nodiscard]] std::string folder_of(const std::string& path);

/// Makes a rename or a new file in the folder of `path` last.
void sync_folder_of(const std::string& path);

/// What became of standard output.
enum class Printed { whole, reader_left, failed };
/// Prints, flushes and closes standard output.
[[nodiscard]] Printed print_out(std::string_view bytes);

}  // namespace basinwright::cli

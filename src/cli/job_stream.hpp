// The jobs of a batch, one after the other: files, folders of files, lines of a stream.
#pragma once

#include <cstddef>
#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace basinwright::cli {

/// One job to come. A file is read by whoever takes it on; a line is here already.
struct BatchItem {
  std::string name;                  ///< The path, or "line 12".
  std::size_t line = 0;              ///< Of the stream; 0 for a file.
  std::optional<std::string> bytes;  ///< Of a line.
  std::string fault;                 ///< Why there are no bytes.
};

/// Holds one line or the names in one folder at a time.
class JobStream {
 public:
  /// `-` is standard input; a folder gives its .json files by name, rate books (.rates.json) left
  /// out; a file that ends in .ndjson or .jsonl gives its lines.
  explicit JobStream(std::vector<std::string> arguments);
  JobStream(const JobStream&) = delete;
  JobStream& operator=(const JobStream&) = delete;

  [[nodiscard]] std::optional<BatchItem> next();
  /// Whether `next` would wait for whoever writes the lines.
  [[nodiscard]] bool waits() const;
  /// Waits a moment for more of the lines.
  void await() const;
  /// How many there are in all, when that is known without reading a stream.
  [[nodiscard]] std::optional<std::size_t> total() const;
  /// How much is read of a stream that is a file on a disk and all there is; 0 to 1.
  [[nodiscard]] std::optional<double> share_read() const;

 private:
  struct Close {
    void operator()(std::FILE* file) const;
  };
  /// Whether more is there to be read, or the end, within so many milliseconds.
  [[nodiscard]] bool readable(int milliseconds) const;
  [[nodiscard]] std::optional<BatchItem> next_line();
  [[nodiscard]] bool read_line(std::string& line);
  [[nodiscard]] bool read_on();
  [[nodiscard]] bool open_next();

  std::vector<std::string> arguments_;
  std::size_t argument_ = 0;
  std::vector<std::string> folder_;  ///< Files of the folder being read, last one first.
  std::unique_ptr<std::FILE, Close> lines_;
  std::string read_;  ///< Read of the stream, and not yet handed out from `from_` on.
  std::size_t from_ = 0;
  bool failed_ = false;  ///< The stream could not be read on.
  std::string lines_name_;
  std::size_t line_ = 0;
};

/// The .json files of a folder by name, rate books left out; empty when it cannot be listed.
[[nodiscard]] std::vector<std::string> job_files(const std::string& folder);

}  // namespace basinwright::cli

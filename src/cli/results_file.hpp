// Where a batch's result lines go: standard output, or a file that is renamed into place when it is
// whole.
#pragma once

#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace basinwright::cli {

class ResultsFile {
 public:
  /// Standard output.
  ResultsFile() = default;
  /// The file at `path`, built up at `path.part`. With `resume` the lines of an earlier run are
  /// kept to be asked for; without, they are written over.
  ResultsFile(std::string path, bool resume);
  ResultsFile(ResultsFile&&) noexcept = default;
  ResultsFile& operator=(ResultsFile&&) noexcept = default;
  ~ResultsFile() = default;

  /// Why it could not be opened or written; empty while all is well.
  [[nodiscard]] const std::string& fault() const { return fault_; }
  /// Whether whoever read standard output has left.
  [[nodiscard]] bool reader_left() const { return reader_left_; }
  /// The next line of the earlier run, without its end; nothing when there is none left, or it is
  /// torn.
  [[nodiscard]] std::optional<std::string> kept();
  /// From here on the earlier run counts for nothing: what follows the last line that was `kept` is
  /// cut off.
  void cut();
  /// Takes back the line that `kept` gave last.
  void unkeep();
  bool write(std::string_view bytes);
  /// Whoever reads along need not wait for what is written.
  bool flush();
  /// Everything on the disk and in its place.
  bool finish();

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  bool fail();

  std::string path_, part_, fault_;
  std::unique_ptr<std::FILE, Close> file_;
  long before_ = 0, after_ = 0;  ///< Round the line kept last.
  bool keeping_ = false;
  bool reader_left_ = false;
};

}  // namespace basinwright::cli

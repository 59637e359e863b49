// The site log on disk: the one file that is both read and added to.
#pragma once

#include <string>
#include <string_view>

namespace basinwright::cli {

/// The log held for adding to: nobody else adds to it until this goes. A last line cut off in
/// writing is taken off before anything is added.
class LogFile {
 public:
  /// Opens or makes the file and waits for its lock.
  explicit LogFile(const std::string& path);
  LogFile(const LogFile&) = delete;
  LogFile& operator=(const LogFile&) = delete;
  ~LogFile();

  /// Empty when all went well so far, else why not, in the system's words.
  [[nodiscard]] const std::string& error() const { return error_; }
  /// All bytes, a cut-off last line too.
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// Takes off what is behind `whole` bytes, adds the line and its end in one write, and waits
  /// until the disk has it. @return whether it is kept
  bool add(std::size_t whole, std::string_view line);

 private:
  void read();
  int fd_ = -1;
  bool made_ = false;
  std::string path_, bytes_, error_;
};

}  // namespace basinwright::cli

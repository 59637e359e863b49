#include "results_file.hpp"

#include <sys/stat.h>
#include <unistd.h>
#include <cerrno>
#include <cstring>
#include <utility>

#include "files.hpp"

namespace basinwright::cli {

ResultsFile::ResultsFile(std::string path, bool resume)
    : path_(std::move(path)), part_(path_ + ".part") {
  struct stat about {};
  // A run that ended leaves no part: its file is taken up again.
  if (resume && ::stat(part_.c_str(), &about) != 0 && ::stat(path_.c_str(), &about) == 0)
    std::rename(path_.c_str(), part_.c_str());
  if (resume) file_.reset(std::fopen(part_.c_str(), "r+b"));
  keeping_ = file_ != nullptr;
  if (!file_) file_.reset(std::fopen(part_.c_str(), "w+b"));
  if (!file_) fail();
}

bool ResultsFile::fail() {
  const int error = errno;
  if (path_.empty() && error == EPIPE) {
    reader_left_ = true;
  } else if (fault_.empty()) {
    fault_ = std::strerror(error);
  }
  return false;
}

std::optional<std::string> ResultsFile::kept() {
  if (!keeping_) return std::nullopt;
  before_ = after_;
  std::string line;
  int c = std::fgetc(file_.get());
  for (; c != EOF && c != '\n'; c = std::fgetc(file_.get())) line += static_cast<char>(c);
  if (c == EOF) return std::nullopt;
  after_ = std::ftell(file_.get());
  return line;
}

void ResultsFile::unkeep() {
  after_ = before_;
}

void ResultsFile::cut() {
  if (!std::exchange(keeping_, false)) return;
  if (std::fseek(file_.get(), after_, SEEK_SET) != 0 ||
      ::ftruncate(::fileno(file_.get()), after_) != 0)
    fail();
}

bool ResultsFile::write(std::string_view bytes) {
  std::FILE* file = file_ ? file_.get() : stdout;
  if (std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size()) return true;
  return fail();
}

bool ResultsFile::flush() {
  return std::fflush(file_ ? file_.get() : stdout) == 0 || fail();
}

bool ResultsFile::finish() {
  if (!file_) return flush();
  cut();
  if (!flush() || ::fsync(::fileno(file_.get())) != 0) return fail();
  file_.reset();
  if (std::rename(part_.c_str(), path_.c_str()) != 0) return fail();
  sync_folder_of(path_);
  return true;
}

}  // namespace basinwright::cli

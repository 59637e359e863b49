#include "job_stream.hpp"

#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>
#include <utility>

namespace basinwright::cli {
namespace {

namespace fs = std::filesystem;

// Above the reader's limit, so that it is the reader who refuses a longer line.
constexpr std::size_t longest_line = (16U << 20U) + 2;

bool is_folder(const std::string& path) {
  std::error_code ignored;
  return path != "-" && fs::is_directory(path, ignored);
}

bool is_stream(const std::string& path) {
  return path == "-" || path.ends_with(".ndjson") || path.ends_with(".jsonl");
}

bool blank(const std::string& line) {
  return line.find_first_not_of(" \t\r\n") == std::string::npos;
}

}  // namespace

std::vector<std::string> job_files(const std::string& folder) {
  std::vector<std::string> files;
  std::error_code failed;
  fs::directory_iterator it(folder, failed);
  while (!failed && it != fs::directory_iterator()) {
    std::string path = it->path().string();
    if (path.ends_with(".json") && !path.ends_with(".rates.json")) files.push_back(std::move(path));
    it.increment(failed);
  }
  std::ranges::sort(files);
  return files;
}

void JobStream::Close::operator()(std::FILE* file) const {
  if (file != stdin) std::fclose(file);
}

JobStream::JobStream(std::vector<std::string> arguments) : arguments_(std::move(arguments)) {}

std::optional<std::size_t> JobStream::total() const {
  std::size_t count = 0;
  for (const std::string& argument : arguments_) {
    if (is_stream(argument)) return std::nullopt;
    count += is_folder(argument) ? job_files(argument).size() : 1;
  }
  return count;
}

std::optional<double> JobStream::share_read() const {
  struct stat about {};
  if (arguments_.size() != 1 || !lines_) return std::nullopt;
  if (::fstat(::fileno(lines_.get()), &about) != 0 || !S_ISREG(about.st_mode)) return std::nullopt;
  const auto read = static_cast<double>(::lseek(::fileno(lines_.get()), 0, SEEK_CUR));
  const auto size = static_cast<double>(about.st_size);
  return read < 0 || read > size || size <= 0 ? std::nullopt : std::optional(read / size);
}

bool JobStream::readable(int milliseconds) const {
  pollfd descriptor{::fileno(lines_.get()), POLLIN, 0};
  return ::poll(&descriptor, 1, milliseconds) != 0;
}

bool JobStream::waits() const {
  return lines_ && read_.find('\n', from_) == std::string::npos && !readable(0);
}

void JobStream::await() const {
  constexpr int moment = 100;
  static_cast<void>(readable(moment));
}

// Whatever is there: nobody waits at a pipe for a buffer full.
bool JobStream::read_on() {
  constexpr std::size_t at_once = 1U << 16U;
  read_.resize(at_once);
  from_ = 0;
  ssize_t count = 0;
  do {
    count = ::read(::fileno(lines_.get()), read_.data(), read_.size());
  } while (count < 0 && errno == EINTR);
  failed_ = count < 0;
  read_.resize(static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
  return count > 0;
}

// The next line without its end; what is over the limit is read past and dropped.
bool JobStream::read_line(std::string& line) {
  line.clear();
  while (from_ < read_.size() || read_on()) {
    const std::size_t end = std::min(read_.find('\n', from_), read_.size());
    line.append(read_, from_, std::min(end - from_, longest_line - line.size()));
    from_ = end + 1;
    if (end < read_.size()) return true;
  }
  return !line.empty();
}

std::optional<BatchItem> JobStream::next_line() {
  std::string line;
  while (read_line(line)) {
    ++line_;
    if (blank(line)) continue;
    std::string name = lines_name_.empty() ? "" : lines_name_ + ", ";
    return BatchItem{name + "line " + std::to_string(line_), line_, std::move(line), ""};
  }
  if (failed_) {
    const std::string why = std::strerror(errno);
    lines_.reset();
    return BatchItem{lines_name_.empty() ? "standard input" : lines_name_, 0, "", why};
  }
  lines_.reset();
  return std::nullopt;
}

bool JobStream::open_next() {
  const std::string& argument = arguments_[argument_++];
  if (is_folder(argument)) {
    folder_ = job_files(argument);
    std::ranges::reverse(folder_);
    return true;
  }
  if (!is_stream(argument)) {
    folder_.assign(1, argument);
    return true;
  }
  line_ = 0;
  read_.clear();
  from_ = 0;
  lines_name_ = argument == "-" ? "" : argument;
  lines_.reset(argument == "-" ? stdin : std::fopen(argument.c_str(), "rb"));
  return lines_ != nullptr;
}

std::optional<BatchItem> JobStream::next() {
  while (true) {
    if (lines_) {
      if (auto item = next_line()) return item;
      continue;
    }
    if (!folder_.empty()) {
      std::string path = std::move(folder_.back());
      folder_.pop_back();
      return BatchItem{std::move(path), 0, std::nullopt, ""};
    }
    if (argument_ == arguments_.size()) return std::nullopt;
    if (!open_next()) return BatchItem{lines_name_, 0, "", std::strerror(errno)};
  }
}

}  // namespace basinwright::cli

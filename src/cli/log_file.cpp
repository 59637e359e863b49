#include "log_file.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <array>
#include <cerrno>
#include <cstring>

#include "files.hpp"

namespace basinwright::cli {
namespace {

constexpr mode_t usual_mode = 0666;

// A new file is only there when its folder says so.
int sync_folder(const std::string& path) {
  const int folder = ::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (folder < 0) return errno;
  const int failed = ::fsync(folder) != 0 ? errno : 0;
  ::close(folder);
  return failed;
}

int lock(int fd) {
  int failed = 0;
  do {
    failed = ::flock(fd, LOCK_EX) != 0 ? errno : 0;
  } while (failed == EINTR);
  return failed;
}

}  // namespace

LogFile::LogFile(const std::string& path) : path_(path) {
  fd_ = ::open(path.c_str(), O_RDWR | O_APPEND | O_CLOEXEC);
  if (fd_ < 0 && errno == ENOENT) {
    fd_ = ::open(path.c_str(), O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC, usual_mode);
    made_ = true;
  }
  if (fd_ < 0) {
    error_ = std::strerror(errno);
    return;
  }
  struct stat about {};
  if (::fstat(fd_, &about) != 0 || !S_ISREG(about.st_mode)) {
    error_ = "Is no ordinary file";
    return;
  }
  if (const int failed = lock(fd_); failed != 0) {
    error_ = std::strerror(failed);
    return;
  }
  read();
}

LogFile::~LogFile() {
  if (fd_ >= 0) ::close(fd_);
}

void LogFile::read() {
  std::array<char, 65536> chunk{};
  while (true) {
    const ssize_t n = ::pread(fd_, chunk.data(), chunk.size(), static_cast<off_t>(bytes_.size()));
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) error_ = std::strerror(errno);
    if (n <= 0) return;
    bytes_.append(chunk.data(), static_cast<std::size_t>(n));
  }
}

bool LogFile::add(std::size_t whole, std::string_view line) {
  if (!error_.empty()) return false;
  const auto fail = [&](int failed) {
    error_ = std::strerror(failed);
    return false;
  };
  if (whole < bytes_.size()) {
    if (::ftruncate(fd_, static_cast<off_t>(whole)) != 0) return fail(errno);
    bytes_.resize(whole);
  }
  const bool open_line = !bytes_.empty() && bytes_.back() != '\n';
  std::string text(open_line ? "\n" : "");
  text.append(line).append("\n");
  std::size_t written = 0;
  while (written < text.size()) {
    const ssize_t n = ::write(fd_, text.data() + written, text.size() - written);
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) {
      const int failed = errno;
      // What is half there would be a torn line; nobody was told that it is kept.
      static_cast<void>(::ftruncate(fd_, static_cast<off_t>(bytes_.size())));
      return fail(failed);
    }
    written += static_cast<std::size_t>(n);
  }
  if (::fsync(fd_) != 0) return fail(errno);
  if (made_) {
    if (const int failed = sync_folder(path_); failed != 0) return fail(failed);
    made_ = false;
  }
  bytes_ += text;
  return true;
}

}  // namespace basinwright::cli

#include "files.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>

namespace basinwright::cli {
namespace {

// Above the reader's own limit, so that it is the reader who says so in its words.
constexpr std::size_t most_bytes = (64U << 20U) + 1;

std::string words_for(int error) {
  return std::strerror(error);
}

class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ > STDERR_FILENO) ::close(fd_);
  }
  [[nodiscard]] int get() const { return fd_; }
  /// 0, or the error that closing found.
  int close() {
    const int failed = ::close(fd_) != 0 ? errno : 0;
    fd_ = -1;
    return failed;
  }

 private:
  int fd_;
};

int write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t n = ::write(fd, bytes.data(), bytes.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(n));
  }
  return 0;
}

}  // namespace

std::variant<std::string, FileError> read_file(const std::string& path) {
  const Descriptor file(path == "-" ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.get() < 0) return FileError{words_for(errno)};
  struct stat about {};
  if (::fstat(file.get(), &about) == 0 && S_ISDIR(about.st_mode)) return FileError{"Is a folder"};
  std::string bytes;
  std::array<char, 65536> chunk{};
  while (bytes.size() < most_bytes) {
    const ssize_t n = ::read(file.get(), chunk.data(), chunk.size());
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return FileError{words_for(errno)};
    if (n == 0) break;
    bytes.append(chunk.data(), static_cast<std::size_t>(n));
  }
  return bytes;
}

std::string write_file(const std::string& path, std::string_view bytes) {
  struct stat about {};
  if (::stat(path.c_str(), &about) == 0) {
    if (S_ISDIR(about.st_mode)) return "Is a folder";
    // A device or pipe cannot be replaced: it is written to as it stands.
    if (!S_ISREG(about.st_mode)) {
      Descriptor device(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
      if (device.get() < 0) return words_for(errno);
      int failed = write_all(device.get(), bytes);
      if (failed == 0) failed = device.close();
      return failed == 0 ? "" : words_for(failed);
    }
  }
  std::string temporary = path + ".XXXXXX";
  Descriptor file(::mkstemp(temporary.data()));
  if (file.get() < 0) return words_for(errno);
  constexpr mode_t usual_mode = 0666;
  // Asking for the mask sets it, so it is asked for once.
  static const mode_t mask = [] {
    const mode_t now = ::umask(0);
    ::umask(now);
    return now;
  }();
  int failed = ::fchmod(file.get(), usual_mode & ~mask) != 0 ? errno : 0;
  if (failed == 0) failed = write_all(file.get(), bytes);
  if (failed == 0 && ::fsync(file.get()) != 0) failed = errno;
  if (failed == 0) failed = file.close();
  if (failed == 0 && ::rename(temporary.c_str(), path.c_str()) != 0) failed = errno;
  if (failed != 0) {
    ::unlink(temporary.c_str());
    return words_for(failed);
  }
  sync_folder_of(path);
  return "";
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

void sync_folder_of(const std::string& path) {
  const Descriptor folder(::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (folder.get() >= 0) ::fsync(folder.get());
}

Printed print_out(std::string_view bytes) {
  int failed = write_all(STDOUT_FILENO, bytes);
  // A full disk may say so only when the file is closed.
  if (failed == 0 && ::close(STDOUT_FILENO) != 0) failed = errno;
  if (failed == 0) return Printed::whole;
  return failed == EPIPE ? Printed::reader_left : Printed::failed;
}

}  // namespace basinwright::cli

/* Preloaded: at every STEP-th allocation from the first on the process forks. In the child this allocation
 * and all after it fail; the parent waits, notes how the child ended and goes on as if nothing had been.
 *
 * TRY_ALLOCATIONS names a folder with "child" (where each child works, on a copy of the parent's working
 * folder), "right" (the file an undisturbed run writes) and "old" (what was there before). A line for each
 * child goes into "report": allocation, status (128 and the signal's number), whether it spoke of memory,
 * whether its file is the old, the right or another, what else it left, its first words. Of one thread
 * only. Nothing here allocates: static buffers, and the C library's own allocator behind its second name. */
#define _GNU_SOURCE
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

extern void *__libc_malloc(size_t);
extern void *__libc_calloc(size_t, size_t);
extern void *__libc_realloc(void *, size_t);
extern void *__libc_memalign(size_t, size_t);

enum { LONGEST = 4096, MOST_BYTES = 1 << 20, MOST_SECONDS = 60 };

static long count, step = 1;
static int ready, failing, forks, report = -1;
static char folder[LONGEST], home[LONGEST];
static char bytes[MOST_BYTES], others[MOST_BYTES];

static void lost(const char *what) {
  dprintf(STDERR_FILENO, "failing_allocations: %s\n", what);
  _exit(99);
}

static void open_or_lose(int into, const char *name, int flags) {
  int fd = open(name, flags, 0644);
  if (fd < 0 || dup2(fd, into) < 0) lost(name);
  if (fd != into) close(fd);
}

static const char *within(const char *name) {
  static char path[2 * LONGEST];
  snprintf(path, sizeof path, "%s/%s", folder, name);
  return path;
}

static ssize_t whole(const char *name, char *into) {
  int fd = open(name, O_RDONLY | O_CLOEXEC);
  ssize_t size = 0, got = 0;
  if (fd < 0) return -1;
  while (size < MOST_BYTES && (got = read(fd, into + size, MOST_BYTES - (size_t)size)) > 0) size += got;
  close(fd);
  return got < 0 || size == MOST_BYTES ? -1 : size;
}

static void begin(void) {
  const char *given = getenv("TRY_ALLOCATIONS"), *every = getenv("TRY_EVERY");
  ready = 1;
  if (!given) return;
  if (strlen(given) >= LONGEST || !getcwd(home, sizeof home)) lost("folder");
  strcpy(folder, given);
  if (every) step = atol(every);
  report = open(within("report"), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (report < 0 || step < 1) lost("report");
  forks = 1;
}

/* For each name in the folder, one of those calls. */
static void each_of(const char *name, void (*done)(const char *)) {
  static char entries[1 << 16];
  int fd = open(name, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  long got;
  if (fd < 0) lost(name);
  while ((got = syscall(SYS_getdents64, fd, entries, sizeof entries)) > 0) {
    for (long at = 0; at < got;) {
      struct dirent64 *entry = (struct dirent64 *)(entries + at);
      if (strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0) done(entry->d_name);
      at += entry->d_reclen;
    }
  }
  close(fd);
}

static void copy_here(const char *name) {
  static char from[2 * LONGEST];
  ssize_t size;
  int fd;
  snprintf(from, sizeof from, "%s/%s", home, name);
  size = whole(from, bytes);
  fd = open(name, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (size < 0 || fd < 0 || write(fd, bytes, (size_t)size) != size) lost(name);
  close(fd);
}

/* The place in a file is shared with the parent, so each open file is opened anew, one of the working folder as
 * its copy. */
static void open_anew(int fd) {
  static char link[32], target[LONGEST];
  struct stat about;
  const char *name = target;
  ssize_t length;
  if (fd == report || fstat(fd, &about) != 0 || !S_ISREG(about.st_mode)) return;
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  length = readlink(link, target, sizeof target - 1);
  if (length < 0) lost(link);
  target[length] = '\0';
  if (strncmp(target, home, strlen(home)) == 0) name = target + strlen(home) + 1;
  off_t at = lseek(fd, 0, SEEK_CUR);
  open_or_lose(fd, name, fcntl(fd, F_GETFL) & O_ACCMODE);
  if (lseek(fd, at, SEEK_SET) != at) lost(name);
}

static void become_the_child(void) {
  alarm(MOST_SECONDS);
  if (chdir(within("child")) != 0) lost("child");
  each_of(home, copy_here);
  open_or_lose(STDIN_FILENO, "/dev/null", O_RDONLY);
  open_or_lose(STDOUT_FILENO, "/dev/null", O_WRONLY);
  open_or_lose(STDERR_FILENO, within("errors"), O_WRONLY | O_CREAT | O_TRUNC | O_APPEND);
  for (int fd = STDERR_FILENO + 1; fd < 64; ++fd) open_anew(fd);
  failing = 1;
  forks = 0;
}

static const char *file_state;
static int left;

static int same_as(const char *name, const char *other) {
  ssize_t size = whole(name, bytes);
  return size >= 0 && size == whole(other, others) && memcmp(bytes, others, (size_t)size) == 0;
}

static void look_at(const char *name) {
  static char path[2 * LONGEST], old[2 * LONGEST], right[2 * LONGEST];
  snprintf(path, sizeof path, "%s/child/%s", folder, name);
  snprintf(old, sizeof old, "%s/old", folder);
  snprintf(right, sizeof right, "%s/right", folder);
  if (strcmp(name, "sheet.txt") != 0) {
    ++left;
  } else {
    file_state = same_as(path, old) ? "old" : same_as(path, right) ? "right" : "another";
  }
  if (unlink(path) != 0) lost(path);
}

static void note(long n, int status) {
  ssize_t said = whole(within("errors"), bytes);
  bytes[said < 0 ? 0 : said] = '\0';
  const char *memory = strstr(bytes, "memory") ? "memory" : said > 0 ? "words" : "silent";
  static char words[101], line[400];

  strncpy(words, bytes, sizeof words - 1);
  for (char *c = words; *c; ++c) *c = *c == '\n' ? ' ' : *c;
  file_state = "none";
  left = 0;
  each_of(within("child"), look_at);
  int length = snprintf(line, sizeof line, "%ld %d %s %s %d %s\n", n, status, memory, file_state, left, words);
  if (write(report, line, (size_t)length) != length) lost("report");
}

static int fails(void) {
  int saved = 0, status = 0;
  pid_t child;
  if (!ready) begin();
  if (failing) return 1;
  if (!forks || count++ % step != 0) return 0;
  forks = 0; /* What fork and the notes may allocate is not the program's. */
  saved = errno;
  child = fork();
  if (child < 0) lost("fork");
  if (child == 0) {
    become_the_child();
    return 1;
  }
  if (waitpid(child, &status, 0) != child) lost("wait");
  note(count, WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status));
  forks = 1;
  errno = saved;
  return 0;
}

void *malloc(size_t size) {
  return fails() ? NULL : __libc_malloc(size);
}

void *calloc(size_t count_of, size_t size) {
  return fails() ? NULL : __libc_calloc(count_of, size);
}

void *realloc(void *block, size_t size) {
  return fails() ? NULL : __libc_realloc(block, size);
}

void *aligned_alloc(size_t alignment, size_t size) {
  return fails() ? NULL : __libc_memalign(alignment, size);
}

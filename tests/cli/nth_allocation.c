/* Preloaded: the n-th allocation and all after it fail, n from NTH_ALLOCATION; without it they are
 * counted into the file that COUNT_ALLOCATIONS names. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>

static long count, limit = -1;
static int ready;

static void *(*real_malloc)(size_t);

static void begin(void) {
  const char *text;
  ready = 1;
  real_malloc = (void *(*)(size_t))dlsym(RTLD_NEXT, "malloc");
  text = getenv("NTH_ALLOCATION");
  if (text) limit = atol(text);
}

void *malloc(size_t size) {
  if (!ready) begin();
  ++count;
  if (limit >= 0 && count >= limit) return NULL;
  return real_malloc(size);
}

__attribute__((destructor)) static void end(void) {
  const char *name = getenv("COUNT_ALLOCATIONS");
  long all = count;
  limit = -1;
  if (name) {
    FILE *file = fopen(name, "w");
    if (file) {
      fprintf(file, "%ld\n", all);
      fclose(file);
    }
  }
}

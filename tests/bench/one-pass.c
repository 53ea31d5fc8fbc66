/* The job of the benchmark in one pass over the bytes: the changes of a poll with their bounds, in lines
   "unit,parameter,value,time,earliest" of the stamps as printed, on standard output. Readings in the layout
   time,unit,parameter,value; no quotes. The parameters named after the file are states; without any all are. What is none has
   no changes. */
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define SLOTS 65536
#define CHUNK (1 << 18)
#define LONGEST 128

struct slot {
  char key[LONGEST];
  size_t key_length;
  char value[LONGEST];
  size_t value_length;
  char stamp[LONGEST];
  size_t stamp_length;
  int is_state;
};

static struct slot *slots;
static char **states;
static int state_count;

static int is_state(const char *name, size_t length) {
  if (state_count == 0) return 1;
  for (int i = 0; i < state_count; i += 1)
    if (strlen(states[i]) == length && memcmp(states[i], name, length) == 0) return 1;
  return 0;
}

static struct slot *slot_of(const char *key, size_t length) {
  uint32_t hash = 2166136261u;
  for (size_t i = 0; i < length; i += 1) hash = (hash ^ (unsigned char)key[i]) * 16777619u;
  for (uint32_t at = hash % SLOTS;; at = (at + 1) % SLOTS) {
    struct slot *found = &slots[at];
    if (found->key_length == 0) {
      memcpy(found->key, key, length);
      found->key_length = length;
      const char *comma = memchr(key, ',', length);
      found->is_state = is_state(comma + 1, length - (size_t)(comma + 1 - key));
      return found;
    }
    if (found->key_length == length && memcmp(found->key, key, length) == 0) return found;
  }
}

static void take(const char *line, const char *end) {
  const char *first = memchr(line, ',', (size_t)(end - line));
  const char *second = first ? memchr(first + 1, ',', (size_t)(end - first - 1)) : NULL;
  const char *third = second ? memchr(second + 1, ',', (size_t)(end - second - 1)) : NULL;
  if (!third) return;
  struct slot *found = slot_of(first + 1, (size_t)(third - first - 1));
  if (!found->is_state) return;
  const char *value = third + 1;
  size_t length = (size_t)(end - value);
  if (found->value_length != length || memcmp(found->value, value, length) != 0) {
    if (found->value_length != 0)
      printf("%.*s,%.*s,%.*s,%.*s\n", (int)found->key_length, found->key, (int)length, value, (int)(first - line), line,
             (int)found->stamp_length, found->stamp);
    memcpy(found->value, value, length);
    found->value_length = length;
  }
  found->stamp_length = (size_t)(first - line);
  memcpy(found->stamp, line, found->stamp_length);
}

int main(int argc, char **argv) {
  int file = argc > 1 ? open(argv[1], O_RDONLY) : -1;
  if (file < 0) return 2;
  states = argv + 2;
  state_count = argc - 2;
  slots = calloc(SLOTS, sizeof *slots);
  char *buffer = malloc(CHUNK + 4096);
  size_t kept = 0;
  int is_header = 1;
  for (ssize_t got; (got = read(file, buffer + kept, CHUNK)) > 0;) {
    char *end = buffer + kept + got;
    char *line = buffer;
    for (char *feed; (feed = memchr(line, '\n', (size_t)(end - line))) != NULL; line = feed + 1) {
      if (!is_header) take(line, feed);
      is_header = 0;
    }
    kept = (size_t)(end - line);
    memmove(buffer, line, kept);
  }
  return 0;
}

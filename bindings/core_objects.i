/* SPDX-License-Identifier: Apache-2.0 */
/* Which objects live, a part of core.i. Some languages keep a pointer to what they deleted, or delete twice: both are
 * refused here, whatever the pointer points to by then. */

%{
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* A set of pointers: those with one hash lie side by side, up to the next that is free. Half of the room is free. */
static struct {
  const void **slots;
  size_t room, count;
} core_objects;
static char core_objects_busy; /* collectors delete in threads of their own */

static void core_objects_take(void) {
  while (__atomic_test_and_set(&core_objects_busy, __ATOMIC_ACQUIRE))
    ;
}

static void core_objects_leave(void) { __atomic_clear(&core_objects_busy, __ATOMIC_RELEASE); }

static size_t core_home(const void *object) {
  return (size_t)(((uint64_t)(uintptr_t)object * 0x9E3779B97F4A7C15u) >> 20) & (core_objects.room - 1);
}

/* The slot of an object, or the free one where it belongs. */
static size_t core_slot(const void *object) {
  size_t at = core_home(object);
  while (core_objects.slots[at] != NULL && core_objects.slots[at] != object)
    at = (at + 1) & (core_objects.room - 1);
  return at;
}

static bool core_objects_grow(void) {
  const void **old = core_objects.slots;
  const size_t room = core_objects.room;
  const void **grown = (const void **)calloc(room != 0 ? room * 2 : 64, sizeof *grown);
  if (grown == NULL)
    return false;
  core_objects.slots = grown;
  core_objects.room = room != 0 ? room * 2 : 64;
  for (size_t i = 0; i < room; i++)
    if (old[i] != NULL)
      grown[core_slot(old[i])] = old[i];
  free((void *)old);
  return true;
}

/* False: there is no memory to know it by. */
static bool core_born(const void *object) {
  core_objects_take();
  const bool known = core_objects.count * 2 < core_objects.room || core_objects_grow();
  if (known) {
    core_objects.slots[core_slot(object)] = object;
    core_objects.count++;
  }
  core_objects_leave();
  return known;
}

static bool core_lives(const void *object) {
  core_objects_take();
  const bool found = object != NULL && core_objects.room != 0 && core_objects.slots[core_slot(object)] == object;
  core_objects_leave();
  return found;
}

/* Those behind it move up to where a search for them passes. */
static void core_forget(size_t hole) {
  const size_t mask = core_objects.room - 1;
  for (size_t next = (hole + 1) & mask; core_objects.slots[next] != NULL; next = (next + 1) & mask) {
    if (((next - core_home(core_objects.slots[next])) & mask) < ((next - hole) & mask))
      continue;
    core_objects.slots[hole] = core_objects.slots[next];
    hole = next;
  }
  core_objects.slots[hole] = NULL;
  core_objects.count--;
}

/* False: there is no such object, or not any more, so it is not to be freed. */
static bool core_dies(const void *object) {
  core_objects_take();
  const bool found = object != NULL && core_objects.room != 0 && core_objects.slots[core_slot(object)] == object;
  if (found)
    core_forget(core_slot(object));
  core_objects_leave();
  return found;
}

/* A new object of so many zero bytes; NULL = no memory. */
static void *core_new(size_t size) {
  void *made = calloc(1, size);
  if (made != NULL && core_born(made))
    return made;
  free(made);
  return NULL;
}

static void core_delete(void *object) {
  if (core_dies(object))
    free(object);
}
%}

/* What is not given is NULL, but for the object that a method is called on. Deleting is left to the destructor, in quiet. */
%define CORE_LIVES(type)
%typemap(check) type *self, struct type *self {
  if (strncmp("$symname", "delete_", 7) != 0 && !core_lives($1)) {
    core_refuse(RODT_E_ARGUMENT, "object", "the object was deleted");
    SWIG_exception(SWIG_ValueError, core_sentence());
  }
}
%typemap(check) type *, struct type * {
  if ($1 != NULL && !core_lives($1)) {
    core_refuse(RODT_E_ARGUMENT, "object", "the object was deleted");
    SWIG_exception(SWIG_ValueError, core_sentence());
  }
}
%enddef
CORE_LIVES(Rules)
CORE_LIVES(Form)
CORE_LIVES(Finding)
CORE_LIVES(Record)
CORE_LIVES(Vehicle)
CORE_LIVES(Columns)

/* SPDX-License-Identifier: Apache-2.0 */
/* Wheel ends as flat classes: texts in, a verdict and JSON out. It has no typemap of a language, so this file alone makes
 * a module for every language that SWIG knows. What a language likes better, exact numbers and days of its own, is in a
 * language.i. */
%module rodtravel_core

%include <exception.i>

%{
#include <rodtravel/rodtravel.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#ifdef __cplusplus
#define PER_THREAD thread_local
#else
#define PER_THREAD _Thread_local
#endif

typedef struct Rules { const rodt_rules *rules; } Rules;
typedef struct Form { rodt_form form; } Form; /* owns its texts */
typedef struct Finding { rodt_finding finding; } Finding;

static PER_THREAD rodt_error core_error; /* of the call */
static PER_THREAD char core_text[sizeof(rodt_error) + 64];

/* "applied, column 1: this is a date" */
static const char *core_sentence(void) {
  char place[32] = "";
  if (core_error.column != 0)
    snprintf(place, sizeof place, ", column %u", (unsigned)core_error.column);
  snprintf(core_text, sizeof core_text, "%s%s: %s", core_error.field[0] ? core_error.field : "rodtravel", place,
           core_error.text[0] ? core_error.text : rodt_status_text((rodt_status)core_error.status));
  return core_text;
}

/* A rule set that the object is a user of already. */
static struct Rules *core_rules(const rodt_rules *rules) {
  struct Rules *made = rules != NULL ? (struct Rules *)malloc(sizeof *made) : NULL;
  if (made != NULL)
    made->rules = rules;
  else
    core_error.status = rules != NULL ? RODT_E_MEMORY : RODT_E_UNKNOWN_RULES;
  return made;
}

/* The text that a _format function writes; NULL where it fails. */
#define CORE_TEXT(made, function, record, ...) \
  size_t needed = 0; \
  char *made = NULL; \
  core_error.status = function(record, __VA_ARGS__, NULL, 0, &needed); \
  if (core_error.status == RODT_E_SPACE && (made = (char *)malloc(needed)) != NULL) \
    core_error.status = function(record, __VA_ARGS__, made, needed, NULL)

static char *core_get(const char *record, const void *value, const char *path) {
  CORE_TEXT(made, rodt_record_text_format, rodt_record_find(record), value, path);
  return made;
}
%}

%exception {
  memset(&core_error, 0, sizeof core_error);
  $action
  if (core_error.status != RODT_OK)
    SWIG_exception(core_error.status == RODT_E_MEMORY ? SWIG_MemoryError : SWIG_ValueError, core_sentence());
}
%typemap(newfree) char * "free($1);"
%newobject get;
%newobject json;
%newobject judge;
%newobject load;

%nodefaultctor;
typedef struct Rules {} Rules;
typedef struct Form {} Form;
typedef struct Finding {} Finding;

%extend Rules {
  /* The compiled-in rule set of an id, "us-fmcsr". */
  Rules(const char *id) { return core_rules(rodt_rules_find(id)); }
  ~Rules() { rodt_rules_unref($self->rules); free($self); }
  const char *id() { return rodt_rules_id($self->rules); }
  /* A carrier's own limits, a table, on top of this law. */
  Rules *load(const char *name, const char *table) {
    rodt_rules *loaded = NULL;
    core_error.status = rodt_rules_load($self->rules, name, table, strlen(table), &loaded, &core_error);
    return core_error.status == RODT_OK ? core_rules(loaded) : NULL;
  }
}

%extend Form {
  Form() { return (Form *)calloc(1, sizeof(Form)); }
  ~Form() {
    for (int field = 0; field < RODT_READING_FIELDS; field++)
      free((char *)rodt_form_get(&$self->form, (rodt_field)field));
    free($self);
  }
  /* A field by its heading ("Released", "PSI"), or a path such as "style.unit". */
  void set(const char *name, const char *text) {
    const rodt_record *record = rodt_record_find("rodt_form");
    const void *at = NULL;
    const rodt_member *member = rodt_record_locate(record, &$self->form, name, &at);
    char *copy = NULL, *old = NULL;
    if (member != NULL && member->kind == RODT_MEMBER_KIND_TEXT_POINTER) {
      memcpy(&old, at, sizeof old);
      copy = (char *)malloc(strlen(text) + 1);
      text = copy != NULL ? strcpy(copy, text) : NULL;
    }
    free(rodt_record_set_text(record, &$self->form, name, text, &core_error) == RODT_OK ? old : copy);
  }
  char *get(const char *name) { return core_get("rodt_form", &$self->form, name); }
  Finding *judge(Rules *rules) {
    Finding *made = (Finding *)calloc(1, sizeof *made);
    if (made == NULL || rodt_form_judge(&$self->form, rules->rules, &made->finding, &core_error) != RODT_OK) {
      free(made);
      return NULL;
    }
    rodt_rules_ref(made->finding.rules);
    return made;
  }
}

%extend Finding {
  ~Finding() { rodt_rules_unref($self->finding.rules); free($self); }
  const char *verdict() { return rodt_verdict_name((rodt_verdict)$self->finding.verdict); }
  /* A member by its path: "margin", "law_row.source.document". */
  char *get(const char *path) { return core_get("rodt_finding", &$self->finding, path); }
  char *json() {
    CORE_TEXT(made, rodt_finding_json_format, &$self->finding, NULL, 0);
    return made;
  }
}

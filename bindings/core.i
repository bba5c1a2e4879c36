/* SPDX-License-Identifier: Apache-2.0 */
/* Wheel ends as flat classes: texts in, a verdict and JSON out. It has no typemap of a language, so this file alone makes
 * a module for every language that SWIG knows. What a language likes better, exact numbers and days of its own, is in a
 * language.i. */
%module rodtravel_core

%include <exception.i>
%include "core_objects.i"

%{
#include <errno.h>
#include <rodtravel/rodtravel.h>
#include <stdio.h>

#ifdef __cplusplus
#define PER_THREAD thread_local
#else
#define PER_THREAD _Thread_local
#endif

typedef struct Rules { const rodt_rules *rules; } Rules;
typedef struct Form { rodt_form form; } Form; /* owns its texts */
typedef struct Finding {
  rodt_finding finding;
  rodt_error error; /* of a row: the first text that could not be read */
} Finding;
typedef struct Record { /* any struct of the description; owns its texts */
  const rodt_record *of;
  void *value;
  const rodt_rules *rules; /* that rows in it belong to, or NULL */
  rodt_date day;           /* of an identification */
} Record;
typedef struct Vehicle {
  size_t count;
  rodt_wheel_end *ends;
  rodt_finding *findings;
  rodt_error *errors;
  rodt_advice *advice;
  rodt_vehicle_finding *found; /* NULL = not judged yet */
} Vehicle;

static PER_THREAD rodt_error core_error; /* of the call */
static PER_THREAD char core_text[sizeof(rodt_error) + 64];

static const char *core_error_text(void) {
  return core_error.text[0] ? core_error.text : rodt_status_text((rodt_status)core_error.status);
}

/* "applied, column 1: this is a date" */
static const char *core_sentence(void) {
  char place[32] = "";
  if (core_error.column != 0)
    snprintf(place, sizeof place, ", column %u", (unsigned)core_error.column);
  snprintf(core_text, sizeof core_text, "%s%s: %s", core_error.field[0] ? core_error.field : "rodtravel", place,
           core_error_text());
  return core_text;
}

/* What the library has no sentence of its own for. */
static void core_refuse(rodt_status status, const char *field, const char *text) {
  core_error.status = status;
  snprintf(core_error.field, sizeof core_error.field, "%s", field);
  snprintf(core_error.text, sizeof core_error.text, "%s", text);
}

/* NULL is an object of another kind, or none; the library refuses a rule set that is NULL. */
static const rodt_rules *core_law(const Rules *rules) { return rules != NULL ? rules->rules : NULL; }

/* A rule set that the object is a user of already. */
static struct Rules *core_rules(const rodt_rules *rules) {
  struct Rules *made = rules != NULL ? (struct Rules *)core_new(sizeof *made) : NULL;
  if (made != NULL)
    made->rules = rules;
  else
    core_error.status = rules != NULL ? RODT_E_MEMORY : RODT_E_UNKNOWN_RULES;
  return made;
}

/* The text that a _format function writes; NULL where it fails. */
#define CORE_TEXT(made, function, ...) \
  size_t needed = 0; \
  char *made = NULL; \
  core_error.status = function(__VA_ARGS__, NULL, 0, &needed); \
  if (core_error.status == RODT_E_SPACE) { \
    made = (char *)malloc(needed); \
    core_error.status = made != NULL ? function(__VA_ARGS__, made, needed, NULL) : RODT_E_MEMORY; \
  }

static char *core_get(const rodt_record *record, const void *value, const char *path) {
  CORE_TEXT(made, rodt_record_text_format, record, value, path);
  if (core_error.status == RODT_E_ARGUMENT)
    core_refuse(RODT_E_ARGUMENT, path != NULL ? path : "path", "no text has this path");
  return made;
}

static char *core_number(rodt_ratio number) {
  char *made = (char *)malloc(48);
  if (made == NULL)
    core_error.status = RODT_E_MEMORY;
  else
    snprintf(made, 48, number.den == 1 ? "%lld" : "%lld/%lld", (long long)number.num, (long long)number.den);
  return made;
}

/* An exact number by its path, "-1/16"; "" = not given. */
static char *core_exact(const rodt_record *record, const void *value, const char *path) {
  const void *at = NULL;
  const rodt_member *member = rodt_record_locate(record, value, path, &at);
  const uint32_t kind = member != NULL ? member->kind : (uint32_t)RODT_MEMBER_KIND_END;
  rodt_ratio number = {0, 0};
  if (kind == RODT_MEMBER_KIND_LENGTH || kind == RODT_MEMBER_KIND_PRESSURE || kind == RODT_MEMBER_KIND_RATIO)
    memcpy(&number, at, sizeof number); /* all three are a numerator and a denominator */
  else
    core_refuse(RODT_E_ARGUMENT, path != NULL ? path : "path", "no exact number has this path");
  return core_error.status != RODT_OK ? NULL : number.den != 0 ? core_number(number) : (char *)calloc(1, 1);
}

/* A whole number, or a fraction of two, as core_exact writes it. */
static rodt_ratio core_ratio(const char *text) {
  rodt_ratio made;
  char *end = NULL;
  long long num = 0, den = 1;
  memset(&made, 0, sizeof made);
  errno = 0;
  if (text != NULL)
    num = strtoll(text, &end, 10);
  if (end != NULL && end != text && *end == '/')
    den = strtoll(end + 1, &end, 10);
  if (end == NULL || end == text || *end != '\0' || errno != 0)
    core_refuse(RODT_E_SYNTAX, "number", "a whole number or a fraction was expected, such as -1/16");
  else
    core_error.status = rodt_ratio_make(num, den, &made);
  return made;
}

static char *core_arithmetic(const char *a, const char *b, rodt_status (*of)(rodt_ratio, rodt_ratio, rodt_ratio *)) {
  const rodt_ratio first = core_ratio(a), second = core_error.status == RODT_OK ? core_ratio(b) : first;
  rodt_ratio made;
  if (core_error.status == RODT_OK)
    core_error.status = of(first, second, &made);
  return core_error.status == RODT_OK ? core_number(made) : NULL;
}

/* Sets a member from a text; a text pointer gets a copy, and lets go of what it had. */
static void core_set(const rodt_record *record, void *value, const char *name, const char *text) {
  const void *at = NULL;
  const rodt_member *member = rodt_record_locate(record, value, name, &at);
  char *copy = NULL, *old = NULL;
  if (text != NULL && member != NULL && member->kind == RODT_MEMBER_KIND_TEXT_POINTER) {
    memcpy(&old, at, sizeof old);
    copy = (char *)malloc(strlen(text) + 1);
    text = copy != NULL ? strcpy(copy, text) : NULL;
    if (copy == NULL)
      core_error.status = RODT_E_MEMORY;
  }
  if (core_error.status == RODT_OK)
    free(rodt_record_set_text(record, value, name, text, &core_error) == RODT_OK ? old : copy);
  if (core_error.status != RODT_OK && core_error.field[0] == '\0')
    snprintf(core_error.field, sizeof core_error.field, "%s", name != NULL ? name : "name");
}

static void core_free_texts(const rodt_record *record, void *value) {
  for (size_t i = 0; i < rodt_member_count(record); i++) {
    const rodt_member *member = rodt_member_at(record, i);
    char *text = NULL;
    if (member->kind != RODT_MEMBER_KIND_TEXT_POINTER)
      continue;
    memcpy(&text, (char *)value + member->offset, sizeof text);
    free(text);
  }
}

/* The catalogue of a language; "" and "en" = English, which is NULL. */
static const rodt_catalogue *core_catalogue(const char *language) {
  const rodt_catalogue *found = rodt_catalogue_find(language);
  if (found == NULL && language != NULL && language[0] != '\0' && strncmp(language, "en", 2) != 0)
    core_refuse(RODT_E_ARGUMENT, "language", "the library does not speak this language");
  return found;
}

static char *core_say(const rodt_message *message, const char *language) {
  const rodt_catalogue *catalogue = core_catalogue(language);
  if (core_error.status != RODT_OK)
    return NULL;
  CORE_TEXT(made, rodt_message_format, message, catalogue);
  return made;
}

/* --- Records ----------------------------------------------------------------------------------------- */

/* Texts are owned where a caller fills the record. */
static void core_record_free(Record *record) {
  if (!core_dies(record))
    return;
  if (record->value != NULL && rodt_record_is_input(record->of))
    core_free_texts(record->of, record->value);
  rodt_rules_unref(record->rules);
  free(record->value);
  free(record);
}

static Record *core_record(const char *name, const rodt_rules *rules) {
  const rodt_record *of = rodt_record_find(name);
  Record *made = of != NULL ? (Record *)core_new(sizeof *made) : NULL;
  if (made != NULL && (made->value = calloc(1, rodt_record_size(of))) == NULL) {
    core_delete(made);
    made = NULL;
  }
  if (made == NULL) {
    core_refuse(of != NULL ? RODT_E_MEMORY : RODT_E_ARGUMENT, "record", "there is no such record, or no memory for it");
    return NULL;
  }
  made->of = of;
  made->rules = rodt_rules_ref(rules);
  return made;
}

/* What was made, unless it failed. */
static Record *core_kept(Record *made) {
  if (core_error.status == RODT_OK)
    return made;
  core_record_free(made);
  return NULL;
}

/* The struct of a record of that name; NULL, and an error, for another one. */
static void *core_value(const Record *record, const char *name) {
  if (record != NULL && strcmp(rodt_record_name(record->of), name) == 0)
    return record->value;
  core_refuse(RODT_E_ARGUMENT, "record", "this is another record than the function takes");
  return NULL;
}

/* A day as text; nothing = not given. */
static rodt_date core_day(const char *text) {
  rodt_date day;
  memset(&day, 0, sizeof day);
  if (text != NULL && text[0] != '\0' && rodt_date_parse(text, &day, &core_error) != RODT_OK)
    snprintf(core_error.field, sizeof core_error.field, "date");
  return day;
}

/* --- Vehicles ---------------------------------------------------------------------------------------- */

static bool core_grow(void **array, size_t count, size_t size) {
  void *grown = realloc(*array, (count + 1) * size);
  if (grown == NULL)
    return false;
  memset((char *)grown + count * size, 0, size);
  *array = grown;
  return true;
}

static bool core_vehicle_grow(Vehicle *vehicle) {
  return core_grow((void **)&vehicle->ends, vehicle->count, sizeof *vehicle->ends) &&
         core_grow((void **)&vehicle->findings, vehicle->count, sizeof *vehicle->findings) &&
         core_grow((void **)&vehicle->errors, vehicle->count, sizeof *vehicle->errors) &&
         core_grow((void **)&vehicle->advice, vehicle->count, sizeof *vehicle->advice);
}

static bool core_vehicle_judged(const Vehicle *vehicle) {
  if (vehicle->found == NULL)
    core_refuse(RODT_E_ARGUMENT, "vehicle", "the vehicle is not judged yet");
  return vehicle->found != NULL;
}
%}

/* --- The error of the last call that failed: asked before the next call but one of these --------------- */

%newobject error_say;
%typemap(newfree) char * "free($1);"
%inline %{
/* The languages of sentences beside English, "fr". */
int language_count(void) { return (int)rodt_catalogue_count(); }
const char *language(int index) {
  const rodt_catalogue *found = rodt_catalogue_at((size_t)index);
  return found != NULL ? found->language : "";
}
const char *error_status(void) { return rodt_status_name((rodt_status)core_error.status); }
const char *error_field(void) { return core_error.field; }
int error_column(void) { return (int)core_error.column; }
int error_line(void) { return (int)core_error.line; }
const char *error_text(void) { return core_error_text(); }
/* Its sentence in a language; English where the library has no other, or does not speak the language. */
char *error_say(const char *language) {
  const rodt_error error = core_error;
  rodt_message message;
  char *made = (char *)malloc(RODT_REPORT_SENTENCE_SIZE);
  if (made != NULL && (rodt_error_message(&error, &message) != RODT_OK ||
                       rodt_message_format(&message, rodt_catalogue_find(language), made, RODT_REPORT_SENTENCE_SIZE,
                                           NULL) != RODT_OK))
    snprintf(made, RODT_REPORT_SENTENCE_SIZE, "%s", core_error_text());
  return made;
}
%}

/* Where raising leaves arguments behind, a language defines CORE_QUIET and asks error_status after each call. */
#ifdef CORE_QUIET
%exception {
  memset(&core_error, 0, sizeof core_error);
  $action
}
#elif defined(CORE_RAISE) /* one that knows more of its exceptions */
%exception {
  memset(&core_error, 0, sizeof core_error);
  $action
  if (core_error.status != RODT_OK) CORE_RAISE;
}
#else
%exception {
  memset(&core_error, 0, sizeof core_error);
  $action
  if (core_error.status != RODT_OK)
    SWIG_exception(core_error.status == RODT_E_MEMORY ? SWIG_MemoryError : SWIG_ValueError, core_sentence());
}
#endif
/* A collector may delete objects after a call that failed: its error stays. */
%exception Rules::~Rules "$action";
%exception Form::~Form "$action";
%exception Finding::~Finding "$action";
%exception Record::~Record "$action";
%exception Vehicle::~Vehicle "$action";
%newobject get;
%newobject exact;
%newobject json;
%newobject say;
%newobject spoken;
%newobject sentences;
%newobject source;
%newobject ratio_sum;
%newobject ratio_difference;
%newobject ratio_product;
%newobject ratio_quotient;
%newobject error_json;
%newobject errors_json;
%newobject limits_json;
%newobject air_limit_json;
%newobject judge;
%newobject judge_row;
%newobject judge_air;
%newobject judge_tally;
%newobject identify;
%newobject find_limit;
%newobject chamber;
%newobject load;
%newobject read_length;
%newobject read_pressure;
%newobject read_seconds;
%newobject read_date;
%newobject write_length;

%nodefaultctor;
typedef struct Rules {} Rules;
typedef struct Form {} Form;
typedef struct Finding {} Finding;
typedef struct Record {} Record;
typedef struct Vehicle {} Vehicle;

%extend Rules {
  /* The compiled-in rule set of an id, "us-fmcsr". */
  Rules(const char *id) { return core_rules(rodt_rules_find(id)); }
  /* Some languages delete what was never made, in quiet. */
  ~Rules() {
    if (!core_dies($self))
      return;
    rodt_rules_unref($self->rules);
    free($self);
  }
  const char *id() { return rodt_rules_id($self->rules); }
  char *json() {
    CORE_TEXT(made, rodt_rules_json_format, $self->rules, 0);
    return made;
  }
  /* The rows of limits that are in force on a day, "" = the newest. */
  char *limits_json(const char *day) {
    rodt_date on = core_day(day);
    if (core_error.status != RODT_OK)
      return NULL;
    CORE_TEXT(made, rodt_limits_json_format, $self->rules, on, NULL, 0);
    return made;
  }
  int air_limit_count() { return (int)rodt_rules_air_count($self->rules); }
  /* A row of air checks; an index that is none is refused. */
  char *air_limit_json(int index, const char *language) {
    const rodt_catalogue *catalogue = core_catalogue(language);
    if (core_error.status != RODT_OK)
      return NULL;
    CORE_TEXT(made, rodt_air_limit_json_format, rodt_rules_air_at($self->rules, (size_t)index), catalogue, 0);
    return made;
  }
  /* A carrier's own limits, a table, on top of this law; of its air checks on another law, if one is given. */
  Rules *load(const char *name, const char *table, Rules *air_law = NULL) {
    rodt_rules *loaded = NULL;
    core_error.status = rodt_rules_load_with_air($self->rules, core_law(air_law), name, table,
                                                 table != NULL ? strlen(table) : 0, &loaded, &core_error);
    return core_error.status == RODT_OK ? core_rules(loaded) : NULL;
  }
}

%extend Form {
  Form() { return (Form *)core_new(sizeof(Form)); }
  ~Form() {
    if (!core_dies($self))
      return;
    core_free_texts(rodt_record_find("rodt_form"), &$self->form);
    free($self);
  }
  /* A field by its heading ("Released", "PSI"), or a path such as "style.unit". */
  void set(const char *name, const char *text) { core_set(rodt_record_find("rodt_form"), &$self->form, name, text); }
  char *get(const char *name) { return core_get(rodt_record_find("rodt_form"), &$self->form, name); }
  Finding *judge(Rules *rules) {
    Finding *made = (Finding *)core_new(sizeof *made);
    if (made == NULL || rodt_form_judge(&$self->form, core_law(rules), &made->finding, &core_error) != RODT_OK) {
      core_delete(made);
      return NULL;
    }
    rodt_rules_ref(made->finding.rules);
    return made;
  }
  /* As a row of a file: what cannot be read makes the finding undetermined, and is its error. */
  Finding *judge_row(Rules *rules) {
    Finding *made = (Finding *)core_new(sizeof *made);
    rodt_status status = made == NULL ? RODT_E_MEMORY
                                      : rodt_form_judge_row(&$self->form, core_law(rules), &made->finding, &made->error);
    if (status == RODT_OK) {
      rodt_rules_ref(made->finding.rules);
      return made;
    }
    if (made != NULL)
      core_error = made->error;
    core_error.status = status;
    core_delete(made);
    return NULL;
  }
  /* How many texts judge would refuse; and one of them. */
  int error_count() {
    rodt_error errors[RODT_FORM_ERRORS_MAX];
    size_t count = 0;
    core_error.status = rodt_form_errors(&$self->form, errors, RODT_FORM_ERRORS_MAX, &count);
    return (int)count;
  }
  char *error_json(int index) {
    rodt_error errors[RODT_FORM_ERRORS_MAX];
    size_t count = 0;
    core_error.status = rodt_form_errors(&$self->form, errors, RODT_FORM_ERRORS_MAX, &count);
    if (index < 0 || (size_t)index >= count)
      core_error.status = RODT_E_ARGUMENT;
    if (core_error.status != RODT_OK)
      return NULL;
    CORE_TEXT(made, rodt_record_json_format, rodt_record_find("rodt_error"), &errors[index], 0);
    return made;
  }
}

%extend Finding {
  ~Finding() {
    if (!core_dies($self))
      return;
    rodt_rules_unref($self->finding.rules);
    free($self);
  }
  const char *verdict() { return rodt_verdict_name((rodt_verdict)$self->finding.verdict); }
  /* A member by its path: "margin", "law_row.source.document". */
  char *get(const char *path) { return core_get(rodt_record_find("rodt_finding"), &$self->finding, path); }
  char *exact(const char *path) { return core_exact(rodt_record_find("rodt_finding"), &$self->finding, path); }
  /* The report of a wheel end in a language. */
  char *json(const char *language = "") {
    const rodt_catalogue *catalogue = core_catalogue(language);
    if (core_error.status != RODT_OK)
      return NULL;
    CORE_TEXT(made, rodt_finding_json_format, &$self->finding, catalogue, 0);
    return made;
  }
  /* The comparison in one line; what a person says aloud. */
  char *say(const char *language = "") {
    rodt_message message;
    core_error.status = rodt_finding_message(&$self->finding, &message);
    return core_error.status == RODT_OK ? core_say(&message, language) : NULL;
  }
  char *spoken(const char *language = "") {
    rodt_message message;
    core_error.status = rodt_finding_spoken_message(&$self->finding, &message);
    return core_error.status == RODT_OK ? core_say(&message, language) : NULL;
  }
  /* A sentence a line for each reason, in the order of `reasons`. */
  char *sentences(const char *language = "") {
    char *made = NULL;
    size_t size = 0;
    for (int reason = 0; core_error.status == RODT_OK && reason < RODT_REASON_END; reason++) {
      rodt_message message;
      if (!rodt_finding_has(&$self->finding, (rodt_reason)reason))
        continue;
      core_error.status = rodt_finding_reason_message(&$self->finding, (rodt_reason)reason, &message);
      char *line = core_error.status == RODT_OK ? core_say(&message, language) : NULL;
      const size_t more = line != NULL ? strlen(line) : 0;
      char *grown = line != NULL ? (char *)realloc(made, size + more + 2) : NULL;
      if (grown != NULL) {
        made = grown;
        size += (size_t)snprintf(made + size, more + 2, "%s%s", size > 0 ? "\n" : "", line);
      } else if (core_error.status == RODT_OK) {
        core_error.status = RODT_E_MEMORY;
      }
      free(line);
    }
    if (core_error.status == RODT_OK)
      return made;
    free(made);
    return NULL;
  }
  /* Where the limit is published, in one line; nothing without one. */
  char *source() {
    if ($self->finding.source == NULL)
      return NULL;
    CORE_TEXT(made, rodt_source_format, $self->finding.source);
    return made;
  }
  /* How it counts among the defective brakes: "none", "half", "full", "unknown". */
  const char *defect() { return rodt_defect_name(rodt_finding_defect(&$self->finding)); }
  /* Of judge_row: the status of the text that could not be read, "ok" = all could; and where it is. */
  const char *row_status() { return rodt_status_name((rodt_status)$self->error.status); }
  const char *row_field() { return $self->error.field; }
  int row_column() { return (int)$self->error.column; }
  const char *row_text() { return $self->error.text; }
}

/* A struct by its name: "rodt_clues", "rodt_tally", "rodt_air_form", "rodt_chamber". */
%extend Record {
  Record(const char *name) {
    const rodt_record *of = rodt_record_find(name);
    if (of != NULL && !rodt_record_is_input(of)) {
      core_refuse(RODT_E_ARGUMENT, "record", "the library fills this record itself");
      return NULL;
    }
    return core_record(name, NULL);
  }
  ~Record() { core_record_free($self); }
  const char *name() { return rodt_record_name($self->of); }
  void set(const char *path, const char *text) {
    if (!rodt_record_is_input($self->of))
      core_refuse(RODT_E_ARGUMENT, path != NULL ? path : "path", "what the library found is not changed");
    else
      core_set($self->of, $self->value, path, text);
  }
  char *get(const char *path) { return core_get($self->of, $self->value, path); }
  char *exact(const char *path) { return core_exact($self->of, $self->value, path); }
  /* All of it; of an air check or an identification its report in a language. */
  char *json(const char *language = "") {
    const rodt_catalogue *catalogue = core_catalogue(language);
    if (core_error.status != RODT_OK)
      return NULL;
    if (strcmp(rodt_record_name($self->of), "rodt_air_finding") == 0) {
      CORE_TEXT(made, rodt_air_finding_json_format, (const rodt_air_finding *)$self->value, catalogue, 0);
      return made;
    }
    if (strcmp(rodt_record_name($self->of), "rodt_identification") == 0) {
      CORE_TEXT(made, rodt_identification_json_format, (const rodt_identification *)$self->value, $self->rules, $self->day,
                catalogue, 0);
      return made;
    }
    CORE_TEXT(made, rodt_record_json_format, $self->of, $self->value, 0);
    return made;
  }
  /* What an air check found, or a count of brakes, in one line. */
  char *say(const char *language = "") {
    rodt_message message;
    if (strcmp(rodt_record_name($self->of), "rodt_count") == 0)
      core_error.status = rodt_count_message((const rodt_count *)$self->value, &message);
    else if (core_value($self, "rodt_air_finding") != NULL)
      core_error.status = rodt_air_finding_message((const rodt_air_finding *)$self->value, &message);
    return core_error.status == RODT_OK ? core_say(&message, language) : NULL;
  }
}

%extend Vehicle {
  Vehicle() { return (Vehicle *)core_new(sizeof(Vehicle)); }
  ~Vehicle() {
    if (!core_dies($self))
      return;
    for (size_t i = 0; i < $self->count; i++)
      rodt_rules_unref($self->findings[i].rules);
    free($self->ends);
    free($self->findings);
    free($self->errors);
    free($self->advice);
    free($self->found);
    free($self);
  }
  /* A wheel end by its position, "1L"; adjuster and arm_length may be "". */
  void add(const char *position, Finding *finding, const char *adjuster = "", const char *arm_length = "") {
    const rodt_record *record = rodt_record_find("rodt_wheel_end");
    rodt_wheel_end end;
    memset(&end, 0, sizeof end);
    core_set(record, &end, "position", position);
    if (core_error.status == RODT_OK)
      core_set(record, &end, "adjuster", adjuster);
    if (core_error.status == RODT_OK)
      core_set(record, &end, "arm_length", arm_length);
    if (core_error.status == RODT_OK && finding == NULL)
      core_refuse(RODT_E_ARGUMENT, "finding", "a wheel end needs a finding");
    if (core_error.status == RODT_OK && !core_vehicle_grow($self))
      core_error.status = RODT_E_MEMORY;
    if (core_error.status != RODT_OK)
      return;
    $self->ends[$self->count] = end;
    $self->findings[$self->count] = finding->finding;
    $self->errors[$self->count] = finding->error;
    rodt_rules_ref(finding->finding.rules);
    $self->count++;
    free($self->found); /* of fewer wheel ends */
    $self->found = NULL;
  }
  /* brakes of the vehicle, measured or not; 0 = both ends of every axle. */
  void judge(int brakes = 0) {
    rodt_vehicle_finding *made = (rodt_vehicle_finding *)calloc(1, sizeof *made);
    core_error.status = made == NULL ? RODT_E_MEMORY : RODT_OK;
    if (brakes < 0)
      core_refuse(RODT_E_ARGUMENT, "brakes", "a vehicle has no fewer than no brakes");
    else if (made != NULL)
      core_error.status = rodt_vehicle_combine($self->ends, $self->count, (uint32_t)brakes, $self->findings, $self->advice,
                                               made, &core_error);
    free(core_error.status == RODT_OK ? $self->found : made);
    if (core_error.status == RODT_OK)
      $self->found = made;
  }
  char *get(const char *path) {
    return core_vehicle_judged($self) ? core_get(rodt_record_find("rodt_vehicle_finding"), $self->found, path) : NULL;
  }
  char *exact(const char *path) {
    return core_vehicle_judged($self) ? core_exact(rodt_record_find("rodt_vehicle_finding"), $self->found, path) : NULL;
  }
  char *json(const char *language = "") {
    const rodt_catalogue *catalogue = core_catalogue(language);
    if (core_error.status != RODT_OK || !core_vehicle_judged($self))
      return NULL;
    CORE_TEXT(made, rodt_vehicle_json_format, $self->found, $self->ends, $self->count, $self->findings, $self->advice,
              $self->errors, catalogue, 0);
    return made;
  }
  char *say(const char *language = "") {
    rodt_message message;
    if (!core_vehicle_judged($self))
      return NULL;
    core_error.status = rodt_count_message(&$self->found->count, &message);
    return core_error.status == RODT_OK ? core_say(&message, language) : NULL;
  }
}

%include "core_calls.i"
%include "core_columns.i"

/* SPDX-License-Identifier: Apache-2.0 */
/* What a workshop's server does: forms in, findings out as JSON, a carrier's own limits, every error at its field.
 *
 *     forms LIMITS.csv FORM...        "-" in place of the limits: the law alone
 *
 * A form is a file with a line "heading: text" for each field. Two threads share one rule set. */
#include <pthread.h>
#include <rodtravel/rodtravel.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define FILE_MOST 65536
#define THREADS 2

/* One form and its answer. */
typedef struct job {
    const char *path;
    char *json;   /* the finding, or NULL ... */
    size_t count; /* ... and so many errors, each at its field */
    rodt_error errors[RODT_FORM_ERRORS_MAX];
} job;

/* What a thread works on: every second form. */
typedef struct work {
    const rodt_rules *rules;
    job *jobs;
    int count, first;
} work;

/* An error of the form itself, told as the library tells its own. */
static bool refuse(job *to, const char *field, const char *text)
{
    rodt_error *error = &to->errors[0];
    to->count = 1;
    *error = (rodt_error){.status = RODT_E_SYNTAX};
    (void)snprintf(error->field, sizeof error->field, "%s", field);
    (void)snprintf(error->text, sizeof error->text, "%s", text);
    return false;
}

/* A file as a text that the caller frees; NULL = it cannot be read, or is too long. */
static char *read_file(const char *path)
{
    FILE *file = fopen(path, "rb");
    char *text = calloc(1, FILE_MOST);
    size_t size = file != NULL && text != NULL ? fread(text, 1, FILE_MOST, file) : FILE_MOST;
    if (file != NULL)
        (void)fclose(file);
    if (size < FILE_MOST)
        return text;
    free(text);
    return NULL;
}

/* Cuts the text into the fields of a form, which points into it. A heading that means no field is refused: a misspelled
 * one must not get lost. */
static bool fill_form(char *text, rodt_form *form, job *to)
{
    char *rest = text;
    for (char *line = strtok_r(text, "\r\n", &rest); line != NULL; line = strtok_r(NULL, "\r\n", &rest)) {
        char *value = strchr(line, ':');
        if (value == NULL)
            return refuse(to, line, "a line of a form is \"heading: text\"");
        *value = '\0';
        RODT_ENUM32(rodt_field) field;
        if (rodt_field_find(line, &field) != RODT_OK || field >= RODT_READING_FIELDS)
            return refuse(to, line, "no field of a wheel end has this heading");
        if (rodt_form_get(form, (rodt_field)field) != NULL)
            return refuse(to, line, "the form has this field twice");
        rodt_form_set(form, (rodt_field)field, value + 1 + strspn(value + 1, " "));
    }
    return true;
}

/* Reads one form, judges it and writes its finding. */
static bool judge_form(const rodt_rules *rules, char *text, job *to)
{
    rodt_form form = {.style = {.unit = RODT_UNIT_IN}};
    rodt_finding finding;
    size_t needed = 0;
    if (!fill_form(text, &form, to) ||
        rodt_form_errors(&form, to->errors, RODT_FORM_ERRORS_MAX, &to->count) != RODT_OK || to->count > 0 ||
        rodt_form_judge(&form, rules, &finding, NULL) != RODT_OK)
        return false;
    (void)rodt_finding_json_format(&finding, NULL, 0, NULL, 0, &needed); /* asks for the size */
    to->json = malloc(needed);
    return to->json != NULL && rodt_finding_json_format(&finding, NULL, 0, to->json, needed, NULL) == RODT_OK;
}

/* Rule sets are constant, so threads share them; all else belongs to one thread. */
static void *run(void *context)
{
    const work *own = context;
    for (int i = own->first; i < own->count; i += THREADS) {
        job *next = &own->jobs[i];
        char *text = read_file(next->path);
        (void)(text != NULL ? judge_form(own->rules, text, next)
                            : refuse(next, "", "the file cannot be read"));
        free(text);
    }
    return NULL;
}

/* The carrier's limits on top of the law; "-" = the law. NULL: they are not valid, said on stderr. */
static const rodt_rules *load_rules(const char *path)
{
    const rodt_rules *law = rodt_rules_find(RODT_DEFAULT_RULES);
    rodt_rules *rules = NULL;
    rodt_error error = {.text = "the file cannot be read"};
    if (strcmp(path, "-") == 0)
        return law;
    char *text = read_file(path);
    if (text == NULL || rodt_rules_load(law, path, text, strlen(text), &rules, &error) != RODT_OK)
        fprintf(stderr, "%s:%u:%u: %s\n", path, (unsigned)error.line, (unsigned)error.column, error.text);
    free(text);
    return rules;
}

static bool print_answer(const job *of)
{
    if (of->json != NULL)
        return puts(of->json) >= 0;
    for (size_t i = 0; i < of->count; i++)
        fprintf(stderr, "%s: %s, column %u: %s\n", of->path, of->errors[i].field, (unsigned)of->errors[i].column,
                of->errors[i].text);
    return false;
}

int main(int argc, char **argv)
{
    const int count = argc - 2;
    const rodt_rules *rules = count > 0 ? load_rules(argv[1]) : NULL;
    job *jobs = rules != NULL ? calloc((size_t)count, sizeof *jobs) : NULL;
    pthread_t threads[THREADS];
    work parts[THREADS];
    if (jobs == NULL)
        return 2;
    for (int i = 0; i < count; i++)
        jobs[i].path = argv[i + 2];
    for (int i = 0; i < THREADS; i++) {
        parts[i] = (work){.rules = rules, .jobs = jobs, .count = count, .first = i};
        if (pthread_create(&threads[i], NULL, run, &parts[i]) != 0)
            return 2;
    }
    for (int i = 0; i < THREADS; i++)
        (void)pthread_join(threads[i], NULL);
    int status = 0;
    for (int i = 0; i < count; i++) {
        status = print_answer(&jobs[i]) ? status : 2;
        free(jobs[i].json);
    }
    free(jobs);
    rodt_rules_unref(rules);
    return status;
}

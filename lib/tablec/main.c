/* SPDX-License-Identifier: Apache-2.0 */
/* tablec, the table compiler: tables in, one C file of constant arrays out. Runs while the library is
 * built and is no part of it. */
#include "tablec/model.h"

#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "rules/limit_row.h"
#include "rules/table_reader.h"

void tables_fault(tables *t, int file, uint32_t line, const char *format, ...)
{
    fprintf(stderr, "%s:%u: ", t->paths[file], (unsigned)line);
    va_list arguments;
    va_start(arguments, format);
    vfprintf(stderr, format, arguments);
    va_end(arguments);
    fputc('\n', stderr);
    t->faults++;
}

static void on_fault(void *context, const rodt_error *fault)
{
    tables *t = context;
    if (fault->field[0] != '\0')
        tables_fault(t, t->current, fault->line, "%s: %s", fault->field, fault->text);
    else
        tables_fault(t, t->current, fault->line, "%s", fault->text);
}

/* Keeps a text beyond the row that it was read in. */
static const char *keep(tables *t, const char *text)
{
    size_t size = strlen(text) + 1;
    if (size > sizeof t->pool - t->pool_used) {
        tables_fault(t, t->current, 0, "the tables hold more text than the compiler has room for");
        return "";
    }
    char *kept = t->pool + t->pool_used;
    memcpy(kept, text, size);
    t->pool_used += size;
    return kept;
}

const char *tables_keep(tables *t, const table_reader *reader, size_t column)
{
    return keep(t, reader->cells[column].text);
}

/* A text that refers to nothing is NULL. */
static const char *keep_reference(tables *t, const table_reader *reader, size_t column)
{
    return table_empty(reader, column) ? NULL : tables_keep(t, reader, column);
}

source_row *tables_source(tables *t, const char *id)
{
    for (size_t i = 0; i < t->source_count; i++) {
        if (strcmp(t->sources[i].source.id, id) == 0)
            return &t->sources[i];
    }
    return NULL;
}

rules_row *tables_rules(tables *t, const char *id)
{
    for (size_t i = 0; i < t->rules_count; i++) {
        if (strcmp(t->rules[i].id, id) == 0)
            return &t->rules[i];
    }
    return NULL;
}

static const table_column source_columns[] = {{"id", true},       {"body", true},    {"document", true},
                                              {"section", true},  {"edition", true}, {"address", false},
                                              {"read_on", false}};

static void read_source(tables *t, table_reader *reader)
{
    source_row row = {.line = reader->line};
    bool good = table_date(reader, 6, &row.read_on);
    row.source = (rodt_source){tables_keep(t, reader, 0), tables_keep(t, reader, 1), tables_keep(t, reader, 2),
                               tables_keep(t, reader, 3), tables_keep(t, reader, 4), tables_keep(t, reader, 5)};
    if (good)
        t->sources[t->source_count++] = row;
}

enum {
    CHAMBER_FAMILY,
    CHAMBER_SIZE,
    CHAMBER_DIAMETER,
    CHAMBER_MM,
    CHAMBER_SOURCE,
    CHAMBER_RATED,
    CHAMBER_RATED_SOURCE,
    CHAMBER_RATED_EVIDENCE
};

static const table_column chamber_columns[] = {{"family", true},           {"size", true},
                                               {"outside_diameter", true}, {"diameter_mm", true},
                                               {"diameter_source", true},  {"standard_rated", false},
                                               {"rated_source", false},    {"rated_evidence", false}};

static void read_chamber(tables *t, table_reader *reader)
{
    chamber_row row = {.line = reader->line};
    bool good = table_family(reader, CHAMBER_FAMILY, &row.row.family);
    good = good && table_size(reader, CHAMBER_SIZE, row.row.family);
    good = table_length(reader, CHAMBER_DIAMETER, RODT_UNIT_INCH, &row.row.outside_diameter) && good;
    good = table_length(reader, CHAMBER_MM, RODT_UNIT_MM, &row.row.outside_diameter_mm) && good;
    good = table_length(reader, CHAMBER_RATED, RODT_UNIT_INCH, &row.row.standard_rated_stroke) && good;
    good = table_evidence(reader, CHAMBER_RATED_EVIDENCE, &row.rated_evidence) && good;
    row.row.size = tables_keep(t, reader, CHAMBER_SIZE);
    row.diameter_source = tables_keep(t, reader, CHAMBER_SOURCE);
    row.rated_source = keep_reference(t, reader, CHAMBER_RATED_SOURCE);
    row.rated_evidence_text = keep_reference(t, reader, CHAMBER_RATED_EVIDENCE);
    if (good)
        t->chambers[t->chamber_count++] = row;
}

static const table_column limit_columns[] = {
    {"rules", true},         {"family", true},    {"size", true},  {"class", true},
    {"rated_stroke", false}, {"rated_mm", false}, {"limit", true}, {"limit_mm", false},
    {"from", false},         {"until", false},    {"source", true}, {"evidence", true}};

static void read_limit(tables *t, table_reader *reader)
{
    limit_row row = {.line = reader->line};
    if (!table_limit(reader, &row.row))
        return;
    row.rules = tables_keep(t, reader, LIMIT_RULES);
    row.source = tables_keep(t, reader, LIMIT_SOURCE);
    row.row.size = tables_keep(t, reader, LIMIT_SIZE);
    row.row.published = tables_keep(t, reader, LIMIT_LIMIT);
    t->limits[t->limit_count++] = row;
}

enum {
    RULES_ID,
    RULES_TITLE,
    RULES_AUTHORITY,
    RULES_SOURCE,
    RULES_EVIDENCE,
    RULES_FROM,
    RULES_UNTIL,
    RULES_AT_LIMIT,
    RULES_LIMITS_OF,
    RULES_PRESSURE_FROM,
    RULES_PRESSURE_UNTIL,
    RULES_PRESSURE_SOURCE,
    RULES_PRESSURE_EVIDENCE,
    RULES_SHARE,
    RULES_SHARE_SOURCE,
    RULES_SHARE_EVIDENCE
};

static const table_column rules_columns[] = {
    {"id", true},
    {"title", true},
    {"authority", true},
    {"source", true},
    {"evidence", true},
    {"from", false},
    {"until", false},
    {"at_limit", false},
    {"limits_of", false},
    {"pressure_from", false},
    {"pressure_until", false},
    {"pressure_source", false},
    {"pressure_evidence", false},
    {"rated_share", false},
    {"rated_share_source", false},
    {"rated_share_evidence", false}};

static bool read_rules_values(table_reader *reader, rules_row *row)
{
    static const char *const words[] = {"fail", "pass"};
    unsigned at_limit = 0;
    bool good = table_evidence(reader, RULES_EVIDENCE, &row->evidence);
    good = table_date(reader, RULES_FROM, &row->from) && good;
    good = table_date(reader, RULES_UNTIL, &row->until) && good;
    good = table_span(reader, RULES_UNTIL, row->from, row->until) && good;
    good = table_word(reader, RULES_AT_LIMIT, words, COUNT_OF(words), &at_limit) && good;
    good = table_pressure(reader, RULES_PRESSURE_FROM, &row->pressure_from) && good;
    good = table_pressure(reader, RULES_PRESSURE_UNTIL, &row->pressure_until) && good;
    good = table_evidence(reader, RULES_PRESSURE_EVIDENCE, &row->pressure_evidence) && good;
    good = table_ratio(reader, RULES_SHARE, &row->rated_share) && good;
    good = table_evidence(reader, RULES_SHARE_EVIDENCE, &row->rated_share_evidence) && good;
    row->at_limit_passes = at_limit == 1;
    row->at_limit_said = !table_empty(reader, RULES_AT_LIMIT);
    return good;
}

static void read_rules(tables *t, table_reader *reader)
{
    rules_row row = {.line = reader->line};
    if (!read_rules_values(reader, &row))
        return;
    row.id = tables_keep(t, reader, RULES_ID);
    row.title = tables_keep(t, reader, RULES_TITLE);
    row.authority = tables_keep(t, reader, RULES_AUTHORITY);
    row.source = tables_keep(t, reader, RULES_SOURCE);
    row.limits_of = keep_reference(t, reader, RULES_LIMITS_OF);
    row.pressure_source = keep_reference(t, reader, RULES_PRESSURE_SOURCE);
    row.pressure_evidence_text = keep_reference(t, reader, RULES_PRESSURE_EVIDENCE);
    row.rated_share_source = keep_reference(t, reader, RULES_SHARE_SOURCE);
    row.rated_share_evidence_text = keep_reference(t, reader, RULES_SHARE_EVIDENCE);
    t->rules[t->rules_count++] = row;
}

const char *const vehicle_part_names[VEHICLE_PARTS] = {
    [VEHICLE_SHARE] = "share",         [VEHICLE_FULL_FROM] = "full_from", [VEHICLE_HALF] = "half",
    [VEHICLE_CHART] = "chart",         [VEHICLE_STEERING] = "steering",   [VEHICLE_AXLE_SIZE] = "axle_size",
    [VEHICLE_AXLE_ARM] = "axle_arm",   [VEHICLE_ADJUSTER] = "adjuster"};

enum { PART_NAME, PART_VALUE, PART_WORDING, PART_SOURCE, PART_EVIDENCE };

static const table_column vehicle_columns[] = {
    {"part", true}, {"value", false}, {"wording", true}, {"source", true}, {"evidence", true}};

static void read_vehicle(tables *t, table_reader *reader)
{
    vehicle_row row = {.line = reader->line};
    bool good = table_word(reader, PART_NAME, vehicle_part_names, VEHICLE_PARTS, &row.part);
    good = table_ratio(reader, PART_VALUE, &row.value) && good;
    good = table_evidence(reader, PART_EVIDENCE, &row.evidence) && good;
    row.wording = tables_keep(t, reader, PART_WORDING);
    row.source = tables_keep(t, reader, PART_SOURCE);
    if (good)
        t->vehicle[t->vehicle_count++] = row;
}

static const struct {
    const table_column *columns;
    size_t column_count;
    void (*read_row)(tables *t, table_reader *reader);
} kinds[FILE_COUNT] = {{source_columns, COUNT_OF(source_columns), read_source},
                       {chamber_columns, COUNT_OF(chamber_columns), read_chamber},
                       {limit_columns, COUNT_OF(limit_columns), read_limit},
                       {rules_columns, COUNT_OF(rules_columns), read_rules},
                       {vehicle_columns, COUNT_OF(vehicle_columns), read_vehicle},
                       {air_columns, AIR_COLUMNS, tables_read_air},
                       {volume_columns, VOLUME_COLUMNS, tables_read_volume}};

static void read_table(tables *t, int file, const char *text, size_t size)
{
    table_reader reader;
    t->current = file;
    if (!table_open(&reader, text, size, kinds[file].columns, kinds[file].column_count, on_fault, t))
        return;
    for (unsigned rows = 0; table_next(&reader); rows++) {
        if (rows == ROWS_MAX) {
            tables_fault(t, file, reader.line, "more than %d rows", ROWS_MAX);
            return;
        }
        kinds[file].read_row(t, &reader);
    }
}

#define FILE_SIZE_MAX 1048576

static void read_file(tables *t, int file)
{
    FILE *in = fopen(t->paths[file], "rb");
    char *text = malloc(FILE_SIZE_MAX);
    if (in == NULL || text == NULL) {
        tables_fault(t, file, 0, "the file cannot be read");
    } else {
        size_t size = fread(text, 1, FILE_SIZE_MAX, in);
        if (ferror(in) || size == FILE_SIZE_MAX)
            tables_fault(t, file, 0, "the file cannot be read to its end");
        else
            read_table(t, file, text, size);
    }
    free(text);
    if (in != NULL)
        fclose(in);
}

/* References mean something only when every row could be read. */
static bool read_and_check(tables *t, char **paths)
{
    for (int file = 0; file < FILE_COUNT; file++) {
        t->paths[file] = paths[file];
        read_file(t, file);
    }
    if (t->faults == 0)
        tables_check(t);
    return t->faults == 0;
}

static bool write_file(const tables *t, const char *path)
{
    FILE *out = fopen(path, "wb");
    if (out == NULL)
        return false;
    tables_write(t, out);
    bool written = !ferror(out);
    return fclose(out) == 0 && written;
}

static int run(tables *t, const char *target, char **paths)
{
    if (!read_and_check(t, paths))
        return EXIT_FAILURE;
    if (strcmp(target, "--check") == 0 || write_file(t, target))
        return EXIT_SUCCESS;
    fprintf(stderr, "tablec: %s cannot be written\n", target);
    return EXIT_FAILURE;
}

int main(int argc, char **argv)
{
    if (argc != 2 + FILE_COUNT) {
        fputs("usage: tablec OUT|--check sources.csv chambers.csv limits.csv rulesets.csv vehicle.csv aircheck.csv "
              "volumes.csv\n", stderr);
        return 2;
    }
    tables *t = calloc(1, sizeof *t);
    if (t == NULL) {
        fputs("tablec: no memory\n", stderr);
        return EXIT_FAILURE;
    }
    int status = run(t, argv[1], argv + 2);
    free(t);
    return status;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* The columns of every table as data, and one reader for all of them. */
#include "rules/air_row.h"
#include "rules/limit_row.h"
#include "tablec/steps.h"

#include <limits.h>
#include <string.h>

typedef enum cell_kind {
    CELL_TEXT,
    CELL_REFERENCE, /* a text, NULL if the cell is empty */
    CELL_EVIDENCE,  /* of the citation at the offset */
    CELL_WORD,
    CELL_INCHES,
    CELL_MM,
    CELL_PRESSURE,
    CELL_RATIO,
    CELL_NUMBER,
    CELL_DATE,
    CELL_CUSTOM,
    CELL_OTHER /* read with another column */
} cell_kind;

typedef bool cell_reader(table_reader *reader, size_t column, void *row);

typedef struct cell_spec {
    table_column column;
    cell_kind kind;
    unsigned first;           /* CELL_WORD: the enumerator of the first word ... */
    size_t offset;            /* of the value in the row */
    const char *const *words; /* ... in the order of the enumeration */
    size_t word_count;
    cell_reader *read; /* CELL_CUSTOM */
} cell_spec;

#define CELL(name, required, kind, row, member) {{name, required}, kind, 0, offsetof(row, member), NULL, 0, NULL}
#define WORD(name, required, row, member, words, first) \
    {{name, required}, CELL_WORD, first, offsetof(row, member), words, COUNT_OF(words), NULL}
#define OTHER(name, required) {{name, required}, CELL_OTHER, 0, 0, NULL, 0, NULL}
#define CUSTOM(name, required, function) {{name, required}, CELL_CUSTOM, 0, 0, NULL, 0, function}

_Static_assert(sizeof(uint32_t) == sizeof(unsigned), "an index is stored as an enumerator");

/* After a fault the value is no enumerator. */
static bool read_word(table_reader *reader, size_t column, const cell_spec *spec, void *value)
{
    unsigned index = UINT_MAX - spec->first;
    bool good = rodti_table_word(reader, column, spec->words, spec->word_count, &index);
    index += spec->first;
    memcpy(value, &index, sizeof index);
    return good;
}

static bool read_evidence(table_reader *reader, size_t column, citation *cited)
{
    cited->has_evidence = !table_empty(reader, column);
    return rodti_table_evidence(reader, column, &cited->evidence);
}

static const char *keep(const table_reader *reader, size_t column)
{
    return tables_keep(reader->context, reader->cells[column].text);
}

static bool read_text(const table_reader *reader, size_t column, bool or_null, const char **text)
{
    *text = or_null && table_empty(reader, column) ? NULL : keep(reader, column);
    return true;
}

static bool read_cell(table_reader *reader, size_t column, const cell_spec *spec, void *row)
{
    void *value = (char *)row + spec->offset;
    switch (spec->kind) {
    case CELL_TEXT: return read_text(reader, column, false, value);
    case CELL_REFERENCE: return read_text(reader, column, true, value);
    case CELL_EVIDENCE: return read_evidence(reader, column, value);
    case CELL_WORD: return read_word(reader, column, spec, value);
    case CELL_INCHES: return rodti_table_length(reader, column, RODT_UNIT_IN, value);
    case CELL_MM: return rodti_table_length(reader, column, RODT_UNIT_MM, value);
    case CELL_PRESSURE: return rodti_table_pressure(reader, column, value);
    case CELL_RATIO: return rodti_table_ratio(reader, column, value);
    case CELL_NUMBER: return rodti_table_number(reader, column, value);
    case CELL_DATE: return rodti_table_date(reader, column, value);
    case CELL_CUSTOM: return spec->read(reader, column, row);
    case CELL_OTHER: return true;
    }
    return false;
}

/* --- Sources ------------------------------------------------------------------------------------------ */

static const cell_spec source_cells[] = {
    CELL("id", true, CELL_TEXT, source_row, source.id),
    CELL("body", true, CELL_TEXT, source_row, source.body),
    CELL("document", true, CELL_TEXT, source_row, source.document),
    CELL("section", true, CELL_TEXT, source_row, source.section),
    CELL("edition", true, CELL_TEXT, source_row, source.edition),
    CELL("address", false, CELL_TEXT, source_row, source.address),
    CELL("read_on", false, CELL_DATE, source_row, read_on)};

/* --- Chambers ----------------------------------------------------------------------------------------- */

static bool read_family(table_reader *reader, size_t column, void *row)
{
    return rodti_table_family(reader, column, &((chamber_row *)row)->row.family);
}

/* What a size looks like depends on the family. */
static bool read_size(table_reader *reader, size_t column, void *row)
{
    rodt_chamber_row *chamber = &((chamber_row *)row)->row;
    chamber->size = keep(reader, column);
    return chamber->family == RODT_FAMILY_UNKNOWN || rodti_table_size(reader, column, chamber->family);
}

static const cell_spec chamber_cells[] = {
    CUSTOM("family", true, read_family),
    CUSTOM("size", true, read_size),
    CELL("outside_diameter", true, CELL_INCHES, chamber_row, row.outside_diameter),
    CELL("diameter_mm", true, CELL_MM, chamber_row, row.outside_diameter_mm),
    CELL("diameter_source", true, CELL_TEXT, chamber_row, diameter.source),
    CELL("standard_rated", false, CELL_INCHES, chamber_row, row.standard_rated_stroke),
    CELL("rated_source", false, CELL_REFERENCE, chamber_row, rated.source),
    CELL("rated_evidence", false, CELL_EVIDENCE, chamber_row, rated)};

/* --- Limits: a row has one reader, which a carrier's own tables use too ------------------------------- */

static bool read_limit(table_reader *reader, size_t column, void *row)
{
    rodt_limit *limit = &((limit_row *)row)->row;
    if (!rodti_table_limit(reader, limit))
        return false;
    ((limit_row *)row)->cited.evidence = limit->evidence;
    limit->size = keep(reader, LIMIT_SIZE);
    limit->published = keep(reader, column);
    return true;
}

static const cell_spec limit_cells[LIMIT_COLUMNS] = {
    [LIMIT_RULES] = CELL("rules", true, CELL_TEXT, limit_row, rules),
    [LIMIT_FAMILY] = OTHER("family", true),
    [LIMIT_SIZE] = OTHER("size", true),
    [LIMIT_CLASS] = OTHER("class", true),
    [LIMIT_RATED_STROKE] = OTHER("rated_stroke", false),
    [LIMIT_RATED_MM] = OTHER("rated_mm", false),
    [LIMIT_LIMIT] = CUSTOM("limit", true, read_limit),
    [LIMIT_LIMIT_MM] = OTHER("limit_mm", false),
    [LIMIT_FROM] = OTHER("from", false),
    [LIMIT_UNTIL] = OTHER("until", false),
    [LIMIT_SOURCE] = CELL("source", true, CELL_TEXT, limit_row, cited.source),
    [LIMIT_EVIDENCE] = OTHER("evidence", true)};

/* --- Rule sets ---------------------------------------------------------------------------------------- */

static bool read_rules_until(table_reader *reader, size_t column, void *row)
{
    rules_row *rules = row;
    return rodti_table_date(reader, column, &rules->until) &&
           rodti_table_span(reader, column, rules->from, rules->until);
}

static bool read_at_limit(table_reader *reader, size_t column, void *row)
{
    static const char *const words[] = {"fail", "pass"};
    rules_row *rules = row;
    unsigned index;
    if (table_empty(reader, column))
        return true;
    if (!rodti_table_word(reader, column, words, COUNT_OF(words), &index))
        return false;
    rules->at_limit = AT_LIMIT_FAILS + index;
    return true;
}

static const cell_spec rules_cells[] = {
    CELL("id", true, CELL_TEXT, rules_row, id),
    CELL("title", true, CELL_TEXT, rules_row, title),
    CELL("authority", true, CELL_TEXT, rules_row, authority),
    CELL("source", true, CELL_TEXT, rules_row, cited.source),
    CELL("evidence", true, CELL_EVIDENCE, rules_row, cited),
    CELL("from", false, CELL_DATE, rules_row, from),
    CUSTOM("until", false, read_rules_until),
    CUSTOM("at_limit", false, read_at_limit),
    CELL("limits_of", false, CELL_REFERENCE, rules_row, limits_of),
    CELL("pressure_from", false, CELL_PRESSURE, rules_row, pressure_from),
    CELL("pressure_until", false, CELL_PRESSURE, rules_row, pressure_until),
    CELL("pressure_source", false, CELL_REFERENCE, rules_row, pressure.source),
    CELL("pressure_evidence", false, CELL_EVIDENCE, rules_row, pressure),
    CELL("rated_share", false, CELL_RATIO, rules_row, rated_share),
    CELL("rated_share_source", false, CELL_REFERENCE, rules_row, share.source),
    CELL("rated_share_evidence", false, CELL_EVIDENCE, rules_row, share),
    CELL("major_source", false, CELL_REFERENCE, rules_row, major.source)};

/* --- The whole vehicle -------------------------------------------------------------------------------- */

static const cell_spec vehicle_cells[] = {
    WORD("part", true, vehicle_row, part, vehicle_part_words, 0),
    CELL("value", false, CELL_RATIO, vehicle_row, value),
    CELL("wording", true, CELL_TEXT, vehicle_row, wording),
    CELL("source", true, CELL_TEXT, vehicle_row, cited.source),
    CELL("evidence", true, CELL_EVIDENCE, vehicle_row, cited)};

/* --- Air checks --------------------------------------------------------------------------------------- */

/* A row has one reader, which a carrier's own tables use too. */
static bool read_air(table_reader *reader, size_t column, void *row)
{
    rodt_air_limit *limit = &((air_row *)row)->row;
    if (!rodti_table_air(reader, limit))
        return false;
    ((air_row *)row)->cited.evidence = limit->evidence;
    limit->published = keep(reader, column);
    limit->setup = keep(reader, AIR_SETUP);
    return true;
}

static const cell_spec air_cells[AIR_COLUMNS] = {
    [AIR_RULES] = CELL("rules", true, CELL_TEXT, air_row, rules),
    [AIR_CHECK] = OTHER("check", true),
    [AIR_KIND] = OTHER("kind", true),
    [AIR_VEHICLE] = OTHER("vehicle", true),
    [AIR_TOWED] = OTHER("towed", false),
    [AIR_BUILT_FROM] = OTHER("built_from", false),
    [AIR_BUILT_UNTIL] = OTHER("built_until", false),
    [AIR_COMPARISON] = OTHER("comparison", true),
    [AIR_VALUE] = OTHER("value", false),
    [AIR_UPPER] = OTHER("upper", false),
    [AIR_PER_TOWED] = OTHER("per_towed", false),
    [AIR_MEASURE] = OTHER("measure", true),
    [AIR_START] = OTHER("start", false),
    [AIR_STOP] = OTHER("stop", false),
    [AIR_START_KPA] = OTHER("start_kpa", false),
    [AIR_STOP_KPA] = OTHER("stop_kpa", false),
    [AIR_APPLICATIONS] = OTHER("applications", false),
    [AIR_BY] = OTHER("by", false),
    [AIR_PUBLISHED] = CUSTOM("published", true, read_air),
    [AIR_SETUP] = OTHER("setup", true),
    [AIR_SOURCE] = CELL("source", true, CELL_TEXT, air_row, cited.source),
    [AIR_EVIDENCE] = OTHER("evidence", true)};

/* --- Volumes ------------------------------------------------------------------------------------------ */

static bool read_volume_size(table_reader *reader, size_t column, void *row)
{
    volume_line *line = row;
    line->row.size = keep(reader, column);
    return line->what != VOLUME_CHAMBER || rodti_table_size(reader, column, RODT_FAMILY_CLAMP);
}

static const cell_spec volume_cells[] = {
    WORD("what", true, volume_line, what, volume_words, 0),
    CUSTOM("size", false, read_volume_size),
    CELL("stroke_from", false, CELL_INCHES, volume_line, row.stroke_from),
    CELL("stroke_until", false, CELL_INCHES, volume_line, row.stroke_until),
    CELL("value", true, CELL_NUMBER, volume_line, row.volume),
    CELL("source", true, CELL_TEXT, volume_line, cited.source)};

/* --- Steps -------------------------------------------------------------------------------------------- */

static bool read_step(table_reader *reader, size_t column, void *row)
{
    const table_cell *cell = &reader->cells[column];
    RODT_ENUM32(rodt_step) step = RODT_STEP_NONE;
    if (rodt_step_find(cell->text, &step) == RODT_OK && step != RODT_STEP_NONE) {
        ((step_row *)row)->step = (rodt_step)step;
        return true;
    }
    rodti_table_fault(reader, column, 1, RODT_E_TABLE, "there is no step \"%s\"", cell->text);
    return false;
}

static bool read_step_check(table_reader *reader, size_t column, void *row)
{
    const table_cell *cell = &reader->cells[column];
    if (table_empty(reader, column) || rodt_air_check_find(cell->text, &((step_row *)row)->check) == RODT_OK)
        return true;
    rodti_table_fault(reader, column, 1, RODT_E_TABLE, "there is no air check \"%s\"", cell->text);
    return false;
}

static const cell_spec step_cells[] = {
    CUSTOM("step", true, read_step),
    CUSTOM("check", false, read_step_check),
    WORD("when", true, step_row, when, step_when_words, 0),
    CELL("title", true, CELL_TEXT, step_row, texts[RODT_STEP_PART_TITLE]),
    CELL("do", true, CELL_TEXT, step_row, texts[RODT_STEP_PART_DO]),
    CELL("see", true, CELL_TEXT, step_row, texts[RODT_STEP_PART_SEE]),
    CELL("good", true, CELL_TEXT, step_row, texts[RODT_STEP_PART_GOOD]),
    CELL("defective", true, CELL_TEXT, step_row, texts[RODT_STEP_PART_DEFECTIVE])};

/* --- Files -------------------------------------------------------------------------------------------- */

#define FILE_OF(cells, rows, count) \
    {cells, COUNT_OF(cells), offsetof(tables, rows), offsetof(tables, count), sizeof ((tables *)NULL)->rows[0]}

static const struct file_spec {
    const cell_spec *cells;
    size_t cell_count;
    size_t rows;  /* offset of the rows in struct tables */
    size_t count; /* ... and of their number */
    size_t row_size;
} files[FILE_COUNT] = {[FILE_SOURCES] = FILE_OF(source_cells, sources, source_count),
                       [FILE_CHAMBERS] = FILE_OF(chamber_cells, chambers, chamber_count),
                       [FILE_LIMITS] = FILE_OF(limit_cells, limits, limit_count),
                       [FILE_RULES] = FILE_OF(rules_cells, rules, rules_count),
                       [FILE_VEHICLE] = FILE_OF(vehicle_cells, vehicle, vehicle_count),
                       [FILE_AIR] = FILE_OF(air_cells, air, air_count),
                       [FILE_VOLUMES] = FILE_OF(volume_cells, volumes, volume_count),
                       [FILE_STEPS] = FILE_OF(step_cells, steps, step_count)};

static void on_fault(void *context, const rodt_error *fault)
{
    tables *t = context;
    if (fault->field[0] != '\0')
        tables_fault(t, t->current, fault->line, "%s: %s", fault->field, fault->text);
    else
        tables_fault(t, t->current, fault->line, "%s", fault->text);
}

/* Reads all cells, so that every fault of the row is reported. A row with a fault is left out. */
static void read_row(tables *t, table_reader *reader, const struct file_spec *file)
{
    size_t *count = (size_t *)(void *)((char *)t + file->count);
    char *row = (char *)t + file->rows + *count * file->row_size;
    bool good = true;
    memset(row, 0, file->row_size);
    memcpy(row, &reader->line, sizeof reader->line);
    for (size_t i = 0; i < file->cell_count; i++)
        good = read_cell(reader, i, &file->cells[i], row) && good;
    *count += good;
}

void tables_read(tables *t, int file, const char *text, size_t size)
{
    table_reader reader;
    table_column columns[TABLE_FIELDS_MAX];
    const struct file_spec *spec = &files[file];
    t->current = file;
    for (size_t i = 0; i < spec->cell_count; i++)
        columns[i] = spec->cells[i].column;
    if (!rodti_table_open(&reader, text, size, columns, spec->cell_count, on_fault, t))
        return;
    for (unsigned rows = 0; rodti_table_next(&reader); rows++) {
        if (rows == ROWS_MAX) {
            tables_fault(t, file, reader.line, "more than %d rows", ROWS_MAX);
            return;
        }
        read_row(t, &reader, spec);
    }
}

/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's own limits: read from a text, proved to be at least as strict as the law, kept in one block. */
#include "rules/rules_load.h"

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "core/error.h"
#include "core/always.h"
#include "core/fault.h"
#include "core/text.h"
#include "rules/air_choice.h"
#include "rules/air_row.h"
#include "rules/air_strict.h"
#include "rules/find_limit.h"
#include "rules/limit_key.h"
#include "rules/limit_row.h"
#include "rules/table_parts.h"
#include "rules/tables.h"

/* Far above any real table; they bound the time that an adversarial text can take. */
#define LOAD_SIZE_MAX 1048576
#define LOAD_ROWS_MAX 1000
#define NAME_MAX_BYTES 39
/* As the marks of chambers: a longer stroke has lost its decimal point. */
#define OWN_LIMIT_MAX_INCHES 6

/* One block holds all: the rule set, then its arrays, then every text. */
typedef struct block {
    rodt_rules rules;
    atomic_uint users;
    rodt_source own_source; /* of the rows that name none */
    rodt_limit *limits;
    rodt_air_limit *air;
    rodt_source *sources; /* of the limits, then of the air checks */
    uint32_t *lines;      /* of the rows in the text, likewise */
    uint32_t *keys;       /* of the limits */
    char *texts;
    char memory[];
} block;

typedef struct loading {
    const rodt_rules *law;
    const rodt_rules *air_law;
    block *block;
    table_part parts[PARTS];
    int part;         /* that is being read */
    rodt_error fault; /* the first one */
    size_t rows[PARTS];
    size_t text_bytes;
} loading;

/* A reader counts the lines of its own table. */
static void on_fault(void *context, const rodt_error *fault)
{
    loading *load = context;
    if (load->fault.status != RODT_OK)
        return;
    load->fault = *fault;
    if (fault->line > 0)
        load->fault.line += load->parts[load->part].line;
}

static bool open_part(loading *load, int part, table_reader *reader)
{
    const table_part *of = &load->parts[part];
    const table_kind *kind = &rodti_part_kinds[part];
    load->part = part;
    return rodti_table_open(reader, of->text, of->size, kind->columns, kind->count, on_fault, load);
}

static bool is_compiled_in(const rodt_rules *rules)
{
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        if (rodt_rules_at(i) == rules)
            return true;
    }
    return false;
}

/* Room for the words that a row without `published` gets: the longest sentence around two figures. */
#define MADE_BYTES (2 * RODT_RATIO_TEXT_SIZE + sizeof "between  and  s x actual / required volume")

static size_t kept_bytes(const table_reader *reader, int part)
{
    static const size_t kept[PARTS][3] = {[PART_LIMITS] = {LIMIT_SIZE, LIMIT_LIMIT, LIMIT_SOURCE},
                                          [PART_AIR] = {AIR_PUBLISHED, AIR_SETUP, AIR_SOURCE}};
    size_t bytes = part == PART_AIR ? MADE_BYTES : 0;
    for (size_t i = 0; i < 3; i++)
        bytes += reader->cells[kept[part][i]].size + 1;
    return bytes;
}

/* The first pass: how much there is. Every row that it sees has all required cells. */
static bool count_rows(loading *load, int part)
{
    table_reader reader;
    if (load->parts[part].text == NULL)
        return true;
    if (!open_part(load, part, &reader))
        return false;
    while (rodti_table_next(&reader) && reader.valid) {
        load->rows[part]++;
        load->text_bytes += kept_bytes(&reader, part);
        if (load->rows[part] > LOAD_ROWS_MAX)
            rodti_table_row_fault(&reader, reader.line, RODT_E_TABLE, "more than %d rows", LOAD_ROWS_MAX);
    }
    if (reader.valid && load->rows[part] == 0)
        rodti_table_row_fault(&reader, 0, RODT_E_TABLE, "the table has no rows");
    return reader.valid;
}

static char *keep(loading *load, const char *text, size_t size)
{
    char *kept = load->block->texts;
    memcpy(kept, text, size);
    kept[size] = '\0';
    load->block->texts += size + 1;
    return kept;
}

/* A name that is too long is cut between two characters. */
static size_t cut_name(const char *name)
{
    size_t size = strlen(name);
    return size <= NAME_MAX_BYTES ? size : rodti_text_cut(name, NAME_MAX_BYTES);
}

/* A finding names its rule set: no carrier's may look like a law, and its name goes into one line. */
static const char *name_fault(const char *name)
{
    const char *trimmed = name;
    size_t size = strlen(name), cut = cut_name(name);
    rodti_text_trim(&trimmed, &size);
    if (size == 0)
        return "a carrier's own limits need a name";
    for (const char *at = name; *at != '\0'; at++)
        if ((unsigned char)*at < ' ' || *at == '\x7f')
            return "the name holds a control character";
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        const char *id = rodt_rules_id(rodt_rules_at(i));
        if (strlen(id) == cut && memcmp(id, name, cut) == 0)
            return "this is the name of a law; a carrier's own limits need another";
    }
    return NULL;
}

static rodt_status check_arguments(const loading *load, const char *name, const char *text, rodt_rules **out,
                                   rodt_error *error)
{
    if (load->law == NULL)
        return rodti_rules_error(error);
    if (name == NULL || text == NULL || out == NULL || !is_compiled_in(load->law) || !is_compiled_in(load->air_law))
        return rodti_error_status(error, RODT_E_ARGUMENT);
    const char *fault = name_fault(name);
    return fault != NULL ? rodti_field_error(error, "name", fault) : RODT_OK;
}

static const char own_title[] = "Carrier's own limits on top of ";

/* What is not the carrier's own (the comparator, the window, the share) is the law's. */
static void set_rules(loading *load, const char *name)
{
    block *own = load->block;
    own->rules = *load->law;
    own->rules.id = keep(load, name, cut_name(name));
    own->rules.title = keep(load, own_title, strlen(own_title));
    own->texts--; /* the law's id goes on where the title ended */
    keep(load, load->law->id, strlen(load->law->id));
    own->rules.authority = "the carrier";
    own->own_source = (rodt_source){own->rules.id, "the carrier", own->rules.id, "", "", ""};
    own->rules.source = &own->own_source;
    own->rules.evidence = RODT_EVIDENCE_NONE;
    own->rules.limits = own->limits;
    own->rules.limit_keys = own->keys;
    own->rules.limit_count = 0;
    own->rules.law = load->law;
    own->rules.air = own->air;
    own->rules.air_count = 0;
    own->rules.air_law = load->air_law;
    own->rules.memory = own;
    atomic_init(&own->users, 1);
}

static bool make_block(loading *load, void *(*allocate)(size_t), const char *name)
{
    size_t texts = load->text_bytes + NAME_MAX_BYTES + 1 + strlen(own_title) + strlen(load->law->id) + 1;
    size_t rows = load->rows[PART_LIMITS] + load->rows[PART_AIR];
    load->block = allocate(sizeof(block) + load->rows[PART_LIMITS] * sizeof(rodt_limit) +
                           load->rows[PART_AIR] * sizeof(rodt_air_limit) +
                           rows * (sizeof(rodt_source) + sizeof(uint32_t)) +
                           load->rows[PART_LIMITS] * sizeof(uint32_t) + texts);
    if (load->block == NULL)
        return false;
    block *own = load->block;
    own->limits = (void *)own->memory;
    own->air = (void *)(own->limits + load->rows[PART_LIMITS]);
    own->sources = (void *)(own->air + load->rows[PART_AIR]);
    own->lines = (void *)(own->sources + rows);
    own->keys = own->lines + rows;
    own->texts = (void *)(own->keys + load->rows[PART_LIMITS]);
    set_rules(load, name);
    return true;
}

static void check_rules_cell(table_reader *reader, size_t column, const rodt_rules *law)
{
    const table_cell *cell = &reader->cells[column];
    if (cell->size > 0 && strcmp(cell->text, law->id) != 0)
        rodti_table_fault(reader, column, 1, RODT_E_TABLE,
                          "the table is based on \"%s\", this row on another rule set", law->id);
}

static bool is_known_size(const rodt_limit *row)
{
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *chamber = rodt_chamber_row_at(i);
        if (chamber->family == row->family && strcmp(chamber->size, row->size) == 0)
            return true;
    }
    for (size_t i = 0; i < rodti_table_volumes_count; i++) {
        if (row->family == RODT_FAMILY_CLAMP && strcmp(rodti_table_volumes[i].size, row->size) == 0)
            return true;
    }
    return false;
}

/* A row that no brake can ever be judged by is a slip: the carrier would believe in a limit that never acts. */
static void check_acts(table_reader *reader, const rodt_limit *row)
{
    static const rodt_length most = {OWN_LIMIT_MAX_INCHES, 1};
    if (!is_known_size(row))
        rodti_table_fault(reader, LIMIT_SIZE, 1, RODT_E_TABLE, "no table of chambers has %s %s",
                          rodt_family_name(row->family), row->size);
    if (rodt_length_compare(row->limit, most) > 0)
        rodti_table_fault(reader, LIMIT_LIMIT, 1, RODT_E_TABLE, "no chamber has a stroke of more than %d in",
                          OWN_LIMIT_MAX_INCHES);
}

static void check_overlap(const loading *load, table_reader *reader, const rodt_limit *row)
{
    for (size_t i = 0; i < load->block->rules.limit_count; i++) {
        if (rodti_limits_clash(&load->block->limits[i], row))
            rodti_table_row_fault(reader, reader->line, RODT_E_TABLE, "the same chamber on the same days is in line %u",
                                  (unsigned)load->block->lines[i]);
    }
}

static void laxer_fault(table_reader *reader, const rodt_limit *row, const rodt_limit_answer *law,
                        rodt_stroke_class stroke_class, rodt_date day)
{
    char figure[RODT_LENGTH_TEXT_SIZE], own_figure[RODT_LENGTH_TEXT_SIZE], date[RODT_DATE_TEXT_SIZE] = "";
    rodt_length_format(law->law_limit, figure, sizeof figure, NULL);
    rodt_length_format(row->limit, own_figure, sizeof own_figure, NULL);
    bool dated = rodt_date_format(day, date, sizeof date, NULL) == RODT_OK;
    rodti_table_fault(reader, LIMIT_LIMIT, 1, RODT_E_LAXER, "%s is laxer than the law, which has %s for %s %s %s%s%s",
                own_figure, figure, rodt_family_name(row->family), row->size, rodt_stroke_class_name(stroke_class),
                dated ? " on " : "", date);
}

static void check_class_on(const loading *load, table_reader *reader, const rodt_limit *row,
                           rodt_stroke_class stroke_class, rodt_date day)
{
    rodt_chamber chamber = {.family = row->family, .stroke_class = stroke_class, .rated_stroke = row->rated_stroke};
    memcpy(chamber.size, row->size, strlen(row->size));
    rodt_limit_answer answer;
    rodti_rules_find_limit(load->law, &chamber, day, &answer);
    if (rodt_length_given(answer.law_limit) && rodt_length_compare(row->limit, answer.law_limit) > 0)
        laxer_fault(reader, row, &answer, stroke_class, day);
}

/* A day that is not given means the newest text. */
static bool covers(const rodt_limit *row, rodt_date day)
{
    if (!rodt_date_given(day))
        return !rodt_date_given(row->until);
    return rodt_date_compare(row->from, day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(day, row->until) <= 0);
}

/* A row of any class must satisfy the law of each class. */
static void check_on(const loading *load, table_reader *reader, const rodt_limit *row, rodt_date day)
{
    if (!covers(row, day))
        return;
    if (row->stroke_class != RODT_STROKE_CLASS_LONG)
        check_class_on(load, reader, row, RODT_STROKE_CLASS_STANDARD, day);
    if (row->stroke_class != RODT_STROKE_CLASS_STANDARD)
        check_class_on(load, reader, row, RODT_STROKE_CLASS_LONG, day);
}

/* The law changes only where one of its rows begins or has ended, so those days, the row's first and "today" are all
 * that need a look. Where a row has ended there may be nothing, or the share of unlisted actuators. */
static void check_strict(const loading *load, table_reader *reader, const rodt_limit *row)
{
    const rodt_rules *law = load->law;
    check_on(load, reader, row, (rodt_date){0});
    check_on(load, reader, row, row->from);
    for (size_t i = 0; i < law->limit_count; i++) {
        check_on(load, reader, row, law->limits[i].from);
        check_on(load, reader, row, rodti_air_day_after(law->limits[i].until));
    }
}

/* The source of the row at that place; without a cell it is the carrier's table itself. */
static const rodt_source *keep_source(loading *load, const table_cell *cell, size_t at)
{
    block *own = load->block;
    if (cell->size == 0)
        return &own->own_source;
    const char *document = keep(load, cell->text, cell->size);
    own->sources[at] = (rodt_source){own->rules.id, "the carrier", document, "", "", ""};
    return &own->sources[at];
}

static void keep_row(loading *load, const table_reader *reader, rodt_limit row)
{
    block *own = load->block;
    size_t at = own->rules.limit_count;
    row.size = keep(load, row.size, strlen(row.size));
    row.published = keep(load, row.published, strlen(row.published));
    row.source = keep_source(load, &reader->cells[LIMIT_SOURCE], at);
    own->limits[at] = row;
    own->keys[at] = limit_key(row.family, row.size);
    own->lines[at] = reader->line + load->parts[PART_LIMITS].line;
    own->rules.limit_count = at + 1;
}

/* The second pass. The first fault ends it. */
static bool load_limits(loading *load)
{
    table_reader reader;
    if (load->parts[PART_LIMITS].text == NULL)
        return true;
    bool open = open_part(load, PART_LIMITS, &reader);
    if (NEVER(!open)) /* its rows were counted */
        return false;
    while (reader.valid && rodti_table_next(&reader)) {
        rodt_limit row;
        if (!rodti_table_limit(&reader, &row))
            return false;
        check_rules_cell(&reader, LIMIT_RULES, load->law);
        check_acts(&reader, &row);
        check_overlap(load, &reader, &row);
        check_strict(load, &reader, &row);
        keep_row(load, &reader, row);
    }
    return reader.valid;
}

/* --- Air checks -------------------------------------------------------------------------------------- */

/* What a carrier's row must be by itself and beside its other rows. False after a fault. */
static bool check_air_row(const loading *load, table_reader *reader, const rodt_air_limit *row)
{
    const block *own = load->block;
    char sentence[RODT_ERROR_TEXT_SIZE];
    size_t dated = rodti_air_is_dated(row);
    if (!rodti_air_row_fits(row, sentence, sizeof sentence))
        rodti_table_row_fault(reader, reader->line, RODT_E_TABLE, "%s", sentence);
    if (row->kind != RODT_AIR_KIND_LIMIT)
        rodti_table_fault(reader, AIR_KIND, 1, RODT_E_TABLE, "a carrier's own figure is a limit");
    for (size_t i = 0; i < own->rules.air_count && reader->valid; i++) {
        if (rodti_air_rows_clash(&own->air[i], row))
            rodti_table_row_fault(reader, reader->line, RODT_E_TABLE,
                                  "the same check for the same vehicles is in line %u",
                                  (unsigned)own->lines[load->rows[PART_LIMITS] + i]);
        dated += own->air[i].check == row->check && rodti_air_is_dated(&own->air[i]);
    }
    if (dated > AIR_DATED_MAX)
        rodti_table_row_fault(reader, reader->line, RODT_E_TABLE, "more than %d rows of one check have days of build",
                              AIR_DATED_MAX);
    check_rules_cell(reader, AIR_RULES, load->air_law);
    return reader->valid;
}

static void keep_air_row(loading *load, const table_reader *reader, rodt_air_limit row)
{
    block *own = load->block;
    size_t at = own->rules.air_count;
    text_writer made;
    rodti_text_begin(&made);
    rodti_air_row_put(&made, &row, 1);
    const char *published = row.published[0] != '\0' ? row.published : made.buffer;
    row.published = keep(load, published, strlen(published));
    row.setup = keep(load, row.setup, strlen(row.setup));
    row.source = keep_source(load, &reader->cells[AIR_SOURCE], load->rows[PART_LIMITS] + at);
    own->air[at] = row;
    own->lines[load->rows[PART_LIMITS] + at] = reader->line + load->parts[PART_AIR].line;
    own->rules.air_count = at + 1;
}

static bool load_air(loading *load)
{
    table_reader reader;
    if (load->parts[PART_AIR].text == NULL)
        return true;
    bool open = open_part(load, PART_AIR, &reader);
    if (NEVER(!open)) /* its rows were counted */
        return false;
    while (rodti_table_next(&reader)) {
        rodt_air_limit row;
        if (!rodti_table_air(&reader, &row) || !check_air_row(load, &reader, &row) ||
            !rodti_air_check_strict(&reader, load->air_law, &row))
            return false;
        keep_air_row(load, &reader, row);
    }
    return reader.valid;
}

static rodt_status return_fault(const loading *load, rodt_error *error)
{
    if (error != NULL)
        *error = load->fault;
    return load->fault.status;
}

rodt_status rodti_rules_load_with(void *(*allocate)(size_t), const rodt_rules *law, const rodt_rules *air_law,
                                  const char *name, const char *text, size_t size, rodt_rules **out, rodt_error *error)
{
    loading load = {.law = law, .air_law = air_law != NULL ? air_law : law};
    rodt_status status = check_arguments(&load, name, text, out, error);
    if (status != RODT_OK)
        return status;
    if (size > LOAD_SIZE_MAX)
        return rodti_text_error(error, RODT_E_TABLE, 0, "this is longer than any table of limits");
    if (!rodti_table_find_parts(text, size, load.parts, &load.fault) || !count_rows(&load, PART_LIMITS) ||
        !count_rows(&load, PART_AIR))
        return return_fault(&load, error);
    if (!make_block(&load, allocate, name))
        return rodti_error_status(error, RODT_E_MEMORY);
    if (!load_limits(&load) || !load_air(&load)) {
        free(load.block);
        return return_fault(&load, error);
    }
    *out = &load.block->rules;
    return RODT_OK;
}

rodt_status rodt_rules_load(const rodt_rules *law, const char *name, const char *text, size_t size, rodt_rules **out,
                            rodt_error *error)
{
    return rodti_rules_load_with(malloc, law, NULL, name, text, size, out, error);
}

rodt_status rodt_rules_load_with_air(const rodt_rules *law, const rodt_rules *air_law, const char *name,
                                     const char *text, size_t size, rodt_rules **out, rodt_error *error)
{
    return rodti_rules_load_with(malloc, law, air_law, name, text, size, out, error);
}

const rodt_rules *rodt_rules_ref(const rodt_rules *rules)
{
    block *own = rules != NULL ? rules->memory : NULL;
    if (own != NULL)
        atomic_fetch_add_explicit(&own->users, 1, memory_order_relaxed);
    return rules;
}

/* Whoever is last must see all that the other users did before they left. */
void rodt_rules_unref(const rodt_rules *rules)
{
    block *own = rules != NULL ? rules->memory : NULL;
    if (own != NULL && atomic_fetch_sub_explicit(&own->users, 1, memory_order_acq_rel) == 1)
        free(own);
}

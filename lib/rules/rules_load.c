/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's own limits: read from a text, proved to be at least as strict as the law, kept in one block. */
#include "rules/rules_load.h"

#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "rules/tables.h"
#include "rules/find_limit.h"
#include "rules/limit_row.h"
#include "rules/table_reader.h"

/* Far above any real table; they bound the time that an adversarial text can take. */
#define LOAD_SIZE_MAX 1048576
#define LOAD_ROWS_MAX 1000
#define NAME_MAX_BYTES 39

static const table_column columns[LIMIT_COLUMNS] = {
    [LIMIT_RULES] = {"rules", false},       [LIMIT_FAMILY] = {"family", true},
    [LIMIT_SIZE] = {"size", true},          [LIMIT_CLASS] = {"class", true},
    [LIMIT_RATED_STROKE] = {"rated_stroke", false}, [LIMIT_RATED_MM] = {"rated_mm", false},
    [LIMIT_LIMIT] = {"limit", true},        [LIMIT_LIMIT_MM] = {"limit_mm", false},
    [LIMIT_FROM] = {"from", false},         [LIMIT_UNTIL] = {"until", false},
    [LIMIT_SOURCE] = {"source", false},     [LIMIT_EVIDENCE] = {"evidence", false}};

/* One block holds all: the rule set, then its arrays, then every text. */
typedef struct block {
    rodt_rules rules;
    atomic_uint users;
    rodt_source own_source; /* of the rows that name none */
    rodt_limit *limits;
    rodt_source *sources;
    uint32_t *lines; /* of the rows in the text */
    char *texts;
    char memory[];
} block;

typedef struct loading {
    const rodt_rules *law;
    block *block;
    rodt_error fault; /* the first one */
    size_t rows;
    size_t text_bytes;
} loading;

static void on_fault(void *context, const rodt_error *fault)
{
    loading *load = context;
    if (load->fault.status == RODT_OK)
        load->fault = *fault;
}

static bool is_compiled_in(const rodt_rules *rules)
{
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        if (rodt_rules_at(i) == rules)
            return true;
    }
    return false;
}

/* The first pass: how much there is. Every row that it sees has all required cells. */
static bool count_rows(loading *load, const char *text, size_t size)
{
    table_reader reader;
    if (!rodti_table_open(&reader, text, size, columns, LIMIT_COLUMNS, on_fault, load))
        return false;
    while (rodti_table_next(&reader) && reader.valid) {
        load->rows++;
        load->text_bytes += reader.cells[LIMIT_SIZE].size + reader.cells[LIMIT_LIMIT].size +
                            reader.cells[LIMIT_SOURCE].size + 3;
        if (load->rows > LOAD_ROWS_MAX)
            rodti_table_row_fault(&reader, reader.line, RODT_E_TABLE, "more than %d rows", LOAD_ROWS_MAX);
    }
    if (reader.valid && load->rows == 0)
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

/* What is not the carrier's own (the comparator, the window, the share) is the law's. */
static void set_rules(loading *load, const char *name)
{
    static const char title[] = "Carrier's own limits on top of ";
    block *own = load->block;
    own->rules = *load->law;
    own->rules.id = keep(load, name, cut_name(name));
    own->rules.title = keep(load, title, strlen(title));
    own->texts--; /* the law's id goes on where the title ended */
    keep(load, load->law->id, strlen(load->law->id));
    own->rules.authority = "the carrier";
    own->own_source = (rodt_source){own->rules.id, "the carrier", own->rules.id, "", "", ""};
    own->rules.source = &own->own_source;
    own->rules.evidence = RODT_EVIDENCE_NONE;
    own->rules.limits = own->limits;
    own->rules.limit_count = 0;
    own->rules.law = load->law;
    own->rules.memory = own;
    atomic_init(&own->users, 1);
}

static bool make_block(loading *load, void *(*allocate)(size_t), const char *name)
{
    size_t texts = load->text_bytes + NAME_MAX_BYTES + 1 + sizeof "Carrier's own limits on top of " +
                   strlen(load->law->id) + 1;
    size_t a_row = sizeof(rodt_limit) + sizeof(rodt_source) + sizeof(uint32_t);
    load->block = allocate(sizeof(block) + load->rows * a_row + texts);
    if (load->block == NULL)
        return false;
    block *own = load->block;
    memset(own, 0, sizeof *own);
    own->limits = (void *)own->memory;
    own->sources = (void *)(own->limits + load->rows);
    own->lines = (void *)(own->sources + load->rows);
    own->texts = (void *)(own->lines + load->rows);
    set_rules(load, name);
    return true;
}

static void check_rules_cell(const loading *load, table_reader *reader)
{
    const table_cell *cell = &reader->cells[LIMIT_RULES];
    if (cell->size > 0 && strcmp(cell->text, load->law->id) != 0)
        rodti_table_fault(reader, LIMIT_RULES, 1, RODT_E_TABLE,
                          "the table is based on \"%s\", this row on another rule set", load->law->id);
}

static void check_overlap(const loading *load, table_reader *reader, const rodt_limit *row)
{
    for (size_t i = 0; i < load->block->rules.limit_count; i++) {
        if (rodti_limits_clash(&load->block->limits[i], row)) {
            rodti_table_row_fault(reader, reader->line, RODT_E_TABLE, "the same chamber on the same days is in line %u",
                            (unsigned)load->block->lines[i]);
            return;
        }
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

/* False after a fault. */
static bool check_class_on(const loading *load, table_reader *reader, const rodt_limit *row,
                           rodt_stroke_class stroke_class, rodt_date day)
{
    rodt_chamber chamber = {.family = row->family, .stroke_class = stroke_class, .rated_stroke = row->rated_stroke};
    memcpy(chamber.size, row->size, strlen(row->size) + 1);
    rodt_limit_answer answer;
    rodt_status status = rodti_rules_find_limit(load->law, &chamber, day, &answer);
    if (status != RODT_OK) {
        rodti_table_fault(reader, LIMIT_RATED_STROKE, 1, RODT_E_TABLE, "%s", rodt_status_text(status));
        return false;
    }
    if (!rodt_length_given(answer.law_limit) || rodt_length_compare(row->limit, answer.law_limit) <= 0)
        return true;
    laxer_fault(reader, row, &answer, stroke_class, day);
    return false;
}

/* A day that is not given means the newest text. */
static bool covers(const rodt_limit *row, rodt_date day)
{
    if (!rodt_date_given(day))
        return !rodt_date_given(row->until);
    return rodt_date_compare(row->from, day) <= 0 &&
           (!rodt_date_given(row->until) || rodt_date_compare(day, row->until) <= 0);
}

/* A row of any class must satisfy the law of each class. False after a fault. */
static bool check_on(const loading *load, table_reader *reader, const rodt_limit *row, rodt_date day)
{
    if (!covers(row, day))
        return true;
    if (row->stroke_class != RODT_STROKE_CLASS_ANY)
        return check_class_on(load, reader, row, row->stroke_class, day);
    return check_class_on(load, reader, row, RODT_STROKE_CLASS_STANDARD, day) &&
           check_class_on(load, reader, row, RODT_STROKE_CLASS_LONG, day);
}

/* The law changes only where one of its rows begins or ends, so those days, the row's own and "today" are
 * all that need a look. Both ends, because beside a row there may be nothing, or the share of unlisted
 * actuators. */
static void check_strict(const loading *load, table_reader *reader, const rodt_limit *row)
{
    const rodt_rules *law = load->law;
    bool good = check_on(load, reader, row, (rodt_date){0}) && check_on(load, reader, row, row->from) &&
                check_on(load, reader, row, row->until);
    for (size_t i = 0; good && i < law->limit_count; i++)
        good = check_on(load, reader, row, law->limits[i].from) && check_on(load, reader, row, law->limits[i].until);
}

static void keep_row(loading *load, const table_reader *reader, rodt_limit row)
{
    block *own = load->block;
    size_t at = own->rules.limit_count;
    const table_cell *source = &reader->cells[LIMIT_SOURCE];
    row.size = keep(load, row.size, strlen(row.size));
    row.published = keep(load, row.published, strlen(row.published));
    row.source = &own->own_source;
    if (source->size > 0) {
        const char *document = keep(load, source->text, source->size);
        own->sources[at] = (rodt_source){own->rules.id, "the carrier", document, "", "", ""};
        row.source = &own->sources[at];
    }
    own->limits[at] = row;
    own->lines[at] = reader->line;
    own->rules.limit_count = at + 1;
}

/* The second pass. The first fault ends it. */
static bool load_rows(loading *load, const char *text, size_t size)
{
    table_reader reader;
    if (!rodti_table_open(&reader, text, size, columns, LIMIT_COLUMNS, on_fault, load))
        return false;
    while (reader.valid && rodti_table_next(&reader)) {
        rodt_limit row;
        if (!rodti_table_limit(&reader, &row))
            return false;
        check_rules_cell(load, &reader);
        check_overlap(load, &reader, &row);
        check_strict(load, &reader, &row);
        keep_row(load, &reader, row);
    }
    return reader.valid;
}

static rodt_status return_fault(const loading *load, rodt_error *error)
{
    if (error != NULL)
        *error = load->fault;
    return load->fault.status;
}

rodt_status rodti_rules_load_with(void *(*allocate)(size_t), const rodt_rules *law, const char *name, const char *text,
                            size_t size, rodt_rules **out, rodt_error *error)
{
    if (law == NULL || name == NULL || text == NULL || out == NULL || !is_compiled_in(law))
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "%s", rodt_status_text(RODT_E_ARGUMENT));
    if (size > LOAD_SIZE_MAX)
        return rodti_text_error(error, RODT_E_TABLE, 0, "this is longer than any table of limits");
    loading load = {.law = law};
    if (!count_rows(&load, text, size))
        return return_fault(&load, error);
    if (!make_block(&load, allocate, name))
        return rodti_text_error(error, RODT_E_MEMORY, 0, "%s", rodt_status_text(RODT_E_MEMORY));
    if (!load_rows(&load, text, size)) {
        free(load.block);
        return return_fault(&load, error);
    }
    *out = &load.block->rules;
    return RODT_OK;
}

rodt_status rodt_rules_load(const rodt_rules *law, const char *name, const char *text, size_t size, rodt_rules **out,
                            rodt_error *error)
{
    return rodti_rules_load_with(malloc, law, name, text, size, out, error);
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

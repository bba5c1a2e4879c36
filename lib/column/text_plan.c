/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts. A row becomes a key (key.h); for each key but its stroke a profile holds the outcome of every
 * stroke, worked out by rodt_reading_judge. A row without a key is left to rodt_form_judge_row, so that there is one
 * judge and one reader. */
#include <stdlib.h>
#include <string.h>

#include "column/check.h"
#include "column/equivalence.h"
#include "column/fine.h"
#include "column/key.h"
#include "column/plan.h"
#include "column/steps.h"
#include "column/text_cells.h"
#include "column/text_keys.h"
#include "core/always.h"
#include "core/error.h"
#include "core/fault.h"
#include "core/text.h"
#include "judge/judge.h"

#define TEXT_BLOCK 256

/* Profiles that a plan holds at most, and keys of which one row was seen. */
#define PROFILES_MOST 4096
#define SEEN_KEYS 1024

/* Blocks that the back-off of a column skips at most. */
#define BACKOFF_MOST 63

/* The outcomes of all rows that differ in the stroke alone. */
typedef struct row_profile {
    int64_t step[STROKE_STEPS]; /* parts (fine.h) */
    column_result outcomes[FINE_REGIONS];
} row_profile;

struct rodt_text_plan {
    key_builder keys;
    result_cache profiles;
    uint64_t seen[SEEN_KEYS]; /* a profile costs several judgements: it is made for the second row of a key */
};

/* --- Making and freeing ------------------------------------------------------------------------------ */

/* A text that all rows share must be readable; one that is needed may be absent. */
static rodt_status check_form(const rodt_form *form, rodt_error *error)
{
    rodt_reading reading;
    rodt_error found;
    rodt_status status = rodt_form_parse(form, &reading, &found);
    if (status == RODT_OK && reading.reasons == 0)
        return RODT_OK;
    if (error != NULL)
        *error = found;
    return found.status;
}

rodt_status rodt_text_plan_new(const rodt_rules *rules, const rodt_form *form, rodt_text_plan **plan,
                               rodt_error *error)
{
    const rodt_form shared = form != NULL ? *form : (rodt_form){.chamber = NULL};
    if (rules == NULL)
        return rodti_rules_error(error);
    if (plan == NULL)
        return rodti_field_error(error, "", "room for a plan is needed");
    rodt_status status = check_form(&shared, error);
    if (status != RODT_OK)
        return status;
    rodt_text_plan *made = calloc(1, sizeof *made);
    if (made == NULL)
        return rodti_error_status(error, RODT_E_MEMORY);
    bool open = rodti_key_open(&made->keys, rules, &shared, false);
    if (!rodti_result_cache_open(&made->profiles, sizeof(row_profile), PROFILES_MOST) || !open) {
        rodt_text_plan_free(made);
        return rodti_error_status(error, RODT_E_MEMORY);
    }
    *plan = made;
    return RODT_OK;
}

void rodt_text_plan_free(rodt_text_plan *plan)
{
    if (plan == NULL)
        return;
    rodti_key_close(&plan->keys);
    rodti_result_cache_close(&plan->profiles);
    free(plan);
}

/* --- One row as texts -------------------------------------------------------------------------------- */

/* A copy closed by a zero byte; what cannot be copied whole, and is not blank, becomes a text that no reader takes. */
static const char *close_text(rodt_text_span cell, char *room)
{
    if (cell.size >= KEY_TEXT_SIZE) {
        rodti_text_trim(&cell.text, &cell.size);
        return cell.size == 0 ? "" : "?";
    }
    if (cell.size > 0 && memchr(cell.text, '\0', cell.size) != NULL)
        return "?";
    if (cell.size > 0)
        memcpy(room, cell.text, cell.size);
    room[cell.size] = '\0';
    return room;
}

/* The cell of a row, or what the form says in its place; NULL = nothing. */
static const char *text_at(const rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t row,
                           char *room)
{
    rodt_text_span cell = text_cells_at(&in->field[field], row);
    const char *text = cell.text != NULL ? close_text(cell, room) : "";
    return rodti_key_is_blank(text) ? rodt_form_get(&plan->keys.form, field) : text;
}

typedef struct row_texts {
    rodt_form text;
    char room[RODT_READING_FIELDS][KEY_TEXT_SIZE];
} row_texts;

static void take_texts(const rodt_text_plan *plan, const rodt_text_columns *in, size_t row, row_texts *out)
{
    out->text = plan->keys.form;
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        rodt_field field = (rodt_field)i;
        rodt_form_set(&out->text, field, text_at(plan, in, field, row, out->room[i]));
    }
}

/* --- Outcomes ---------------------------------------------------------------------------------------- */

/* A stroke in parts, in units of columns. */
INLINE int32_t units_of(int64_t stroke)
{
    const int64_t units = stroke / FINE_PER_UNIT;
    return stroke < 0 || units * FINE_PER_UNIT != stroke ? RODT_COLUMN_NO_STROKE : (int32_t)units;
}

/* A negative stroke is none. */
INLINE void put_outcome(const rodt_column_out *out, size_t row, int64_t stroke, column_result of)
{
    out->stroke[row] = units_of(stroke);
    out->verdict[row] = of.verdict;
    out->reasons[row] = of.reasons;
    if (out->flags != NULL)
        out->flags[row] = of.flags;
    if (out->limit != NULL)
        out->limit[row] = of.limit;
    if (out->stroke_parts != NULL)
        out->stroke_parts[row] = stroke < 0 ? RODT_COLUMN_NO_STROKE : stroke;
}

static void judge_stroke(rodt_reading *reading, const rodt_rules *rules, int64_t stroke, row_profile *profile)
{
    int64_t released = stroke < 0 ? -stroke : 0;
    reading->released = rodti_column_length(released, FINE_PER_INCH);
    reading->applied = rodti_column_length(released + stroke, FINE_PER_INCH);
    rodt_finding finding = rodti_column_judge(reading, rules);
    profile->outcomes[fine_region(profile->step, stroke)] = column_result_of(&finding);
}

/* Every region holds -1, 0, 1, a whole movement, a step or the stroke after one. */
static void judge_strokes(rodt_reading *reading, const rodt_rules *rules, row_profile *profile)
{
    const stroke_steps steps = rodti_stroke_steps_find(reading, rules, FINE_PER_INCH, INT64_MAX);
    memcpy(profile->step, steps.at, sizeof profile->step);
    for (int64_t stroke = -1; stroke <= 1; stroke++)
        judge_stroke(reading, rules, stroke, profile);
    judge_stroke(reading, rules, FINE_MOVED, profile);
    for (uint32_t k = 0; k < steps.count; k++) {
        judge_stroke(reading, rules, steps.at[k], profile);
        judge_stroke(reading, rules, steps.at[k] + 1, profile);
    }
}

/* Rows without a stroke have the outcome of a negative one. */
static void judge_without_stroke(const rodt_reading *reading, const rodt_rules *rules, row_profile *profile)
{
    rodt_finding finding = rodti_column_judge(reading, rules);
    profile->outcomes[fine_region(profile->step, -1)] = column_result_of(&finding);
}

/* The profile of a row's key, if it is worth making; else NULL. */
static const row_profile *make_profile(rodt_text_plan *plan, const rodt_text_columns *in, size_t row, uint64_t bits)
{
    row_texts texts;
    rodt_reading reading;
    row_profile profile = {.step = {INT64_MAX, INT64_MAX, INT64_MAX, INT64_MAX}};
    uint64_t *seen = &plan->seen[plan->profiles.hash(bits, 0) % SEEN_KEYS];
    if (*seen != bits) {
        *seen = bits;
        return NULL;
    }
    take_texts(plan, in, row, &texts);
    (void)rodt_form_parse(&texts.text, &reading, NULL);
    if ((bits & KEY_NO_STROKE) != 0)
        judge_without_stroke(&reading, plan->keys.rules, &profile);
    else
        judge_strokes(&reading, plan->keys.rules, &profile);
    row_profile *kept = rodti_result_cache_keep(&plan->profiles, (row_key){bits, 0});
    if (kept != NULL)
        *kept = profile;
    return kept;
}

/* --- The slow path ----------------------------------------------------------------------------------- */

/* Parts; negative = there is no stroke. */
static int64_t fine_of_stroke(rodt_length stroke)
{
    if (!rodt_length_given(stroke))
        return -1;
    if (NEVER(FINE_PER_INCH % stroke.den != 0)) /* readers take nine decimals at most, and the fractions of a tape */
        return -1;
    return stroke.num * (FINE_PER_INCH / stroke.den);
}

static rodt_status judge_row(const rodt_text_plan *plan, const rodt_text_columns *in, size_t row,
                             const rodt_column_out *out, rodt_error *error)
{
    row_texts texts;
    rodt_finding finding;
    take_texts(plan, in, row, &texts);
    rodt_status status = rodt_form_judge_row(&texts.text, plan->keys.rules, &finding, NULL);
    if (status != RODT_OK)
        return rodti_row_status(error, row, rodti_error_status(error, status));
    put_outcome(out, row, fine_of_stroke(finding.applied_stroke), column_result_of(&finding));
    return RODT_OK;
}

/* A cell that is new, or longer than most. */
static cell_meaning find_cell(rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t row,
                              rodt_text_span cell, unsigned tag)
{
    char room[2][KEY_TEXT_SIZE];
    const cell_meaning *found = NULL;
    if (cell.size > CELL_SHORT)
        found = rodti_cell_cache_probe(&plan->keys.field[field].cells, cell.text, cell.size, tag);
    if (found != NULL)
        return *found;
    const char *unit = text_at(plan, in, RODT_FIELD_UNIT, row, room[0]);
    return rodti_key_read_cell(&plan->keys, field, cell, close_text(cell, room[1]), unit, tag);
}

/* --- Blocks ------------------------------------------------------------------------------------------ */

typedef struct text_block {
    uint64_t bits[TEXT_BLOCK];
    uint64_t tag[TEXT_BLOCK]; /* as in a cell's key */
    int64_t sum[TEXT_BLOCK];  /* of the measurements, in parts (fine.h) */
    cell_key key[TEXT_BLOCK]; /* of the cells of one column */
    uint8_t left[TEXT_BLOCK]; /* rows whose cell of that column is still to be read */
    size_t left_count;
} text_block;
_Static_assert(TEXT_BLOCK - 1 <= UINT8_MAX, "a row of a block has a number of one byte");

/* Where many measurements are new, the cache costs more than it saves. */
static void update_backoff(key_field *field, size_t count)
{
    if (field->backoff_left > 0) {
        field->backoff_left--;
        return;
    }
    if (field->reads > count / 4) {
        field->backoff_next = field->backoff_next < BACKOFF_MOST ? 2 * field->backoff_next + 1 : BACKOFF_MOST;
        field->backoff_left = field->backoff_next;
    } else {
        field->backoff_next = 0;
    }
}

static void make_cell_keys(const rodt_text_cells *column, uint64_t tag_mask, size_t first, size_t count,
                           text_block *block)
{
    rodti_text_keys(column, first, count, block->key);
    for (size_t i = 0; i < count && tag_mask != 0; i++)
        block->key[i].words[1] |= block->tag[i];
    for (size_t i = 0; i < count; i++)
        block->left[i] = (uint8_t)i;
    block->left_count = count;
}

/* A cell, empty where it is missing. */
INLINE rodt_text_span cell_at(const rodt_text_cells *column, size_t row)
{
    const rodt_text_span cell = text_cells_at(column, row);
    return cell.text != NULL ? cell : (rodt_text_span){"", 0};
}

/* Adds what a cell means that came through the cache. */
INLINE void add_meaning(rodt_text_plan *plan, rodt_field field, rodt_text_span cell, unsigned tag, size_t row,
                        cell_meaning meaning, text_block *block)
{
    key_part part = {meaning.key_bits, (int32_t)meaning.value * FINE_PER_UNIT};
    if (meaning.value == KEY_VALUE_FINE)
        (void)rodti_key_read_plain(&plan->keys, field, cell, tag, &part);
    block->bits[row] |= part.bits;
    block->sum[row] += part.fine;
}

/* --- Decimals without a unit of their own -------------------------------------------------------------- */

/* An export has a million of them, and hardly one twice: they are read from the keys, past the cache. */
INLINE word_decimal decimal_of(const rodt_text_plan *plan, const cell_key *key)
{
    return number_decimal_word(key->words[0], cell_key_size(*key), plan->keys.form.style.decimal_comma);
}

static bool has_decimals(const rodt_text_plan *plan, size_t count, const text_block *block)
{
    bool found = false;
    for (size_t i = 0; i < count; i += TEXT_BLOCK / 4)
        found = found || decimal_of(plan, &block->key[i]).is_read;
    return found;
}

static void add_decimals(rodt_text_plan *plan, rodt_field field, size_t count, text_block *block)
{
    key_unit units[KEY_TAGS];
    size_t left = 0;
    rodti_key_units(&plan->keys, field, units);
    for (size_t i = 0; i < count; i++) {
        const word_decimal read = decimal_of(plan, &block->key[i]);
        const key_unit *unit = &units[cell_tag_number(block->key[i].words[1])];
        const int64_t fine = (int64_t)(read.num * (uint64_t)unit->parts[read.decimals]); /* of no use if not read */
        const bool is_read = read.is_read & (fine <= unit->most);
        block->bits[i] |= is_read ? unit->bits : 0;
        block->sum[i] += !is_read ? 0 : field == RODT_FIELD_APPLIED ? fine : -fine;
        block->left[left] = (uint8_t)i;
        left += !is_read;
    }
    block->left_count = left;
}

/* --- Columns ------------------------------------------------------------------------------------------- */

/* A column of measurements while its cache is backed off. */
static void add_measurements(rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t first,
                             text_block *block)
{
    for (size_t k = 0; k < block->left_count; k++) {
        const size_t i = block->left[k];
        const rodt_text_span cell = cell_at(&in->field[field], first + i);
        const unsigned tag = cell_tag_number(block->tag[i]);
        key_part part;
        if (rodti_key_read_plain(&plan->keys, field, cell, tag, &part)) {
            block->bits[i] |= part.bits;
            block->sum[i] += part.fine;
        } else {
            add_meaning(plan, field, cell, tag, i, find_cell(plan, in, field, first + i, cell, tag), block);
        }
    }
}

/* Adds the cells of one column to the keys of the rows. */
INLINE void add_column(rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t first,
                       text_block *block, cache_hasher *hash)
{
    const cell_cache *cells = &plan->keys.field[field].cells;
    plan->keys.field[field].reads = 0;
    for (size_t k = 0; k < block->left_count; k++) {
        const size_t i = block->left[k];
        const cell_meaning *found = cell_cache_find(cells, block->key[i], hash);
        if (found != NULL && found->value != KEY_VALUE_FINE) {
            block->bits[i] |= found->key_bits;
            block->sum[i] += (int32_t)found->value * FINE_PER_UNIT;
            continue;
        }
        const rodt_text_span cell = cell_at(&in->field[field], first + i);
        const unsigned tag = cell_tag_number(block->tag[i] & plan->keys.field[field].tag_mask);
        const cell_meaning meaning = found != NULL ? *found : find_cell(plan, in, field, first + i, cell, tag);
        add_meaning(plan, field, cell, tag, i, meaning, block);
    }
}

/* A field without a column counts only if the form says something for all rows. */
static bool has_cells(const rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field)
{
    return in->field[field].layout != RODT_TEXT_LAYOUT_ABSENT || rodt_form_get(&plan->keys.form, field) != NULL;
}

/* The same text in every row, as a unit or a day often is. */
static bool is_constant(const text_block *block, size_t count)
{
    const cell_key first = block->key[0];
    uint64_t differ = 0;
    if (!cell_key_equal(first, block->key[count - 1]) || !cell_key_equal(first, block->key[count / 2]) ||
        cell_key_equal(first, KEY_OF_LONG_TEXT))
        return false;
    for (size_t i = 1; i < count; i++)
        differ |= (block->key[i].words[0] ^ first.words[0]) | (block->key[i].words[1] ^ first.words[1]);
    return differ == 0;
}

/* What the first row got by a column goes to the others, too. */
static void repeat_first(text_block *block, size_t count, uint64_t bits_before, int64_t sum_before)
{
    const uint64_t bits = block->bits[0];
    const int64_t sum = block->sum[0] - sum_before;
    for (size_t i = 1; i < count; i++) {
        block->bits[i] |= bits;
        block->sum[i] += sum;
    }
    block->bits[0] |= bits_before;
}

INLINE void add_constant(rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t first,
                         size_t count, text_block *block, cache_hasher *hash)
{
    const uint64_t bits_before = block->bits[0];
    const int64_t sum_before = block->sum[0];
    block->bits[0] = 0;
    block->left_count = 1;
    add_column(plan, in, field, first, block, hash);
    repeat_first(block, count, bits_before, sum_before);
}

INLINE void add_field(rodt_text_plan *plan, const rodt_text_columns *in, rodt_field field, size_t first, size_t count,
                      text_block *block, cache_hasher *hash)
{
    key_field *of = &plan->keys.field[field];
    make_cell_keys(&in->field[field], of->tag_mask, first, count, block);
    if (is_constant(block, count)) {
        add_constant(plan, in, field, first, count, block, hash);
        return;
    }
    if (!key_is_measurement(field)) {
        add_column(plan, in, field, first, block, hash);
        return;
    }
    if (has_decimals(plan, count, block))
        add_decimals(plan, field, count, block);
    if (of->backoff_left > 0)
        add_measurements(plan, in, field, first, block);
    else
        add_column(plan, in, field, first, block, hash);
    update_backoff(of, count);
}

/* The unit comes first, because lengths are read by it. */
INLINE void make_keys(rodt_text_plan *plan, const rodt_text_columns *in, size_t first, size_t count,
                      text_block *block, cache_hasher *hash)
{
    memset(block, 0, offsetof(text_block, key));
    if (has_cells(plan, in, RODT_FIELD_UNIT)) {
        add_field(plan, in, RODT_FIELD_UNIT, first, count, block, hash);
        for (size_t i = 0; i < count; i++)
            block->tag[i] = cell_tag(key_tag(&plan->keys, block->bits[i]));
    }
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        const rodt_field field = (rodt_field)i;
        if (field != RODT_FIELD_UNIT && has_cells(plan, in, field))
            add_field(plan, in, field, first, count, block, hash);
    }
}

INLINE rodt_status judge_keys(rodt_text_plan *plan, const rodt_text_columns *in, size_t first, size_t count,
                              const text_block *block, const rodt_column_out *out, rodt_error *error,
                              cache_hasher *hash)
{
    rodt_status status = RODT_OK;
    for (size_t i = 0; i < count && status == RODT_OK; i++) {
        uint64_t bits = block->bits[i];
        int64_t stroke = (bits & KEY_NO_STROKE) != 0 ? -1 : block->sum[i];
        const row_profile *profile = NULL;
        if ((bits & KEY_UNCACHEABLE) == 0) {
            const cached_result *found = result_cache_find(&plan->profiles, (row_key){bits, 0}, hash);
            profile = found != NULL ? (const row_profile *)(const void *)(found + 1)
                                    : make_profile(plan, in, first + i, bits);
        }
        if (profile == NULL) {
            status = judge_row(plan, in, first + i, out, error);
            continue;
        }
        put_outcome(out, first + i, stroke, profile->outcomes[fine_region(profile->step, stroke)]);
    }
    return status;
}

INLINE rodt_status judge_rows(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                              const rodt_column_out *out, rodt_error *error, cache_hasher *hash)
{
    text_block block;
    rodt_status status = RODT_OK;
    for (size_t first = 0; first < rows && status == RODT_OK; first += TEXT_BLOCK) {
        size_t count = rows - first < TEXT_BLOCK ? rows - first : TEXT_BLOCK;
        make_keys(plan, in, first, count, &block, hash);
        status = judge_keys(plan, in, first, count, &block, out, error, hash);
    }
    return status;
}

/* --- One copy for each kind of processor ------------------------------------------------------------- */

static rodt_status judge_rows_any(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                                  const rodt_column_out *out, rodt_error *error)
{
    return judge_rows(plan, in, rows, out, error, cache_hash_any);
}

#ifdef CACHE_CRC
CACHE_CRC static rodt_status judge_rows_crc(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                                            const rodt_column_out *out, rodt_error *error)
{
    return judge_rows(plan, in, rows, out, error, cache_hash_crc);
}
#endif

static rodt_status check_columns(const rodt_text_columns *in, size_t rows, const rodt_column_out *out,
                                 rodt_error *error)
{
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        const char *field = rodt_field_name((rodt_field)i);
        if (i < RODT_FIELD_NEEDED && in->field[i].layout == RODT_TEXT_LAYOUT_ABSENT)
            return rodti_field_error(error, field, "this column is needed");
        rodt_status status = rodti_text_cells_check(&in->field[i], field, error);
        if (status != RODT_OK)
            return status;
    }
    for (int i = RODT_READING_FIELDS; i < RODT_FIELD_ROOM; i++)
        if (in->field[i].layout != RODT_TEXT_LAYOUT_ABSENT)
            return rodti_field_error(error, "field", "this version has no such field");
    return rodti_column_check_out(out, rows, error);
}

rodt_status rodt_text_plan_judge(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                                 const rodt_column_out *out, rodt_error *error)
{
    if (plan == NULL || in == NULL || out == NULL)
        return rodti_field_error(error, "", "a plan, columns and room for the answers are needed");
    rodt_status status = check_columns(in, rows, out, error);
    if (status != RODT_OK)
        return status;
#ifdef CACHE_CRC
    if (CACHE_HAS_CRC())
        return judge_rows_crc(plan, in, rows, out, error);
#endif
    return judge_rows_any(plan, in, rows, out, error);
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts. What was read before is found again; rows that are nothing but readable numbers go through the
 * kernel of numbers; every other row is asked of rodt_judge_row, so that there is one judge and one reader. */
#include "column/text_cells.h"

#include <string.h>

#define BLOCK 256
#define FIELDS 14
#define CELL_SIZE 256

/* What a cell turned out to be. */
enum { SEEN_NOTHING, SEEN_INCH, SEEN_MM, SEEN_CM, SEEN_BLANK, SEEN_OTHER };

/* Codes of a plan's chambers that are none. */
#define CODE_SLOW RODT_COLUMN_CHAMBER_UNREADABLE

typedef struct text_block {
    int32_t released[BLOCK];
    int32_t applied[BLOCK];
    int32_t pressure[BLOCK];
    int32_t day[BLOCK];
    uint8_t chamber[BLOCK];
    uint8_t pressure_valid[BLOCK / 8];
    uint8_t day_valid[BLOCK / 8];
    bool slow[BLOCK];
} text_block;

/* One row as cells, in the order of rodt_text_columns. */
typedef struct text_row {
    rodt_text_span cell[FIELDS];
} text_row;

enum { CHAMBER, RELEASED, APPLIED, CLASS, RATED, MARKED, PRESSURE, AFTER, DIVISION, DAY, UNIT, ENGINE, SPRING, DRUM };

static const rodt_text_cells *column_of(const rodt_text_columns *in, int field)
{
    const rodt_text_cells *const columns[FIELDS] = {
        &in->chamber,  &in->released,       &in->applied,  &in->stroke_class, &in->rated_stroke, &in->marked_limit,
        &in->psi, &in->psi_after, &in->division, &in->date,          &in->unit,         &in->engine,
        &in->spring_brake, &in->drum};
    return columns[field];
}

static const char **form_text(rodt_reading_text *form, int field)
{
    const char **const texts[FIELDS] = {
        &form->chamber,  &form->released,       &form->applied,  &form->stroke_class, &form->rated_stroke,
        &form->marked_limit, &form->psi, &form->psi_after, &form->division, &form->date,
        &form->unit, &form->engine, &form->spring_brake, &form->drum};
    return texts[field];
}

static bool is_blank(rodt_text_span cell)
{
    for (size_t i = 0; i < cell.size; i++) {
        if (cell.text[i] != ' ')
            return false;
    }
    return true;
}

/* --- Cells that were read before --------------------------------------------------------------------- */

static uint32_t hash(const char *text, size_t size)
{
    uint64_t sum = size;
    for (size_t i = 0; i < size; i++)
        sum = (sum ^ (unsigned char)text[i]) * 0x100000001b3u;
    return (uint32_t)(sum ^ sum >> 29);
}

/* Whole units of a 1/per of the value, if it is so many exactly and they fit. */
static bool whole_units(int64_t num, int64_t den, int32_t per, int32_t *out)
{
    if (den <= 0 || per % den != 0 || num < 0 || num > INT32_MAX / (per / den))
        return false;
    *out = (int32_t)(num * (per / den));
    return true;
}

static uint8_t read_reading(const rodt_reading_text *form, rodt_text_span cell, int32_t *value)
{
    rodt_length length;
    rodt_unit unit;
    if (rodt_length_read(cell.text, cell.size, &form->style, &length, &unit, NULL) != RODT_OK ||
        !whole_units(length.num, length.den, RODT_COLUMN_PER_INCH, value))
        return SEEN_OTHER;
    return unit == RODT_UNIT_INCH ? SEEN_INCH : unit == RODT_UNIT_MM ? SEEN_MM : SEEN_CM;
}

static uint8_t read_pressure(const rodt_reading_text *form, rodt_text_span cell, int32_t *value)
{
    rodt_pressure pressure;
    bool whole = rodt_pressure_read(cell.text, cell.size, form->style.decimal_comma, &pressure, NULL) == RODT_OK &&
                 whole_units(pressure.num, pressure.den, RODT_COLUMN_PER_PSI, value);
    return whole ? SEEN_INCH : SEEN_OTHER;
}

/* Days since 1970-01-01, counted in years that begin in March. */
static int32_t days_of(rodt_date date)
{
    int32_t year = date.year - (date.month <= 2);
    int32_t month = (date.month + 9) % 12;
    return 365 * year + year / 4 - year / 100 + year / 400 + (153 * month + 2) / 5 + date.day - 1 - 719468;
}

static uint8_t read_day(const rodt_reading_text *form, rodt_text_span cell, int32_t *value)
{
    rodt_date date;
    if (rodt_date_read(cell.text, cell.size, form->date_order, &date, NULL) != RODT_OK)
        return SEEN_OTHER;
    *value = days_of(date);
    return SEEN_INCH;
}

typedef uint8_t cell_reader(const rodt_reading_text *form, rodt_text_span cell, int32_t *value);

/* A direct-mapped memory: a text that takes another's place is read again some day. */
static uint8_t recall(rodt_text_seen *seen, const rodt_reading_text *form, cell_reader *read, rodt_text_span cell,
                      int32_t *value)
{
    if (cell.size > sizeof seen->text)
        return is_blank(cell) ? SEEN_BLANK : read(form, cell, value);
    if (cell.size == 0)
        return SEEN_BLANK;
    seen += hash(cell.text, cell.size) % RODT_TEXT_SEEN;
    if (seen->size != cell.size || memcmp(seen->text, cell.text, cell.size) != 0) {
        int32_t found = 0;
        uint8_t kind = is_blank(cell) ? SEEN_BLANK : read(form, cell, &found);
        memcpy(seen->text, cell.text, cell.size);
        seen->size = (uint8_t)cell.size;
        seen->value = found;
        seen->kind = kind;
    }
    *value = seen->value;
    return seen->kind;
}

/* --- Chambers ---------------------------------------------------------------------------------------- */

static bool read_mark(const rodt_reading_text *form, rodt_text_span cell, rodt_length *out)
{
    return is_blank(cell) || rodt_length_read(cell.text, cell.size, &form->style, out, NULL, NULL) == RODT_OK;
}

/* What needs a reason of its own, such as a class that contradicts the mark, is left to rodt_judge_row. */
static bool read_chamber(rodt_text_plan *plan, const text_row *row, uint8_t *code)
{
    rodt_chamber chamber;
    rodt_stroke_class stroke_class;
    rodt_text_span mark = row->cell[CHAMBER];
    rodt_text_span word = row->cell[CLASS];
    if (is_blank(mark) || rodt_chamber_read(mark.text, mark.size, &chamber, NULL) != RODT_OK)
        return false;
    if (!is_blank(word) && (rodt_stroke_class_read(word.text, word.size, &stroke_class, NULL) != RODT_OK ||
                            !rodt_chamber_add_class(&chamber, stroke_class)))
        return false;
    return read_mark(&plan->form, row->cell[RATED], &chamber.rated_stroke) &&
           read_mark(&plan->form, row->cell[MARKED], &chamber.marked_limit) &&
           rodt_column_plan_add(&plan->plan, &chamber, code) == RODT_OK;
}

/* The four cells as one key, with their sizes so that none runs into the next. */
static size_t chamber_key(const text_row *row, char *key, size_t room)
{
    static const int fields[] = {CHAMBER, CLASS, RATED, MARKED};
    size_t size = 0;
    for (size_t i = 0; i < COUNT_OF(fields); i++) {
        rodt_text_span cell = row->cell[fields[i]];
        if (cell.size + 1 > room - size)
            return 0;
        key[size++] = (char)cell.size;
        if (cell.size > 0)
            memcpy(key + size, cell.text, cell.size);
        size += cell.size;
    }
    return size;
}

static uint8_t chamber_code(rodt_text_plan *plan, const text_row *row)
{
    char key[sizeof plan->chamber[0].text];
    size_t size = chamber_key(row, key, sizeof key);
    if (size == 0)
        return CODE_SLOW;
    uint32_t at = hash(key, size) % RODT_TEXT_CHAMBERS;
    for (; plan->chamber[at].size != 0; at = (at + 1) % RODT_TEXT_CHAMBERS) {
        if (plan->chamber[at].size == size && memcmp(plan->chamber[at].text, key, size) == 0)
            return plan->chamber[at].code;
    }
    if (plan->chambers >= RODT_TEXT_CHAMBERS / 2)
        return CODE_SLOW;
    uint8_t code = CODE_SLOW;
    if (!read_chamber(plan, row, &code))
        code = CODE_SLOW;
    memcpy(plan->chamber[at].text, key, size);
    plan->chamber[at].size = (uint8_t)size;
    plan->chamber[at].code = code;
    plan->chambers++;
    return code;
}

/* --- Rows -------------------------------------------------------------------------------------------- */

/* What a run over the rows knows. */
typedef struct text_job {
    rodt_text_plan *plan;
    const rodt_column_out *out;
    const rodt_text_cells *column[FIELDS];
    int field[FIELDS]; /* those that have a column */
    int fields;
    text_row shared;   /* what the form says */
} text_job;

static rodt_text_span span_of(const char *text)
{
    return text == NULL ? (rodt_text_span){"", 0} : (rodt_text_span){text, strlen(text)};
}

static void open_job(rodt_text_plan *plan, const rodt_text_columns *in, const rodt_column_out *out, text_job *job)
{
    job->plan = plan;
    job->out = out;
    job->fields = 0;
    for (int field = 0; field < FIELDS; field++) {
        job->column[field] = column_of(in, field);
        job->shared.cell[field] = span_of(*form_text(&plan->form, field));
        if (job->column[field]->layout != RODT_TEXT_ABSENT)
            job->field[job->fields++] = field;
    }
}

static bool has_column(const text_job *job, int field) { return job->column[field]->layout != RODT_TEXT_ABSENT; }

/* In place of what is too long for any reader. */
static const rodt_text_span unreadable = {"?", 1};

/* `row` holds what the form says, or an earlier row. */
static void take_row(const text_job *job, size_t at, text_row *row)
{
    for (int i = 0; i < job->fields; i++) {
        int field = job->field[i];
        rodt_text_span cell = text_cells_at(job->column[field], at);
        if (cell.text == NULL || is_blank(cell))
            row->cell[field] = job->shared.cell[field];
        else
            row->cell[field] = cell.size < CELL_SIZE ? cell : unreadable;
    }
}

/* The unit in which sentences would speak: that of the last reading that is not in inches. */
static bool are_readings(rodt_text_plan *plan, const text_row *row, text_block *block, size_t i)
{
    uint8_t released = recall(plan->readings, &plan->form, read_reading, row->cell[RELEASED], &block->released[i]);
    uint8_t applied = recall(plan->readings, &plan->form, read_reading, row->cell[APPLIED], &block->applied[i]);
    uint8_t unit = applied != SEEN_INCH ? applied : released;
    return released <= SEEN_CM && applied <= SEEN_CM && unit == SEEN_INCH + (uint8_t)plan->plan.common.unit;
}

static bool take_optional(uint8_t seen, uint8_t *valid, size_t i)
{
    if (seen != SEEN_BLANK)
        valid[i / 8] = (uint8_t)(valid[i / 8] | 1u << (i % 8));
    return seen != SEEN_OTHER;
}

static bool are_rare_blank(const text_row *row)
{
    return is_blank(row->cell[AFTER]) && is_blank(row->cell[UNIT]) && is_blank(row->cell[ENGINE]) &&
           is_blank(row->cell[SPRING]) && is_blank(row->cell[DRUM]);
}

/* A division changes no verdict, if only it can be read. */
static bool is_division(rodt_text_plan *plan, rodt_text_span cell)
{
    int32_t value = 0;
    uint8_t seen = recall(plan->readings, &plan->form, read_reading, cell, &value);
    return seen == SEEN_BLANK || (seen <= SEEN_CM && value > 0);
}

/* Of a pressure without a column of its own the plan knows. */
static bool is_plain(const text_job *job, const text_row *row, text_block *block, size_t i)
{
    rodt_text_plan *plan = job->plan;
    if (!are_readings(plan, row, block, i) || !are_rare_blank(row) || !is_division(plan, row->cell[DIVISION]))
        return false;
    block->chamber[i] = chamber_code(plan, row);
    uint8_t pressure = SEEN_BLANK;
    if (has_column(job, PRESSURE))
        pressure = recall(plan->pressures, &plan->form, read_pressure, row->cell[PRESSURE], &block->pressure[i]);
    uint8_t day = recall(plan->days, &plan->form, read_day, row->cell[DAY], &block->day[i]);
    bool pressure_read = take_optional(pressure, block->pressure_valid, i);
    return take_optional(day, block->day_valid, i) && pressure_read && block->chamber[i] != CODE_SLOW;
}

/* A copy closed by a zero byte; what cannot be copied whole becomes a text that no reader takes. */
static const char *close_text(rodt_text_span cell, char *room)
{
    if (cell.size >= CELL_SIZE || memchr(cell.text, '\0', cell.size) != NULL)
        return "?";
    memcpy(room, cell.text, cell.size);
    room[cell.size] = '\0';
    return room;
}

static uint8_t flags_of(uint64_t reasons)
{
    const uint64_t missing = 1u << RODT_REASON_CHAMBER_MISSING | 1u << RODT_REASON_RELEASED_MISSING |
                             1u << RODT_REASON_APPLIED_MISSING;
    const uint64_t invalid = 1u << RODT_REASON_CHAMBER_UNREADABLE | 1u << RODT_REASON_RELEASED_UNREADABLE |
                             1u << RODT_REASON_APPLIED_UNREADABLE | 1u << RODT_REASON_OTHER_UNREADABLE |
                             1u << RODT_REASON_DATE_UNREADABLE;
    return (uint8_t)(((reasons & missing) != 0 ? RODT_COLUMN_FLAG_MISSING : 0) |
                     ((reasons & invalid) != 0 ? RODT_COLUMN_FLAG_INVALID : 0));
}

static rodt_status judge_slowly(const text_job *job, const text_row *row, size_t at)
{
    const rodt_column_out *out = job->out;
    char room[FIELDS][CELL_SIZE];
    rodt_reading_text text = job->plan->form;
    rodt_finding finding;
    for (int field = 0; field < FIELDS; field++)
        *form_text(&text, field) = row->cell[field].size == 0 ? NULL : close_text(row->cell[field], room[field]);
    rodt_status status = rodt_judge_row(&text, job->plan->plan.rules, &finding, NULL);
    if (status != RODT_OK)
        return status;
    if (!whole_units(finding.applied_stroke.num, finding.applied_stroke.den, RODT_COLUMN_PER_INCH, &out->stroke[at]))
        out->stroke[at] = RODT_COLUMN_NO_STROKE;
    out->verdict[at] = (uint8_t)finding.verdict;
    out->reasons[at] = finding.reasons;
    if (out->flags != NULL)
        out->flags[at] = flags_of(finding.reasons);
    return RODT_OK;
}

static rodt_status judge_plain(const text_job *job, const text_block *block, size_t first, size_t count)
{
    const rodt_column_out *out = job->out;
    rodt_column_in numbers = {.released = block->released, .applied = block->applied, .chamber = block->chamber};
    rodt_column_out part = {.stroke = out->stroke + first, .verdict = out->verdict + first,
                            .reasons = out->reasons + first, .flags = out->flags == NULL ? NULL : out->flags + first};
    if (has_column(job, PRESSURE)) {
        numbers.pressure = block->pressure;
        numbers.pressure_valid = (rodt_column_bits){block->pressure_valid, 0};
    }
    if (has_column(job, DAY) || job->plan->form.date != NULL) {
        numbers.day = block->day;
        numbers.day_valid = (rodt_column_bits){block->day_valid, 0};
    }
    return rodt_column_judge(&job->plan->plan, &numbers, count, &part);
}

static rodt_status judge_block(const text_job *job, size_t first, size_t count)
{
    text_block block;
    text_row row = job->shared;
    memset(&block, 0, sizeof block);
    for (size_t i = 0; i < count; i++) {
        take_row(job, first + i, &row);
        block.slow[i] = job->plan->is_slow || !is_plain(job, &row, &block, i);
    }
    rodt_status status = judge_plain(job, &block, first, count);
    for (size_t i = 0; i < count && status == RODT_OK; i++) {
        if (block.slow[i]) {
            take_row(job, first + i, &row);
            status = judge_slowly(job, &row, first + i);
        }
    }
    return status;
}

/* Chamber, released and applied are of each row; the rest of a form that is said for all rows at once would have to be
 * read for each of them, and is left to rodt_judge_row. */
static bool is_slow(rodt_reading_text *form)
{
    static const int slow[] = {AFTER, UNIT, ENGINE, SPRING, DRUM};
    for (size_t i = 0; i < COUNT_OF(slow); i++) {
        if (!is_blank(span_of(*form_text(form, slow[i]))))
            return true;
    }
    return false;
}

rodt_status rodt_text_plan_start(const rodt_rules *rules, const rodt_reading_text *form, rodt_text_plan *plan,
                                 rodt_error *error)
{
    rodt_reading common = {.unit = RODT_UNIT_INCH};
    rodt_reading_text shared = form != NULL ? *form : (rodt_reading_text){.chamber = NULL};
    if (rules == NULL || plan == NULL || (unsigned)shared.style.unit > RODT_UNIT_CM ||
        (unsigned)shared.date_order > RODT_DATE_ORDER_MONTH_FIRST)
        return RODT_E_ARGUMENT;
    rodt_text_span pressure = span_of(shared.psi);
    if (!is_blank(pressure)) {
        rodt_status read = rodt_pressure_read(pressure.text, pressure.size, shared.style.decimal_comma,
                                              &common.pressure, error);
        if (read != RODT_OK)
            return read;
    }
    common.unit = shared.style.unit;
    common.day = shared.default_day;
    memset(plan, 0, offsetof(rodt_text_plan, plan));
    plan->form = shared;
    plan->is_slow = is_slow(&shared);
    return rodt_column_plan_start(rules, &common, &plan->plan);
}

rodt_status rodt_column_judge_text(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                                   const rodt_column_out *out)
{
    if (plan == NULL || in == NULL || out == NULL || plan->plan.codes < 2 || out->stroke == NULL ||
        out->verdict == NULL || out->reasons == NULL)
        return RODT_E_ARGUMENT;
    for (int field = CHAMBER; field <= APPLIED; field++) {
        if (column_of(in, field)->layout == RODT_TEXT_ABSENT)
            return RODT_E_ARGUMENT;
    }
    text_job job;
    rodt_status status = RODT_OK;
    open_job(plan, in, out, &job);
    for (size_t first = 0; first < rows && status == RODT_OK; first += BLOCK)
        status = judge_block(&job, first, rows - first < BLOCK ? rows - first : BLOCK);
    return status;
}

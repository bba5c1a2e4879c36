/* SPDX-License-Identifier: Apache-2.0 */
/* What rows come to: every cell gets a mark, by what rodt_judge_row reads in it, and rows of the same marks and the
 * same stroke have the same answer (recall.h). */
#include "batch/cache_key.h"

#include <stdlib.h>
#include <string.h>

/* Bits that the numbers of a column have in a mark; together 62 at most. */
static const unsigned char bits_of[BATCH_FIELDS] = {
    [RODT_FIELD_CHAMBER] = 9,    [RODT_FIELD_RELEASED] = 4, [RODT_FIELD_APPLIED] = 4,      [RODT_FIELD_STROKE_CLASS] = 5,
    [RODT_FIELD_RATED_STROKE] = 7, [RODT_FIELD_MARKED_LIMIT] = 6, [RODT_FIELD_PSI] = 4,    [RODT_FIELD_PSI_AFTER] = 4,
    [RODT_FIELD_DIVISION] = 5,   [RODT_FIELD_DATE] = 5,     [RODT_FIELD_UNIT] = 3,         [RODT_FIELD_ENGINE] = 2,
    [RODT_FIELD_SPRING_BRAKE] = 2, [RODT_FIELD_DRUM] = 2,   [RODT_FIELD_POSITION] = 0};

/* Classes of the cells of one column; 0 = the text stands for itself alone. Days may have any number of classes, and
 * what cannot be read is told apart by the reasons alone. */
enum { CLASS_LENGTH = 1, CLASS_PRESSURE = 1, CLASS_NO_DAY = 1, CLASS_DAY = 2 };
#define CLASS_UNREAD (UINT64_C(1) << 63)
_Static_assert(RODT_REASON_END < 63, "reasons and the bit of a class are one number");

#define TAG_SHIFT 16

/* A line of JSON has a dozen names; a file in which they are all different gains nothing. */
#define NAME_BITS 9

/* A part in which fewer rows were looked for says nothing; and for how many parts it is not worth the while to look, at
 * first and at most: twice as many each time. */
#define LOOKED 1000
#define REST_FIRST 4
#define REST_MOST 64

static void add_column(batch_recall *recall, const batch_run *run, rodt_field word, unsigned *shift)
{
    size_t column = run->header.columns.column[word];
    if ((column == COLUMN_NONE && !run->options->columns.members) || bits_of[word] == 0)
        return;
    bool heeds = recall->has_unit && (word == RODT_FIELD_RELEASED || word == RODT_FIELD_APPLIED);
    recall->columns[recall->count++] = (recall_column){.before = column, .word = word, .shift = *shift,
                                                       .heeds = heeds ? UINT32_MAX << TAG_SHIFT : 0,
                                                       .gives = word == RODT_FIELD_UNIT ? UINT32_MAX : 0};
    *shift += bits_of[word];
}

/* Twenty years have thousands of days; forgotten again and again, they would make every row a new one. */
static unsigned most_bits(rodt_field word) { return word == RODT_FIELD_DATE ? 15 : 13; }

/* The unit comes first, because the readings are read by it. */
static bool open_columns(batch_recall *recall, const batch_run *run)
{
    unsigned shift = 0;
    recall->columns = calloc(BATCH_FIELDS, sizeof *recall->columns);
    if (recall->columns == NULL)
        return false;
    recall->has_unit = run->options->columns.members || run->header.columns.column[RODT_FIELD_UNIT] != COLUMN_NONE;
    add_column(recall, run, RODT_FIELD_UNIT, &shift);
    for (int word = 0; word < BATCH_FIELDS; word++)
        if (word != RODT_FIELD_UNIT)
            add_column(recall, run, (rodt_field)word, &shift);
    bool good = true;
    for (size_t i = 0; i < recall->count; i++)
        good = memo_cells_open(&recall->columns[i].cells, most_bits(recall->columns[i].word)) && good;
    return good;
}

/* What is told beside the answer has texts of its own. */
static bool open_told(batch_recall *recall, const batch_run *run)
{
    static const rodt_field words[BATCH_BY_TOLD] = {[BATCH_BY_DAY] = RODT_FIELD_DATE, [BATCH_BY_POSITION] = RODT_FIELD_POSITION};
    bool good = true;
    for (size_t i = 0; i < BATCH_BY_TOLD && run->options->by != NULL; i++) {
        recall_column *column = &recall->told[i];
        column->word = words[i];
        column->before = run->header.columns.column[words[i]];
        good = memo_cells_open(&column->cells, most_bits(words[i])) && good;
    }
    memcpy(&recall->told_nothing[BATCH_BY_DAY], &run->setting.day, sizeof *recall->told_nothing);
    return good;
}

batch_recall *batch_recall_open(const batch_run *run, uint32_t answers)
{
    batch_recall *recall = calloc(1, sizeof *recall);
    if (recall == NULL)
        return NULL;
    recall->answer_rows = batch_again_choose();
    recall->next_rest = REST_FIRST;
    recall->ends = malloc((1 + run->header.count + SCAN_ENDS_MORE) * sizeof *recall->ends);
    bool open = recall->ends != NULL && open_columns(recall, run) && open_told(recall, run) &&
                (!run->options->columns.members || memo_cells_open(&recall->names, NAME_BITS));
    if (open && memo_answers_open(&recall->answers, answers)) {
        recall->ends[0] = UINT32_MAX; /* one byte before the first */
        return recall;
    }
    batch_recall_close(recall);
    return NULL;
}

void batch_recall_close(batch_recall *recall)
{
    if (recall == NULL)
        return;
    for (size_t i = 0; i < recall->count; i++)
        memo_cells_close(&recall->columns[i].cells);
    for (size_t i = 0; i < BATCH_BY_TOLD; i++)
        memo_cells_close(&recall->told[i].cells);
    memo_cells_close(&recall->names);
    memo_answers_close(&recall->answers);
    free(recall->columns);
    free(recall->ends);
    free(recall);
}

/* --- What a cell means --------------------------------------------------------------------------------- */

/* A row with this cell alone, as the library reads it. */
static bool read_alone(const batch_part *part, rodt_field word, const char *text, rodt_finding *finding)
{
    const batch_run *run = part->run;
    rodt_reading_text row = {.style = run->options->style, .date_order = run->options->date_order,
                             .default_day = run->setting.day};
    if (word == RODT_FIELD_RELEASED || word == RODT_FIELD_APPLIED) {
        row.unit = part->recall->has_unit ? part->text[RODT_FIELD_UNIT] : NULL;
        row.released = text;
    } else if (word == RODT_FIELD_DATE) {
        row.date = text;
    } else {
        row.psi = text;
    }
    return rodt_judge_row(&row, run->setting.rules, finding, NULL) == RODT_OK;
}

/* What a cell comes to. */
typedef struct cell_worth {
    uint64_t class_of;
    uint64_t mark;  /* beside the number of the class */
    uint32_t units;
} cell_worth;

/* A reading that was read is worth its units; of one that was not, only the reason is told. False: it is neither. */
static bool weigh_reading(const rodt_finding *finding, rodt_field word, cell_worth *worth)
{
    int32_t read;
    if (!rodt_length_given(finding->released)) {
        *worth = (cell_worth){.class_of = CLASS_UNREAD | finding->reasons, .mark = RECALL_NO_STROKE};
        return true;
    }
    if (!rodt_recall_length(finding->released, &read))
        return false;
    worth->class_of = CLASS_LENGTH + (uint64_t)finding->unit;
    worth->units = word == RODT_FIELD_APPLIED ? (uint32_t)read : 0u - (uint32_t)read;
    return true;
}

/* A day of two meanings stands for itself: both are judged. */
static uint64_t class_of_day(const batch_part *part, const char *text, const rodt_finding *finding)
{
    if (batch_is_blank(text))
        return CLASS_NO_DAY;
    if (rodt_date_given(finding->other_day))
        return 0;
    if (rodt_finding_has(finding, RODT_REASON_DATE_UNREADABLE))
        return CLASS_UNREAD | finding->reasons;
    return CLASS_DAY + (uint64_t)rodt_recall_day(part->run->setting.rules, finding->day);
}

static uint64_t class_of_pressure(const batch_part *part, const rodt_finding *finding)
{
    if (rodt_finding_has(finding, RODT_REASON_OTHER_UNREADABLE))
        return CLASS_UNREAD | finding->reasons;
    return CLASS_PRESSURE + (uint64_t)rodt_recall_pressure(part->run->setting.rules, finding->pressure);
}

/* False: rows with such a cell are judged one by one. */
static bool weigh_cell(const batch_part *part, rodt_field word, const char *text, cell_worth *worth)
{
    rodt_finding finding;
    *worth = (cell_worth){0, 0, 0};
    switch ((int)word) {
    case RODT_FIELD_CHAMBER: return !batch_is_blank(text); /* a row without one may be blank as a whole */
    case RODT_FIELD_RELEASED:
    case RODT_FIELD_APPLIED: return read_alone(part, word, text, &finding) && weigh_reading(&finding, word, worth);
    case RODT_FIELD_DATE:
        if (!read_alone(part, word, text, &finding))
            return false;
        worth->class_of = class_of_day(part, text, &finding);
        return true;
    case RODT_FIELD_PSI:
    case RODT_FIELD_PSI_AFTER:
        if (!read_alone(part, word, text, &finding))
            return false;
        worth->class_of = class_of_pressure(part, &finding);
        return true;
    default: return true;
    }
}

/* A number for a text, or that of its class. False: there are too many. */
static bool give_id(recall_column *column, uint64_t class_of, uint32_t *id)
{
    for (*id = 0; class_of != 0 && *id < column->ids; ++*id)
        if (column->class_of[*id] == class_of)
            return true;
    *id = column->ids;
    if (column->ids >= 1u << bits_of[column->word])
        return false;
    column->class_of[column->ids++] = class_of;
    return true;
}

/* Looks into a cell that was not met before, and keeps what it means. */
static memo_cell meet_cell(batch_part *part, recall_column *column, const char *text, uint32_t size, uint32_t tag)
{
    memo_cell cell = {.size = memo_size(size, tag), .mark = RECALL_NEVER};
    cell_worth worth;
    uint32_t id;
    if (weigh_cell(part, column->word, part->text[column->word], &worth) && give_id(column, worth.class_of, &id)) {
        cell.mark = (uint64_t)id << column->shift | worth.mark;
        cell.units = column->word == RODT_FIELD_UNIT ? (id + 1) << TAG_SHIFT : worth.units;
    }
    memo_cells_keep(&column->cells, text, &cell);
    return cell;
}

/* --- Records ------------------------------------------------------------------------------------------- */

/* A key in the making. */
typedef struct key_maker {
    batch_part *part;
    const csv_record *record; /* NULL: all texts stand in the part already */
    batch_key key;
    uint32_t tag;
} key_maker;

/* Adds a cell. The text is what it is known by; for the readers it stands in the part, or is brought there. */
static bool add_cell(key_maker *to, recall_column *column, const char *text, size_t size)
{
    if (size > MEMO_TEXT)
        return false;
    uint32_t tag = to->tag & column->heeds;
    const memo_cell *found = memo_cells_find_on(&column->cells, text, (uint32_t)size, tag);
    memo_cell cell;
    if (to->record != NULL && (found == NULL || column->word == RODT_FIELD_UNIT))
        (void)batch_cell(to->part, to->record, column->word);
    cell = found != NULL ? *found : meet_cell(to->part, column, text, (uint32_t)size, tag);
    to->key.mark |= cell.mark;
    to->key.units += cell.units & ~column->gives;
    to->tag |= cell.units & column->gives;
    return true;
}

static batch_key finish_key(const key_maker *made)
{
    batch_key key = made->key;
    key.units = recall_stroke(key.mark, key.units);
    key.good = (key.mark & RECALL_NEVER) == 0;
    return key;
}

batch_key batch_recall_key(batch_part *part, const csv_record *record)
{
    batch_recall *recall = part->recall;
    key_maker maker = {.part = part, .record = record};
    recall->looked++;
    for (size_t i = 0; i < recall->count; i++) {
        recall_column *column = &recall->columns[i];
        const csv_cell *place = &record->cells[column->before]; /* with its quotes */
        if (!add_cell(&maker, column, record->bytes + place->start, place->end - place->start))
            return maker.key;
    }
    return finish_key(&maker);
}

batch_key batch_recall_key_of_texts(batch_part *part, const char *const cell[BATCH_FIELDS])
{
    batch_recall *recall = part->recall;
    key_maker maker = {.part = part};
    recall->looked++;
    for (int word = 0; word < BATCH_FIELDS; word++)
        if (cell[word] == NULL)
            part->text[word][0] = '\0'; /* what is not there says as little as an empty text */
    for (size_t i = 0; i < recall->count; i++) {
        const char *text = part->text[recall->columns[i].word];
        if (!add_cell(&maker, &recall->columns[i], text, strlen(text)))
            return maker.key;
    }
    return finish_key(&maker);
}

/* The day that a finding would have, or the position. */
static uint32_t read_told(const batch_part *part, rodt_field word, const char *text)
{
    rodt_finding finding = {.day = {0, 0, 0}};
    rodt_position position = {0};
    uint32_t told;
    if (word == RODT_FIELD_POSITION)
        (void)rodt_position_read(text, strlen(text), &position, NULL);
    else
        (void)read_alone(part, word, text, &finding);
    memcpy(&told, word == RODT_FIELD_POSITION ? (const void *)&position : (const void *)&finding.day, sizeof told);
    return told;
}

static uint32_t tell(batch_part *part, const csv_record *record, recall_column *column)
{
    const csv_cell *place = &record->cells[column->before];
    const char *text = record->bytes + place->start;
    uint32_t size = place->end - place->start;
    const memo_cell *found = size <= MEMO_TEXT ? memo_cells_find_on(&column->cells, text, size, 0) : NULL;
    if (found != NULL)
        return found->units;
    uint32_t told = read_told(part, column->word, batch_cell(part, record, column->word));
    if (size <= MEMO_TEXT)
        memo_cells_keep(&column->cells, text, &(memo_cell){.size = memo_size(size, 0), .units = told});
    return told;
}

void batch_recall_tell(batch_part *part, const csv_record *record, uint32_t told[BATCH_BY_TOLD])
{
    batch_recall *recall = part->recall;
    for (size_t i = 0; i < BATCH_BY_TOLD; i++)
        told[i] = recall->told[i].before == COLUMN_NONE ? recall->told_nothing[i]
                                                            : tell(part, record, &recall->told[i]);
}

void batch_again(batch_part *part)
{
    if (!part->run->options->columns.members)
        part->recall->answer_rows(part);
}

memo_answer *batch_recall_find(const batch_part *part, const batch_key *key)
{
    return memo_answers_find_on(&part->recall->answers, key->mark, key->units);
}

void batch_recall_keep(batch_part *part, const batch_key *key, const batch_tally *tally, const char *tail, size_t size)
{
    memo_answer answer = {.mark = key->mark, .units = key->units, .tally = *tally, .size = (uint32_t)size};
    if (size > MEMO_TAIL)
        return;
    memcpy(answer.tail, tail, size);
    memo_answers_keep(&part->recall->answers, &answer);
}

bool batch_recall_name(const batch_part *part, const char *name, size_t size, uint32_t *meaning)
{
    const batch_recall *recall = part->recall;
    const memo_cell *found =
        recall != NULL && size <= MEMO_TEXT ? memo_cells_find_on(&recall->names, name, (uint32_t)size, 0) : NULL;
    if (found != NULL)
        *meaning = found->units;
    return found != NULL;
}

void batch_recall_keep_name(batch_part *part, const char *name, size_t size, uint32_t meaning)
{
    if (part->recall != NULL && size <= MEMO_TEXT)
        memo_cells_keep(&part->recall->names, name,
                        &(memo_cell){.size = memo_size((uint32_t)size, 0), .units = meaning});
}

memo_answers *batch_recall_answers(const batch_part *part) { return &part->recall->answers; }

void batch_recall_begin(batch_part *part)
{
    batch_recall *recall = part->recall;
    if (recall->rest > 0) {
        recall->rest--;
        return;
    }
    if (recall->looked > LOOKED && recall->looked / 4 > recall->again) {
        recall->rest = recall->next_rest;
        recall->next_rest *= recall->next_rest < REST_MOST ? 2 : 1;
    } else if (recall->again > LOOKED) {
        recall->next_rest = REST_FIRST;
    }
    recall->again = recall->looked = 0;
}

bool batch_recall_looks(const batch_part *part) { return part->recall != NULL && part->recall->rest == 0; }

static bool take_tally(void *context, const batch_tally *tally, uint64_t rows)
{
    batch_part *part = context;
    part->recall->again += rows;
    return batch_part_count(part, tally, rows);
}

bool batch_recall_count(batch_part *part) { return memo_answers_count(&part->recall->answers, take_tally, part); }

/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections are counted in a table. A table that is full goes to files by the hash of the vehicle; at the end each
 * file is counted in the same way, and the lines of all files are merged by the rows that they came from. */
#include "batch/vehicle_groups.h"
#include "batch/inspection_spill.h"
#include "batch/recent_names.h"
#include "io/temporary_file.h"
#include "ui/language.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

/* A brake that is not counted yet. */
typedef struct waiting_brake {
    group_brake brake;
    bool is_same; /* it is of the inspection of the brake before */
} waiting_brake;

/* The row of a brake that is of another inspection than the one before it. */
typedef struct waiting_row {
    row_name name;
    uint64_t number;
    inspection *one; /* NULL: the name is not known */
    bool has_key;
    inspection_key key; /* its text: */
    char text[2 * SHORT_NAME + NAME_CELLS_MAX * sizeof(uint16_t)];
} waiting_row;

#define BRAKES_WAITING 64
#define ROWS_WAITING 32

/* What follows the name in a line without remarks: it depends on the counts alone, and most inspections have those of
 * one of a few hundred. */
#define RESTS 512u
typedef struct line_rest {
    brake_tally tally; /* without a brake: nothing is kept here */
    uint32_t verdict[4];
    uint32_t outcome;
    uint32_t size;
    char bytes[104];
} line_rest;

/* Bytes of lines that are sent at once. */
#define LINES_SENT ((size_t)16 << 10)

struct vehicle_groups {
    line_sink sink;
    line_layout layout;
    uint64_t seed[2];
    uint64_t rows;
    inspection_table table;
    recent_names recent;
    uint64_t returns; /* rows of an inspection that was there and is not that of the row before */
    inspection_spill spill;
    bool is_spilled;
    spilled_inspection *read; /* NULL until something was spilled */
    output lines; /* that are not sent yet */
    line_rest rests[RESTS];
    day_texts days;
    waiting_brake brakes[BRAKES_WAITING];
    size_t brake_count;
    waiting_row waiting[ROWS_WAITING];
    size_t waiting_count;
    inspection *last; /* of the row before, where none is waiting */
    group_counts counts;
    int reason; /* errno of the temporary file that failed */
};

vehicle_groups *vehicle_groups_open(line_sink sink, const line_layout *layout, const uint64_t seed[2])
{
    vehicle_groups *groups = calloc(1, sizeof *groups);
    if (groups == NULL)
        return NULL;
    groups->sink = sink;
    groups->layout = *layout;
    memcpy(groups->seed, seed, sizeof groups->seed);
    if (output_open(&groups->lines, -1) && inspection_table_open(&groups->table) && recent_names_open(&groups->recent))
        return groups;
    vehicle_groups_close(groups);
    return NULL;
}

void vehicle_groups_close(vehicle_groups *groups)
{
    if (groups == NULL)
        return;
    inspection_table_close(&groups->table);
    recent_names_close(&groups->recent);
    inspection_spill_close(&groups->spill);
    output_close(&groups->lines);
    free(groups->read);
    free(groups);
}

const group_counts *vehicle_groups_counts(const vehicle_groups *groups) { return &groups->counts; }

const char *group_sentence(group_status status)
{
    switch (status) {
    case GROUP_E_MEMORY: return TO_SAY("no memory for so many vehicles");
    case GROUP_E_WRITE: return TO_SAY("the output could not be written");
    case GROUP_E_DISK: return TO_SAY("a temporary file could not be written or read (TMPDIR names another folder)");
    case GROUP_E_TOO_MANY: return TO_SAY("one vehicle has more inspections than can be counted");
    case GROUP_E_BRAKES: return TO_SAY("one vehicle has more rows than can be counted");
    case GROUP_OK: break;
    }
    return NULL;
}

int vehicle_groups_reason(const vehicle_groups *groups) { return groups->reason; }

/* What is closed after it may change errno. */
static group_status fail_disk(vehicle_groups *groups)
{
    groups->reason = errno;
    return GROUP_E_DISK;
}

static group_status group_status_of(rodt_status status)
{
    return status == RODT_OK ? GROUP_OK : status == RODT_E_MEMORY ? GROUP_E_MEMORY : GROUP_E_BRAKES;
}

/* --- Rows ---------------------------------------------------------------------------------------------- */

/* The key, with its text. The sizes of what is folded tell "a", "bc" from "ab", "c". */
static void make_key(const uint64_t seed[2], const name_cell *name, size_t cells, char *own_name, inspection_key *key)
{
    size_t folded = 0;
    char *folded_name = own_name;
    name_cell own[NAME_CELLS_MAX];
    uint16_t sizes[NAME_CELLS_MAX] = {0};
    for (size_t i = 0; i < cells; i++) {
        own[i] = name[i];
        own[i].size = vehicle_key_trim(&own[i].text, own[i].size);
        memcpy(folded_name, own[i].text, own[i].size);
        folded_name += own[i].size;
        key->cell_size[i] = (uint16_t)own[i].size;
        key->is_nameless |= own[i].size == 0;
    }
    for (size_t i = 0; i < cells; i++) {
        sizes[i] = (uint16_t)vehicle_key_fold(own[i].text, own[i].size, folded_name + folded);
        folded += sizes[i];
    }
    memcpy(folded_name + folded, sizes, cells * sizeof *sizes);
    folded += cells * sizeof *sizes;
    key->name = own_name;
    key->name_size = (uint16_t)(folded_name - own_name);
    key->folded_size = (unsigned)folded & 0x7FFFu;
    key->hash = vehicle_key_hash(folded_name, folded, seed);
}

/* A cell that is too long names nobody. */
static size_t taken_size(const name_cell *cell) { return cell->size < VEHICLE_KEY_SIZE ? cell->size : 0; }

static void take_names(const name_cell *name, size_t cells, name_cell taken[NAME_CELLS_MAX])
{
    for (size_t i = 0; i < cells; i++)
        taken[i] = (name_cell){name[i].text, taken_size(&name[i])};
}

uint32_t vehicle_groups_share(const name_cell *name, size_t cells)
{
    static const uint64_t seed[2] = {0, 0};
    name_cell taken[NAME_CELLS_MAX];
    char text[NAME_SIZE_MAX + FOLDED_SIZE_MAX];
    inspection_key key = {.is_nameless = false};
    take_names(name, cells, taken);
    make_key(seed, taken, cells, text, &key);
    return (uint32_t)(key.hash >> 33);
}

/* Most rows are of the inspection before. */
static bool is_last(const vehicle_groups *groups, const name_cell *name, rodt_date day)
{
    if (groups->waiting_count == 0)
        return false;
    const row_name *last = &groups->waiting[groups->waiting_count - 1].name;
    const char *at = last->bytes;
    if (groups->layout.day_heading != NULL && !inspection_same_day(last->day, day))
        return false;
    for (size_t i = 0; i < groups->layout.names; at += name[i++].size) {
        if (last->cell_size[i] != name[i].size || memcmp(at, name[i].text, name[i].size) != 0)
            return false;
    }
    return true;
}

static bool spill_table(vehicle_groups *groups, inspection_spill *spill)
{
    if (!inspection_spill_table(spill, &groups->table))
        return false;
    inspection_table_clear(&groups->table);
    recent_names_clear(&groups->recent);
    for (size_t i = 0; i < groups->waiting_count; i++)
        groups->waiting[i].one = NULL;
    return true;
}

/* Finds or adds the inspection of a row, as groups->last. */
static group_status find_inspection(vehicle_groups *groups, const inspection_key *key, const group_brake *brake,
                                    uint64_t number)
{
    inspection *one = inspection_find(&groups->table, key);
    if (one == NULL && inspection_table_is_full(&groups->table)) {
        groups->is_spilled = true;
        if (!spill_table(groups, &groups->spill))
            return fail_disk(groups);
    }
    if (one == NULL) {
        const inspection added = {.key = *key, .first = number, .day = brake->day};
        one = inspection_add(&groups->table, &added);
    }
    if (one == NULL || !inspection_note_spelling(&groups->table, one, key->name, key->name_size))
        return GROUP_E_MEMORY;
    groups->last = one;
    return GROUP_OK;
}

static void remark_position(inspection *one, rodt_position position)
{
    if (position.axle < 1 || position.axle > RODT_AXLE_NUMBER_MAX || position.side == RODT_SIDE_UNKNOWN)
        return;
    unsigned place = (unsigned)position.axle * 2u + (position.side == RODT_SIDE_RIGHT);
    unsigned char bit = (unsigned char)(1u << place % 8u);
    if ((one->seen[place / 8u] & bit) != 0)
        one->remarks |= REMARK_POSITION_TWICE;
    one->seen[place / 8u] |= bit;
}

group_brake group_brake_of(const rodt_finding *finding, rodt_position position)
{
    rodt_tally of = {.brakes = 0};
    if (rodt_tally_add(&of, finding, NULL) != RODT_OK)
        of = (rodt_tally){.brakes = 1, .unknown = 1};
    return (group_brake){.verdict = finding->verdict, .day = finding->day, .position = position,
                         .tally = {of.brakes, of.full, of.half, of.unknown, of.inoperative}};
}

static group_status add_to_last(vehicle_groups *groups, const group_brake *brake)
{
    inspection *one = groups->last;
    if (groups->layout.day_heading == NULL && !inspection_same_day(one->day, brake->day))
        one->remarks |= REMARK_MIXED_DAYS; /* otherwise the day is in the key */
    remark_position(one, brake->position);
    one->verdict[brake->verdict]++;
    return inspection_tally_add(&one->tally, &brake->tally) ? GROUP_OK : GROUP_E_BRAKES;
}

/* A row that has no day that can be read has none in its key. */
static rodt_date key_day(const vehicle_groups *groups, const group_brake *brake)
{
    return groups->layout.day_heading != NULL ? brake->day : (rodt_date){0};
}

static void make_waiting_key(const vehicle_groups *groups, waiting_row *row)
{
    name_cell cells[NAME_CELLS_MAX];
    const char *at = row->name.bytes;
    const size_t count = groups->layout.names;
    for (size_t i = 0; i < count; at += cells[i++].size)
        cells[i] = (name_cell){at, row->name.cell_size[i]};
    row->key = (inspection_key){.day = row->name.day};
    make_key(groups->seed, cells, count, row->text, &row->key);
    row->has_key = true;
}

/* Fetches what counts a brake of a row: its inspection, or what finds it by its key. */
static void fetch_waiting(vehicle_groups *groups, waiting_row *row)
{
    row->one = recent_names_find(&groups->recent, &groups->table, &row->name);
    row->has_key = false;
    if (row->one != NULL) {
        inspection_fetch_counts(row->one);
        return;
    }
    make_waiting_key(groups, row);
    inspection_fetch_slot(&groups->table, &row->key);
}

/* Where the rows of an inspection follow each other, none is looked up again, so that no name is worth keeping. */
static bool comes_again(const vehicle_groups *groups, bool is_new)
{
    return !is_new || groups->returns > groups->table.count / 16;
}

static group_status find_waiting(vehicle_groups *groups, waiting_row *row, const group_brake *brake)
{
    const size_t known = groups->table.count;
    groups->last = row->one;
    if (row->one != NULL) {
        groups->returns++;
        return GROUP_OK;
    }
    if (!row->has_key)
        make_waiting_key(groups, row);
    const group_status status = find_inspection(groups, &row->key, brake, row->number);
    const bool is_new = groups->table.count != known;
    groups->returns += !is_new;
    if (status == GROUP_OK && comes_again(groups, is_new))
        recent_names_keep(&groups->recent, &groups->table, &row->name, groups->last);
    return status;
}

/* Counts the rows that are waiting, in their order. */
static group_status count_waiting(vehicle_groups *groups)
{
    group_status status = GROUP_OK;
    waiting_row *row = groups->waiting;
    for (size_t i = 0; i < groups->waiting_count; i++)
        fetch_waiting(groups, &groups->waiting[i]);
    for (size_t i = 0; i < groups->brake_count && status == GROUP_OK; i++) {
        const waiting_brake *next = &groups->brakes[i];
        status = next->is_same ? GROUP_OK : find_waiting(groups, row++, &next->brake);
        if (status == GROUP_OK)
            status = add_to_last(groups, &next->brake);
    }
    groups->waiting_count = groups->brake_count = 0;
    return status;
}

static group_status wait_next(vehicle_groups *groups, const group_brake *brake, bool is_same)
{
    waiting_brake *next = &groups->brakes[groups->brake_count++];
    next->brake = *brake;
    next->is_same = is_same;
    return groups->brake_count < BRAKES_WAITING && groups->waiting_count < ROWS_WAITING ? GROUP_OK
                                                                                         : count_waiting(groups);
}

/* False: the name is too long. Of several cells the sizes follow: "a", "bc" is not "ab", "c". */
static bool copy_name(const name_cell *name, size_t cells, row_name *to)
{
    size_t size = 0;
    memset(to, 0, NAME_HEAD);
    memset(to->cell_size, 0, sizeof to->cell_size);
    for (size_t i = 0; i < cells; i++) {
        const size_t taken = taken_size(&name[i]);
        if (taken > SHORT_NAME - size)
            return false;
        memcpy(to->bytes + size, name[i].text, taken);
        to->cell_size[i] = (uint16_t)taken;
        size += taken;
    }
    for (size_t i = 0; i < cells && cells > 1; i++)
        to->bytes[size++] = (char)to->cell_size[i];
    memset(to->bytes + size, 0, sizeof to->hash);
    to->size = (uint8_t)size;
    return true;
}

/* A name that is too long does not wait. */
static group_status count_long(vehicle_groups *groups, const name_cell *name, const group_brake *brake)
{
    name_cell cells[NAME_CELLS_MAX];
    char text[NAME_SIZE_MAX + FOLDED_SIZE_MAX];
    inspection_key key = {.day = key_day(groups, brake)};
    group_status status = count_waiting(groups);
    take_names(name, groups->layout.names, cells);
    make_key(groups->seed, cells, groups->layout.names, text, &key);
    if (status == GROUP_OK)
        status = find_inspection(groups, &key, brake, groups->rows);
    return status == GROUP_OK ? add_to_last(groups, brake) : status;
}

/* Rows wait, so that what is read of many is fetched at once. */
static group_status count_next(vehicle_groups *groups, const name_cell *name, const group_brake *brake)
{
    waiting_row *row = &groups->waiting[groups->waiting_count];
    if (!copy_name(name, groups->layout.names, &row->name))
        return count_long(groups, name, brake);
    groups->waiting_count++;
    row->name.day = key_day(groups, brake);
    row_name_finish(&row->name);
    row->number = groups->rows;
    recent_names_fetch(&groups->recent, &row->name);
    return wait_next(groups, brake, false);
}

static group_status count_same(vehicle_groups *groups, const group_brake *brake)
{
    return groups->brake_count > 0 ? wait_next(groups, brake, true) : add_to_last(groups, brake);
}

group_status vehicle_groups_count(vehicle_groups *groups, const name_cell *name, const group_brake *brake)
{
    groups->rows++;
    return is_last(groups, name, brake->day) ? count_same(groups, brake) : count_next(groups, name, brake);
}

group_status vehicle_groups_count_same(vehicle_groups *groups, const group_brake *brake)
{
    groups->rows++;
    return count_same(groups, brake);
}

/* --- Lines --------------------------------------------------------------------------------------------- */

/* What is not of a day that can be read, of the same vehicle. */
static inspection *find_undated(const vehicle_groups *groups, const inspection *one)
{
    inspection_key key = one->key;
    key.day = (rodt_date){0};
    return groups->layout.day_heading == NULL ? NULL : inspection_find(&groups->table, &key);
}

/* Rows without a day are remarked on where the vehicle has others. */
static void remark_undated(const vehicle_groups *groups)
{
    for (size_t i = 0; i < groups->table.count && groups->table.has_undated; i++) {
        inspection *one = &groups->table.items[i], *undated = find_undated(groups, one);
        if (undated != NULL && undated != one) {
            one->remarks |= REMARK_UNDATED_ROWS;
            undated->remarks |= REMARK_UNDATED_ROWS;
        }
    }
}

/* The spelling of the first row that has two is the one that is told. */
static void count_spelling(group_counts *counts, const inspection *one)
{
    if (one->other == NULL || (counts->respelled++ > 0 && counts->respelled_row < one->first))
        return;
    counts->respelled_row = one->first;
    snprintf(counts->spelling[0], VEHICLE_KEY_SIZE, "%.*s", (int)one->key.name_size, one->key.name);
    snprintf(counts->spelling[1], VEHICLE_KEY_SIZE, "%.*s", (int)one->other_size, one->other);
}

/* The undated rows of a vehicle, and who is named by nobody, change the outcome. */
static bool has_plain_rest(const inspection *one) { return one->remarks == 0 && !one->key.is_nameless; }

static line_rest *rest_of(vehicle_groups *groups, const inspection *one)
{
    uint32_t at = one->tally.full * 5 + one->tally.half;
    for (int i = 0; i < 4; i++)
        at = at * 11 + one->verdict[i];
    return &groups->rests[at % RESTS];
}

static bool is_rest_of(const line_rest *rest, const inspection *one)
{
    return has_plain_rest(one) && memcmp(&rest->tally, &one->tally, sizeof rest->tally) == 0 &&
           memcmp(rest->verdict, one->verdict, sizeof rest->verdict) == 0;
}

/* Judges the inspection and writes the rest of its line. False: more brakes than can be counted. */
static bool make_rest(vehicle_groups *groups, const inspection *one, line_rest *rest)
{
    rodt_count count;
    output *line = &groups->lines;
    const size_t start = line->used;
    const inspection *undated = (one->remarks & REMARK_UNDATED_ROWS) != 0 ? find_undated(groups, one) : NULL;
    if (!inspection_judge(one, undated, &count))
        return false;
    inspection_write_rest(line, &groups->layout, one, &count);
    groups->counts.outcome[count.outcome]++;
    const size_t size = line->used - start;
    if (!has_plain_rest(one) || size > sizeof rest->bytes || line->failure != 0)
        return true;
    *rest = (line_rest){.tally = one->tally, .outcome = count.outcome, .size = (uint32_t)size};
    memcpy(rest->verdict, one->verdict, sizeof rest->verdict);
    memcpy(rest->bytes, line->buffer + start, size);
    return true;
}

/* Adds the line to groups->lines. */
static group_status make_line(vehicle_groups *groups, const inspection *one)
{
    line_rest *rest = rest_of(groups, one);
    inspection_write_name(&groups->lines, &groups->layout, &groups->days, &one->key);
    if (is_rest_of(rest, one)) {
        output_bytes(&groups->lines, rest->bytes, rest->size);
        groups->counts.outcome[rest->outcome]++;
    } else if (!make_rest(groups, one, rest)) {
        return GROUP_E_BRAKES;
    }
    groups->counts.inspections++;
    count_spelling(&groups->counts, one);
    return groups->lines.failure == 0 ? GROUP_OK : GROUP_E_MEMORY;
}

static group_status send_lines(vehicle_groups *groups)
{
    const size_t size = groups->lines.used;
    groups->lines.used = 0;
    return groups->sink.write(groups->sink.context, groups->lines.buffer, size) ? GROUP_OK : GROUP_E_WRITE;
}

group_status vehicle_groups_write_header(vehicle_groups *groups)
{
    inspection_write_header(&groups->lines, &groups->layout);
    return groups->lines.failure == 0 ? send_lines(groups) : GROUP_E_MEMORY;
}

/* To a file that is merged with others. */
static group_status spill_line(vehicle_groups *groups, const inspection *one, FILE *to)
{
    const size_t size = groups->lines.used;
    groups->lines.used = 0;
    return spill_write_line(to, one->first, groups->lines.buffer, size) ? GROUP_OK : fail_disk(groups);
}

/* The lines of the table, to a file that is merged with others or out. Of a line that fails nothing is sent. */
static group_status write_table(vehicle_groups *groups, FILE *to)
{
    group_status status = GROUP_OK;
    remark_undated(groups);
    for (size_t i = 0; i < groups->table.count && status == GROUP_OK; i++) {
        const inspection *one = &groups->table.items[i];
        const size_t before = groups->lines.used;
        status = make_line(groups, one);
        if (status != GROUP_OK)
            groups->lines.used = before;
        else if (to != NULL)
            status = spill_line(groups, one, to);
        else if (groups->lines.used >= LINES_SENT)
            status = send_lines(groups);
    }
    inspection_table_clear(&groups->table);
    const group_status sent = to == NULL && status != GROUP_E_WRITE ? send_lines(groups) : GROUP_OK;
    return status == GROUP_OK ? sent : status;
}

/* --- Merging ------------------------------------------------------------------------------------------- */

/* Files of lines, each with the head of its next line. */
typedef struct line_files {
    FILE *file[SPILL_FILES];
    uint64_t number[SPILL_FILES]; /* UINT64_MAX: it has ended */
    uint32_t size[SPILL_FILES];
} line_files;

static group_status read_head(vehicle_groups *groups, line_files *files, size_t at)
{
    spill_status status = spill_read_number(files->file[at], &files->number[at], &files->size[at]);
    if (status == SPILL_END)
        files->number[at] = UINT64_MAX;
    return status == SPILL_E_READ ? fail_disk(groups) : GROUP_OK;
}

static group_status begin_merge(vehicle_groups *groups, line_files *files)
{
    group_status status = GROUP_OK;
    for (size_t i = 0; i < SPILL_FILES && status == GROUP_OK; i++) {
        files->number[i] = UINT64_MAX;
        if (files->file[i] == NULL)
            continue;
        status = fseek(files->file[i], 0, SEEK_SET) == 0 ? read_head(groups, files, i) : fail_disk(groups);
    }
    return status;
}

static group_status take_line(vehicle_groups *groups, line_files *files, size_t at, FILE *to)
{
    output *line = &groups->lines;
    if (!output_room(line, files->size[at]))
        return GROUP_E_MEMORY;
    if (!spill_read_line(files->file[at], line->buffer, files->size[at]))
        return fail_disk(groups);
    line->used = to == NULL ? files->size[at] : 0;
    group_status status = to == NULL ? send_lines(groups)
                          : spill_write_line(to, files->number[at], line->buffer, files->size[at]) ? GROUP_OK
                                                                                                   : fail_disk(groups);
    return status == GROUP_OK ? read_head(groups, files, at) : status;
}

/* Merges the lines of all files by the rows that they came from. */
static group_status merge_lines(vehicle_groups *groups, line_files *files, FILE *to)
{
    group_status status = begin_merge(groups, files);
    while (status == GROUP_OK) {
        size_t first = 0;
        for (size_t i = 1; i < SPILL_FILES; i++)
            first = files->number[i] < files->number[first] ? i : first;
        if (files->number[first] == UINT64_MAX)
            break;
        status = take_line(groups, files, first, to);
    }
    return status;
}

static void close_lines(line_files *files)
{
    for (size_t i = 0; i < SPILL_FILES; i++) {
        if (files->file[i] != NULL)
            fclose(files->file[i]);
    }
}

/* Counts in what was spilled; what does not fit any more is spilled again. */
static group_status merge_inspection(vehicle_groups *groups, const inspection *later, inspection_spill *again,
                                     bool *is_spilled)
{
    inspection *one = inspection_find(&groups->table, &later->key);
    if (one != NULL)
        return group_status_of(inspection_merge(&groups->table, one, later));
    if (inspection_table_is_full(&groups->table)) {
        *is_spilled = true;
        if (again->level >= SPILL_LEVELS)
            return GROUP_E_TOO_MANY;
        if (!spill_table(groups, again))
            return fail_disk(groups);
    }
    return inspection_add(&groups->table, later) != NULL ? GROUP_OK : GROUP_E_MEMORY;
}

/* Counts the inspections of a file. */
static group_status count_file(vehicle_groups *groups, FILE *file, inspection_spill *again, bool *is_spilled)
{
    spill_status read = fseek(file, 0, SEEK_SET) == 0 ? SPILL_RECORD : SPILL_E_READ;
    group_status status = GROUP_OK;
    while (status == GROUP_OK && read == SPILL_RECORD) {
        read = inspection_spill_read(file, groups->read);
        if (read == SPILL_RECORD)
            status = merge_inspection(groups, &groups->read->one, again, is_spilled);
    }
    return status == GROUP_OK && read == SPILL_E_READ ? fail_disk(groups) : status;
}

/* As deep as the hash has bits. NOLINTBEGIN(misc-no-recursion) */
static group_status write_spilled(vehicle_groups *groups, inspection_spill *spill, FILE *to);

static group_status write_file(vehicle_groups *groups, FILE *file, unsigned level, FILE *to)
{
    inspection_spill again = {.level = level + 1};
    bool is_spilled = false;
    group_status status = count_file(groups, file, &again, &is_spilled);
    if (status == GROUP_OK)
        status = is_spilled ? write_spilled(groups, &again, to) : write_table(groups, to);
    inspection_spill_close(&again);
    return status;
}

/* Writes the lines of what was spilled, with what the table holds. */
static group_status write_spilled(vehicle_groups *groups, inspection_spill *spill, FILE *to)
{
    line_files lines = {.file = {NULL}};
    group_status status = spill_table(groups, spill) ? GROUP_OK : fail_disk(groups);
    for (size_t i = 0; i < SPILL_FILES && status == GROUP_OK; i++) {
        if (spill->file[i] == NULL)
            continue;
        lines.file[i] = temporary_file();
        status = lines.file[i] == NULL ? fail_disk(groups)
                                       : write_file(groups, spill->file[i], spill->level, lines.file[i]);
        fclose(spill->file[i]);
        spill->file[i] = NULL;
    }
    if (status == GROUP_OK)
        status = merge_lines(groups, &lines, to);
    close_lines(&lines);
    return status;
}
/* NOLINTEND(misc-no-recursion) */

group_status vehicle_groups_finish(vehicle_groups *groups)
{
    group_status status = count_waiting(groups);
    if (status != GROUP_OK || !groups->is_spilled)
        return status == GROUP_OK ? write_table(groups, NULL) : status;
    groups->read = malloc(sizeof *groups->read);
    return groups->read == NULL ? GROUP_E_MEMORY : write_spilled(groups, &groups->spill, NULL);
}

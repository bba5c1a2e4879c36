/* SPDX-License-Identifier: Apache-2.0 */
/* Inspections are counted in a table. A table that is full goes to files by the hash of the vehicle; at the end each
 * file is counted in the same way, and the lines of all files are merged by the rows that they came from. */
#include "batch/vehicle_groups.h"
#include "batch/inspection_spill.h"
#include "io/temporary_file.h"
#include "ui/language.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

struct vehicle_groups {
    line_sink sink;
    line_layout layout;
    uint64_t seed[2];
    uint64_t rows;
    inspection_table table;
    inspection_spill spill;
    bool is_spilled;
    spilled_inspection *read; /* NULL until something was spilled */
    output line;
    inspection *last; /* of the row before, and the name and the day as that row has them */
    char last_name[NAME_SIZE_MAX];
    size_t last_size[NAME_CELLS_MAX];
    rodt_date last_day;
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
    if (output_open(&groups->line, -1) && inspection_table_open(&groups->table))
        return groups;
    vehicle_groups_close(groups);
    return NULL;
}

void vehicle_groups_close(vehicle_groups *groups)
{
    if (groups == NULL)
        return;
    inspection_table_close(&groups->table);
    inspection_spill_close(&groups->spill);
    output_close(&groups->line);
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

/* Buffers of a key. */
typedef struct key_texts {
    char name[NAME_SIZE_MAX], folded[FOLDED_SIZE_MAX];
} key_texts;

/* The sizes of what is folded tell "a", "bc" from "ab", "c". */
static void make_key(const vehicle_groups *groups, const name_cell *name, key_texts *texts, inspection_key *key)
{
    size_t used = 0, folded = 0;
    uint16_t sizes[NAME_CELLS_MAX] = {0};
    for (size_t i = 0; i < groups->layout.names; i++) {
        const char *text = name[i].text;
        size_t size = vehicle_key_trim(&text, name[i].size);
        memcpy(texts->name + used, text, size);
        sizes[i] = (uint16_t)vehicle_key_fold(text, size, texts->folded + folded);
        key->cell_size[i] = (uint16_t)size;
        key->is_nameless = key->is_nameless || size == 0;
        used += size;
        folded += sizes[i];
    }
    memcpy(texts->folded + folded, sizes, groups->layout.names * sizeof *sizes);
    folded += groups->layout.names * sizeof *sizes;
    key->name = texts->name;
    key->name_size = (uint16_t)used;
    key->folded = texts->folded;
    key->folded_size = (uint16_t)folded;
    key->hash = vehicle_key_hash(texts->folded, folded, groups->seed);
}

/* Most rows are of the inspection before. */
static bool is_last(const vehicle_groups *groups, const name_cell *name, rodt_date day)
{
    const char *at = groups->last_name;
    if (groups->last == NULL || (groups->layout.day_heading != NULL && rodt_date_compare(groups->last_day, day) != 0))
        return false;
    for (size_t i = 0; i < groups->layout.names; at += name[i++].size) {
        if (groups->last_size[i] != name[i].size || memcmp(at, name[i].text, name[i].size) != 0)
            return false;
    }
    return true;
}

static void remember_last(vehicle_groups *groups, const name_cell *name, rodt_date day, inspection *one)
{
    char *at = groups->last_name;
    for (size_t i = 0; i < groups->layout.names; at += name[i++].size) {
        memcpy(at, name[i].text, name[i].size);
        groups->last_size[i] = name[i].size;
    }
    groups->last_day = day;
    groups->last = one;
}

static bool spill_table(vehicle_groups *groups, inspection_spill *spill)
{
    groups->last = NULL;
    if (!inspection_spill_table(spill, &groups->table))
        return false;
    inspection_table_clear(&groups->table);
    return true;
}

/* Finds or adds the inspection, as groups->last. */
static group_status find_inspection(vehicle_groups *groups, const name_cell *name, rodt_date day)
{
    key_texts texts;
    inspection added = {.first = groups->rows, .day = day};
    make_key(groups, name, &texts, &added.key);
    if (groups->layout.day_heading != NULL)
        added.key.day = day;
    inspection *one = inspection_find(&groups->table, &added.key);
    if (one == NULL && inspection_table_is_full(&groups->table)) {
        groups->is_spilled = true;
        if (!spill_table(groups, &groups->spill))
            return fail_disk(groups);
    }
    if (one == NULL)
        one = inspection_add(&groups->table, &added);
    if (one == NULL || !inspection_note_spelling(&groups->table, one, texts.name, added.key.name_size))
        return GROUP_E_MEMORY;
    remember_last(groups, name, day, one);
    return GROUP_OK;
}

static void remark(inspection *one, const group_brake *brake)
{
    rodt_position position = brake->position;
    if (rodt_date_compare(one->day, brake->day) != 0)
        one->remarks |= REMARK_MIXED_DAYS;
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
    group_brake brake = {.verdict = finding->verdict, .day = finding->day, .position = position};
    if (rodt_tally_add(&brake.tally, finding, NULL) != RODT_OK)
        brake.tally = (rodt_tally){.brakes = 1, .unknown = 1};
    return brake;
}

group_status vehicle_groups_count(vehicle_groups *groups, const name_cell *name, const group_brake *brake)
{
    name_cell cells[NAME_CELLS_MAX];
    for (size_t i = 0; i < NAME_CELLS_MAX; i++)
        cells[i] = i < groups->layout.names && name[i].size < VEHICLE_KEY_SIZE ? name[i] : (name_cell){"", 0};
    groups->rows++;
    if (!is_last(groups, cells, brake->day)) {
        group_status status = find_inspection(groups, cells, brake->day);
        if (status != GROUP_OK)
            return status;
    }
    remark(groups->last, brake);
    groups->last->verdict[brake->verdict]++;
    return inspection_tally_add(&groups->last->tally, &brake->tally) ? GROUP_OK : GROUP_E_BRAKES;
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
    for (size_t i = 0; i < groups->table.count; i++) {
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

/* Makes the line, in groups->line. */
static group_status make_line(vehicle_groups *groups, const inspection *one)
{
    rodt_count count;
    const inspection *undated = (one->remarks & REMARK_UNDATED_ROWS) != 0 ? find_undated(groups, one) : NULL;
    if (!inspection_judge(one, undated, &count))
        return GROUP_E_BRAKES;
    groups->line.used = 0;
    inspection_write_line(&groups->line, &groups->layout, one, &count);
    groups->counts.inspections++;
    groups->counts.outcome[count.outcome]++;
    count_spelling(&groups->counts, one);
    return groups->line.failure == 0 ? GROUP_OK : GROUP_E_MEMORY;
}

static group_status send_line(vehicle_groups *groups)
{
    return groups->sink.write(groups->sink.context, groups->line.buffer, groups->line.used) ? GROUP_OK : GROUP_E_WRITE;
}

group_status vehicle_groups_write_header(vehicle_groups *groups)
{
    groups->line.used = 0;
    inspection_write_header(&groups->line, &groups->layout);
    return groups->line.failure == 0 ? send_line(groups) : GROUP_E_MEMORY;
}

/* The lines of the table, to a file that is merged with others or out. */
static group_status write_table(vehicle_groups *groups, FILE *to)
{
    group_status status = GROUP_OK;
    remark_undated(groups);
    for (size_t i = 0; i < groups->table.count && status == GROUP_OK; i++) {
        const inspection *one = &groups->table.items[i];
        status = make_line(groups, one);
        if (status == GROUP_OK && to == NULL)
            status = send_line(groups);
        else if (status == GROUP_OK && !spill_write_line(to, one->first, groups->line.buffer, groups->line.used))
            status = fail_disk(groups);
    }
    inspection_table_clear(&groups->table);
    return status;
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
    output *line = &groups->line;
    line->used = 0;
    if (!output_room(line, files->size[at]))
        return GROUP_E_MEMORY;
    if (!spill_read_line(files->file[at], line->buffer, files->size[at]))
        return fail_disk(groups);
    line->used = files->size[at];
    group_status status = to == NULL ? send_line(groups)
                          : spill_write_line(to, files->number[at], line->buffer, line->used) ? GROUP_OK
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
    groups->last = NULL;
    if (!groups->is_spilled)
        return write_table(groups, NULL);
    groups->read = malloc(sizeof *groups->read);
    return groups->read == NULL ? GROUP_E_MEMORY : write_spilled(groups, &groups->spill, NULL);
}

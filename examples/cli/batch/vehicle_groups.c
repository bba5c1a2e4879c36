/* SPDX-License-Identifier: Apache-2.0 */
/* A table of open vehicles in the order in which they came, found by a hash of their key. */
#include "batch/vehicle_groups.h"
#include "batch/vehicle_key.h"
#include "ui/language.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SLOTS (VEHICLE_GROUPS_OPEN_MAX * 2u)
#define POSITIONS (2u * (RODT_AXLE_NUMBER_MAX + 1u))

/* Remarks on the rows of a vehicle as a whole. */
enum { MIXED_DAYS = 1u << 0, POSITION_TWICE = 1u << 1 };

typedef struct vehicle {
    char *key; /* as it was spelled first */
    size_t size;
    char *folded; /* behind it: what all spellings have in common */
    size_t folded_size;
    bool respelled;
    uint64_t hash;
    rodt_tally tally;
    uint32_t verdict[4];
    rodt_date day; /* of the first row */
    unsigned remarks;
    unsigned char seen[POSITIONS / 8 + 1];
} vehicle;

/* The orders that the keys have kept to so far, as bits. */
enum { BYTES_UP = 1u << 0, BYTES_DOWN = 1u << 1, SHORT_UP = 1u << 2, SHORT_DOWN = 1u << 3 };

struct vehicle_groups {
    line_sink sink;
    char separator;
    bool sorted_only; /* lines were written: no vehicle may come back */
    unsigned orders;
    size_t count;
    vehicle *vehicles;
    size_t capacity;
    size_t last; /* the vehicle of the row before, and its key as the row has it */
    char last_key[VEHICLE_KEY_SIZE];
    size_t last_size;
    uint64_t seed[2];
    uint32_t *slots; /* index + 1; 0 = free */
    group_counts counts;
};

vehicle_groups *vehicle_groups_open(line_sink sink, char separator, const uint64_t seed[2])
{
    vehicle_groups *table = calloc(1, sizeof *table);
    if (table == NULL)
        return NULL;
    table->slots = calloc(SLOTS, sizeof *table->slots);
    if (table->slots == NULL) {
        free(table);
        return NULL;
    }
    table->sink = sink;
    table->separator = separator;
    memcpy(table->seed, seed, sizeof table->seed);
    table->orders = BYTES_UP | BYTES_DOWN | SHORT_UP | SHORT_DOWN;
    return table;
}

static void close_vehicles(vehicle_groups *table)
{
    for (size_t i = 0; i < table->count; i++)
        free(table->vehicles[i].key);
    table->count = 0;
    memset(table->slots, 0, SLOTS * sizeof *table->slots);
}

void vehicle_groups_close(vehicle_groups *table)
{
    if (table == NULL)
        return;
    close_vehicles(table);
    free(table->vehicles);
    free(table->slots);
    free(table);
}

const group_counts *vehicle_groups_counts(const vehicle_groups *table) { return &table->counts; }

const char *group_sentence(group_status status)
{
    switch (status) {
    case GROUP_E_MEMORY: return TO_SAY("no memory for so many vehicles");
    case GROUP_E_WRITE: return TO_SAY("the output could not be written");
    case GROUP_E_ORDER:
        return TO_SAY("there are too many vehicles for rows in any order: sort the file by this column, and judge it "
                      "again");
    case GROUP_E_BRAKES: return TO_SAY("one vehicle has more rows than can be counted");
    case GROUP_OK: break;
    }
    return NULL;
}

/* --- Lines -------------------------------------------------------------------------------------------- */

typedef struct line {
    vehicle_groups *table;
    bool good;
} line;

static void put(line *to, const char *bytes, size_t size)
{
    to->good = to->good && (size == 0 || to->table->sink.write(to->table->sink.context, bytes, size));
}

static void put_text(line *to, const char *text) { put(to, text, strlen(text)); }

static void put_separator(line *to) { put(to, &to->table->separator, 1); }

/* Quotes only a cell that needs it (RFC 4180). */
static void put_cell(line *to, const char *text, size_t size)
{
    bool plain = true;
    for (size_t i = 0; i < size && plain; i++)
        plain = text[i] != to->table->separator && text[i] != '"' && text[i] != '\n' && text[i] != '\r';
    if (plain) {
        put(to, text, size);
        return;
    }
    put_text(to, "\"");
    for (size_t i = 0; i < size; i++)
        put(to, text[i] == '"' ? "\"\"" : text + i, text[i] == '"' ? 2 : 1);
    put_text(to, "\"");
}

static void put_count(line *to, uint64_t count)
{
    char text[24];
    snprintf(text, sizeof text, "%llu", (unsigned long long)count);
    put_separator(to);
    put_text(to, text);
}

/* An exact number as a mixed fraction, like a length without its unit. */
static void put_ratio(line *to, rodt_ratio ratio, int64_t times)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    rodt_length value;
    put_separator(to);
    if (rodt_length_scale((rodt_length){ratio.num, ratio.den}, (rodt_ratio){times, 1}, &value) == RODT_OK &&
        rodt_length_format(value, text, sizeof text, NULL) == RODT_OK)
        put_text(to, text);
}

static void put_remarks(line *to, const vehicle *one)
{
    put_separator(to);
    put_text(to, (one->remarks & MIXED_DAYS) != 0 ? "mixed-days" : "");
    put_text(to, one->remarks == (MIXED_DAYS | POSITION_TWICE) ? " " : "");
    put_text(to, (one->remarks & POSITION_TWICE) != 0 ? "position-twice" : "");
}

group_status vehicle_groups_write_header(vehicle_groups *table, const char *column)
{
    static const char *const headings[] = {"brakes",    "in_adjustment", "out_of_adjustment", "inoperative",
                                           "undetermined", "defective",  "percent",           "verdict",
                                           "whole_needed", "remarks"};
    line to = {table, true};
    put_cell(&to, column, strlen(column));
    for (size_t i = 0; i < sizeof headings / sizeof headings[0]; i++) {
        put_separator(&to);
        put_text(&to, headings[i]);
    }
    put_text(&to, "\n");
    return to.good ? GROUP_OK : GROUP_E_WRITE;
}

static group_status write_vehicle(vehicle_groups *table, const vehicle *one)
{
    rodt_count count;
    line to = {table, true};
    if (rodt_tally_judge(&one->tally, 0, &count, NULL) != RODT_OK)
        return GROUP_E_BRAKES;
    if (one->size == 0)
        count.outcome = RODT_OUTCOME_UNDETERMINED;
    put_cell(&to, one->key, one->size);
    put_count(&to, count.brakes);
    put_count(&to, one->verdict[RODT_VERDICT_IN_ADJUSTMENT]);
    put_count(&to, one->verdict[RODT_VERDICT_OUT_OF_ADJUSTMENT]);
    put_count(&to, one->verdict[RODT_VERDICT_INOPERATIVE]);
    put_count(&to, one->verdict[RODT_VERDICT_UNDETERMINED]);
    put_ratio(&to, count.defective, 1);
    put_ratio(&to, count.share, 100);
    put_separator(&to);
    put_text(&to, rodt_outcome_name(count.outcome));
    put_count(&to, count.whole_needed);
    put_remarks(&to, one);
    put_text(&to, "\n");
    table->counts.vehicles++;
    table->counts.outcome[count.outcome]++;
    return to.good ? GROUP_OK : GROUP_E_WRITE;
}

group_status vehicle_groups_finish(vehicle_groups *table)
{
    group_status status = GROUP_OK;
    for (size_t i = 0; i < table->count && status == GROUP_OK; i++)
        status = write_vehicle(table, &table->vehicles[i]);
    close_vehicles(table);
    return status;
}

/* --- Vehicles ----------------------------------------------------------------------------------------- */

/* A key of a row, without the blanks around it. */
typedef struct row_key {
    const char *text;
    size_t size;
    char folded[VEHICLE_KEY_SIZE];
    size_t folded_size;
    uint64_t hash;
} row_key;

static bool has_key(const vehicle *one, const row_key *key)
{
    return one->hash == key->hash && one->folded_size == key->folded_size &&
           memcmp(one->folded, key->folded, key->folded_size) == 0;
}

/* The slot of the key, or the free one for it. */
static uint32_t *find_slot(vehicle_groups *table, const row_key *key)
{
    size_t at = (size_t)(key->hash % SLOTS);
    while (table->slots[at] != 0 && !has_key(&table->vehicles[table->slots[at] - 1], key))
        at = (at + 1) % SLOTS;
    return &table->slots[at];
}

static int compare_bytes(const vehicle *before, const char *key, size_t size)
{
    size_t both = before->size < size ? before->size : size;
    int order = both == 0 ? 0 : memcmp(before->key, key, both);
    return order != 0 ? order : (before->size > size) - (before->size < size);
}

static void update_orders(vehicle_groups *table, const char *key, size_t size)
{
    if (table->count == 0)
        return;
    const vehicle *before = &table->vehicles[table->count - 1];
    int bytes = compare_bytes(before, key, size);
    int shorter = before->size != size ? (before->size > size) - (before->size < size) : bytes;
    table->orders &= bytes < 0 ? ~(unsigned)BYTES_DOWN : ~(unsigned)BYTES_UP;
    table->orders &= shorter < 0 ? ~(unsigned)SHORT_DOWN : ~(unsigned)SHORT_UP;
}

/* Writes and closes all vehicles but the last, which may have more rows. */
static group_status make_room(vehicle_groups *table)
{
    group_status status = GROUP_OK;
    if (table->orders == 0)
        return GROUP_E_ORDER;
    for (size_t i = 0; i + 1 < table->count && status == GROUP_OK; i++)
        status = write_vehicle(table, &table->vehicles[i]);
    if (status != GROUP_OK)
        return status;
    vehicle last = table->vehicles[table->count - 1];
    table->count--;
    close_vehicles(table);
    table->vehicles[0] = last;
    table->count = 1;
    table->slots[last.hash % SLOTS] = 1;
    table->sorted_only = true;
    return GROUP_OK;
}

static bool grow(vehicle_groups *table)
{
    if (table->count < table->capacity)
        return true;
    size_t capacity = table->capacity == 0 ? 64 : table->capacity * 2;
    vehicle *grown = realloc(table->vehicles, capacity * sizeof *grown);
    if (grown == NULL)
        return false;
    table->vehicles = grown;
    table->capacity = capacity;
    return true;
}

/* One block of memory for the key and what is folded of it. */
static bool copy_key(vehicle *to, const row_key *key)
{
    *to = (vehicle){.key = malloc(key->size + key->folded_size + 1), .size = key->size,
                    .folded_size = key->folded_size, .hash = key->hash};
    if (to->key == NULL)
        return false;
    to->folded = to->key + key->size;
    memcpy(to->key, key->text, key->size);
    memcpy(to->folded, key->folded, key->folded_size);
    return true;
}

static group_status add_vehicle(vehicle_groups *table, const row_key *key)
{
    vehicle one;
    update_orders(table, key->text, key->size);
    if (table->sorted_only && table->orders == 0)
        return GROUP_E_ORDER;
    if (table->count == VEHICLE_GROUPS_OPEN_MAX) {
        group_status status = make_room(table);
        if (status != GROUP_OK)
            return status;
    }
    if (!grow(table) || !copy_key(&one, key))
        return GROUP_E_MEMORY;
    table->vehicles[table->count++] = one;
    *find_slot(table, key) = (uint32_t)table->count;
    return GROUP_OK;
}

static void remark(vehicle *one, const group_brake *brake)
{
    rodt_position position = brake->position;
    if (one->tally.brakes == 0)
        one->day = brake->day;
    else if (rodt_date_compare(one->day, brake->day) != 0)
        one->remarks |= MIXED_DAYS;
    if (position.axle < 1 || position.axle > RODT_AXLE_NUMBER_MAX || position.side == RODT_SIDE_UNKNOWN)
        return;
    unsigned place = (unsigned)position.axle * 2u + (position.side == RODT_SIDE_RIGHT);
    unsigned char bit = (unsigned char)(1u << place % 8u);
    if ((one->seen[place / 8u] & bit) != 0)
        one->remarks |= POSITION_TWICE;
    one->seen[place / 8u] |= bit;
}

static bool add_tally(rodt_tally *to, const rodt_tally *one)
{
    if (to->brakes >= RODT_BRAKES_MAX)
        return false;
    to->brakes += one->brakes;
    to->full += one->full;
    to->half += one->half;
    to->unknown += one->unknown;
    to->inoperative += one->inoperative;
    return true;
}

group_brake group_brake_of(const rodt_finding *finding, rodt_position position)
{
    group_brake brake = {.verdict = finding->verdict, .day = finding->day, .position = position};
    if (rodt_tally_add(&brake.tally, finding, NULL) != RODT_OK)
        brake.tally = (rodt_tally){.brakes = 1, .unknown = 1};
    return brake;
}

/* Counts a vehicle once whose name is spelled in several ways, and keeps the first two spellings. */
static void note_spelling(vehicle_groups *table, vehicle *one, const row_key *key)
{
    group_counts *counts = &table->counts;
    if (one->respelled || (one->size == key->size && memcmp(one->key, key->text, key->size) == 0))
        return;
    one->respelled = true;
    if (counts->respelled++ > 0)
        return;
    snprintf(counts->spelling[0], VEHICLE_KEY_SIZE, "%.*s", (int)one->size, one->key);
    snprintf(counts->spelling[1], VEHICLE_KEY_SIZE, "%.*s", (int)key->size, key->text);
}

/* Finds or adds the vehicle of the key, as table->last; most rows are of the vehicle before. */
static group_status find_vehicle(vehicle_groups *table, const char *text, size_t size)
{
    row_key key = {.text = text};
    if (size >= VEHICLE_KEY_SIZE)
        size = 0;
    if (table->last < table->count && table->last_size == size && memcmp(table->last_key, text, size) == 0)
        return GROUP_OK;
    key.size = vehicle_key_trim(&key.text, size);
    key.folded_size = vehicle_key_fold(key.text, key.size, key.folded);
    key.hash = vehicle_key_hash(key.folded, key.folded_size, table->seed);
    uint32_t *slot = find_slot(table, &key);
    if (*slot == 0) {
        group_status status = add_vehicle(table, &key);
        if (status != GROUP_OK)
            return status;
        slot = find_slot(table, &key);
    }
    table->last = *slot - 1;
    table->last_size = size;
    memcpy(table->last_key, text, size);
    note_spelling(table, &table->vehicles[table->last], &key);
    return GROUP_OK;
}

group_status vehicle_groups_count(vehicle_groups *table, const char *key, size_t size, const group_brake *brake)
{
    group_status status = find_vehicle(table, key, size);
    if (status != GROUP_OK)
        return status;
    vehicle *one = &table->vehicles[table->last];
    remark(one, brake);
    one->verdict[brake->verdict]++;
    return add_tally(&one->tally, &brake->tally) ? GROUP_OK : GROUP_E_BRAKES;
}

group_status vehicle_groups_add(vehicle_groups *table, const char *key, size_t size, const rodt_finding *finding,
                                rodt_position position)
{
    group_brake brake = group_brake_of(finding, position);
    return vehicle_groups_count(table, key, size, &brake);
}

/* SPDX-License-Identifier: Apache-2.0 */
/* The wheel ends of a walk-round: as many as there are axles, described like their neighbours. */
#include "walkround/walkround.h"
#include "ui/compiler.h"

#include <string.h>

/* What one wheel end most likely shares with another. */
static const walk_id described[] = {ASK_CHAMBER, ASK_CLASS, ASK_RATED, ASK_MARKED, ASK_ADJUSTER, ASK_ARM};

rodt_position walk_position(const inspection_record *record, int end)
{
    rodt_position position = {0, 0};
    const char *text = record->ends[end][END_POSITION].text;
    (void)rodt_position_read(text, strlen(text), &position, NULL);
    return position;
}

/* Steps of a wheel end that is no more would come back with it. */
static void forget_end(walk *of, inspection_record *record, int end)
{
    for (int id = 0; id < ASK_IDS; id++) {
        walk_item item = {(walk_id)id, WALK_RELEASED, end, RODT_CHECK_NONE};
        char name[WALK_NAME_SIZE];
        if (walk_questions[id].home != WALK_END)
            continue;
        walk_step_name(record, &item, name);
        (void)walk_set_step(of, record, name, NULL);
    }
    memset(record->ends[end], 0, sizeof record->ends[end]);
}

/* What holds for all wheel ends holds for a new one too. */
static bool add_end(walk *of, inspection_record *record, int axle, int side)
{
    static const end_key common[] = {END_DIVISION, END_PSI, END_PSI_AFTER, END_ENGINE, END_SPRING, END_DRUM};
    char text[RODT_POSITION_TEXT_SIZE];
    record_value *values = record->ends[record->end_count];
    if (rodt_position_format((rodt_position){(int16_t)axle, (int16_t)side}, text, sizeof text) != RODT_OK)
        return false;
    values[END_POSITION].text = walk_keep(of, text);
    for (size_t i = 0; record->end_count > 0 && i < COUNT_OF(common); i++)
        values[common[i]] = record->ends[0][common[i]];
    record->end_count++;
    return values[END_POSITION].text != NULL;
}

static bool has_end(const inspection_record *record, int axle, int side)
{
    for (size_t i = 0; i < record->end_count; i++) {
        rodt_position position = walk_position(record, (int)i);
        if (position.axle == axle && position.side == side)
            return true;
    }
    return false;
}

/* The number of brakes that an older record says is of its own axles. */
bool walk_drops_brakes(const inspection_record *record, int axles)
{
    return record->head[HEAD_BRAKES].number > 0 && (size_t)axles * 2 != record->end_count;
}

bool walk_set_axles(walk *of, inspection_record *record, int axles)
{
    if (walk_drops_brakes(record, axles))
        record->head[HEAD_BRAKES].number = 0;
    while (record->end_count > 0 && walk_position(record, (int)record->end_count - 1).axle > axles)
        forget_end(of, record, (int)--record->end_count);
    for (int axle = 1; axle <= axles; axle++) {
        for (int side = RODT_SIDE_LEFT; side <= RODT_SIDE_RIGHT; side++) {
            if (record->end_count == VEHICLE_ENDS_MAX)
                return has_end(record, axle, side);
            if (!has_end(record, axle, side) && !add_end(of, record, axle, side))
                return false;
        }
    }
    return true;
}

/* --- Neighbours -------------------------------------------------------------------------------------- */

/* The other end of the axle; without one the nearest axle in front. */
int walk_template_end(const inspection_record *record, int end)
{
    rodt_position at = walk_position(record, end);
    int best = WALK_NONE, distance = RODT_AXLE_NUMBER_MAX + 1;
    for (int i = 0; i < (int)record->end_count; i++) {
        rodt_position other = walk_position(record, i);
        int far = at.axle - other.axle;
        if (i == end || record->ends[i][END_CHAMBER].text == NULL || far < 0 || (far > 0 && other.side != at.side))
            continue;
        if (far < distance) {
            best = i;
            distance = far;
        }
    }
    return best;
}

bool walk_copy_end(walk *of, inspection_record *record, int from, int to)
{
    bool good = true;
    for (size_t i = 0; i < COUNT_OF(described); i++) {
        walk_item donor = {described[i], WALK_RELEASED, from, RODT_CHECK_NONE};
        walk_item item = {described[i], WALK_RELEASED, to, RODT_CHECK_NONE};
        record_value value = walk_value(record, &donor);
        if (walk_skipped(record, &donor))
            good = walk_skip(of, record, &item) && good;
        else if (value.text != NULL)
            good = walk_set(of, record, &item, value) && good;
    }
    return good;
}

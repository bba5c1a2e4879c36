/* SPDX-License-Identifier: Apache-2.0 */
/* Aggregates: the wheel ends of a vehicle counted by the roadside criterion, also by several workers. */
#include "extension.h"

#include <libpq/pqformat.h>
#include <utils/builtins.h>

#include <string.h>

PG_FUNCTION_INFO_V1(rodtpg_tally_add);
PG_FUNCTION_INFO_V1(rodtpg_tally_combine);
PG_FUNCTION_INFO_V1(rodtpg_tally_send);
PG_FUNCTION_INFO_V1(rodtpg_tally_receive);
PG_FUNCTION_INFO_V1(rodtpg_outcome);
PG_FUNCTION_INFO_V1(rodtpg_defective);
PG_FUNCTION_INFO_V1(rodtpg_share);
PG_FUNCTION_INFO_V1(rodtpg_count);

/* --- The state ----------------------------------------------------------------------------------------- */

static rodt_tally *new_tally(FunctionCallInfo fcinfo)
{
    MemoryContext memory;
    if (!AggCheckCallContext(fcinfo, &memory))
        ereport(ERROR, (errcode(ERRCODE_FEATURE_NOT_SUPPORTED), errmsg("this function is a part of an aggregate")));
    return MemoryContextAllocZero(memory, sizeof(rodt_tally));
}

static rodt_tally *tally_argument(FunctionCallInfo fcinfo, int i)
{
    return PG_ARGISNULL(i) ? NULL : (rodt_tally *)PG_GETARG_POINTER(i);
}

/* Each of them was counted by rodt_tally_add, so the sum of two fits. */
static void add_tally(rodt_tally *sum, const rodt_tally *more)
{
    sum->brakes += more->brakes;
    sum->full += more->full;
    sum->half += more->half;
    sum->unknown += more->unknown;
    sum->inoperative += more->inoperative;
    if (sum->brakes > RODT_BRAKES_MAX)
        fail(RODT_E_RANGE, "these are more brakes than any vehicle has");
}

Datum rodtpg_tally_add(PG_FUNCTION_ARGS)
{
    rodt_tally *tally = tally_argument(fcinfo, 0);
    if (tally == NULL)
        tally = new_tally(fcinfo);
    const judged brake = judge_call(fcinfo, 1, true);
    add_tally(tally, &brake.brake);
    PG_RETURN_POINTER(tally);
}

Datum rodtpg_tally_combine(PG_FUNCTION_ARGS)
{
    rodt_tally *sum = tally_argument(fcinfo, 0);
    const rodt_tally *more = tally_argument(fcinfo, 1);
    if (sum == NULL)
        sum = new_tally(fcinfo);
    if (more != NULL)
        add_tally(sum, more);
    PG_RETURN_POINTER(sum);
}

Datum rodtpg_tally_send(PG_FUNCTION_ARGS)
{
    const rodt_tally *tally = (const rodt_tally *)PG_GETARG_POINTER(0);
    StringInfoData message;
    pq_begintypsend(&message);
    pq_sendint32(&message, tally->brakes);
    pq_sendint32(&message, tally->full);
    pq_sendint32(&message, tally->half);
    pq_sendint32(&message, tally->unknown);
    pq_sendint32(&message, tally->inoperative);
    return PointerGetDatum(pq_endtypsend(&message));
}

Datum rodtpg_tally_receive(PG_FUNCTION_ARGS)
{
    rodt_tally *tally = new_tally(fcinfo);
    const bytea *sent = PG_GETARG_BYTEA_PP(0);
    StringInfoData message;
    initStringInfo(&message);
    appendBinaryStringInfo(&message, VARDATA_ANY(sent), (int)VARSIZE_ANY_EXHDR(sent));
    tally->brakes = pq_getmsgint(&message, 4);
    tally->full = pq_getmsgint(&message, 4);
    tally->half = pq_getmsgint(&message, 4);
    tally->unknown = pq_getmsgint(&message, 4);
    tally->inoperative = pq_getmsgint(&message, 4);
    pq_getmsgend(&message);
    PG_RETURN_POINTER(tally);
}

/* --- Results ------------------------------------------------------------------------------------------- */

/* Without a row there is no state, and no brake. */
static rodt_count counted(FunctionCallInfo fcinfo)
{
    const rodt_tally none = {0}, *tally = tally_argument(fcinfo, 0);
    rodt_count count;
    rodt_error error;
    if (rodt_tally_judge(tally != NULL ? tally : &none, 0, &count, &error) != RODT_OK)
        fail((rodt_status)error.status, error.text);
    return count;
}

Datum rodtpg_outcome(PG_FUNCTION_ARGS)
{
    return returned(fcinfo, words_value(rodt_outcome_name((rodt_outcome)counted(fcinfo).outcome)));
}

Datum rodtpg_defective(PG_FUNCTION_ARGS)
{
    const rodt_ratio brakes = counted(fcinfo).defective;
    return returned(fcinfo, exact_value(brakes.num, brakes.den));
}

Datum rodtpg_share(PG_FUNCTION_ARGS)
{
    const rodt_ratio share = counted(fcinfo).share;
    return returned(fcinfo, exact_value(share.num, share.den));
}

Datum rodtpg_count(PG_FUNCTION_ARGS)
{
    const rodt_count count = counted(fcinfo);
    char text[RODT_SENTENCE_SIZE];
    if (rodt_count_format(&count, text, sizeof text, NULL) != RODT_OK)
        PG_RETURN_NULL();
    return returned(fcinfo, text_value(text));
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Functions of a wheel end. */
#include "extension.h"

PG_FUNCTION_INFO_V1(rodtpg_verdict);
PG_FUNCTION_INFO_V1(rodtpg_stroke);
PG_FUNCTION_INFO_V1(rodtpg_limit);
PG_FUNCTION_INFO_V1(rodtpg_margin);
PG_FUNCTION_INFO_V1(rodtpg_reasons);
PG_FUNCTION_INFO_V1(rodtpg_defect);

Datum rodtpg_verdict(PG_FUNCTION_ARGS)
{
    return returned(fcinfo, words_value(rodt_verdict_name((rodt_verdict)judge_call(fcinfo, 0, false).verdict)));
}

Datum rodtpg_stroke(PG_FUNCTION_ARGS)
{
    const rodt_length stroke = judge_call(fcinfo, 0, false).stroke;
    return returned(fcinfo, exact_value(stroke.num, stroke.den));
}

Datum rodtpg_limit(PG_FUNCTION_ARGS)
{
    const rodt_length limit = judge_call(fcinfo, 0, false).limit;
    return returned(fcinfo, exact_value(limit.num, limit.den));
}

Datum rodtpg_margin(PG_FUNCTION_ARGS)
{
    const rodt_length margin = judge_call(fcinfo, 0, false).margin;
    return returned(fcinfo, exact_value(margin.num, margin.den));
}

Datum rodtpg_reasons(PG_FUNCTION_ARGS)
{
    return returned(fcinfo, reasons_value(judge_call(fcinfo, 0, false).reasons));
}

Datum rodtpg_defect(PG_FUNCTION_ARGS)
{
    return returned(fcinfo, words_value(rodt_defect_name((rodt_defect)judge_call(fcinfo, 0, true).defect)));
}

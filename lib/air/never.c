/* SPDX-License-Identifier: Apache-2.0 */
/* What a check waits for and never came: its texts, and the checks that can say so. */
#include "air/aircheck.h"
#include "core/text.h"

bool rodt_air_says_never(const char *text, size_t size)
{
    static const char *const texts[] = {
        "never",          "no",           "n",           "did not",      "didn't",         "did not come",
        "did not come on", "didn't come on", "never came on", "none came on", "no warning",     "not at all",
        "did not cut out", "did not cut in", "never cut out", "never cut in", "did not pop",    "never popped",
        "did not close",   "never closed",   "did not stop",  "never stopped", "did not start", "never started",
        "did not build",   "never built",    "jamais",        "non",
    };
    if (text == NULL)
        return false;
    rodti_text_trim(&text, &size);
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        if (rodti_text_is_word(text, size, texts[i]))
            return true;
    }
    return false;
}

bool rodti_air_never_came(const rodt_air_reading *reading)
{
    static const bool waits[RODT_AIR_CHECK_END] = {
        [RODT_AIR_CHECK_WARNING] = true,      [RODT_AIR_CHECK_BUILD_UP] = true,
        [RODT_AIR_CHECK_CUT_OUT] = true,      [RODT_AIR_CHECK_CUT_IN] = true,
        [RODT_AIR_CHECK_SUPPLY_VALVE] = true, [RODT_AIR_CHECK_TRACTOR_PROTECTION] = true,
        [RODT_AIR_CHECK_PARKING_VALVE] = true};
    return reading->answer == RODT_RECORDED_NO && waits[reading->check];
}

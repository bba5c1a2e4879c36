/* SPDX-License-Identifier: Apache-2.0 */
/* The day and the hour where the person is. */
#include "walkround/walkround.h"

#include <string.h>
#include <time.h>

bool walk_clock(const char *day, char text[WALK_ANSWER_MAX])
{
    char today[32];
    struct tm local;
    const time_t now = time(NULL);
    if (localtime_r(&now, &local) == NULL || strftime(today, sizeof today, "%Y-%m-%d", &local) == 0 ||
        strcmp(today, day) != 0)
        return false;
    return strftime(text, WALK_ANSWER_MAX, "%H:%M", &local) > 0;
}

bool walk_now(char text[WALK_ANSWER_MAX])
{
    struct tm local;
    const time_t now = time(NULL);
    return localtime_r(&now, &local) != NULL && strftime(text, WALK_ANSWER_MAX, "%Y-%m-%d %H:%M", &local) > 0;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Lines "mm 44.5" and "kPa 655" in, exact inches and psi out as num/den; conversions.py compares them. */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

static int convert(const char *unit, const char *value)
{
    char text[64];
    snprintf(text, sizeof text, "%s %s", value, unit);
    rodt_length length;
    rodt_pressure pressure;
    if (strcmp(unit, "mm") == 0 && rodt_length_parse(text, &length, NULL) == RODT_OK)
        return printf("%" PRId64 "/%" PRId64 "\n", length.num, length.den) < 0;
    if (strcmp(unit, "kPa") == 0 && rodt_pressure_parse(text, &pressure, NULL) == RODT_OK)
        return printf("%" PRId64 "/%" PRId64 "\n", pressure.num, pressure.den) < 0;
    fprintf(stderr, "%s cannot be read\n", text);
    return 1;
}

int main(void)
{
    char unit[8];
    char value[32];
    while (scanf("%7s %31s", unit, value) == 2)
        if (convert(unit, value) != 0)
            return 1;
    return 0;
}

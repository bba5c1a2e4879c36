/* SPDX-License-Identifier: Apache-2.0 */
/* Lines "force 30 100" (type, psi) and "factor 30 5.5" (type, arm in inches) in, num/den out; force.py compares them. */
#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

static rodt_status answer(const char *what, const char *type, const char *value, rodt_ratio *out)
{
    rodt_chamber chamber;
    rodt_pressure pressure;
    rodt_length arm;
    if (rodt_chamber_parse(type, &chamber, NULL) != RODT_OK)
        return RODT_E_SYNTAX;
    if (strcmp(what, "force") == 0 && rodt_pressure_parse(value, &pressure, NULL) == RODT_OK)
        return rodt_chamber_pushrod_force(&chamber, pressure, out);
    if (strcmp(what, "factor") == 0 && rodt_length_parse(value, &arm, NULL) == RODT_OK)
        return rodt_chamber_al_factor(&chamber, arm, out);
    return RODT_E_SYNTAX;
}

int main(void)
{
    char what[8], type[8], value[16];
    rodt_ratio ratio;
    while (scanf("%7s %7s %15s", what, type, value) == 3) {
        if (answer(what, type, value, &ratio) != RODT_OK)
            return 1;
        printf("%" PRId64 "/%" PRId64 "\n", ratio.num, ratio.den);
    }
    return 0;
}

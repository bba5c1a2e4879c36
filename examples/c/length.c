/* SPDX-License-Identifier: Apache-2.0 */
/* Tape readings: read as they are written, subtract without rounding, refuse what could mean two things. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

static void show(const char *text)
{
    rodt_length length;
    rodt_error error;
    char fraction[RODT_LENGTH_TEXT_SIZE];
    char mm[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_parse(text, &length, &error) != RODT_OK) {
        printf("%-14s refused at column %u: %s\n", text, (unsigned)error.column, error.text);
        return;
    }
    rodt_length_format(length, fraction, sizeof fraction, NULL);
    rodt_length_format_decimal(length, RODT_UNIT_MM, 3, RODT_ROUNDING_HALF_EVEN, mm, sizeof mm, NULL);
    printf("%-14s is %s in, %s mm\n", text, fraction, mm);
}

int main(void)
{
    static const char *const readings[] = {"4 13/16", "2-1/8 in", "44.45 mm", "1,75", "2-Jan", "1 3/0", "175in"};
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++)
        show(readings[i]);

    rodt_length released;
    rodt_length applied;
    rodt_length stroke;
    char text[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_parse("3 5/8", &released, NULL) != RODT_OK ||
        rodt_length_parse("5 1/16", &applied, NULL) != RODT_OK ||
        rodt_length_subtract(applied, released, &stroke) != RODT_OK)
        return 1;
    rodt_length_format(stroke, text, sizeof text, NULL);
    printf("5 1/16 less 3 5/8 is %s\n", text);
    return 0;
}

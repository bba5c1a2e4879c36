/* SPDX-License-Identifier: Apache-2.0 */
/* Helpers of the unit tests. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include "support.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void csv_open(csv_file *file, const char *path)
{
    FILE *stream = fopen(path, "rb");
    if (stream == NULL)
        fail_msg("cannot open %s", path);
    assert_int_equal(fseek(stream, 0, SEEK_END), 0);
    long size = ftell(stream);
    assert_true(size > 0);
    rewind(stream);
    *file = (csv_file){.bytes = malloc((size_t)size + 1), .size = (size_t)size};
    assert_non_null(file->bytes);
    assert_int_equal(fread(file->bytes, 1, file->size, stream), file->size);
    fclose(stream);
    file->bytes[file->size] = '\0';
}

void csv_close(csv_file *file)
{
    free(file->bytes);
    *file = (csv_file){0};
}

/* Takes one cell, unquoted in its place; returns the sign behind it: ',' or '\n', or '\0' at the end. */
static char read_cell(csv_file *file, char **cell)
{
    char *to = file->bytes + file->at;
    bool quoted = false;
    *cell = to;
    for (; file->at < file->size; file->at++) {
        char sign = file->bytes[file->at];
        if (sign == '"' && quoted && file->bytes[file->at + 1] == '"')
            *to++ = file->bytes[++file->at];
        else if (sign == '"')
            quoted = !quoted;
        else if (!quoted && (sign == ',' || sign == '\n'))
            break;
        else
            *to++ = sign;
    }
    if (quoted)
        fail_msg("record %u: a quotation mark is not closed", file->record);
    char behind = file->bytes[file->at++];
    *to = '\0';
    return behind;
}

size_t csv_read(csv_file *file, char *cells[], size_t most)
{
    size_t count = 0;
    if (file->at >= file->size)
        return 0;
    file->record++;
    for (char behind = ','; behind == ',';) {
        if (count == most)
            fail_msg("record %u has more than %zu cells", file->record, most);
        behind = read_cell(file, &cells[count++]);
    }
    return count;
}

bool csv_read_case(csv_file *file, char *cells[], size_t width, const char *heading)
{
    size_t count = csv_read(file, cells, width);
    while (count > 0 && ((cells[0][0] == '#' && strchr(" ", cells[0][1]) != NULL) || strcmp(cells[0], heading) == 0))
        count = csv_read(file, cells, width);
    if (count > 0)
        assert_int_equal(count, width);
    return count > 0;
}

/* The sequence "xorshift64*". */
uint64_t chance(uint64_t *state)
{
    *state ^= *state >> 12;
    *state ^= *state << 25;
    *state ^= *state >> 27;
    return *state * UINT64_C(2685821657736338717);
}

int64_t chance_number(uint64_t *state)
{
    uint64_t bits = chance(state);
    int64_t small = (int64_t)(bits >> 8 & 3);
    switch (bits & 7) {
    case 0:
        return INT64_MIN + small;
    case 1:
        return INT64_MAX - small;
    case 2:
        return (int64_t)(UINT64_C(1) << (bits >> 16 & 62)) - small;
    case 3:
        return small - 1;
    case 4:
        return (int64_t)(bits >> 8 & 255) - 128;
    default:
        return (int64_t)chance(state) >> (bits >> 16 & 63);
    }
}

uint64_t euclid(uint64_t a, uint64_t b)
{
    while (b != 0) {
        uint64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

bool is_canonical(int64_t num, int64_t den)
{
    uint64_t magnitude = num < 0 ? 0 - (uint64_t)num : (uint64_t)num;
    return den > 0 && euclid(magnitude, (uint64_t)den) == 1;
}

/* Up to 18 digits, so that it fits. */
static bool read_digits(const char **at, int64_t *value)
{
    const char *start = *at;
    for (*value = 0; **at >= '0' && **at <= '9'; (*at)++) {
        if (*at - start == 18)
            return false;
        *value = *value * 10 + (**at - '0');
    }
    return *at > start;
}

bool read_fraction(const char *text, int64_t *num, int64_t *den)
{
    *den = 1;
    if (!read_digits(&text, num))
        return false;
    if (*text == '/' && (text++, !read_digits(&text, den)))
        return false;
    return *text == '\0';
}

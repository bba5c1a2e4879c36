/* SPDX-License-Identifier: Apache-2.0 */
/* One vehicle is written "T-1", "t-1 " and "T - 1" by different people; it must not be three. */
#include "batch/vehicle_key.h"

#include <stdbool.h>
#include <string.h>

/* --- Spelling ----------------------------------------------------------------------------------------- */

/* Bytes of the blank at the start of a text; 0 = there is none. */
static size_t blank_size(const char *at, const char *end)
{
    static const char *const blanks[] = {"\xC2\xA0", "\xE2\x80\xAF", "\xE2\x81\x9F", "\xE3\x80\x80", "\xEF\xBB\xBF"};
    size_t left = (size_t)(end - at);
    if (*at == ' ' || (*at >= '\t' && *at <= '\r'))
        return 1;
    for (size_t i = 0; i < sizeof blanks / sizeof blanks[0] && (unsigned char)*at >= 0x80; i++) {
        size_t size = strlen(blanks[i]);
        if (left >= size && memcmp(at, blanks[i], size) == 0)
            return size;
    }
    /* U+2000 to U+200B: the blanks of printers. */
    bool wide = left >= 3 && memcmp(at, "\xE2\x80", 2) == 0;
    return wide && (unsigned char)at[2] >= 0x80 && (unsigned char)at[2] <= 0x8B ? 3 : 0;
}

static bool is_plain_end(char byte) { return byte > ' ' && byte <= '~'; }

size_t vehicle_key_trim(const char **key, size_t size)
{
    const char *at = *key, *end = at + size, *first = NULL, *last = at;
    if (size > 0 && is_plain_end(*at) && is_plain_end(end[-1]))
        return size;
    while (at < end) {
        size_t blank = blank_size(at, end);
        if (blank == 0 && first == NULL)
            first = at;
        at += blank > 0 ? blank : 1;
        if (blank == 0)
            last = at;
    }
    *key = first != NULL ? first : *key;
    return first != NULL ? (size_t)(last - first) : 0;
}

static bool is_digit(char byte) { return byte >= '0' && byte <= '9'; }

/* Latin-1 has its capitals from U+00C0 to U+00DE, with the sign of multiplication among them. */
static char small_letter(char byte, char before)
{
    unsigned char code = (unsigned char)byte;
    if (byte >= 'A' && byte <= 'Z')
        return (char)(byte + 'a' - 'A');
    return (unsigned char)before == 0xC3 && code >= 0x80 && code <= 0x9E && code != 0x97 ? (char)(code + 0x20) : byte;
}

/* Most names have no blanks, and only letters that fold by themselves. False: this one is not plain. */
static bool fold_plain(const char *key, size_t size, char *folded)
{
    unsigned others = 0;
    for (size_t i = 0; i < size; i++) {
        const unsigned byte = (unsigned char)key[i];
        others |= byte <= ' ' || byte > 0x7E;
        folded[i] = (char)(byte + (byte - 'A' < 26u ? 'a' - 'A' : 0u));
    }
    return others == 0;
}

size_t vehicle_key_fold(const char *key, size_t size, char *folded)
{
    if (fold_plain(key, size, folded))
        return size;
    const char *at = key, *end = key + size;
    size_t used = 0;
    bool blank = false;
    while (at < end) {
        size_t left_out = blank_size(at, end);
        if (left_out == 0) {
            char before = used > 0 ? folded[used - 1] : '\0';
            if (blank && is_digit(before) && is_digit(*at))
                folded[used++] = ' ';
            folded[used++] = small_letter(*at, before);
        }
        blank = left_out > 0;
        at += left_out > 0 ? left_out : 1;
    }
    return used;
}

/* --- Hash --------------------------------------------------------------------------------------------- */

static uint64_t turn(uint64_t word, unsigned bits) { return word << bits | word >> (64 - bits); }

static void mix(uint64_t v[4])
{
    v[0] += v[1];
    v[2] += v[3];
    v[1] = turn(v[1], 13) ^ v[0];
    v[3] = turn(v[3], 16) ^ v[2];
    v[0] = turn(v[0], 32);
    v[2] += v[1];
    v[0] += v[3];
    v[1] = turn(v[1], 17) ^ v[2];
    v[3] = turn(v[3], 21) ^ v[0];
    v[2] = turn(v[2], 32);
}

static void take_word(uint64_t v[4], uint64_t word)
{
    v[3] ^= word;
    mix(v);
    mix(v);
    v[0] ^= word;
}

static uint64_t word_of(const char *bytes, size_t count)
{
    uint64_t word = 0;
    for (size_t i = 0; i < count; i++)
        word |= (uint64_t)(unsigned char)bytes[i] << i * 8;
    return word;
}

uint64_t vehicle_key_hash(const char *key, size_t size, const uint64_t seed[2])
{
    uint64_t v[4] = {seed[0] ^ UINT64_C(0x736f6d6570736575), seed[1] ^ UINT64_C(0x646f72616e646f6d),
                     seed[0] ^ UINT64_C(0x6c7967656e657261), seed[1] ^ UINT64_C(0x7465646279746573)};
    size_t at = 0;
    for (; at + 8 <= size; at += 8)
        take_word(v, word_of(key + at, 8));
    take_word(v, word_of(key + at, size - at) | (uint64_t)size << 56);
    v[2] ^= 0xFF;
    for (int i = 0; i < 4; i++)
        mix(v);
    return v[0] ^ v[1] ^ v[2] ^ v[3];
}

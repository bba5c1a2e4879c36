/* SPDX-License-Identifier: Apache-2.0 */
/* Rows with quotes, and the complete records of a buffer. */
#include "io/csv_index.h"

/* --- Rows ---------------------------------------------------------------------------------------------- */

ALWAYS_INLINE uint32_t split(const char *bytes, char separator, uint32_t most, uint32_t *ends,
                             scan_byte_finder *find, scan_parity *parity, scan_writer *write)
{
    quote_state state = QUOTES_BEFORE_RECORD;
    uint32_t count = 0;
    for (uint32_t at = 0; count <= most; at += SCAN_STEP) {
        byte_masks of = find(bytes + at, separator);
        const uint64_t row = of.newline ^ (of.newline - 1);
        of.newline &= row;
        cell_ends found = find_cell_ends(&state, &of, parity);
        if (((found.bad | of.zero) & row) != 0)
            return 0;
        count += write(found.delimiters & row, at, ends + count);
        if (of.newline != 0)
            return (found.delimiters & of.newline) != 0 && count <= most ? count : 0;
    }
    return 0;
}

uint32_t csv_rows_of_width(const char *bytes, const uint32_t *ends, uint32_t cells)
{
    uint32_t i = 0;
    while ((bytes[ends[i]] == '\n') == ((i + 1) % cells == 0))
        i++;
    return i / cells;
}

/* --- Buffers ------------------------------------------------------------------------------------------- */

static unsigned highest_bit(uint64_t bits)
{
#if defined(__GNUC__)
    return 63u - (unsigned)__builtin_clzll(bits);
#else
    unsigned at = 63;
    while ((bits >> at & 1) == 0)
        at--;
    return at;
#endif
}

/* The end of the last line that ends within from .. until - 1; 0 = none does. */
static size_t last_line_end(const char *bytes, size_t from, size_t until)
{
    while (until > from && bytes[until - 1] != '\n')
        until--;
    return until > from ? until : 0;
}

/* A buffer that is searched; the records up to `safe` are complete. */
typedef struct prefix_scan {
    const char *bytes;
    size_t size;
    size_t cells_max;
    size_t at; /* the next block */
    size_t safe;
    quote_state state;
} prefix_scan;

/* Bits of the block that are in the buffer. */
ALWAYS_INLINE uint64_t bits_of_block(const prefix_scan *of)
{
    size_t left = of->size - of->at;
    return left < SCAN_STEP ? (UINT64_C(1) << left) - 1 : UINT64_MAX;
}

/* Looks at one block. False: a quote is bad, and no record from `safe` on is sure. */
ALWAYS_INLINE bool scan_block(prefix_scan *of, const byte_masks *masks, scan_parity *parity)
{
    const cell_ends found = find_cell_ends(&of->state, masks, parity);
    const uint64_t bad = found.bad & bits_of_block(of);
    const uint64_t good = (bad - 1) & ~bad; /* the bits before the first bad one; all, if there is none */
    const uint64_t line_ends = masks->newline & found.delimiters & good;
    if ((masks->newline & ~found.delimiters & good) != 0 && of->size - of->safe >= of->cells_max)
        of->size = of->safe + of->cells_max - 1;
    if (of->at < of->size && (line_ends & bits_of_block(of)) != 0)
        of->safe = of->at + highest_bit(line_ends & bits_of_block(of)) + 1;
    of->at += SCAN_STEP;
    return bad == 0;
}

/* Goes on to the next quote; the state is outside quotes. False: there is none. */
static bool skip_to_quote(prefix_scan *of, char separator)
{
    const char *quote = memchr(of->bytes + of->at, '"', of->size - of->at);
    size_t until = quote != NULL ? (size_t)(quote - of->bytes) : of->size;
    size_t line = last_line_end(of->bytes, of->at, until);
    if (line > 0)
        of->safe = line;
    if (until > of->at)
        of->state.start = of->bytes[until - 1] == separator || of->bytes[until - 1] == '\n';
    of->at = until;
    return quote != NULL;
}

static bool is_outside(const quote_state *state) { return (state->inside | state->closed | state->closed_cr) == 0; }

/* Searches for the next quote where quotes are rare; scans block after block where a block has some. */
ALWAYS_INLINE size_t find_prefix(const char *bytes, size_t size, char separator, size_t cells_max,
                                 scan_byte_finder *find, scan_parity *parity)
{
    prefix_scan of = {.bytes = bytes, .size = size, .cells_max = cells_max, .state = QUOTES_BEFORE_RECORD};
    bool rare = true;
    while (of.at < of.size) {
        if (rare && is_outside(&of.state) && !skip_to_quote(&of, separator))
            break;
        byte_masks masks = find(bytes + of.at, separator);
        rare = masks.quote == 0;
        if (!scan_block(&of, &masks, parity))
            break;
    }
    return of.safe;
}

/* --- Variants ------------------------------------------------------------------------------------------ */

static uint32_t split_8(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split(bytes, separator, most, ends, scan_bytes_8, scan_parity_shifts, scan_write);
}

static size_t find_prefix_8(const char *bytes, size_t size, char separator, size_t cells_max)
{
    return find_prefix(bytes, size, separator, cells_max, scan_bytes_8, scan_parity_shifts);
}

#ifdef SCAN_X86

#ifndef PROCESSOR_HAS /* a test chooses what a processor has */
#define PROCESSOR_HAS(feature) (__builtin_cpu_supports(feature) != 0)
#endif

bool scan_has_avx2(void)
{
    return PROCESSOR_HAS("avx2") && PROCESSOR_HAS("bmi") && PROCESSOR_HAS("popcnt") && PROCESSOR_HAS("pclmul") &&
           PROCESSOR_HAS("sse4.2");
}

static uint32_t split_16(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split(bytes, separator, most, ends, scan_bytes_16, scan_parity_shifts, scan_write);
}

static size_t find_prefix_16(const char *bytes, size_t size, char separator, size_t cells_max)
{
    return find_prefix(bytes, size, separator, cells_max, scan_bytes_16, scan_parity_shifts);
}

SCAN_AVX2 static uint32_t split_32(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split(bytes, separator, most, ends, scan_bytes_32, scan_parity_product, scan_write_group);
}

SCAN_AVX2 static size_t find_prefix_32(const char *bytes, size_t size, char separator, size_t cells_max)
{
    return find_prefix(bytes, size, separator, cells_max, scan_bytes_32, scan_parity_product);
}

#endif

bool csv_index_get_variant(size_t number, csv_index_variant *out)
{
    static const csv_index_variant variants[] = {{split_8, find_prefix_8},
#ifdef SCAN_X86
                                                 {split_16, find_prefix_16}, {split_32, find_prefix_32}
#endif
    };
    if (number >= sizeof variants / sizeof *variants)
        return false;
#ifdef SCAN_X86
    if (number == 2 && !scan_has_avx2())
        return false;
#endif
    *out = variants[number];
    return true;
}

#ifdef SCAN_X86

uint32_t split_row(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return scan_has_avx2() ? split_32(bytes, separator, most, ends)
                           : split_16(bytes, separator, most, ends);
}

size_t csv_complete_prefix(const char *bytes, size_t size, char separator, size_t cells_max)
{
    return scan_has_avx2() ? find_prefix_32(bytes, size, separator, cells_max)
                           : find_prefix_16(bytes, size, separator, cells_max);
}

#else

uint32_t split_row(const char *bytes, char separator, uint32_t most, uint32_t *ends)
{
    return split_8(bytes, separator, most, ends);
}

size_t csv_complete_prefix(const char *bytes, size_t size, char separator, size_t cells_max)
{
    return find_prefix_8(bytes, size, separator, cells_max);
}

#endif

/* SPDX-License-Identifier: Apache-2.0 */
/* The search for signs: 64 bytes become two sets of bits, whose places are then written down. */
#include "scan.h"

#include <string.h>

#if defined(__x86_64__) && defined(__GNUC__)
#define SCAN_X86 1
#include <immintrin.h>
#endif

/* Bits of a step that lie behind the end are no signs. */
static inline uint64_t bits_below(size_t count) { return count >= 64 ? UINT64_MAX : ((uint64_t)1 << count) - 1; }

static inline unsigned lowest_bit(uint64_t bits)
{
#if defined(__GNUC__)
    return (unsigned)__builtin_ctzll(bits);
#else
    unsigned at = 0;
    while ((bits >> at & 1) == 0)
        at++;
    return at;
#endif
}

static inline size_t write_places(uint64_t bits, uint32_t base, uint32_t *places, size_t count)
{
    for (; bits != 0; bits &= bits - 1)
        places[count++] = base + lowest_bit(bits);
    return count;
}

/* The place in front of the first byte, in the arithmetic of places. */
static inline void start(scan_index *out)
{
    out->signs[0] = UINT32_MAX;
    out->sign_count = 1;
    out->feed_count = 0;
}

static inline void take_step(uint64_t separators, uint64_t feeds, size_t at, size_t size, scan_index *out)
{
    uint64_t inside = bits_below(size - at);
    out->sign_count = write_places((separators | feeds) & inside, (uint32_t)at, out->signs, out->sign_count);
    out->feed_count = write_places(feeds & inside, (uint32_t)at, out->feeds, out->feed_count);
}

/* The bytes of a word that are zero, as the high bit of each; exact for every byte. */
static inline uint64_t zero_bytes(uint64_t word)
{
    const uint64_t low = UINT64_C(0x7F7F7F7F7F7F7F7F);
    return ~(((word & low) + low) | word | low);
}

/* The high bits of eight bytes as the eight bits of a number, the first byte lowest. */
static inline uint64_t gather(const unsigned char bytes[8])
{
    uint64_t bits = 0;
    for (unsigned i = 0; i < 8; i++)
        bits |= (uint64_t)(bytes[i] >> 7) << i;
    return bits;
}

static inline uint64_t equal_bytes(uint64_t word, char sign)
{
    uint64_t found = zero_bytes(word ^ UINT64_C(0x0101010101010101) * (unsigned char)sign);
    unsigned char bytes[8];
    if (found == 0)
        return 0;
    memcpy(bytes, &found, sizeof bytes);
    return gather(bytes);
}

void scan_plainly(const char *bytes, size_t size, char separator, scan_index *out)
{
    start(out);
    for (size_t at = 0; at < size; at += SCAN_STEP) {
        uint64_t separators = 0;
        uint64_t feeds = 0;
        for (unsigned i = 0; i < SCAN_STEP / 8; i++) {
            uint64_t word;
            memcpy(&word, bytes + at + 8 * i, sizeof word);
            separators |= equal_bytes(word, separator) << 8 * i;
            feeds |= equal_bytes(word, '\n') << 8 * i;
        }
        take_step(separators, feeds, at, size, out);
    }
}

#ifdef SCAN_X86

static inline uint64_t equal_16(const char *bytes, __m128i sign)
{
    __m128i loaded = _mm_loadu_si128((const __m128i *)(const void *)bytes);
    return (uint32_t)_mm_movemask_epi8(_mm_cmpeq_epi8(loaded, sign));
}

static void scan_16(const char *bytes, size_t size, char separator, scan_index *out)
{
    __m128i parts = _mm_set1_epi8(separator);
    __m128i ends = _mm_set1_epi8('\n');
    start(out);
    for (size_t at = 0; at < size; at += SCAN_STEP) {
        uint64_t separators = 0;
        uint64_t feeds = 0;
        for (unsigned i = 0; i < 4; i++) {
            separators |= equal_16(bytes + at + 16 * i, parts) << 16 * i;
            feeds |= equal_16(bytes + at + 16 * i, ends) << 16 * i;
        }
        take_step(separators, feeds, at, size, out);
    }
}

#define FAST __attribute__((target("avx2,bmi,popcnt"))) static

/* A number of places is written whether they are signs or not, and then counted: a loop that always has the same
 * length is never mispredicted. */
FAST inline size_t write_many(uint64_t bits, uint32_t base, unsigned many, uint32_t *places, size_t count)
{
    size_t until = count + (size_t)__builtin_popcountll(bits);
    do {
        for (unsigned i = 0; i < many; i++) {
            places[count + i] = base + (uint32_t)_tzcnt_u64(bits);
            bits &= bits - 1;
        }
        count += many;
    } while (bits != 0);
    return until;
}

FAST inline uint64_t equal_64(const char *bytes, __m256i sign)
{
    __m256i low = _mm256_loadu_si256((const __m256i *)(const void *)bytes);
    __m256i high = _mm256_loadu_si256((const __m256i *)(const void *)(bytes + 32));
    return (uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(low, sign)) |
           (uint64_t)(uint32_t)_mm256_movemask_epi8(_mm256_cmpeq_epi8(high, sign)) << 32;
}

FAST void scan_32(const char *bytes, size_t size, char separator, scan_index *out)
{
    __m256i parts = _mm256_set1_epi8(separator);
    __m256i ends = _mm256_set1_epi8('\n');
    start(out);
    size_t signs = out->sign_count;
    size_t line_ends = 0;
    for (size_t at = 0; at < size; at += SCAN_STEP) {
        uint64_t inside = bits_below(size - at);
        uint64_t feeds = equal_64(bytes + at, ends) & inside;
        uint64_t both = (equal_64(bytes + at, parts) & inside) | feeds;
        signs = write_many(both, (uint32_t)at, 16, out->signs, signs);
        line_ends = write_many(feeds, (uint32_t)at, 4, out->feeds, line_ends);
    }
    out->sign_count = signs;
    out->feed_count = line_ends;
}

#endif

scan_function *scan_choose(void)
{
#ifdef SCAN_X86
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("bmi") && __builtin_cpu_supports("popcnt"))
        return scan_32;
    return scan_16;
#else
    return scan_plainly;
#endif
}

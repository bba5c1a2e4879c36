/* SPDX-License-Identifier: Apache-2.0 */
/* Finds separators and line feeds in a stretch of bytes, many at a time. */
#ifndef SCAN_H
#define SCAN_H

#include <stddef.h>
#include <stdint.h>

/* Most bytes that one call looks at. */
#ifndef SCAN_MAX /* smaller in a test */
#define SCAN_MAX 16384u
#endif
#define SCAN_STEP 64u

/* Where signs stand, from the first byte of the stretch; in their order. The places behind those that are counted are
 * scratch. */
typedef struct scan_index {
    uint32_t signs[1 + SCAN_MAX + SCAN_STEP]; /* separators and line feeds; the first stands in front of the stretch,
                                                 where the line before it ended */
    uint32_t feeds[SCAN_MAX + SCAN_STEP]; /* line feeds alone */
    size_t sign_count; /* that first one included */
    size_t feed_count;
} scan_index;

/* Looks through `size` bytes, at most SCAN_MAX. SCAN_STEP bytes behind them must be readable. */
typedef void scan_function(const char *bytes, size_t size, char separator, scan_index *out);

/* The fastest way that this processor has. */
scan_function *scan_choose(void);

/* The way that every processor has. */
scan_function scan_plainly;

#endif

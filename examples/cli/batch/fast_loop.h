/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path of `rodtravel batch`. */
#ifndef BATCH_FAST_LOOP_H
#define BATCH_FAST_LOOP_H

#include "batch/chunk.h"

/* Writes or counts cached rows up to the first that is new or unusual, and leaves the reader before that. The chunk
 * has a cache that is active. */
void batch_write_cached_rows(batch_chunk *chunk);

#endif

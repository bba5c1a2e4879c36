/* SPDX-License-Identifier: Apache-2.0 */
/* The fast path for lines of JSON, as fast_loop.h is that of CSV. */
#ifndef OBJECT_LOOP_H
#define OBJECT_LOOP_H

#include "batch/chunk.h"

/* Writes objects up to the first that batch_write_object must take. */
void batch_write_cached_objects(batch_chunk *chunk);

#endif

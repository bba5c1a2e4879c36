/* SPDX-License-Identifier: Apache-2.0 */
/* The delivery of chunks, in the order of the file. */
#ifndef BATCH_DELIVERY_H
#define BATCH_DELIVERY_H

#include "batch/chunk.h"
#include "input/input_file.h"

/* Writes and counts a chunk; all before it were delivered. False: the run must stop, said on stderr. */
bool batch_deliver(batch_chunk *chunk, const input_file *input);

#endif

/* SPDX-License-Identifier: Apache-2.0 */
/* Memory of a table that is filled far and wide. */
#ifndef BATCH_LARGE_MEMORY_H
#define BATCH_LARGE_MEMORY_H

#include <stddef.h>

/* The system is asked to give it in large pages, so that a table of megabytes is not given in thousands of steps. Its
 * bytes are not set; they begin with a line of the processor's cache. NULL: no memory. Ends with free. */
void *large_memory(size_t size);

#endif

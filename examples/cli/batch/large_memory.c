/* SPDX-License-Identifier: Apache-2.0 */
/* madvise is of no standard. NOLINTNEXTLINE(cert-dcl37-c,cert-dcl51-cpp,bugprone-reserved-identifier) */
#define _DEFAULT_SOURCE
#include "batch/large_memory.h"

#include <stdlib.h>
#include <sys/mman.h>

#define LARGE_PAGE ((size_t)2 << 20)
#define SMALL_LINE ((size_t)64) /* of the processor's cache */

void *large_memory(size_t size)
{
    const size_t room = (size + LARGE_PAGE - 1) / LARGE_PAGE * LARGE_PAGE;
    if (size < LARGE_PAGE)
        return aligned_alloc(SMALL_LINE, (size + SMALL_LINE - 1) / SMALL_LINE * SMALL_LINE);
    void *made = aligned_alloc(LARGE_PAGE, room);
#ifdef MADV_HUGEPAGE
    if (made != NULL)
        (void)madvise(made, room, MADV_HUGEPAGE); /* where it does not help, it does no harm */
#endif
    return made;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Files for what does not fit in memory. */
#ifndef TEMPORARY_FILE_H
#define TEMPORARY_FILE_H

#include <stdio.h>

/* A file without a name, to write and read, in TMPDIR or /tmp; the system frees it when it is closed, however the
 * program ends. NULL: errno says why. */
FILE *temporary_file(void);

#endif

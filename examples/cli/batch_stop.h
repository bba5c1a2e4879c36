/* SPDX-License-Identifier: Apache-2.0 */
/* How a run of `rodtravel batch` ends early: by a signal, or because what it makes is not wanted any more. */
#ifndef BATCH_STOP_H
#define BATCH_STOP_H

#include <stdbool.h>

/* From now on SIGINT and SIGTERM ask the run to stop between two rows; a second one ends it at once. One that is
 * ignored stays ignored. */
void batch_stop_listen(void);

/* Asks the run to stop. */
void batch_stop_ask(void);

/* True if it was asked to, by whomever. */
bool batch_stop_asked(void);

/* Waits until the descriptor can be read without waiting. False: the run was asked to stop meanwhile. */
bool batch_stop_or_ready(int descriptor);

#endif

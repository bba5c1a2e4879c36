/* SPDX-License-Identifier: Apache-2.0 */
/* How a run ends early: by a signal, or because its output is not wanted any more. */
#ifndef INTERRUPT_H
#define INTERRUPT_H

#include <stdbool.h>

/* From now on SIGINT and SIGTERM ask the run to stop between two rows; a second one ends it at once. One that is
 * ignored stays ignored. */
void interrupt_listen(void);

/* Asks the run to stop. */
void interrupt_request(void);

/* True if the run was asked to stop. */
bool interrupt_requested(void);

/* Waits until the descriptor can be read without waiting. False: the run was asked to stop meanwhile. */
bool interrupt_or_ready(int descriptor);

#endif

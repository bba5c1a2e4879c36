/* SPDX-License-Identifier: Apache-2.0 */
/* What the command has of a system beside its files, where there is none: in place of io/interrupt.c,
 * io/system_random.c and practice/interview.c. Practice is marked from a file of answers. */
#include "io/interrupt.h"
#include "io/system_random.h"
#include "practice/practice.h"

#include <time.h>

void interrupt_listen(void) {}

void interrupt_request(void) {}

bool interrupt_requested(void) { return false; }

bool interrupt_or_ready(int descriptor)
{
    (void)descriptor;
    return true;
}

bool practice_interview(const practice *of, practice_score *score)
{
    (void)of;
    (void)score;
    return false;
}

void practice_note_end(void) {}

int practice_read_failure(void) { return 0; }

/* Of a practice whose seed nobody gave: the second will do. */
uint64_t system_random(void) { return (uint64_t)time(NULL) * 1000003u; }

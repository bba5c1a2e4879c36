/* SPDX-License-Identifier: Apache-2.0 */
/* Exit statuses of the command. */
#ifndef EXIT_STATUS_H
#define EXIT_STATUS_H

/* Exit statuses; fixed. A program that cannot write its answer ends with STATUS_USAGE too. */
enum {
    STATUS_GOOD = 0,
    STATUS_OUT = 1,          /* a wheel end is out of adjustment or inoperative */
    STATUS_USAGE = 2,        /* wrong usage, or an unreadable single input */
    STATUS_UNDETERMINED = 3, /* nothing is out, but something is undetermined */
    STATUS_CONTINUE = -1     /* no exit status: go on */
};

#endif

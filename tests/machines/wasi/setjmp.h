/* SPDX-License-Identifier: Apache-2.0 */
/* For the tests on a WASI whose C library has no setjmp. cmocka ends a failed test by it. */
#ifndef TEST_WASI_SETJMP_H
#define TEST_WASI_SETJMP_H

#include <stdint.h>

typedef uintptr_t jmp_buf[1];

int setjmp(jmp_buf place) __attribute__((returns_twice));
_Noreturn void longjmp(jmp_buf place, int value);

#endif

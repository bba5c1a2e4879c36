/* SPDX-License-Identifier: Apache-2.0 */
/* Preloaded into test programs, so that they run under a comma locale although they never ask for one. */
#include <locale.h>
#include <stdio.h>
#include <unistd.h>

/* A run under the wrong locale would prove nothing, so it fails. */
__attribute__((constructor)) static void take_locale(void)
{
    if (setlocale(LC_ALL, "") == NULL || localeconv()->decimal_point[0] != ',') {
        fputs("the comma locale is not there\n", stderr);
        _exit(99);
    }
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Preloaded into test programs, so that they run under a comma locale although they never ask for one. */
#include <locale.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* A run that was to have a comma and has none would prove nothing, so it fails; a test may still try the
 * command under other locales of its own choice. */
__attribute__((constructor)) static void take_locale(void)
{
    const char *taken = setlocale(LC_ALL, "");
    const char *all = getenv("LC_ALL");
    const char *asked = all != NULL && all[0] != '\0' ? all : getenv("LANG");
    const char *comma = getenv("COMMA_LOCALE");
    bool wanted = asked != NULL && comma != NULL && strcmp(asked, comma) == 0;
    if (wanted && (taken == NULL || localeconv()->decimal_point[0] != ',')) {
        fputs("the comma locale is not there\n", stderr);
        _exit(99);
    }
    setlocale(LC_MESSAGES, "C"); /* the system's own sentences stay those that the tests know */
}

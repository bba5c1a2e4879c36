/* SPDX-License-Identifier: Apache-2.0 */
/* Prints every enumeration of the library, for what a language makes of them when it is built: a line with the name,
 * "rodt_verdict", then a line for each enumerator: its symbol, number, word and text, with a tab before each. */
#include <inttypes.h>
#include <rodtravel/rodtravel.h>
#include <stdio.h>

int main(void)
{
    for (size_t i = 0; i < rodt_enumeration_count(); i++) {
        const rodt_enumeration *enumeration = rodt_enumeration_at(i);
        puts(rodt_enumeration_name(enumeration));
        for (size_t row = 0; row < rodt_enumerator_count(enumeration); row++) {
            const rodt_enumerator *enumerator = rodt_enumerator_at(enumeration, row);
            printf("\t%s\t%" PRId64 "\t%s\t%s\n", enumerator->symbol, enumerator->number, enumerator->word,
                   enumerator->text);
        }
    }
    return fflush(stdout) == 0 ? 0 : 1;
}

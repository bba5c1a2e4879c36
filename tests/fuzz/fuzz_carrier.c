/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a file of a carrier's own limits, of any bytes. Every command refuses it or takes it, and no answer is
 * more favourable than that of the law. */
#include "command.h"
#include "source.h"

#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Judgements around the limits of the law. */
static const char *const lines[] = {
    "stroke 30 2 4 --psi 95 --as-of 2026-11-20",
    "stroke 30 2 3.9 --psi 95 --as-of 2026-11-20",
    "stroke 24L 2 3.9 --psi 95 --as-of 2026-11-20",
    "stroke 20 2 3.8 --psi 95 --as-of 2026-11-20",
    "stroke 36 2 4.1 --psi 95 --as-of 2026-11-20",
    "air warning 62 --vehicle single --rules us-cdl",
    "air loss-applied --before 100 --after 97.5 --vehicle single --rules us-cdl",
    "air build-up --seconds 40 --from 85 --to 100 --rules us-cdl",
};
#define LINES (sizeof lines / sizeof lines[0])

static int run(const char *words, const char *more)
{
    char line[200];
    snprintf(line, sizeof line, "%s%s", words, more);
    return command_run(line)->status;
}

static bool is_worse_or_same(int own, int law) { return law == GOOD || own == law || (law == OPEN && own == BAD); }

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static int law[LINES];
    static bool known;
    command_begin();
    for (size_t i = 0; i < LINES && !known; i++) {
        law[i] = run(lines[i], "");
        demand(law[i] != REFUSED);
    }
    known = true;
    command_put("own", (const char *)data, size);
    bool refused = run("limits --limits own", "") == REFUSED;
    demand((run("limits --limits own --json", "") == REFUSED) == refused);
    for (size_t i = 0; i < LINES && (!refused || i == 0); i++) {
        int own = run(lines[i], " --limits own");
        demand((own == REFUSED) == refused);
        demand(refused || is_worse_or_same(own, law[i]));
    }
    return 0;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a file of a carrier's own limits, of any bytes. Every command refuses it or takes it, and no answer is
 * more favourable than that of the law. */
#include "command.h"
#include "source.h"

#include <stdio.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Judgements around the limits of the law. A file may fit one rule set and not the other. */
static const char *const rules[] = {"us-fmcsr", "us-cdl"};
#define RULES (sizeof rules / sizeof rules[0])
static const struct {
    const char *words;
    size_t rules;
} lines[] = {
    {"stroke 30 2 4 --psi 95 --as-of 2026-11-20", 0},
    {"stroke 30 2 3.9 --psi 95 --as-of 2026-11-20", 0},
    {"stroke 24L 2 3.9 --psi 95 --as-of 2026-11-20", 0},
    {"stroke 20 2 3.8 --psi 95 --as-of 2026-11-20", 0},
    {"stroke 36 2 4.1 --psi 95 --as-of 2026-11-20", 0},
    {"air warning 62 --vehicle single", 1},
    {"air loss-applied --before 100 --after 97.5 --vehicle single", 1},
    {"air build-up --seconds 40 --from 85 --to 100", 1},
};
#define LINES (sizeof lines / sizeof lines[0])

static int run(const char *words, size_t by, const char *more)
{
    char line[200];
    snprintf(line, sizeof line, "%s --rules %s%s", words, rules[by], more);
    return command_run(line)->status;
}

static bool is_refused(size_t by)
{
    bool refused = run("limits", by, " --limits own") == REFUSED;
    demand((run("limits", by, " --limits own --json") == REFUSED) == refused);
    return refused;
}

static bool is_worse_or_same(int own, int law) { return law == GOOD || own == law || (law == OPEN && own == BAD); }

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static int law[LINES];
    static bool known;
    command_begin();
    for (size_t i = 0; i < LINES && !known; i++) {
        law[i] = run(lines[i].words, lines[i].rules, "");
        demand(law[i] != REFUSED);
    }
    known = true;
    command_put("own", (const char *)data, size);
    bool refused[RULES];
    for (size_t by = 0; by < RULES; by++)
        refused[by] = is_refused(by);
    for (size_t i = 0; i < LINES; i++) {
        int own = run(lines[i].words, lines[i].rules, " --limits own");
        demand((own == REFUSED) == refused[lines[i].rules]);
        demand(own == REFUSED || is_worse_or_same(own, law[i]));
    }
    return 0;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Random numbers that are the same on every machine: SplitMix64 (Steele, Lea, Flood, "Fast splittable pseudorandom
 * number generators", OOPSLA 2014), because the C library's own generator differs between systems. */
#include "practice/practice.h"
#include "io/system_random.h"

static uint64_t next(practice_random *random)
{
    random->state += UINT64_C(0x9E3779B97F4A7C15);
    uint64_t z = random->state;
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

/* Draws beyond the last whole multiple of the bound are rejected: a plain remainder would favour small numbers. */
unsigned practice_below(practice_random *random, unsigned bound)
{
    uint64_t end = UINT64_MAX - UINT64_MAX % bound;
    uint64_t drawn;
    do
        drawn = next(random);
    while (drawn >= end);
    return (unsigned)(drawn % bound);
}

int practice_between(practice_random *random, int least, int most)
{
    return most <= least ? least : least + (int)practice_below(random, (unsigned)(most - least) + 1);
}

size_t practice_pick(practice_random *random, const unsigned char *weights, size_t count)
{
    unsigned sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += weights[i];
    unsigned drawn = sum > 0 ? practice_below(random, sum) : 0;
    for (size_t i = 0; i < count; i++) {
        if (drawn < weights[i])
            return i;
        drawn -= weights[i];
    }
    return 0;
}

uint64_t practice_any_seed(void)
{
    practice_random random = {system_random()};
    return practice_below(&random, 1000000000u);
}

/* SPDX-License-Identifier: Apache-2.0 */
/* Lines "psi floor reservoir chambers fill_num fill_den" in; "num/den count" out: the pressure after one full
 * application and how many keep the floor. reservoir.py compares them. */
#include <inttypes.h>
#include <stdio.h>

#include <rodtravel/rodtravel.h>

int main(void)
{
    int64_t psi, floor, reservoir, chambers, num, den;
    while (scanf("%" SCNd64 " %" SCNd64 " %" SCNd64 " %" SCNd64 " %" SCNd64 " %" SCNd64, &psi, &floor, &reservoir, &chambers,
                 &num, &den) == 6) {
        const rodt_pressure before = {psi, 1}, least = {floor, 1};
        const rodt_ratio volume = {reservoir, 1}, filled = {chambers, 1}, fill = {num, den};
        rodt_pressure after;
        unsigned count;
        if (rodt_reservoir_estimate_application(before, volume, filled, fill, &after) != RODT_OK ||
            rodt_reservoir_estimate_applications(before, least, volume, filled, fill, &count) != RODT_OK)
            return 1;
        printf("%" PRId64 "/%" PRId64 " %u\n", after.num, after.den, count);
    }
    return 0;
}

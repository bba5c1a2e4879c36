/* SPDX-License-Identifier: Apache-2.0 */
/* Judges one wheel end with the library of a package; every packaging test builds and runs it. */
#include <rodtravel/rodtravel.h>
#include <stdio.h>

int main(void)
{
    const rodt_form form = {
        .chamber = "30", .released = "2 1/8", .applied = "4 1/8", .stroke_class = "standard", .psi = "95"};
    rodt_finding finding;
    rodt_error error;
    if (rodt_form_judge(&form, rodt_rules_find(RODT_DEFAULT_RULES), &finding, &error) != RODT_OK) {
        puts(error.text);
        return 1;
    }
    printf("rodtravel %s: %s\n", rodt_version(), rodt_verdict_name(finding.verdict));
    return finding.verdict != RODT_VERDICT_IN_ADJUSTMENT;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* One wheel end judged, and said in another language. */
#include <rodtravel/rodtravel.h>

#include <stdio.h>

static void say(rodt_status made, const rodt_message *message)
{
    const rodt_catalogue *french = rodt_catalogue_find("fr");
    char sentence[RODT_SENTENCE_SIZE * 2];
    if (made == RODT_OK && rodt_message_format(message, french, sentence, sizeof sentence, NULL) == RODT_OK)
        printf("%s\n", sentence);
}

int main(void)
{
    rodt_form form = {.chamber = "30", .released = "2 1/8", .applied = "4 3/8", .psi = "95", .division = "1/16"};
    rodt_finding finding;
    rodt_message message;
    rodt_error error;
    if (rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, &error) != RODT_OK) {
        fprintf(stderr, "%s\n", error.text);
        return 1;
    }
    say(rodt_finding_message(&finding, &message), &message);
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        say(rodt_finding_reason_message(&finding, (rodt_reason)reason, &message), &message);
    say(rodt_finding_proof_message(&finding, &message), &message);
    form.applied = "4 3/8 ft";
    if (rodt_form_judge(&form, rodt_rules_find("us-fmcsr"), &finding, &error) != RODT_OK)
        say(rodt_error_message(&error, &message), &message); /* an error is data too */
    return 0;
}

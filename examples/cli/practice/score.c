/* SPDX-License-Identifier: Apache-2.0 */
/* Mistakes by name, and the score. */
#include "practice/practice.h"
#include "ui/exit_status.h"
#include "ui/wrap.h"

#include <stdio.h>

static const struct {
    const char *word;
    const char *sentence;
    bool endangers;
} kinds[MISTAKE_KINDS] = {
    [MISTAKE_NONE] = {"", "", false},
    [MISTAKE_WRONG_WAY] = {"wrong-way", "subtracted the wrong way: the stroke is applied less released", false},
    [MISTAKE_APPLIED] = {"applied-as-stroke", "took the applied reading as the stroke: the released one is still to be "
                                              "subtracted", false},
    [MISTAKE_RELEASED] = {"released-as-stroke", "took the released reading as the stroke", false},
    [MISTAKE_SUM] = {"added", "added the readings instead of subtracting them", false},
    [MISTAKE_HAND_PULL] = {"free-stroke", "took the free stroke, pulled by hand, as the applied stroke", false},
    [MISTAKE_BORROW] = {"borrow", "forgot to borrow from the whole: the fraction of the applied reading is the smaller "
                                  "one", false},
    [MISTAKE_TICK] = {"one-tick", "read a tape wrong by one tick", false},
    [MISTAKE_SWAPPED_UNSEEN] = {"swapped-unseen", "subtracted the smaller from the larger: applied is below released, "
                                                  "so there is no stroke", false},
    [MISTAKE_STROKE] = {"stroke", "the stroke is another one: read both tapes again, then subtract", false},
    [MISTAKE_RATED] = {"rated-stroke", "took the rated stroke, stamped on the housing, as the limit", false},
    [MISTAKE_OTHER_CLASS] = {"other-class", "took the limit of the other stroke class: look for the signs of long "
                                            "stroke", false},
    [MISTAKE_OTHER_ROW] = {"other-row", "took the other long-stroke row of this size: only a marked rated stroke of "
                                        "3 in gives the longer limit", false},
    [MISTAKE_SPRING_SIZE] = {"spring-size", "took the spring brake's size as the chamber's: the first number counts",
                             false},
    [MISTAKE_FAMILY] = {"other-family", "took the limit of another kind of housing", false},
    [MISTAKE_DAY] = {"other-day", "took the limit of another day: this one changed", false},
    [MISTAKE_LIMIT] = {"limit", "the limit is another one: look in the table for this chamber", false},
    [MISTAKE_AT_LIMIT] = {"at-limit", "failed a stroke exactly at the limit: it must be greater to fail", false},
    [MISTAKE_PASSED_OVER] = {"passed-over", "passed a brake that is out of adjustment", true},
    [MISTAKE_PASSED_DEAD] = {"passed-dead", "passed a brake that does not move: none is not a short stroke", true},
    [MISTAKE_PASSED_UNPROVEN] = {"passed-unproven", "passed a brake of which nothing is proven", true},
    [MISTAKE_FAILED_UNPROVEN] = {"failed-unproven", "failed a brake of which nothing is proven", false},
    [MISTAKE_EXCUSED] = {"left-open", "left open what is proven", false},
    [MISTAKE_FOLLOWS] = {"follows", "follows from the wrong stroke or limit", false},
    [MISTAKE_VERDICT] = {"verdict", "the verdict does not follow from the figures", false},
    [MISTAKE_REASON] = {"reason", "this reason does not decide the verdict", false},
    [MISTAKE_HALF_AS_WHOLE] = {"half-as-whole", "counted a brake that is over by less than 1/4 in as a whole one",
                               false},
    [MISTAKE_HALF_LEFT] = {"half-left-out", "left out the brakes that are over by less than 1/4 in: each counts half",
                           false},
    [MISTAKE_UNKNOWN_COUNTED] = {"unknown-counted", "counted undetermined brakes as defective", false},
    [MISTAKE_COUNT_OF] = {"count", "the count is another one", false},
    [MISTAKE_CRITERION] = {"criterion", "the criterion gives another outcome", false},
};

const char *practice_mistake_word(practice_mistake mistake) { return kinds[mistake].word; }

const char *practice_mistake_sentence(practice_mistake mistake) { return kinds[mistake].sentence; }

bool practice_mistake_endangers(practice_mistake mistake) { return kinds[mistake].endangers; }

/* --- Score -------------------------------------------------------------------------------------------- */

void practice_count_answer(practice_score *score, const practice_answer *answer, practice_mistake mistake)
{
    if (!answer->given)
        score->open++;
    else if (mistake == MISTAKE_NONE)
        score->right++;
    else
        score->wrong++;
    score->mistakes[mistake]++;
}

void practice_add_score(practice_score *total, const practice_score *part)
{
    total->right += part->right;
    total->wrong += part->wrong;
    total->open += part->open;
    for (size_t i = 0; i < MISTAKE_KINDS; i++)
        total->mistakes[i] += part->mistakes[i];
}

static void print_mistake(practice_mistake mistake, unsigned times)
{
    char label[24], line[300];
    snprintf(label, sizeof label, "%4u x", times);
    snprintf(line, sizeof line, "%s: %s", kinds[mistake].word, kinds[mistake].sentence);
    print_wrapped(stdout, label, 8, line);
}

void practice_print_score(const practice_score *score)
{
    bool endangers = false;
    char line[100];
    snprintf(line, sizeof line, "%u RIGHT OF %u ANSWERED", score->right, score->right + score->wrong);
    print_painted(stdout, score->wrong > 0 ? PAINT_OPEN : PAINT_GOOD, line);
    if (score->open > 0)
        printf("   %u not answered", score->open);
    putchar('\n');
    for (int i = MISTAKE_NONE + 1; i < MISTAKE_KINDS; i++) {
        if (score->mistakes[i] > 0)
            print_mistake((practice_mistake)i, score->mistakes[i]);
        endangers = endangers || (kinds[i].endangers && score->mistakes[i] > 0);
    }
    if (endangers)
        print_wrapped(stdout, "", 0, "A brake that may be bad would have gone on the road.");
}

int practice_status(const practice_score *score)
{
    if (score->wrong > 0)
        return STATUS_OUT;
    return score->open > 0 ? STATUS_UNDETERMINED : STATUS_GOOD;
}

/* SPDX-License-Identifier: Apache-2.0 */
/* The limits of one rule set for the cab, as a page (limit_page.c) and as a drawing (limit_drawing.c): what both
 * say (limit_card.c). */
#ifndef LIMIT_CARD_H
#define LIMIT_CARD_H

#include "input/rule_context.h"
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>

typedef struct limit_card {
    const rule_context *context;
    const rodt_rules *law;
    FILE *to;
    uint32_t seen; /* 1 << evidence of each figure that was found */
} limit_card;

limit_card limit_card_of(const rule_context *context, FILE *to);

void limit_page_write(const rule_context *context, FILE *to);
void limit_drawing_write(const rule_context *context, FILE *to);

/* --- Figures ----------------------------------------------------------------------------------------- */

/* The columns of the table, for clamp-type chambers. */
typedef enum card_column { CARD_STANDARD, CARD_LONG, CARD_LONG_MARKED, CARD_COLUMNS } card_column;
extern const char *const card_column_titles[CARD_COLUMNS]; /* to be said, as all texts here */

/* The next size of the law from *index on, each once, of clamp-type chambers or of all others; NULL = no more. */
const rodt_limit *card_next_size(const limit_card *of, bool clamp, size_t *index);
size_t card_count_sizes(const limit_card *of, bool clamp);

/* "1 3/4 in *" and "44.4 mm"; false = the size has no limit of that column. */
typedef struct card_figure {
    char inches[WORD_SIZE + 8], mm[WORD_SIZE + 4];
} card_figure;
bool card_find_figure(limit_card *of, const rodt_limit *row, card_column column, card_figure *out);

/* "bolt A: 1 3/8 in, 34.9 mm"; false = it has no limit that day. */
#define CARD_TEXT_SIZE ((size_t)1200)
bool card_format_other(limit_card *of, const rodt_limit *row, char text[CARD_TEXT_SIZE]);
#define CARD_NO_OTHERS                                                                                             \
    TO_SAY("Bolt, rotochamber and DD-3 chambers have no limit in this rule set: do not judge them by this page.")

/* --- Signs of a long stroke, drawn -------------------------------------------------------------------- */

#define CARD_SIGNS 4
typedef struct card_sign {
    int middle; /* across the drawing */
    size_t width; /* characters under it on one line */
    const char *box; /* of the sign in it */
    const char *shapes, *figure;
    int figure_y, figure_size;
    const char *label;
} card_sign;
extern const card_sign card_signs[CARD_SIGNS];

/* --- Sentences --------------------------------------------------------------------------------------- */

#define CARD_TITLE TO_SAY("Pushrod stroke: not more than this")
#define CARD_NAME TO_SAY("Adjustment limits")
#define CARD_LOOK TO_SAY("Look for:")
#define CARD_TYPE TO_SAY("Type")
const char *card_format_rules(const limit_card *of, char text[CARD_TEXT_SIZE]);
const char *card_format_conditions(const limit_card *of, char text[CARD_TEXT_SIZE]);
const char *card_comparison(const limit_card *of);
const char *card_format_marks(const limit_card *of, char text[CARD_TEXT_SIZE]);   /* after the figures; "" = none */
const char *card_format_sources(const limit_card *of, char text[CARD_TEXT_SIZE]); /* those in force, each once */
const char *card_format_foot(const limit_card *of, char text[CARD_TEXT_SIZE]);

#endif

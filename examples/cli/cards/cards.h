/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel cards`: every step of an inspection on a card of its own. */
#ifndef CARDS_H
#define CARDS_H

#include <rodtravel/rodtravel.h>

#include <stdio.h>

/* What the cards are for. */
typedef struct card_deck {
    const rodt_rules *rules;
    rodt_air_reading vehicle; /* its vehicle, towed_units and built */
} card_deck;

/* The vehicle in words: "combination, 1 towed unit, built 2015". */
#define CARDS_TEXT_SIZE 300
const char *cards_describe(const card_deck *deck, char text[CARDS_TEXT_SIZE]);

/* Each writes every card (text.c, html.c). */
void cards_print(const card_deck *deck, FILE *to);
void cards_write_html(const card_deck *deck, FILE *to);

#endif

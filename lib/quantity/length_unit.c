/* SPDX-License-Identifier: Apache-2.0 */
/* How people write the unit of a length, and how long it is. */
#include "quantity/length_unit.h"

#include "core/text.h"

const rodt_ratio rodti_inches_of[RODT_UNIT_END] = {
    [RODT_UNIT_IN] = {1, 1}, [RODT_UNIT_MM] = {5, 127}, [RODT_UNIT_CM] = {50, 127}};

typedef struct unit_word {
    const char *word;
    size_t size;
    RODT_ENUM32(rodt_unit) unit;
    bool only_after_fraction;
} unit_word;

#define WORD(word, unit) {(word), sizeof(word) - 1, (unit), false}

/* The most frequent ones first. A single apostrophe is not here: it means feet. */
static const unit_word unit_words[] = {
    WORD("\"", RODT_UNIT_IN),
    WORD("in", RODT_UNIT_IN),
    WORD("mm", RODT_UNIT_MM),
    WORD("cm", RODT_UNIT_CM),
    WORD("\xE2\x80\xB3", RODT_UNIT_IN), /* U+2033 double prime */
    WORD("\xE2\x80\x9D", RODT_UNIT_IN), /* U+201D closing quote */
    WORD("\xE2\x80\x9C", RODT_UNIT_IN), /* U+201C opening quote */
    WORD("in.", RODT_UNIT_IN),
    WORD("ins", RODT_UNIT_IN),
    WORD("inch", RODT_UNIT_IN),
    WORD("inches", RODT_UNIT_IN),
    WORD("po", RODT_UNIT_IN),
    WORD("pouce", RODT_UNIT_IN),
    WORD("pouces", RODT_UNIT_IN),
    {"of an inch", sizeof "of an inch" - 1, RODT_UNIT_IN, true},
    WORD("''", RODT_UNIT_IN),
    WORD("\xE2\x80\xB2\xE2\x80\xB2", RODT_UNIT_IN), /* two U+2032 primes */
    WORD("mm.", RODT_UNIT_MM),
    WORD("cm.", RODT_UNIT_CM),
    WORD("millimetre", RODT_UNIT_MM),
    WORD("millimetres", RODT_UNIT_MM),
    WORD("millimeter", RODT_UNIT_MM),
    WORD("millimeters", RODT_UNIT_MM),
    WORD("centimetre", RODT_UNIT_CM),
    WORD("centimetres", RODT_UNIT_CM),
    WORD("centimeter", RODT_UNIT_CM),
    WORD("centimeters", RODT_UNIT_CM),
};

bool rodti_unit_word_find(const char *text, size_t size, bool after_fraction, RODT_ENUM32(rodt_unit) *unit)
{
    for (size_t i = 0; i < COUNT_OF(unit_words); i++) {
        const unit_word *word = &unit_words[i];
        if (word->size == size && ((text[0] ^ word->word[0]) & ~32) == 0 && /* most differ in their first letter */
            rodti_text_is_word(text, size, word->word) && (after_fraction || !word->only_after_fraction)) {
            *unit = word->unit;
            return true;
        }
    }
    return false;
}

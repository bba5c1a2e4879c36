/* SPDX-License-Identifier: Apache-2.0 */
/* The one table of the fields of a wheel end, and the one way in which headings are compared. */
#include "judge/fields.h"

#include "core/text.h"
#include "judge/words.h"
#include "rodtravel/date.h"
#include "rodtravel/length.h"

#include <string.h>

/* A heading and its field; a list ends with none. */
typedef struct heading {
    const char *heading;
    rodt_field field;
} heading;

/* Other headings that say the same. A date or a pressure that is not seen would let a brake pass in silence. */
static const heading aliases[] = {{"insp date", RODT_FIELD_DATE},
                                  {"inspection date", RODT_FIELD_DATE},
                                  {"date of inspection", RODT_FIELD_DATE},
                                  {"class", RODT_FIELD_STROKE_CLASS},
                                  {"pressure", RODT_FIELD_PSI},
                                  {"pressure after", RODT_FIELD_PSI_AFTER},
                                  {0}};

/* What a folded heading of the field probably holds; a field is tried before those after it. */
static const heading hints[] = {{"date", RODT_FIELD_DATE},
                                {"datum", RODT_FIELD_DATE},
                                {"fecha", RODT_FIELD_DATE},
                                {"timestamp", RODT_FIELD_DATE},
                                {"inspected", RODT_FIELD_DATE},
                                {"measuredon", RODT_FIELD_DATE},
                                {"measuredat", RODT_FIELD_DATE},
                                {"testedon", RODT_FIELD_DATE},
                                {"testedat", RODT_FIELD_DATE},
                                {"strokeclass", RODT_FIELD_STROKE_CLASS},
                                {"stroketype", RODT_FIELD_STROKE_CLASS},
                                {"ratedstroke", RODT_FIELD_RATED_STROKE},
                                {"markedlimit", RODT_FIELD_MARKED_LIMIT},
                                {"psiafter", RODT_FIELD_PSI_AFTER},
                                {"afterpsi", RODT_FIELD_PSI_AFTER},
                                {"psi2", RODT_FIELD_PSI_AFTER},
                                {"kpaafter", RODT_FIELD_PSI_AFTER},
                                {"afterkpa", RODT_FIELD_PSI_AFTER},
                                {"pressureafter", RODT_FIELD_PSI_AFTER},
                                {"pressure2", RODT_FIELD_PSI_AFTER},
                                {"psi", RODT_FIELD_PSI},
                                {"pressure", RODT_FIELD_PSI},
                                {"kpa", RODT_FIELD_PSI},
                                {"lengthunit", RODT_FIELD_UNIT},
                                {"unitoflength", RODT_FIELD_UNIT},
                                {"unitofmeasure", RODT_FIELD_UNIT},
                                {"measurementunit", RODT_FIELD_UNIT},
                                {"springbrake", RODT_FIELD_SPRING_BRAKE},
                                {"parkingbrake", RODT_FIELD_SPRING_BRAKE},
                                {"parkbrake", RODT_FIELD_SPRING_BRAKE},
                                {"engineon", RODT_FIELD_ENGINE},
                                {"engineoff", RODT_FIELD_ENGINE},
                                {"enginerun", RODT_FIELD_ENGINE},
                                {"enginestat", RODT_FIELD_ENGINE},
                                {"drum", RODT_FIELD_DRUM},
                                {"armlength", RODT_FIELD_ARM_LENGTH},
                                {"slackarm", RODT_FIELD_ARM_LENGTH},
                                {0}};

/* The same for headings that say no more than this. */
static const heading whole_hints[] = {{"day", RODT_FIELD_DATE},           {"when", RODT_FIELD_DATE},
                                      {"rated", RODT_FIELD_RATED_STROKE}, {"uom", RODT_FIELD_UNIT},
                                      {"parking", RODT_FIELD_SPRING_BRAKE}, {0}};

/* --- Headings ---------------------------------------------------------------------------------------- */

/* The next byte that counts, lower case; '\0' at the end. */
static char next_byte(const char **at, const char *end)
{
    static const char mark[] = "\xEF\xBB\xBF";
    static const char no_break_space[] = "\xC2\xA0";
    while (*at < end) {
        size_t left = (size_t)(end - *at);
        if (left >= 3 && memcmp(*at, mark, 3) == 0) {
            *at += 3;
        } else if (left >= 2 && memcmp(*at, no_break_space, 2) == 0) {
            *at += 2;
        } else if (**at != '\0' && strchr(" \t\r\n_-.", **at) != NULL) {
            ++*at;
        } else {
            char byte = *(*at)++;
            return (char)(byte >= 'A' && byte <= 'Z' ? byte + ('a' - 'A') : byte == '\0' ? '\1' : byte);
        }
    }
    return '\0';
}

bool rodt_heading_equal(const char *a, size_t a_size, const char *b, size_t b_size)
{
    if (a == NULL || b == NULL)
        return a == b;
    const char *a_end = a + a_size;
    const char *b_end = b + b_size;
    char byte;
    do {
        byte = next_byte(&a, a_end);
        if (byte != next_byte(&b, b_end))
            return false;
    } while (byte != '\0');
    return true;
}

static rodt_field find_heading(const char *text, size_t size)
{
    const rodt_enumerator *field;
    for (size_t i = 0; (field = rodt_enumerator_at(&rodti_words_field, i)) != NULL; i++)
        if (rodt_heading_equal(text, size, field->word, strlen(field->word)))
            return (rodt_field)field->number;
    for (size_t i = 0; aliases[i].heading != NULL; i++)
        if (rodt_heading_equal(text, size, aliases[i].heading, strlen(aliases[i].heading)))
            return aliases[i].field;
    return RODT_FIELD_NONE;
}

rodt_status rodt_field_find_n(const char *text, size_t size, RODT_ENUM32(rodt_field) *out)
{
    if (text == NULL || out == NULL)
        return RODT_E_ARGUMENT;
    rodt_field found = find_heading(text, size);
    if (found == RODT_FIELD_NONE)
        return RODT_E_SYNTAX;
    *out = found;
    return RODT_OK;
}

rodt_status rodt_field_find(const char *text, RODT_ENUM32(rodt_field) *out)
{
    return rodt_field_find_n(text, text != NULL ? strlen(text) : 0, out);
}

/* The heading as it is compared; what is longer than any hint needs is cut. */
static void fold(const char *text, size_t size, char *folded, size_t room)
{
    const char *end = text + size;
    size_t used = 0;
    char byte;
    while (used + 1 < room && (byte = next_byte(&text, end)) != '\0')
        folded[used++] = byte;
    folded[used] = '\0';
}

/* How many bytes at the ends of two texts are the same. */
static size_t common_end(const char *a, size_t a_size, const char *b, size_t b_size)
{
    size_t count = 0;
    while (count < a_size && count < b_size && a[a_size - 1 - count] == b[b_size - 1 - count])
        count++;
    return count;
}

/* True if one byte more, less, another one, or two that changed places make one text of the other. */
static bool is_one_slip(const char *a, const char *b)
{
    while (*a != '\0' && *a == *b)
        a++, b++;
    size_t a_size = strlen(a), b_size = strlen(b), same = common_end(a, a_size, b, b_size);
    size_t a_left = a_size - same, b_left = b_size - same;
    bool swapped = a_left == 2 && b_left == 2 && a[0] == b[1] && a[1] == b[0];
    return swapped || (a_left <= 1 && b_left <= 1);
}

static bool is_slip_of(const char *folded, const char *name)
{
    char known[32] = {0};
    fold(name, strlen(name), known, sizeof known);
    return is_one_slip(folded, known);
}

/* "engin", "spring brkae"; a digit is no slip but a number: "psi2". */
static rodt_field find_slip(const char *folded)
{
    const rodt_enumerator *field;
    if (strpbrk(folded, "0123456789") != NULL)
        return RODT_FIELD_NONE;
    for (size_t i = 0; (field = rodt_enumerator_at(&rodti_words_field, i)) != NULL; i++)
        if (is_slip_of(folded, field->word))
            return (rodt_field)field->number;
    for (size_t i = 0; aliases[i].heading != NULL; i++)
        if (is_slip_of(folded, aliases[i].heading))
            return aliases[i].field;
    return RODT_FIELD_NONE;
}

rodt_field rodt_field_meant(const char *text, size_t size)
{
    char folded[256] = {0};
    if (text == NULL || find_heading(text, size) != RODT_FIELD_NONE)
        return RODT_FIELD_NONE;
    fold(text, size, folded, sizeof folded);
    rodt_field slip = find_slip(folded);
    if (slip != RODT_FIELD_NONE)
        return slip;
    for (size_t i = 0; hints[i].heading != NULL; i++)
        if (strstr(folded, hints[i].heading) != NULL)
            return hints[i].field;
    for (size_t i = 0; whole_hints[i].heading != NULL; i++)
        if (strcmp(folded, whole_hints[i].heading) == 0)
            return whole_hints[i].field;
    return RODT_FIELD_NONE;
}

/* --- Values ------------------------------------------------------------------------------------------ */

static const field_word engine_words[] = {{"off", RODT_RECORDED_NO}, {"on", RODT_RECORDED_YES}};
static const field_word spring_words[] = {{"released", RODT_RECORDED_NO}, {"off", RODT_RECORDED_NO},
                                          {"on", RODT_RECORDED_YES}, {"applied", RODT_RECORDED_YES}};
static const field_word drum_words[] = {{"cold", RODT_DRUM_COLD}, {"warm", RODT_DRUM_WARM}, {"hot", RODT_DRUM_HOT}};

field_words rodti_words_of_field(rodt_field field)
{
    static const field_words words[RODT_READING_FIELDS] = {
        [RODT_FIELD_ENGINE] = {engine_words, COUNT_OF(engine_words)},
        [RODT_FIELD_SPRING_BRAKE] = {spring_words, COUNT_OF(spring_words)},
        [RODT_FIELD_DRUM] = {drum_words, COUNT_OF(drum_words)},
    };
    return words[field];
}

bool rodti_field_word_find(field_words words, const char *text, size_t size, int *meaning)
{
    rodti_text_trim(&text, &size);
    for (size_t i = 0; i < words.count; i++) {
        if (rodti_text_is_word(text, size, words.list[i].word)) {
            *meaning = words.list[i].meaning;
            return true;
        }
    }
    return false;
}

/* Half an inch is coarser than any tape: a 16 in its place means sixteenths. */
bool rodti_is_division(rodt_length length)
{
    static const rodt_length coarsest = {1, 2};
    return length.num > 0 && rodt_length_compare(length, coarsest) <= 0;
}

static bool is_division_in(rodt_unit unit, bool decimal_comma, const char *text, size_t size)
{
    const rodt_style style = {.unit = unit, .decimal_comma = decimal_comma};
    rodt_length length;
    return rodt_length_parse_n(text, size, &style, &length, NULL, NULL) == RODT_OK && rodti_is_division(length);
}

/* True if a text that is not blank is a division in some unit, with a point or a comma as its decimal separator. What
 * is one in centimetres is one in millimetres, too. */
static bool is_any_division(const char *text, size_t size)
{
    return is_division_in(RODT_UNIT_IN, false, text, size) || is_division_in(RODT_UNIT_MM, false, text, size) ||
           is_division_in(RODT_UNIT_MM, true, text, size);
}

bool rodt_field_accepts(rodt_field field, const char *text, size_t size)
{
    RODT_ENUM32(rodt_unit) unit;
    int meaning;
    if (text == NULL)
        return true;
    rodti_text_trim(&text, &size);
    if (size == 0)
        return true;
    switch ((int)field) {
    case RODT_FIELD_UNIT: return rodt_unit_parse_n(text, size, &unit, NULL) == RODT_OK;
    case RODT_FIELD_DIVISION: return is_any_division(text, size);
    case RODT_FIELD_ENGINE:
    case RODT_FIELD_SPRING_BRAKE:
    case RODT_FIELD_DRUM: return rodti_field_word_find(rodti_words_of_field(field), text, size, &meaning);
    default: return true;
    }
}

static bool ends_in(const char *text, size_t size, const char *end)
{
    size_t count = strlen(end);
    return size >= count && rodti_text_is_word(text + size - count, count, end);
}

/* "64", "64ths", "1/64", "0.1 mm": readings counted in parts; taking such a row for one in inches would be wrong. */
static bool may_be_division(const char *text, size_t size)
{
    static const char *const ends[] = {"th", "ths", "mm", "cm", "in", "inch", "inches", "po"};
    static const char *const parts[] = {"1", "2", "4", "8", "10", "16", "32", "64", "100", "128", "1000"};
    for (size_t i = 0; i < COUNT_OF(ends); i++)
        if (ends_in(text, size, ends[i]))
            return true;
    for (size_t i = 0; i < COUNT_OF(parts); i++)
        if (strlen(parts[i]) == size && memcmp(parts[i], text, size) == 0)
            return true;
    return false;
}

bool rodt_unit_is_vehicle(const char *text, size_t size)
{
    bool digit = false;
    if (text == NULL)
        return false;
    rodti_text_trim(&text, &size);
    for (size_t i = 0; i < size; i++) {
        if (strchr("/.,\"'", text[i]) != NULL /* as of a zero byte, too */ || (unsigned char)text[i] >= 0x80)
            return false;
        digit = digit || (text[i] >= '0' && text[i] <= '9');
    }
    return digit && !may_be_division(text, size);
}

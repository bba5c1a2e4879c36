/* SPDX-License-Identifier: Apache-2.0 */
/* Reads the .po format: entries of msgctxt, msgid, msgid_plural and msgstr, each a C string over one or more lines. */
#include <stdlib.h>
#include <string.h>

#include "catalogc/po.h"

#define FILE_SIZE_MAX 4194304u

void po_fault(po_file *po, unsigned line, const char *what, const char *name)
{
    if (line > 0)
        fprintf(stderr, "%s:%u: %s%s\n", po->path, line, what, name);
    else
        fprintf(stderr, "%s: %s%s\n", po->path, what, name);
    po->faults++;
}

/* Texts are made one after another; none is longer than its source. */
typedef struct po_reader {
    po_file *po;
    po_entry *entry; /* NULL before the first */
    char *end;       /* of the text that is being made */
    unsigned line;
    bool fuzzy;   /* of the entry that comes */
    bool context; /* the entry has begun with its context */
    bool text;    /* a string may go on */
} po_reader;

static void begin_entry(po_reader *reader)
{
    reader->entry = &reader->po->entries[reader->po->count++];
    *reader->entry = (po_entry){.line = reader->line, .fuzzy = reader->fuzzy};
    reader->fuzzy = false;
}

static char **place_of(po_reader *reader, const char *word, size_t size)
{
    static const char *const words[] = {"msgctxt", "msgid", "msgid_plural", "msgstr", "msgstr[0]", "msgstr[1]",
                                        "msgstr[2]"};
    size_t found = 0;
    while (found < COUNT_OF(words) && (strlen(words[found]) != size || memcmp(words[found], word, size) != 0))
        found++;
    if (found == 0 || (found == 1 && !reader->context))
        begin_entry(reader);
    reader->context = found == 0;
    if (found == COUNT_OF(words) || reader->entry == NULL)
        return NULL;
    char **const places[] = {&reader->entry->context,  &reader->entry->id,       &reader->entry->id_plural,
                             &reader->entry->texts[0], &reader->entry->texts[0], &reader->entry->texts[1],
                             &reader->entry->texts[2]};
    return *places[found] == NULL ? places[found] : NULL;
}

/* The byte after a backslash, and behind it what it stands for; "" for one that stands for nothing. */
static const char *find_escape(char byte)
{
    const char *escape = "n\nt\t\"\"\\\\";
    while (*escape != '\0' && *escape != byte)
        escape += 2;
    return escape;
}

/* A string from its opening quote to the end of its line; added to the text that is being made. */
static bool add_string(po_reader *reader, const char *at)
{
    char *to = reader->end;
    for (at++; *at != '"'; at++) {
        const char *escape = *at == '\\' ? find_escape(at[1]) : NULL;
        if (*at == '\0')
            return false;
        if (escape != NULL && *escape == '\0')
            return false;
        at += escape != NULL;
        *to++ = escape != NULL ? escape[1] : *at;
    }
    *to = '\0';
    reader->end = to;
    return at[1 + strspn(at + 1, " \t\r")] == '\0';
}

static bool read_keyword(po_reader *reader, const char *line)
{
    size_t size = strcspn(line, " \t\"");
    const char *string = line + size + strspn(line + size, " \t");
    char **place = place_of(reader, line, size);
    if (place == NULL || *string != '"')
        return false;
    reader->end += reader->text; /* after the zero byte of the last text */
    reader->text = true;
    *place = reader->end;
    return add_string(reader, string);
}

static void read_line(po_reader *reader, const char *line)
{
    line += strspn(line, " \t\r");
    bool read = true;
    if (line[0] == '#')
        reader->fuzzy = reader->fuzzy || (line[1] == ',' && strstr(line, "fuzzy") != NULL);
    else if (line[0] == '"')
        read = reader->text && add_string(reader, line);
    else if (line[0] != '\0')
        read = read_keyword(reader, line);
    if (!read)
        po_fault(reader->po, reader->line, "this is no line of a file of translations, or stands twice: ", line);
}

static void read_lines(po_file *po)
{
    po_reader reader = {.po = po, .end = po->texts};
    for (char *line = po->source; line != NULL;) {
        char *next = strchr(line, '\n');
        if (next != NULL)
            *next++ = '\0';
        reader.line++;
        read_line(&reader, line);
        line = next;
    }
}

/* --- The header -------------------------------------------------------------------------------------- */

/* The value of a line "Name: value" of the header; "" if it is not there. */
static void find_value(const char *header, const char *name, char *value, size_t size)
{
    const char *at = strstr(header, name);
    value[0] = '\0';
    if (at == NULL)
        return;
    at += strlen(name);
    at += strspn(at, " ");
    size_t length = strcspn(at, "\n");
    if (length < size) {
        memcpy(value, at, length);
        value[length] = '\0';
    }
}

static bool find_plural(const char *header, po_file *po)
{
    static const struct {
        const char *text;
        rodt_plural_rule rule;
    } rules[] = {{"nplurals=1; plural=0;", RODT_PLURAL_RULE_ALIKE},
                 {"nplurals=2; plural=(n != 1);", RODT_PLURAL_RULE_ONE_OTHER},
                 {"nplurals=2; plural=(n > 1);", RODT_PLURAL_RULE_BELOW_TWO}};
    char value[80];
    find_value(header, "Plural-Forms:", value, sizeof value);
    for (size_t i = 0; i < COUNT_OF(rules); i++) {
        po->plural = rules[i].rule;
        if (strcmp(value, rules[i].text) == 0)
            return true;
    }
    return false;
}

/* The header is the translation of the empty text. It becomes the members of the file, and is no sentence. */
static void take_header(po_file *po)
{
    char charset[64];
    const po_entry *first = po->entries;
    if (po->count == 0 || first->id == NULL || first->id[0] != '\0' || first->texts[0] == NULL) {
        po_fault(po, 1, "the header is missing", "");
        return;
    }
    const char *header = first->texts[0];
    find_value(header, "Language:", po->language, sizeof po->language);
    find_value(header, "X-Decimal-Sign:", po->decimal_sign, sizeof po->decimal_sign);
    find_value(header, "Content-Type:", charset, sizeof charset);
    if (po->language[0] == '\0' || strcmp(charset, "text/plain; charset=UTF-8") != 0)
        po_fault(po, first->line, "the header needs Language and Content-Type: text/plain; charset=UTF-8", "");
    if (strcmp(po->decimal_sign, ".") != 0 && strcmp(po->decimal_sign, ",") != 0)
        po_fault(po, first->line, "the header needs X-Decimal-Sign: . or ,", "");
    if (!find_plural(header, po))
        po_fault(po, first->line, "no rule of Plural-Forms that is known", "");
    for (char *at = po->language; *at != '\0'; at++)
        *at = *at == '_' ? '-' : *at;
    po->count--;
    memmove(po->entries, po->entries + 1, po->count * sizeof *po->entries);
}

/* --- The file ---------------------------------------------------------------------------------------- */

static bool read_bytes(po_file *po)
{
    FILE *in = fopen(po->path, "rb");
    size_t size = 0;
    bool whole = in != NULL && po->source != NULL;
    if (whole) {
        size = fread(po->source, 1, FILE_SIZE_MAX, in);
        whole = !ferror(in) && size < FILE_SIZE_MAX && memchr(po->source, '\0', size) == NULL;
    }
    if (in != NULL)
        fclose(in);
    if (whole)
        po->source[size] = '\0';
    return whole;
}

bool po_read(po_file *po, const char *path)
{
    *po = (po_file){.path = path, .source = malloc(FILE_SIZE_MAX)};
    if (!read_bytes(po)) {
        po_fault(po, 0, "the file cannot be read, or is too large", "");
        return false;
    }
    size_t size = strlen(po->source), lines = 1;
    for (size_t i = 0; i < size; i++)
        lines += po->source[i] == '\n';
    po->texts = malloc(size + 1);
    po->entries = calloc(lines, sizeof *po->entries);
    if (po->texts == NULL || po->entries == NULL) {
        po_fault(po, 0, "no memory", "");
        return false;
    }
    read_lines(po);
    take_header(po);
    return po->faults == 0;
}

void po_free(po_file *po)
{
    free(po->source);
    free(po->texts);
    free(po->entries);
    *po = (po_file){0};
}

bool po_is_translated(const po_entry *entry, size_t forms)
{
    for (size_t i = 0; i < forms; i++) {
        if (entry->texts[i] == NULL || entry->texts[i][0] == '\0')
            return false;
    }
    return !entry->fuzzy && entry->id != NULL;
}

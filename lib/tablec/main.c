/* SPDX-License-Identifier: Apache-2.0 */
/* tablec, the table compiler: tables in, one C file of constant arrays out. Runs while the library is built and is no
 * part of it. */
#include <stdlib.h>
#include <string.h>

#include "tablec/steps.h"

#define FILE_SIZE_MAX 1048576

static void read_file(tables *t, int file)
{
    FILE *in = fopen(t->paths[file], "rb");
    char *text = malloc(FILE_SIZE_MAX);
    if (in == NULL || text == NULL) {
        tables_fault(t, file, 0, "the file cannot be read");
    } else {
        size_t size = fread(text, 1, FILE_SIZE_MAX, in);
        if (ferror(in) || size == FILE_SIZE_MAX)
            tables_fault(t, file, 0, "the file cannot be read to its end");
        else
            tables_read(t, file, text, size);
    }
    free(text);
    if (in != NULL)
        fclose(in);
}

/* References mean something only when every row could be read. */
static bool read_and_check(tables *t, char **paths)
{
    for (int file = 0; file < FILE_COUNT; file++) {
        t->paths[file] = paths[file];
        read_file(t, file);
    }
    if (t->faults == 0)
        tables_check(t);
    return t->faults == 0;
}

typedef void table_writer(const tables *t, FILE *out);

static bool write_file(const tables *t, const char *path, table_writer *write)
{
    FILE *out = fopen(path, "wb");
    if (out == NULL)
        return false;
    write(t, out);
    bool written = !ferror(out);
    return fclose(out) == 0 && written;
}

#define WRITERS_MAX 3

typedef struct mode {
    const char *word; /* NULL = any other first argument */
    int first;        /* argument that is the first table */
    table_writer *writers[WRITERS_MAX];
} mode;

static const mode modes[] = {{"--check", 2, {NULL}},
                             {"--bill", 3 + BILL_VERSIONS, {tables_write_bill}},
                             {NULL, 4, {tables_write, tables_write_sentences, tables_write_texts}}};

static const mode *find_mode(int argc, char **argv)
{
    const mode *found = modes;
    while (found->word != NULL && (argc < 2 || strcmp(argv[1], found->word) != 0))
        found++;
    return argc == found->first + FILE_COUNT ? found : NULL;
}

static int run(tables *t, const mode *asked, char **argv)
{
    if (!read_and_check(t, argv + asked->first))
        return EXIT_FAILURE;
    char **targets = argv + (asked->word == NULL ? 1 : 2);
    for (size_t i = 0; i < WRITERS_MAX && asked->writers[i] != NULL; i++) {
        if (write_file(t, targets[i], asked->writers[i]))
            continue;
        fprintf(stderr, "tablec: %s cannot be written\n", targets[i]);
        return EXIT_FAILURE;
    }
    return EXIT_SUCCESS;
}

int main(int argc, char **argv)
{
    const mode *asked = find_mode(argc, argv);
    if (asked == NULL) {
        fputs("usage: tablec --check|TABLES.c SENTENCES.h TEXTS.h|--bill BILL.json VERSION GMP-VERSION ZLIB-VERSION "
              "ZSTD-VERSION XLSXWRITER-VERSION "
              "sources.csv chambers.csv limits.csv rulesets.csv vehicle.csv aircheck.csv volumes.csv steps.csv\n",
              stderr);
        return 2;
    }
    tables *t = calloc(1, sizeof *t);
    if (t == NULL) {
        fputs("tablec: no memory\n", stderr);
        return EXIT_FAILURE;
    }
    if (asked->writers[0] == tables_write_bill)
        memcpy(t->versions, argv + 3, sizeof t->versions);
    int status = run(t, asked, argv);
    free(t);
    return status;
}

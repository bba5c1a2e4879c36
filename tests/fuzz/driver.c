/* SPDX-License-Identifier: Apache-2.0 */
/* Feeds every file of a directory to one fuzz target, for compilers that bring no fuzzer along. */
#include <dirent.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static int feed(const char *path)
{
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        return -1;
    static char buffer[1 << 16];
    size_t size = fread(buffer, 1, sizeof buffer, file);
    fclose(file);

    /* A copy of just this size, so that a checker of memory sees a step over its end. */
    uint8_t *data = malloc(size + (size == 0));
    if (data == NULL)
        return -1;
    for (size_t i = 0; i < size; i++)
        data[i] = (uint8_t)buffer[i];
    LLVMFuzzerTestOneInput(data, size);
    free(data);
    return 0;
}

int main(int argc, char **argv)
{
    DIR *directory = argc == 2 ? opendir(argv[1]) : NULL;
    if (directory == NULL) {
        fputs("usage: fuzz target DIRECTORY\n", stderr);
        return 2;
    }
    int fed = 0;
    for (struct dirent *entry = readdir(directory); entry != NULL; entry = readdir(directory)) {
        char path[4096];
        if (entry->d_name[0] == '.')
            continue;
        snprintf(path, sizeof path, "%s/%s", argv[1], entry->d_name);
        if (feed(path) != 0) {
            fprintf(stderr, "%s: cannot be read\n", path);
            closedir(directory);
            return 1;
        }
        fed++;
    }
    closedir(directory);
    printf("%d inputs\n", fed);
    return fed == 0; /* an empty corpus proves nothing */
}

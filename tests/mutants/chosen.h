/* SPDX-License-Identifier: Apache-2.0 */
/* At the head of a file with all its changes: MUTANT chooses one by the number of the file and of the change,
   MUTANT_SECONDS of the processor end a loop without an end, and MUTANT_REACHED names a file that is told which changes
   a run came by. No header of the system: the file itself says which parts of them it wants. */
extern char *getenv(const char *name);
extern int atoi(const char *text);
extern int open(const char *path, int flags, ...);
extern int close(int file);
extern int dprintf(int file, const char *restrict format, ...);
extern int setrlimit();

#define CHOSEN_CPU 0 /* RLIMIT_CPU */

#define CHOSEN_APPEND (01 | 0100 | 02000)

#define CHOSEN(FILE, COUNT)                                                                                                      \
    static int chosen_##FILE;                                                                                                    \
    static unsigned char reached_##FILE[COUNT];                                                                                  \
    __attribute__((constructor)) static void start_##FILE(void)                                                                  \
    {                                                                                                                            \
        const char *wanted = getenv("MUTANT");                                                                                   \
        chosen_##FILE = wanted ? atoi(wanted) - FILE * 10000 : -1;                                                               \
        const char *seconds = getenv("MUTANT_SECONDS");                                                                          \
        const unsigned long limit[2] = {(unsigned long)(seconds ? atoi(seconds) : 0), (unsigned long)(seconds ? atoi(seconds) : 0)};\
        if (seconds)                                                                                                             \
            setrlimit(CHOSEN_CPU, limit);                                                                                        \
    }                                                                                                                            \
    __attribute__((destructor)) static void end_##FILE(void)                                                                     \
    {                                                                                                                            \
        const char *path = getenv("MUTANT_REACHED");                                                                             \
        int file = path ? open(path, CHOSEN_APPEND, 0600) : -1;                                                                  \
        for (int i = 0; file >= 0 && i < COUNT; i++)                                                                             \
            if (reached_##FILE[i])                                                                                               \
                dprintf(file, "%d\n", FILE * 10000 + i);                                                                         \
        if (file >= 0)                                                                                                           \
            close(file);                                                                                                         \
    }                                                                                                                            \
    static inline int mutant_##FILE(int change)                                                                                  \
    {                                                                                                                            \
        reached_##FILE[change] = 1;                                                                                              \
        return chosen_##FILE == change;                                                                                          \
    }

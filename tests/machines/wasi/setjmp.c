/* SPDX-License-Identifier: Apache-2.0 */
/* What clang calls for setjmp and longjmp on WebAssembly (-mllvm -wasm-enable-sjlj). A jump is an exception of
 * WebAssembly. A function that calls setjmp keeps a table of its calls; zero as identifier ends the table. */
#include <stdint.h>
#include <stdlib.h>

enum { C_LONGJMP = 1 }; /* the tag of such exceptions, known to the compiler */

struct saved_call {
    uintptr_t id;
    uint32_t label; /* where the function goes on */
};

static uint32_t second_result;

uint32_t getTempRet0(void);
struct saved_call *saveSetjmp(uintptr_t *place, uint32_t label, struct saved_call *table, uint32_t size);
uint32_t testSetjmp(uintptr_t id, const struct saved_call *table, uint32_t size);
_Noreturn void __wasm_longjmp(void *place, int value);

uint32_t getTempRet0(void)
{
    return second_result;
}

/* Returns the table, and its size as the second result. */
struct saved_call *saveSetjmp(uintptr_t *place, uint32_t label, struct saved_call *table, uint32_t size)
{
    static uintptr_t last_id;
    uint32_t used = 0;
    while (used < size && table[used].id != 0)
        used++;
    if (used == size) {
        size *= 2;
        table = realloc(table, (size + 1) * sizeof *table);
        if (table == NULL)
            abort();
    }
    *place = ++last_id;
    table[used] = (struct saved_call){.id = *place, .label = label};
    table[used + 1].id = 0;
    second_result = size;
    return table;
}

/* The label of a call of setjmp, 0 if it was made by another function. */
uint32_t testSetjmp(uintptr_t id, const struct saved_call *table, uint32_t size)
{
    for (uint32_t i = 0; i < size && table[i].id != 0; i++) {
        if (table[i].id == id)
            return table[i].label;
    }
    return 0;
}

_Noreturn void __wasm_longjmp(void *place, int value)
{
    static struct {
        void *place;
        int value;
    } thrown;
    thrown.place = place;
    thrown.value = value == 0 ? 1 : value;
    __builtin_wasm_throw(C_LONGJMP, &thrown);
}

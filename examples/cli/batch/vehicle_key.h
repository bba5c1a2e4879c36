/* SPDX-License-Identifier: Apache-2.0 */
/* What names a vehicle: its spelling as people write it, and what all spellings of one name have in common. */
#ifndef BATCH_VEHICLE_KEY_H
#define BATCH_VEHICLE_KEY_H

#include <stddef.h>
#include <stdint.h>

/* Leaves out blanks around a text, those of Unicode too. Returns its size; *key moves to its start. */
size_t vehicle_key_trim(const char **key, size_t size);

/* Small letters for capitals (ASCII and Latin-1) and no blanks inside, but one between two digits: "1 12" is not
 * "11 2". `folded` has room for size bytes. Returns how many there are. */
size_t vehicle_key_fold(const char *key, size_t size, char *folded);

/* SipHash-2-4 (Aumasson, Bernstein, "SipHash: a fast short-input PRF", 2012): who writes a file cannot choose keys that
 * collide without the seed. */
uint64_t vehicle_key_hash(const char *key, size_t size, const uint64_t seed[2]);

#endif

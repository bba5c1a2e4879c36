// SPDX-License-Identifier: Apache-2.0

// Package rodtravel judges by two tape readings whether an air brake is in adjustment: from the texts of a form to a
// verdict with its reasons and its published source, exactly.
//
// Numbers are *big.Rat: lengths in inches, pressures in psi, times in seconds. One that is not given is nil. What people
// wrote is given as texts, numbers and days by [Text]; a float64 is refused by the compiler, because 0.1 is not a tenth
// there.
//
// What the library found is a value of Go: it is copied freely, keeps alive what it speaks of, and never changes.
// Everything but a [Plan] that gets chambers may be used by any number of goroutines at once, and so may a Plan.
//
// Chock the wheels. Never get under a vehicle that can roll. The cited law and a licensed inspector decide.
package rodtravel

/*
#include <rodtravel/rodtravel.h>
*/
import "C"

// Version is that of the library inside, "major.minor.patch".
func Version() string { return C.GoString(C.rodt_version()) }

// TablesEdition is the day, "2026-11-24", on which a row of the tables was last changed or read again in its source.
func TablesEdition() string { return C.GoString(C.rodt_tables_edition()) }

// A Language of sentences. The zero value is English.
type Language struct {
	c *C.rodt_catalogue
}

// English is the language that is built in.
var English = Language{}

// Languages are those that the library has beside English.
func Languages() []Language {
	found := make([]Language, C.rodt_catalogue_count())
	for i := range found {
		found[i].c = C.rodt_catalogue_at(C.size_t(i))
	}
	return found
}

// FindLanguage takes a tag or the name of a locale, "fr", "es_MX.UTF-8"; its first part decides. A language that the
// library does not speak is an error.
func FindLanguage(tag string) (Language, error) {
	var kept texts
	defer kept.free()
	at, err := kept.text("language", tag)
	if err != nil {
		return English, err
	}
	found := Language{C.rodt_catalogue_find(at)}
	if found.c == nil && tag != "" && !(len(tag) > 1 && (tag[:2] == "en" || tag[:2] == "EN")) {
		return English, refusal(StatusArgument, "language", "the library does not speak this language")
	}
	return found, nil
}

// String is the tag, "fr".
func (l Language) String() string {
	if l.c == nil {
		return "en"
	}
	return C.GoString(l.c.language)
}

// said is a message in the language; empty where there is none to say.
func (l Language) said(message *C.rodt_message, status C.rodt_status) string {
	if status != C.RODT_OK {
		return ""
	}
	return written(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_message_format(message, l.c, to, size, needed)
	})
}

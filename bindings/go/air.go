// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"math/big"
	"runtime"
	"unsafe"
)

// An AirForm is one check of the air system as people wrote it. An empty text is one that the form does not have.
type AirForm struct {
	Check          string // "warning", "loss-applied": an AirCheck; needed
	Vehicle        string // "single", "combination", "bus"
	TowedUnits     string // whole number, 0 to 99
	Built          string // a day, or a year by itself
	Pressure       string // psi: warning, cut-out, cut-in, valves; or "never"
	Before         string // psi: loss, reserve, build-up: at the start
	After          string // psi: at the end
	CutOut         string // psi: the governor's cut-out
	CutIn          string // psi: the governor's cut-in
	Seconds        string // "45", "1:30"; of a build-up also "never"
	Span           string // "pressures", "warning", "applications", "recovery"
	Applications   string // full applications, 0 to 99
	ActualVolume   string // cubic inches
	RequiredVolume string // cubic inches
	Answer         string // "yes", "no", "never" where it may be said

	PressureUnit PressureUnit `path:"style.pressure_unit"` // of a pressure that names none; empty = psi
	DecimalComma bool         `path:"style.decimal_comma"` // "31,5" is 31 1/2
	DateOrder    DateOrder    // how a day of build made of numbers is read
}

// An AirFinding is the judgement of an air check. It is a value, as a Finding is.
type AirFinding struct {
	c     C.rodt_air_finding
	rules *RuleSet
}

// JudgeAir judges a check by every row that is for it. What is missing makes it undetermined, and is no error.
func (r *RuleSet) JudgeAir(form AirForm) (AirFinding, error) {
	if err := r.check(); err != nil {
		return AirFinding{}, err
	}
	var kept texts
	defer kept.free()
	var c C.rodt_air_form
	if err := kept.fill("rodt_air_form", unsafe.Pointer(&c), form); err != nil {
		return AirFinding{}, err
	}
	made := AirFinding{rules: r}
	var refused C.rodt_error
	status := C.rodt_air_form_judge(&c, r.c, &made.c, &refused)
	runtime.KeepAlive(r)
	if status != C.RODT_OK {
		return AirFinding{}, errorOf(status, &refused)
	}
	return made, nil
}

// Result is the judgement.
func (f AirFinding) Result() AirResult {
	return AirResult(wordOf("rodt_air_result", int64(f.c.result)))
}

// LawResult is what the law alone says; a carrier's figure can only be stricter.
func (f AirFinding) LawResult() AirResult {
	return AirResult(wordOf("rodt_air_result", int64(f.c.law_result)))
}

// Missing is what decides, of an undetermined one.
func (f AirFinding) Missing() AirMissing {
	return AirMissing(wordOf("rodt_air_missing", int64(f.c.missing)))
}

// Major and Minor are the ranking of a defect by the rule set; neither = it does not rank it.
func (f AirFinding) Major() bool { return bool(f.c.major) }

// Minor is a minor defect.
func (f AirFinding) Minor() bool { return bool(f.c.minor) }

// AtLimit tells that measured is exactly the bound.
func (f AirFinding) AtLimit() bool { return bool(f.c.at_limit) }

// Measured is in the row's measure; nil = nothing was.
func (f AirFinding) Measured() *big.Rat { return ratio(f.c.measured) }

// Allowed is the bound that judged, in the row's measure; nil = yes or no.
func (f AirFinding) Allowed() *big.Rat { return ratio(f.c.allowed) }

// String is the sentence for a form.
func (f AirFinding) String() string { return f.Sentence(English) }

// Sentence is "the low-pressure warning came on at 62 psi; required: not less than 60 psi: good", in a language.
func (f AirFinding) Sentence(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_air_finding_message(&f.c, &message))
}

// Spoken is what a person says aloud after the check.
func (f AirFinding) Spoken(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_air_finding_spoken_message(&f.c, &message))
}

// Edge is what would have been defective; empty without a row.
func (f AirFinding) Edge(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_air_finding_edge_message(&f.c, &message))
}

// Note is what is to be known beside the finding; empty where there is nothing to say.
func (f AirFinding) Note(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_air_finding_note_message(&f.c, &message))
}

// Get is any member by its path, as a text: "row.published", "row.source.document".
func (f AirFinding) Get(path string) (string, error) {
	defer runtime.KeepAlive(f.rules)
	c := f.c // without the pointer of Go beside it
	return get("rodt_air_finding", unsafe.Pointer(&c), path)
}

// Exact is any exact number by its path: "row.value".
func (f AirFinding) Exact(path string) (*big.Rat, error) {
	defer runtime.KeepAlive(f.rules)
	c := f.c // without the pointer of Go beside it
	return number("rodt_air_finding", unsafe.Pointer(&c), path)
}

// JSON is the report of the check, with sentences in a language.
func (f AirFinding) JSON(language Language) []byte {
	defer runtime.KeepAlive(f.rules)
	return report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_air_finding_json_format(&f.c, language.c, 0, to, size, needed)
	})
}

// MarshalJSON is the report in English.
func (f AirFinding) MarshalJSON() ([]byte, error) { return f.JSON(English), nil }

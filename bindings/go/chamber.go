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

// A Chamber is a service brake chamber, as far as it is known.
type Chamber struct {
	c C.rodt_chamber
}

// Marks are what else is marked on a chamber; an empty text = no mark was read.
type Marks struct {
	StrokeClass string // "standard", "long"
	RatedStroke string // length of 3/4 to 6 in: full travel, not the limit
	MarkedLimit string // length: a readjustment limit
}

// ReadChamber reads a mark as people write it: "30L", "T30", "24/30 LS", "bolt C", "roto 30".
func ReadChamber(mark string) (Chamber, error) {
	var kept texts
	defer kept.free()
	at, err := kept.text("", mark)
	if err != nil {
		return Chamber{}, err
	}
	var made Chamber
	var refused C.rodt_error
	status := C.rodt_chamber_parse(at, &made.c, &refused)
	return made, failure(status, &refused)
}

// Marked is the chamber with marks more.
func (c Chamber) Marked(marks Marks) (Chamber, error) {
	var kept texts
	defer kept.free()
	err := kept.fill("rodt_chamber", unsafe.Pointer(&c.c), marks)
	return c, err
}

// Family is how the housing is built.
func (c Chamber) Family() Family { return Family(wordOf("rodt_family", int64(c.c.family))) }

// StrokeClass is standard or long stroke; one that is not known is judged as standard.
func (c Chamber) StrokeClass() StrokeClass {
	return StrokeClass(wordOf("rodt_stroke_class", int64(c.c.stroke_class)))
}

// Size is the type number "30" or the letter "C"; empty = not known.
func (c Chamber) Size() string { return C.GoString(&c.c.size[0]) }

// SpringSize is the spring brake part of a double mark such as 24/30; empty = none was said.
func (c Chamber) SpringSize() string { return C.GoString(&c.c.spring_size[0]) }

// RatedStroke is the full travel marked on the housing, in inches; nil = no mark was read.
func (c Chamber) RatedStroke() *big.Rat { return length(c.c.rated_stroke) }

// MarkedLimit is a readjustment limit marked on the housing, in inches.
func (c Chamber) MarkedLimit() *big.Rat { return length(c.c.marked_limit) }

// String is what ReadChamber reads back, "clamp 30 long"; empty if nothing is known.
func (c Chamber) String() string {
	return written(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_chamber_format(&c.c, to, size, needed)
	})
}

// MarshalJSON is all of the chamber.
func (c Chamber) MarshalJSON() ([]byte, error) {
	return recordJSON("rodt_chamber", unsafe.Pointer(&c.c)), nil
}

// A LimitAnswer is the limit for a chamber on a day, and what it rests on.
type LimitAnswer struct {
	c     C.rodt_limit_answer
	rules *RuleSet
}

// FindLimit finds the limit for a chamber on a day; a zero day is the newest text. Unknown facts are taken on the
// strict side. An answer without a limit is no error.
func (r *RuleSet) FindLimit(chamber Chamber, day Date) (LimitAnswer, error) {
	if err := r.check(); err != nil {
		return LimitAnswer{}, err
	}
	on, err := day.checked()
	if err != nil {
		return LimitAnswer{}, err
	}
	made := LimitAnswer{rules: r}
	var refused C.rodt_error
	status := C.rodt_rules_find_limit(r.c, &chamber.c, on, &made.c, &refused)
	runtime.KeepAlive(r)
	if status != C.RODT_OK {
		return LimitAnswer{}, errorOf(status, &refused)
	}
	return made, nil
}

// Limit judges: the stricter of the law's and a carrier's own, in inches; nil = none is published.
func (a LimitAnswer) Limit() *big.Rat { return length(a.c.limit) }

// LawLimit is the law's.
func (a LimitAnswer) LawLimit() *big.Rat { return length(a.c.law_limit) }

// LawBasis is what the law's limit rests on.
func (a LimitAnswer) LawBasis() Basis { return Basis(wordOf("rodt_basis", int64(a.c.law_basis))) }

// Evidence is that of the limit.
func (a LimitAnswer) Evidence() Evidence {
	return Evidence(wordOf("rodt_evidence", int64(a.c.evidence)))
}

// LawEvidence is that of the law's limit; only this says whether the law is confirmed.
func (a LimitAnswer) LawEvidence() Evidence {
	return Evidence(wordOf("rodt_evidence", int64(a.c.law_evidence)))
}

// Source is where the limit is published, in one line; empty without one.
func (a LimitAnswer) Source() string {
	defer runtime.KeepAlive(a.rules)
	return sourceText(a.c.source)
}

// AssumedClamp tells that the family was not known.
func (a LimitAnswer) AssumedClamp() bool { return bool(a.c.assumed_clamp) }

// AssumedStandard tells that the stroke class was not known.
func (a LimitAnswer) AssumedStandard() bool { return bool(a.c.assumed_standard) }

// ConflictingMarks tells that marks contradict each other; the strict side is given.
func (a LimitAnswer) ConflictingMarks() bool { return bool(a.c.conflicting_marks) }

// Get is any member by its path, as a text: "law_row.published".
func (a LimitAnswer) Get(path string) (string, error) {
	defer runtime.KeepAlive(a.rules)
	c := a.c // without the pointer of Go beside it
	return get("rodt_limit_answer", unsafe.Pointer(&c), path)
}

// MarshalJSON is all of the answer.
func (a LimitAnswer) MarshalJSON() ([]byte, error) {
	defer runtime.KeepAlive(a.rules)
	c := a.c // without the pointer of Go beside it
	return recordJSON("rodt_limit_answer", unsafe.Pointer(&c)), nil
}

// Clues are what a person can see of a chamber; an empty text = not looked at.
type Clues struct {
	Stamp            string // what the stamped text says, as a mark
	Family           string // how the housing is built, by looking: "clamp", "bolt"
	Port             string // shape of the ports: "round", "square"
	Tag              string // tag under a clamp bolt: "none", "trapezoid"
	RatedStroke      string // length: the rated stroke that is marked
	Diameter         string // length: outside diameter by tape
	DiameterDivision string // length: graduation it was read to; empty = 1/8 in
}

// A Candidate is one chamber that the clues allow.
type Candidate struct {
	Chamber          Chamber
	Limit            *big.Rat // inches, under the rule set; nil = none is published
	Diameter         *big.Rat // inches, as published; nil = none
	DiameterDistance *big.Rat // how far the tape reading is from it; nil = no reading
	For, Against     []Clue   // clues that support it, and that contradict it
}

// An Identification is the answer to Identify.
type Identification struct {
	c     *C.rodt_identification
	day   C.rodt_date
	rules *RuleSet
}

// Identify lists the chambers that can be the one that was seen, the best first; day as of FindLimit.
func (r *RuleSet) Identify(clues Clues, day Date) (Identification, error) {
	if err := r.check(); err != nil {
		return Identification{}, err
	}
	on, err := day.checked()
	if err != nil {
		return Identification{}, err
	}
	var kept texts
	defer kept.free()
	var c C.rodt_clues
	if err := kept.fill("rodt_clues", unsafe.Pointer(&c), clues); err != nil {
		return Identification{}, err
	}
	made := Identification{new(C.rodt_identification), on, r}
	var refused C.rodt_error
	status := C.rodt_clues_identify(&c, r.c, on, made.c, &refused)
	runtime.KeepAlive(r)
	if status != C.RODT_OK {
		return Identification{}, errorOf(status, &refused)
	}
	return made, nil
}

// Candidates are the best first; none = no chamber fits that the tables know.
func (i Identification) Candidates() []Candidate {
	if i.c == nil {
		return nil
	}
	found := make([]Candidate, i.c.count)
	for n := range found {
		of := &i.c.candidates[n]
		found[n] = Candidate{Chamber{of.chamber}, length(of.limit), length(of.diameter), length(of.diameter_distance),
			wordsOf[Clue]("rodt_clue", uint64(of.clues_for)), wordsOf[Clue]("rodt_clue", uint64(of.clues_against))}
	}
	return found
}

// StrictLimit is the smallest limit of a candidate, in inches: judge by it until one of them is left. While a candidate
// WithoutLimit is there, it is no safe side.
func (i Identification) StrictLimit() *big.Rat {
	if i.c == nil {
		return nil
	}
	return length(i.c.strict_limit)
}

// WithoutLimit is how many candidates have no limit under the rule set.
func (i Identification) WithoutLimit() int {
	if i.c == nil {
		return 0
	}
	return int(i.c.without_limit)
}

// Contradiction are clues that cannot all be true; none = they agree.
func (i Identification) Contradiction() []Clue {
	if i.c == nil {
		return nil
	}
	return wordsOf[Clue]("rodt_clue", uint64(i.c.contradiction))
}

// NextObservation is what to look at next.
func (i Identification) NextObservation() Observation {
	if i.c == nil {
		return ObservationNothing
	}
	return Observation(wordOf("rodt_observation", int64(i.c.next_observation)))
}

// NextSentence says what to look at next and what it would show, in a language.
func (i Identification) NextSentence(language Language) string {
	if i.c == nil {
		return ""
	}
	var message C.rodt_message
	return language.said(&message, C.rodt_observation_message(C.rodt_observation(i.c.next_observation), &message))
}

// JSON is the report, with sentences in a language.
func (i Identification) JSON(language Language) []byte {
	if i.c == nil {
		return []byte("null")
	}
	defer runtime.KeepAlive(i.rules)
	return report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_identification_json_format(i.c, i.rules.c, i.day, language.c, 0, to, size, needed)
	})
}

// MarshalJSON is the report in English.
func (i Identification) MarshalJSON() ([]byte, error) { return i.JSON(English), nil }

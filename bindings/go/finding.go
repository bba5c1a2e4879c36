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

// A Form is one wheel end as people wrote it. An empty text is one that the form does not have.
type Form struct {
	Chamber     string // the mark, "30L"
	Released    string // length: chamber face to clevis pin, brakes released
	Applied     string // length: the same, full application held
	StrokeClass string // "standard", "long"; empty = not known, and judged as standard
	RatedStroke string // length of 3/4 to 6 in, marked on the housing
	MarkedLimit string // length: a readjustment limit marked on the housing
	PSI         string // reservoir pressure before the application
	PSIAfter    string // the same after it
	Division    string // length: the smallest graduation that was read
	Date        string // day of the inspection; empty = the newest text of the law
	Unit        string // unit of bare lengths of this wheel end, "in", "mm", "cm"
	Engine      string // "off" or "on" during the test
	SpringBrake string // "released" or "on" during the test
	Drum        string // "cold", "warm" or "hot"

	DefaultUnit  Unit         `path:"style.unit"`          // of a length that names none; empty = inches
	PressureUnit PressureUnit `path:"style.pressure_unit"` // of a pressure that names none; empty = psi
	DecimalComma bool         `path:"style.decimal_comma"` // "2,125" is 2 1/8
	DateOrder    DateOrder    // how dates made of numbers are read
	DefaultDate  Date         `path:"default_day"` // day of a row that has none
}

// A Finding is the judgement of one wheel end. It is a value: findings of the same readings by the same rule set are
// equal by ==, and may be keys of a map.
type Finding struct {
	c     C.rodt_finding
	rules *RuleSet // keeps what the finding points to
	row   rowError
}

// What could not be read in a row; the sentence in other languages is made of it.
type rowError struct {
	status C.uint32_t
	c      C.rodt_error
}

// Judge judges one wheel end. The first text that cannot be read, or is needed and absent, is the error; a date that
// can be two days too.
func (r *RuleSet) Judge(form Form) (Finding, error) {
	return r.judge(form, func(c *C.rodt_form, out *Finding, err *C.rodt_error) C.rodt_status {
		return C.rodt_form_judge(c, r.c, &out.c, err)
	})
}

// JudgeRow judges a row of a file, which no text stops: what cannot be read makes the finding undetermined, is among
// its reasons, and is its Err. An error is a mistake of the program alone, such as a DefaultDate that is no day.
func (r *RuleSet) JudgeRow(form Form) (Finding, error) {
	return r.judge(form, func(c *C.rodt_form, out *Finding, err *C.rodt_error) C.rodt_status {
		status := C.rodt_form_judge_row(c, r.c, &out.c, err)
		if status == C.RODT_OK && err.status != C.RODT_OK {
			out.row = rowError{err.status, *err}
		}
		return status
	})
}

func (r *RuleSet) judge(form Form, by func(*C.rodt_form, *Finding, *C.rodt_error) C.rodt_status) (Finding, error) {
	if err := r.check(); err != nil {
		return Finding{}, err
	}
	var kept texts
	defer kept.free()
	var c C.rodt_form
	if err := kept.fill("rodt_form", unsafe.Pointer(&c), form); err != nil {
		return Finding{}, err
	}
	made := Finding{rules: r}
	var refused C.rodt_error
	status := by(&c, &made, &refused)
	runtime.KeepAlive(r)
	if status != C.RODT_OK {
		return Finding{}, errorOf(status, &refused)
	}
	return made, nil
}

// Errors are all texts for which Judge would refuse the form, so that a page can mark every field at once.
func (f Form) Errors() []*Error {
	var kept texts
	defer kept.free()
	var c C.rodt_form
	if err := kept.fill("rodt_form", unsafe.Pointer(&c), f); err != nil {
		return []*Error{err.(*Error)}
	}
	var errors [C.RODT_FORM_ERRORS_MAX]C.rodt_error
	var count C.size_t
	if status := C.rodt_form_errors(&c, &errors[0], C.RODT_FORM_ERRORS_MAX, &count); status != C.RODT_OK {
		return []*Error{errorOf(status, nil)}
	}
	var found []*Error
	for i := range errors[:count] {
		found = append(found, errorOf(C.rodt_status(errors[i].status), &errors[i]))
	}
	return found
}

// Verdict is the judgement; the zero Finding is undetermined.
func (f Finding) Verdict() Verdict { return Verdict(wordOf("rodt_verdict", int64(f.c.verdict))) }

// Proof is what the divisions of the tape prove; it never changes the verdict.
func (f Finding) Proof() Proof { return Proof(wordOf("rodt_proof", int64(f.c.proof))) }

// Reasons are why the verdict is what it is, in their order.
func (f Finding) Reasons() []Reason { return wordsOf[Reason]("rodt_reason", uint64(f.c.reasons)) }

// Has tells whether the finding has the reason.
func (f Finding) Has(reason Reason) bool {
	of := numberOf("rodt_reason", string(reason))
	return of >= 0 && bool(C.rodt_finding_has(&f.c, C.rodt_reason(of)))
}

// Chamber is the chamber as it was judged: what was assumed is filled in.
func (f Finding) Chamber() Chamber { return Chamber{f.c.chamber} }

// Released and Applied are the readings in inches; nil = missing or unreadable.
func (f Finding) Released() *big.Rat { return length(f.c.released) }

// Applied is the reading with the full application held.
func (f Finding) Applied() *big.Rat { return length(f.c.applied) }

// AppliedStroke is applied less released; nil if a reading is missing or they are swapped.
func (f Finding) AppliedStroke() *big.Rat { return length(f.c.applied_stroke) }

// Limit judged: the stricter of the law's and a carrier's own. nil = there is none.
func (f Finding) Limit() *big.Rat { return length(f.c.limit) }

// LawLimit is the law's.
func (f Finding) LawLimit() *big.Rat { return length(f.c.law_limit) }

// LongLimit is that of the long-stroke chamber of this size, where standard was assumed and one is published.
func (f Finding) LongLimit() *big.Rat { return length(f.c.long_limit) }

// Margin is the limit less the stroke, below zero where the stroke is over. Of an inoperative brake it is the whole
// limit, and nothing to spare: look at the verdict first.
func (f Finding) Margin() *big.Rat { return length(f.c.margin) }

// Division is the smallest graduation, as given.
func (f Finding) Division() *big.Rat { return length(f.c.division) }

// ProbabilityOver is the exact chance that the true stroke is over the limit; nil without a proof.
func (f Finding) ProbabilityOver() *big.Rat { return ratio(f.c.probability_over) }

// Pressure is in psi, before the application; nil = not recorded.
func (f Finding) Pressure() *big.Rat { return pressure(f.c.pressure) }

// PressureAfter is the same after it.
func (f Finding) PressureAfter() *big.Rat { return pressure(f.c.pressure_after) }

// Date is the day whose law judged; zero = the newest text.
func (f Finding) Date() Date { return dateFrom(f.c.day) }

// Evidence says how the figure of the limit was checked in its source.
func (f Finding) Evidence() Evidence { return Evidence(wordOf("rodt_evidence", int64(f.c.evidence))) }

// LawEvidence is that of the law's limit; only this says whether the law is confirmed.
func (f Finding) LawEvidence() Evidence {
	return Evidence(wordOf("rodt_evidence", int64(f.c.law_evidence)))
}

// LawBasis is what the law's limit rests on.
func (f Finding) LawBasis() Basis { return Basis(wordOf("rodt_basis", int64(f.c.law_basis))) }

// Source is where the limit is published, in one line; empty without a limit.
func (f Finding) Source() string {
	defer runtime.KeepAlive(f.rules)
	return sourceText(f.c.source)
}

// Rules judged; nil of the zero Finding.
func (f Finding) Rules() *RuleSet { return f.rules }

// Defect is how the finding counts among the defective brakes of a vehicle.
func (f Finding) Defect() Defect {
	return Defect(wordOf("rodt_defect", int64(C.rodt_finding_defect(&f.c))))
}

// Err is the first text that JudgeRow could not read, or needs and did not find; nil = all could be read.
func (f Finding) Err() *Error {
	if f.row.status == C.RODT_OK {
		return nil
	}
	return errorOf(C.rodt_status(f.row.status), &f.row.c)
}

// String is the comparison in one line, "3 3/8 to 4 13/16 is 1 7/16; limit 1 3/4; 5/16 to spare".
func (f Finding) String() string { return f.Sentence(English) }

// Sentence is the comparison in a language.
func (f Finding) Sentence(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_finding_message(&f.c, &message))
}

// Spoken is what a person says aloud after the measurement.
func (f Finding) Spoken(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_finding_spoken_message(&f.c, &message))
}

// ProofSentence is what the divisions of the tape prove; empty if no proof was asked.
func (f Finding) ProofSentence(language Language) string {
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_finding_proof_message(&f.c, &message))
}

// ReasonSentence is a reason with its figures; empty if the finding does not have it.
func (f Finding) ReasonSentence(reason Reason, language Language) string {
	of := numberOf("rodt_reason", string(reason))
	if of < 0 {
		return ""
	}
	var message C.rodt_message
	defer runtime.KeepAlive(f.rules)
	return language.said(&message, C.rodt_finding_reason_message(&f.c, C.rodt_reason(of), &message))
}

// Get is any member by its path, as a text: "law_row.published", "chamber.size".
func (f Finding) Get(path string) (string, error) {
	defer runtime.KeepAlive(f.rules)
	c := f.c // without the pointer of Go beside it
	return get("rodt_finding", unsafe.Pointer(&c), path)
}

// Exact is any exact number by its path: "law_row.limit".
func (f Finding) Exact(path string) (*big.Rat, error) {
	defer runtime.KeepAlive(f.rules)
	c := f.c // without the pointer of Go beside it
	return number("rodt_finding", unsafe.Pointer(&c), path)
}

// JSON is the report of the wheel end, with sentences in a language; nil of the zero Finding.
func (f Finding) JSON(language Language) []byte {
	defer runtime.KeepAlive(f.rules)
	return report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_finding_json_format(&f.c, language.c, 0, to, size, needed)
	})
}

// MarshalJSON is the report in English.
func (f Finding) MarshalJSON() ([]byte, error) { return f.JSON(English), nil }

// report is null where there is nothing to report.
func report(format func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status) []byte {
	said := written(format)
	if said == "" {
		return []byte("null")
	}
	return []byte(said)
}

func sourceText(source *C.rodt_source) string {
	if source == nil {
		return ""
	}
	return written(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_source_format(source, to, size, needed)
	})
}

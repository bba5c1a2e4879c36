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

// A WheelEnd is one end of an axle with what was found there.
type WheelEnd struct {
	Position  string  // "1L" is the left end of the foremost axle; axles are counted through every unit
	Adjuster  string  // "manual", "automatic"; empty = nobody wrote it down
	ArmLength string  // length of the slack adjuster; empty = not measured
	Finding   Finding `path:"-"`
}

// A Vehicle is the judgement of the whole vehicle by the roadside criterion.
type Vehicle struct {
	c        *C.rodt_vehicle_finding
	ends     []C.rodt_wheel_end
	findings []C.rodt_finding
	errors   []C.rodt_error
	advice   []C.rodt_advice
	rules    *RuleSet
}

// JudgeVehicle judges by findings of one rule set. brakes is how many the vehicle or combination has, measured or not;
// 0 = both ends of every axle up to the last one that has a wheel end. The line of an error is the number of the wheel
// end, from 1.
func JudgeVehicle(ends []WheelEnd, brakes int) (Vehicle, error) {
	if len(ends) == 0 {
		return Vehicle{}, refusal(StatusArgument, "ends", "a vehicle has wheel ends")
	}
	count, err := countOf("brakes", brakes)
	if err != nil {
		return Vehicle{}, err
	}
	made := Vehicle{c: new(C.rodt_vehicle_finding), ends: make([]C.rodt_wheel_end, len(ends)),
		findings: make([]C.rodt_finding, len(ends)), errors: make([]C.rodt_error, len(ends)),
		advice: make([]C.rodt_advice, len(ends)), rules: ends[0].Finding.rules}
	for i, end := range ends {
		if err := made.put(i, end); err != nil {
			err.Line = i + 1
			return Vehicle{}, err
		}
	}
	var refused C.rodt_error
	status := C.rodt_vehicle_combine(&made.ends[0], C.size_t(len(ends)), count, &made.findings[0], &made.advice[0],
		made.c, &refused)
	runtime.KeepAlive(ends)
	if status != C.RODT_OK {
		return Vehicle{}, errorOf(status, &refused)
	}
	return made, nil
}

func (v *Vehicle) put(i int, end WheelEnd) *Error {
	var kept texts
	defer kept.free()
	if err := kept.fill("rodt_wheel_end", unsafe.Pointer(&v.ends[i]), end); err != nil {
		return err.(*Error)
	}
	if end.Finding.rules == nil {
		return refusal(StatusArgument, "finding", "a wheel end needs a finding")
	}
	v.findings[i], v.errors[i] = end.Finding.c, end.Finding.row.c
	return nil
}

func countOf(field string, of int) (C.uint32_t, error) {
	if of < 0 || of > C.RODT_BRAKES_MAX {
		return 0, refusal(StatusArgument, field, "a number of brakes was expected")
	}
	return C.uint32_t(of), nil
}

// Count is the roadside criterion.
func (v Vehicle) Count() Count {
	if v.c == nil {
		return Count{}
	}
	return Count{v.c.count}
}

// Outcome is that of the count.
func (v Vehicle) Outcome() Outcome { return v.Count().Outcome() }

// With is how many wheel ends have a verdict.
func (v Vehicle) With(verdict Verdict) int {
	found := 0
	for i := range v.findings {
		if wordOf("rodt_verdict", int64(v.findings[i].verdict)) == string(verdict) {
			found++
		}
	}
	return found
}

// MismatchedAxles are those whose ends differ in what the law wants alike.
func (v Vehicle) MismatchedAxles() int {
	if v.c == nil {
		return 0
	}
	return int(v.c.mismatched_axles)
}

// Advice is what to do next about each wheel end, in their order.
func (v Vehicle) Advice() []Advice {
	found := make([]Advice, len(v.advice))
	for i, each := range v.advice {
		found[i] = Advice(wordOf("rodt_advice", int64(each)))
	}
	return found
}

// AdviceSentence is an advice in a language; empty for none.
func AdviceSentence(advice Advice, language Language) string {
	of := numberOf("rodt_advice", string(advice))
	if of <= 0 {
		return ""
	}
	var message C.rodt_message
	return language.said(&message, C.rodt_advice_message(C.rodt_advice(of), &message))
}

// String is the count in one line.
func (v Vehicle) String() string { return v.Sentence(English) }

// Sentence is the count in a language.
func (v Vehicle) Sentence(language Language) string { return v.Count().Sentence(language) }

// Get is any member by its path, as a text: "axles[0].stroke_difference".
func (v Vehicle) Get(path string) (string, error) {
	return get("rodt_vehicle_finding", unsafe.Pointer(v.c), path)
}

// Exact is any exact number by its path: "axles[0].al_left".
func (v Vehicle) Exact(path string) (*big.Rat, error) {
	return number("rodt_vehicle_finding", unsafe.Pointer(v.c), path)
}

// JSON is the report of the vehicle: the criterion, every wheel end and axle, with sentences in a language.
func (v Vehicle) JSON(language Language) []byte {
	if v.c == nil {
		return []byte("null")
	}
	defer runtime.KeepAlive(v.rules)
	return report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_vehicle_json_format(v.c, &v.ends[0], C.size_t(len(v.ends)), &v.findings[0],
			&v.advice[0], &v.errors[0], language.c, 0, to, size, needed)
	})
}

// MarshalJSON is the report in English.
func (v Vehicle) MarshalJSON() ([]byte, error) { return v.JSON(English), nil }

// A Tally is brakes of one vehicle, counted one by one.
type Tally struct {
	Brakes      int // counted so far
	Full        int // counted as one
	Half        int // counted as half
	Unknown     int // state not known
	Inoperative int // part of Full
}

// Add counts a finding in.
func (t *Tally) Add(finding Finding) error {
	c, err := t.put()
	if err != nil {
		return err
	}
	var refused C.rodt_error
	if status := C.rodt_tally_add(&c, &finding.c, &refused); status != C.RODT_OK {
		return errorOf(status, &refused)
	}
	*t = Tally{int(c.brakes), int(c.full), int(c.half), int(c.unknown), int(c.inoperative)}
	return nil
}

// Judge judges by the roadside criterion; brakes as of JudgeVehicle, 0 = as many as were counted.
func (t Tally) Judge(brakes int) (Count, error) {
	count, err := countOf("brakes", brakes)
	if err != nil {
		return Count{}, err
	}
	c, err := t.put()
	if err != nil {
		return Count{}, err
	}
	var made Count
	var refused C.rodt_error
	if status := C.rodt_tally_judge(&c, count, &made.c, &refused); status != C.RODT_OK {
		return Count{}, errorOf(status, &refused)
	}
	return made, nil
}

func (t Tally) put() (C.rodt_tally, error) {
	var kept texts
	defer kept.free()
	var c C.rodt_tally
	return c, kept.fill("rodt_tally", unsafe.Pointer(&c), t)
}

// A Count is the count of defective brakes, exact.
type Count struct {
	c C.rodt_count
}

// Outcome tells whether the criterion is met.
func (c Count) Outcome() Outcome { return Outcome(wordOf("rodt_outcome", int64(c.c.outcome))) }

// Brakes of the vehicle, measured or not.
func (c Count) Brakes() int { return int(c.c.brakes) }

// WholeNeeded is how many brakes the chart of whole brakes asks for.
func (c Count) WholeNeeded() int { return int(c.c.whole_needed) }

// Defective is full and half of half, in brakes.
func (c Count) Defective() *big.Rat { return ratio(c.c.defective) }

// Share is defective of all brakes; nil without a brake.
func (c Count) Share() *big.Rat { return ratio(c.c.share) }

// WorstShare is the share if every unknown and unmeasured brake were defective.
func (c Count) WorstShare() *big.Rat { return ratio(c.c.worst_share) }

// KnownShare is defective of the brakes whose state is known; nil if there is none.
func (c Count) KnownShare() *big.Rat { return ratio(c.c.known_share) }

// Criterion is the share from which a vehicle is out of service.
func (c Count) Criterion() *big.Rat { return ratio(c.c.criterion) }

// String is the count in one line.
func (c Count) String() string { return c.Sentence(English) }

// Sentence is the count in a language.
func (c Count) Sentence(language Language) string {
	var message C.rodt_message
	return language.said(&message, C.rodt_count_message(&c.c, &message))
}

// MarshalJSON is all of the count.
func (c Count) MarshalJSON() ([]byte, error) {
	return recordJSON("rodt_count", unsafe.Pointer(&c.c)), nil
}

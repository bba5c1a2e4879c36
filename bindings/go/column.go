// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <rodtravel/rodtravel.h>

// By value: these structs point to memory of Go, which memory of Go that C sees must not.
static rodt_status judge_columns(const rodt_column_plan *plan, rodt_column_in in, size_t rows, rodt_column_out out,
                                 rodt_error *error)
{
    return rodt_column_plan_judge(plan, &in, rows, &out, error);
}
*/
import "C"

import (
	"runtime"
	"strconv"
	"sync"
	"unsafe"
)

// Columns of lengths are whole numbers of 5 nm, which hold what tapes, calipers and gauges show exactly; columns of
// pressures are thousandths of a psi.
const (
	ColumnPerInch = C.RODT_COLUMN_PER_INCH
	ColumnPer64th = C.RODT_COLUMN_PER_64TH
	ColumnPerMM   = C.RODT_COLUMN_PER_MM
	ColumnPerPSI  = C.RODT_COLUMN_PER_PSI

	// NoStroke and NoLimit stand in columns of answers.
	NoStroke = C.RODT_COLUMN_NO_STROKE
	NoLimit  = C.RODT_COLUMN_NO_LIMIT

	// ChamberMissing and ChamberUnreadable are the codes that every plan has.
	ChamberMissing    = C.RODT_COLUMN_CHAMBER_MISSING
	ChamberUnreadable = C.RODT_COLUMN_CHAMBER_UNREADABLE
)

// A Plan is all that columns are judged by, worked out beforehand.
type Plan struct {
	guard sync.RWMutex // a plan that gets a chamber judges nothing meanwhile
	c     *C.rodt_column_plan
}

// Columns are those of many wheel ends, all of one length. Judge reads them where they are, without a copy.
type Columns struct {
	Released []int32 // in ColumnPerInch
	Applied  []int32
	Chamber  []uint8 // codes of the plan
	PSI      []int32 // in ColumnPerPSI; nil = every row has the pressure of the plan
	Date     []int32 // days since 1970-01-01; nil = every row has the day of the plan

	// Bitmaps as Arrow has them, bit i%8 of byte i/8 for row i: 0 = the cell is missing. nil = none is.
	ReleasedValid, AppliedValid, ChamberValid, PSIValid, DateValid []byte
}

// Answers are columns as long as those that were judged.
type Answers struct {
	Stroke  []int32  // in ColumnPerInch, or NoStroke
	Verdict []uint8  // numbers: VerdictOf
	Reasons []uint64 // sets: ReasonsOf
	Flags   []uint8  // sets: FlagsOf
	Limit   []int32  // in ColumnPerInch, or NoLimit where there is none or it is no whole number of units
}

// VerdictOf is the verdict of a number in a column.
func VerdictOf(number uint8) Verdict { return Verdict(wordOf("rodt_verdict", int64(number))) }

// ReasonsOf are the reasons of a set in a column.
func ReasonsOf(set uint64) []Reason { return wordsOf[Reason]("rodt_reason", set) }

// FlagsOf are the flags of a set in a column.
func FlagsOf(set uint8) []ColumnFlag { return wordsOf[ColumnFlag]("rodt_column_flag", uint64(set)) }

// Plan makes a plan. common is what all rows share: unit, day, pressures and the conditions of the test; readings and a
// chamber in it are not used.
func (r *RuleSet) Plan(common Form) (*Plan, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	common.Chamber, common.Released, common.Applied = "", "", ""
	for _, err := range common.Errors() {
		if err.Status != StatusEmpty {
			return nil, err
		}
	}
	var kept texts
	defer kept.free()
	var form C.rodt_form
	if err := kept.fill("rodt_form", unsafe.Pointer(&form), common); err != nil {
		return nil, err
	}
	var reading C.rodt_reading
	if status := C.rodt_form_parse(&form, &reading, nil); status != C.RODT_OK {
		return nil, errorOf(status, nil)
	}
	made := &Plan{}
	var refused C.rodt_error
	status := C.rodt_column_plan_new(r.c, &reading, &made.c, &refused)
	runtime.KeepAlive(r)
	if status != C.RODT_OK {
		return nil, errorOf(status, &refused)
	}
	runtime.SetFinalizer(made, func(of *Plan) { C.rodt_column_plan_free(of.c) })
	return made, nil
}

// Add gives the code of a chamber in columns that are judged with the plan, of which 254 fit.
func (p *Plan) Add(chamber Chamber) (uint8, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	p.guard.Lock()
	defer p.guard.Unlock()
	var code C.uint32_t
	var refused C.rodt_error
	status := C.rodt_column_plan_add(p.c, &chamber.c, &code, &refused)
	return uint8(code), failure(status, &refused)
}

func (p *Plan) check() error {
	if p == nil || p.c == nil {
		return refusal(StatusArgument, "plan", "a plan is made by a rule set")
	}
	return nil
}

// Judge judges every row as RuleSet.Judge would, to the last reason. No cell makes it fail: one that holds no reading,
// pressure, day or code makes its row undetermined. out keeps its columns where they have room for the rows.
func (p *Plan) Judge(columns Columns, out *Answers) error {
	if err := p.check(); err != nil {
		return err
	}
	rows := len(columns.Released)
	in, err := columns.in(rows)
	if err != nil || rows == 0 {
		out.resize(0)
		return err
	}
	out.resize(rows)
	var to C.rodt_column_out
	to.stroke, to.verdict = (*C.int32_t)(&out.Stroke[0]), (*C.uint8_t)(&out.Verdict[0])
	to.reasons, to.flags = (*C.uint64_t)(&out.Reasons[0]), (*C.uint8_t)(&out.Flags[0])
	to.limit = (*C.int32_t)(&out.Limit[0])
	p.guard.RLock()
	defer p.guard.RUnlock()
	var refused C.rodt_error
	status := C.judge_columns(p.c, in, C.size_t(rows), to, &refused)
	runtime.KeepAlive(columns)
	runtime.KeepAlive(out)
	return failure(status, &refused)
}

func (a *Answers) resize(rows int) {
	a.Stroke, a.Limit = resized(a.Stroke, rows), resized(a.Limit, rows)
	a.Verdict, a.Flags = resized(a.Verdict, rows), resized(a.Flags, rows)
	a.Reasons = resized(a.Reasons, rows)
}

func resized[T any](column []T, rows int) []T {
	if cap(column) >= rows {
		return column[:rows]
	}
	return make([]T, rows)
}

// in is the columns in C; one of another length is refused.
func (c Columns) in(rows int) (C.rodt_column_in, error) {
	var in C.rodt_column_in
	for _, each := range []struct {
		name   string
		rows   int
		needed bool
	}{{"released", len(c.Released), true}, {"applied", len(c.Applied), true}, {"chamber", len(c.Chamber), true},
		{"psi", len(c.PSI), false}, {"date", len(c.Date), false}} {
		if each.rows != rows && (each.needed || each.rows != 0) {
			return in, refusal(StatusArgument, each.name, strconv.Itoa(rows)+" rows were expected")
		}
	}
	if rows == 0 {
		return in, nil
	}
	in.released, in.applied = first[C.int32_t](c.Released), first[C.int32_t](c.Applied)
	in.chamber = first[C.uint8_t](c.Chamber)
	in.psi, in.date = first[C.int32_t](c.PSI), first[C.int32_t](c.Date)
	for _, each := range []struct {
		name string
		from []byte
		to   *C.rodt_column_bits
	}{{"released", c.ReleasedValid, &in.released_valid}, {"applied", c.AppliedValid, &in.applied_valid},
		{"chamber", c.ChamberValid, &in.chamber_valid}, {"psi", c.PSIValid, &in.psi_valid},
		{"date", c.DateValid, &in.date_valid}} {
		if each.from != nil && len(each.from) < (rows+7)/8 {
			return in, refusal(StatusArgument, each.name, "a bitmap has a bit for each row")
		}
		each.to.bits = first[C.uint8_t](each.from)
	}
	return in, nil
}

// first points to the first cell, as C has it; nil = there is no such column.
func first[To, From any](column []From) *To {
	if len(column) == 0 {
		return nil
	}
	return (*To)(unsafe.Pointer(&column[0]))
}

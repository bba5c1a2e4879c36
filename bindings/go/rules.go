// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"math/big"
	"runtime"
	"sync"
)

// A RuleSet is the law of one authority, or a carrier's own limits on top of a law. It never changes.
type RuleSet struct {
	c *C.rodt_rules
}

var compiledIn struct {
	once  sync.Once
	rules []*RuleSet
}

// RuleSets are the compiled-in rule sets, in the order of the table.
func RuleSets() []*RuleSet {
	compiledIn.once.Do(func() {
		for i := C.size_t(0); i < C.rodt_rules_count(); i++ {
			compiledIn.rules = append(compiledIn.rules, &RuleSet{C.rodt_rules_at(i)})
		}
	})
	return append([]*RuleSet(nil), compiledIn.rules...)
}

// DefaultRules is the rule set that is used when a person names none, "us-fmcsr".
func DefaultRules() *RuleSet {
	found, _ := FindRules(C.RODT_DEFAULT_RULES)
	return found
}

// FindRules is the compiled-in rule set of an id.
func FindRules(id string) (*RuleSet, error) {
	for _, each := range RuleSets() {
		if each.ID() == id {
			return each, nil
		}
	}
	return nil, refusal(StatusUnknownRules, "rules", C.GoString(C.rodt_status_text(C.RODT_E_UNKNOWN_RULES)))
}

// Load is a carrier's own limits, the text of a table, on top of this law, which is compiled in; of air checks on
// another law, if one is given. A row that is laxer than the law is refused, with its line and column.
//
// name is what sentences call the table, such as the name of a file, and becomes the id.
func (r *RuleSet) Load(name, table string, airLaw *RuleSet) (*RuleSet, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	var kept texts
	defer kept.free()
	cName, err := kept.text("name", name)
	if err != nil {
		return nil, err
	}
	// A zero byte in it is refused with its place.
	cTable := C.CString(table)
	kept = append(kept, cTable)
	var air *C.rodt_rules
	if airLaw != nil {
		air = airLaw.c
	}
	var loaded *C.rodt_rules
	var refused C.rodt_error
	status := C.rodt_rules_load_with_air(r.c, air, cName, cTable, C.size_t(len(table)), &loaded, &refused)
	if status != C.RODT_OK {
		return nil, errorOf(status, &refused)
	}
	made := &RuleSet{loaded}
	runtime.SetFinalizer(made, func(of *RuleSet) { C.rodt_rules_unref(of.c) })
	return made, nil
}

func (r *RuleSet) check() error {
	if r == nil || r.c == nil {
		return refusal(StatusUnknownRules, "rules", C.GoString(C.rodt_status_text(C.RODT_E_UNKNOWN_RULES)))
	}
	return nil
}

// pointer is that of the rule set; NULL, of which nothing is known, of none.
func (r *RuleSet) pointer() *C.rodt_rules {
	if r == nil {
		return nil
	}
	return r.c
}

// ID is "us-fmcsr", or the name of a table that was loaded.
func (r *RuleSet) ID() string {
	defer runtime.KeepAlive(r)
	return C.GoString(C.rodt_rules_id(r.pointer()))
}

// String is the id.
func (r *RuleSet) String() string { return r.ID() }

// Title is one line for a list.
func (r *RuleSet) Title() string {
	defer runtime.KeepAlive(r)
	return C.GoString(C.rodt_rules_title(r.pointer()))
}

// Authority is who enforces it, and where.
func (r *RuleSet) Authority() string {
	defer runtime.KeepAlive(r)
	return C.GoString(C.rodt_rules_authority(r.pointer()))
}

// Source is where it is published, in one line.
func (r *RuleSet) Source() string {
	defer runtime.KeepAlive(r)
	return sourceText(C.rodt_rules_source(r.pointer()))
}

// Evidence is how its text was checked.
func (r *RuleSet) Evidence() Evidence {
	defer runtime.KeepAlive(r)
	return Evidence(wordOf("rodt_evidence", int64(C.rodt_rules_evidence(r.pointer()))))
}

// Dates are the first and the last day on which the rule set can judge; zero = open.
func (r *RuleSet) Dates() (from, until Date) {
	defer runtime.KeepAlive(r)
	return dateFrom(C.rodt_rules_from(r.pointer())), dateFrom(C.rodt_rules_until(r.pointer()))
}

// Law is the law that a carrier's own limits are based on; nil of a law.
func (r *RuleSet) Law() *RuleSet {
	defer runtime.KeepAlive(r)
	return compiled(C.rodt_rules_law(r.pointer()))
}

// AirLaw is that of its air checks; nil of a law.
func (r *RuleSet) AirLaw() *RuleSet {
	defer runtime.KeepAlive(r)
	return compiled(C.rodt_rules_air_law(r.pointer()))
}

func compiled(c *C.rodt_rules) *RuleSet {
	for _, each := range RuleSets() {
		if each.c == c {
			return each
		}
	}
	return nil
}

// AtLimitPasses tells whether a stroke exactly at the limit passes.
func (r *RuleSet) AtLimitPasses() bool {
	defer runtime.KeepAlive(r)
	return bool(C.rodt_rules_at_limit_passes(r.pointer()))
}

// Pressures is the window of reservoir pressure for the stroke test in psi, both ends inside, and where it is
// published; nil and empty = the rule set has none.
func (r *RuleSet) Pressures() (from, until *big.Rat, source string) {
	defer runtime.KeepAlive(r)
	c := r.pointer()
	return pressure(C.rodt_rules_pressure_from(c)), pressure(C.rodt_rules_pressure_until(c)),
		sourceText(C.rodt_rules_pressure_source(c))
}

// RatedShare is the part of the marked rated stroke that limits an actuator which is not in the table; nil = the rule
// set says nothing of such.
func (r *RuleSet) RatedShare() *big.Rat {
	defer runtime.KeepAlive(r)
	return ratio(C.rodt_rules_rated_share(r.pointer()))
}

// MarshalJSON is what the rule set is.
func (r *RuleSet) MarshalJSON() ([]byte, error) {
	defer runtime.KeepAlive(r)
	return report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_rules_json_format(r.pointer(), 0, to, size, needed)
	}), nil
}

// LimitsJSON are the rows of limits that are in force on a day, as `rodtravel limits --json` lists them; a zero day is
// the newest text.
func (r *RuleSet) LimitsJSON(day Date) ([]byte, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	on, err := day.checked()
	if err != nil {
		return nil, err
	}
	defer runtime.KeepAlive(r)
	said, status := writtenOr(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_limits_json_format(r.c, on, nil, 0, to, size, needed)
	})
	return []byte(said), failure(status, nil)
}

// AirLimitsJSON are the rows of air checks, an object each, with their sentences in a language.
func (r *RuleSet) AirLimitsJSON(language Language) [][]byte {
	defer runtime.KeepAlive(r)
	var found [][]byte
	for i := C.size_t(0); i < C.rodt_rules_air_count(r.pointer()); i++ {
		row := C.rodt_rules_air_at(r.c, i)
		found = append(found, report(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
			return C.rodt_air_limit_json_format(row, language.c, 0, to, size, needed)
		}))
	}
	return found
}

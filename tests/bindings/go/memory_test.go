// SPDX-License-Identifier: Apache-2.0

package rodtravel_test

import (
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"rodtravel"
)

// pages is the memory of the process that is there, in pages.
func pages(t *testing.T) int {
	said, err := os.ReadFile("/proc/self/statm")
	if err != nil {
		t.Skip(err)
	}
	found, err := strconv.Atoi(strings.Fields(string(said))[1])
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func work(t *testing.T, calls int) {
	rules := rodtravel.DefaultRules()
	for i := 0; i < calls; i++ {
		if i%1000 == 0 {
			yard, err := rules.Load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", nil)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := yard.Plan(rodtravel.Form{}); err != nil {
				t.Fatal(err)
			}
		}
		if found, err := rules.JudgeRow(texts); err != nil || found.String() == "" {
			t.Fatal(err)
		}
		if _, err := rules.Judge(applied("2-Jan")); err == nil {
			t.Fatal("nothing was refused")
		}
	}
	runtime.GC()
	runtime.GC()
}

// CALLS in the environment is how many. What stays of garbage and of finalizers that have not run is some hundred pages.
func TestMemory(t *testing.T) {
	calls := 20000
	if more, err := strconv.Atoi(os.Getenv("CALLS")); err == nil {
		calls = more
	}
	work(t, calls/10)
	work(t, calls/10)
	before := pages(t)
	work(t, calls)
	more := pages(t) - before
	t.Logf("%d pages more after %d calls", more, calls)
	if more > 1000 {
		t.Fail()
	}
}

// SPDX-License-Identifier: Apache-2.0

package rodtravel_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/big"
	"reflect"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"rodtravel"
)

var texts = rodtravel.Form{Chamber: "30L", Released: "2 3/4", Applied: "5 5/16", PSI: "95"}

func same(t *testing.T, found, wanted any) {
	t.Helper()
	if fmt.Sprint(found) != fmt.Sprint(wanted) {
		t.Errorf("found %v, wanted %v", found, wanted)
	}
}

func applied(text string) rodtravel.Form {
	form := texts
	form.Applied = text
	return form
}

func judged(t *testing.T, form rodtravel.Form) rodtravel.Finding {
	t.Helper()
	found, err := rodtravel.DefaultRules().Judge(form)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func language(t *testing.T, tag string) rodtravel.Language {
	t.Helper()
	found, err := rodtravel.FindLanguage(tag)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func TestFinding(t *testing.T) {
	over := judged(t, texts)
	same(t, over.Verdict(), rodtravel.VerdictOutOfAdjustment)
	same(t, over.Margin(), big.NewRat(-1, 16))
	same(t, []*big.Rat{over.AppliedStroke(), over.Limit()}, "[41/16 5/2]")
	same(t, over.Reasons(), "[over-limit]")
	same(t, over.Has(rodtravel.ReasonOverLimit) && !over.Has(rodtravel.ReasonAtLimit) && !over.Has("x"), true)
	same(t, over, "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16")
	same(t, over.LongLimit() == nil && over.Date().IsZero() && over.Err() == nil, true)
	same(t, over.Defect(), rodtravel.DefectHalf)
	same(t, []any{over.Released(), over.Applied(), over.Pressure(), over.PressureAfter()}, "[11/4 85/16 95/1 <nil>]")
	same(t, []any{over.Evidence(), over.LawEvidence(), over.LawBasis(), over.LawLimit()}, "[checked checked table 5/2]")
	same(t, over.Chamber(), "clamp 30 long")
	same(t, over.Rules(), "us-fmcsr")
	if !strings.HasPrefix(over.Source(), "49 CFR Part 393, 393.47") {
		t.Error(over.Source())
	}
	published, err := over.Get("law_row.published")
	same(t, []any{published, err}, "[2 1/2 <nil>]")
	limit, err := over.Exact("law_row.limit")
	same(t, []any{limit, err}, "[5/2 <nil>]")
	french, spanish := language(t, "fr-CA"), language(t, "es_MX.UTF-8")
	same(t, strings.Contains(over.ReasonSentence(rodtravel.ReasonOverLimit, french), "dépasse la limite"), true)
	same(t, over.ReasonSentence(rodtravel.ReasonAtLimit, french), "")
	same(t, strings.Contains(over.Sentence(spanish), "límite"), true)
	same(t, strings.HasPrefix(over.Spoken(rodtravel.English), "Released 2 3/4"), true)
	exact := texts
	exact.Division = "1/8"
	proof := judged(t, exact)
	same(t, []any{proof.Proof(), proof.Division(), proof.ProbabilityOver() != nil}, "[not-resolved 1/8 true]")
	same(t, proof.ProofSentence(rodtravel.English) != "" && over.ProofSentence(rodtravel.English) == "", true)
}

func TestFindingIsAValue(t *testing.T) {
	over, again := judged(t, texts), judged(t, texts)
	copied := over
	same(t, over == again && copied == over && over != judged(t, applied("5")), true)
	same(t, map[rodtravel.Finding]int{over: 1}[again], 1)
	text, err := json.Marshal([]any{over, rodtravel.Finding{}})
	var read []map[string]any
	if err != nil || json.Unmarshal(text, &read) != nil {
		t.Fatal(err)
	}
	same(t, []any{read[0]["limit"], read[1] == nil}, "[2 1/2 true]")
	over.Margin().SetInt64(7)
	same(t, over.Margin(), "-1/16")
	same(t, rodtravel.Finding{}.Verdict(), rodtravel.VerdictUndetermined)
	same(t, strings.HasPrefix(rodtravel.Finding{}.String(), "(not measured)"), true)
	same(t, rodtravel.Finding{}.Source()+rodtravel.AirFinding{}.Note(rodtravel.English), "")
}

func TestRow(t *testing.T) {
	rules := rodtravel.DefaultRules()
	row, err := rules.JudgeRow(applied("2-Jan"))
	same(t, []any{err, row.Verdict(), string(row.Err().Status), row.Err().Field, row.Err().Column},
		"[<nil> undetermined date-cell applied 1]")
	sound, err := rules.JudgeRow(texts)
	same(t, err == nil && sound == judged(t, texts), true)
	day := texts
	day.Date = rodtravel.Text(time.Date(2024, 5, 6, 23, 0, 0, 0, time.FixedZone("", -5*3600)))
	same(t, judged(t, day).Date(), "2024-05-06")
	metric := rodtravel.Form{Chamber: "30", Released: "50,8", Applied: "104,8", DefaultUnit: rodtravel.UnitMM, DecimalComma: true}
	same(t, judged(t, metric).Verdict(), rodtravel.VerdictOutOfAdjustment)
	same(t, len(rodtravel.Form{Chamber: "x", Released: "2-Jan"}.Errors()), 3)
	same(t, len(texts.Errors()), 0)
}

func TestNumbers(t *testing.T) {
	whole, _ := new(big.Rat).SetString("4.125")
	for _, text := range []string{"4 1/8", "4⅛", rodtravel.Text(big.NewRat(33, 8)), rodtravel.Text(whole)} {
		form := rodtravel.Form{Chamber: "30", Released: "2 1/8", Applied: text}
		same(t, judged(t, form).AppliedStroke(), "2/1")
	}
	same(t, []string{rodtravel.Text(4), rodtravel.Text(big.NewRat(33, 8)), rodtravel.Text(big.NewRat(-1, 3)),
		rodtravel.Text((*big.Rat)(nil)), rodtravel.Text(big.NewInt(7)), rodtravel.Text(int64(-1))}, "[4 4.125 -1/3  7 -1]")
	for _, read := range []struct {
		by     func(string) (*big.Rat, error)
		text   string
		wanted string
	}{
		{func(of string) (*big.Rat, error) { return rodtravel.ReadLength(of, "") }, "44.45 mm", "7/4"},
		{func(of string) (*big.Rat, error) { return rodtravel.ReadLength(of, rodtravel.UnitMM) }, "44.45", "7/4"},
		{rodtravel.ReadPressure, "95", "95/1"},
		{rodtravel.ReadSeconds, "1:30", "90/1"},
	} {
		found, err := read.by(read.text)
		same(t, []any{found, err}, "["+read.wanted+" <nil>]")
	}
	day, err := rodtravel.ReadDate("14-OCT-21")
	days, _ := day.Days()
	same(t, []any{day, days, err, day.Time(time.UTC).Weekday()}, "[2021-10-14 18914 <nil> Thursday]")
	text, err := rodtravel.WriteLength(big.NewRat(-7, 4))
	same(t, []any{text, err}, "[-1 3/4 <nil>]")
}

func TestVehicle(t *testing.T) {
	over, within := judged(t, texts), judged(t, applied("5"))
	vehicle, err := rodtravel.JudgeVehicle([]rodtravel.WheelEnd{
		{Position: "1L", Finding: over, Adjuster: "automatic", ArmLength: "6"}, {Position: "1R", Finding: within}}, 0)
	if err != nil {
		t.Fatal(err)
	}
	same(t, []any{vehicle.Outcome(), vehicle.Count().Share(), vehicle.Count().Brakes()}, "[ambiguous 1/4 2]")
	same(t, vehicle.With(rodtravel.VerdictOutOfAdjustment)+vehicle.With(rodtravel.VerdictInAdjustment), 2)
	same(t, vehicle.Advice(), "[find-fault none]")
	same(t, rodtravel.AdviceSentence(rodtravel.AdviceFindFault, language(t, "fr")) != "", true)
	same(t, vehicle.MismatchedAxles(), 0)
	difference, err := vehicle.Exact("axles[0].stroke_difference")
	same(t, []any{difference, err}, "[5/16 <nil>]")
	text, err := json.Marshal(vehicle)
	same(t, err == nil && strings.Contains(string(text), `"find-fault"`), true)
	same(t, strings.Contains(vehicle.String(), "of 2 brakes"), true)
	fewer, err := rodtravel.JudgeVehicle([]rodtravel.WheelEnd{{Position: "1L", Finding: over}}, 10)
	same(t, []any{fewer.Outcome(), err}, "[undetermined <nil>]")
	count, err := rodtravel.Tally{Brakes: 6, Full: 1, Half: 1}.Judge(0)
	same(t, []any{count.Outcome(), count.Defective(), count.WholeNeeded(), count.Criterion(), err}, "[ambiguous 3/2 2 1/5 <nil>]")
	var tally rodtravel.Tally
	same(t, []any{tally.Add(over), tally.Add(within), tally}, "[<nil> <nil> {2 0 1 0 0}]")
	same(t, rodtravel.Vehicle{}.Outcome(), rodtravel.OutcomeUndetermined)
	_, err = rodtravel.Vehicle{}.Get("in_adjustment")
	same(t, err != nil && string(rodtravel.Vehicle{}.JSON(rodtravel.English)) == "null", true)
}

func TestAir(t *testing.T) {
	driver, err := rodtravel.FindRules("us-cdl")
	if err != nil {
		t.Fatal(err)
	}
	good, err := driver.JudgeAir(rodtravel.AirForm{Check: "warning", Pressure: "62"})
	same(t, []any{good.Result(), good.LawResult(), good.Missing(), good.AtLimit(), good.Measured(), good.Major(), err},
		"[good good nothing false 62/1 false <nil>]")
	same(t, good.Allowed() != nil && good.Edge(rodtravel.English) != "" && !good.Minor(), true)
	same(t, strings.Contains(good.Sentence(language(t, "es")), "62 psi"), true)
	same(t, good == good && strings.Contains(string(good.JSON(language(t, "fr"))), "62 psi"), true)
	same(t, strings.Contains(good.Spoken(rodtravel.English), "62 psi"), true)
	published, err := good.Get("row.published")
	same(t, published != "" && err == nil, true)
	value, err := good.Exact("row.value")
	same(t, value != nil && err == nil, true)
	open, err := driver.JudgeAir(rodtravel.AirForm{Check: "warning"})
	same(t, []any{open.Result(), err}, "[not-done <nil>]")
}

func TestChambers(t *testing.T) {
	rules := rodtravel.DefaultRules()
	which, err := rules.Identify(rodtravel.Clues{Stamp: "24"}, rodtravel.Date{})
	same(t, []any{which.StrictLimit(), which.NextObservation(), which.WithoutLimit(), err}, "[7/4 long-sign 0 <nil>]")
	same(t, len(which.Candidates()) > 2 && len(which.Contradiction()) == 0, true)
	same(t, which.Candidates()[0].Chamber.Size()+fmt.Sprint(which.Candidates()[0].For), "24[stamp]")
	same(t, which.NextSentence(rodtravel.English) != "" && len(which.JSON(language(t, "fr"))) > 500, true)
	same(t, rodtravel.Identification{}.Candidates() == nil, true)
	mark, err := rodtravel.ReadChamber("24/30 LS")
	same(t, []any{mark, mark.Family(), mark.Size(), mark.SpringSize(), mark.StrokeClass(), err}, "[clamp 24/30 long clamp 24 30 long <nil>]")
	plain, _ := rodtravel.ReadChamber("36")
	limit, err := rules.FindLimit(plain, rodtravel.Date{Year: 2021, Month: 10, Day: 13})
	same(t, []any{limit.Limit(), limit.LawBasis(), limit.AssumedClamp(), limit.AssumedStandard(), limit.ConflictingMarks(), err},
		"[9/4 table true true false <nil>]")
	plain, _ = rodtravel.ReadChamber("24")
	marked, err := plain.Marked(rodtravel.Marks{RatedStroke: "3"})
	limit, _ = rules.FindLimit(marked, rodtravel.Date{})
	same(t, []any{limit.Limit(), limit.LawLimit(), marked.RatedStroke(), marked.MarkedLimit(), err}, "[5/2 5/2 3/1 <nil> <nil>]")
	text, err := json.Marshal([]any{limit, marked, which, rules})
	same(t, err == nil && len(text) > 1000 && limit.Source() != "", true)
}

func TestRules(t *testing.T) {
	rules := rodtravel.DefaultRules()
	from, until, source := rules.Pressures()
	same(t, []any{rules.ID(), rules.AtLimitPasses(), from, until, source != ""}, "[us-fmcsr true 90/1 100/1 true]")
	same(t, len(rodtravel.RuleSets()) > 5 && rules.Title() != "" && rules.Authority() != "" && rules.Source() != "", true)
	limits, err := rules.LimitsJSON(rodtravel.Date{})
	same(t, err == nil && len(limits) > 1000, true)
	driver, _ := rodtravel.FindRules("us-cdl")
	same(t, len(driver.AirLimitsJSON(language(t, "fr"))) > 3 && rules.Law() == nil && rules.RatedShare() != nil, true)
	yard, err := rules.Load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", driver)
	if err != nil {
		t.Fatal(err)
	}
	same(t, []any{yard, yard.Law(), yard.AirLaw(), yard.Evidence()}, "[yard us-fmcsr us-cdl none]")
	kept, err := yard.Judge(applied("5 1/4"))
	yard = nil
	runtime.GC()
	runtime.GC()
	same(t, []any{kept.Limit(), kept.LawLimit(), kept.Rules(), kept.Has(rodtravel.ReasonOverOwnLimit), err}, "[19/8 5/2 yard true <nil>]")
	start, _ := rules.Dates()
	same(t, start.String() <= "2021-10-14", true)
}

func TestColumns(t *testing.T) {
	plan, err := rodtravel.DefaultRules().Plan(rodtravel.Form{PSI: "95"})
	if err != nil {
		t.Fatal(err)
	}
	mark, _ := rodtravel.ReadChamber("30L")
	code, err := plan.Add(mark)
	if err != nil {
		t.Fatal(err)
	}
	const sixteenth = 4 * rodtravel.ColumnPer64th
	columns := rodtravel.Columns{Released: []int32{44 * sixteenth, 44 * sixteenth, -5, 44 * sixteenth},
		Applied: []int32{85 * sixteenth, 80 * sixteenth, 1, 85 * sixteenth}, Chamber: []uint8{code, code, code, code},
		AppliedValid: []byte{7}}
	var out rodtravel.Answers
	if err := plan.Judge(columns, &out); err != nil {
		t.Fatal(err)
	}
	for row, text := range []string{"5 5/16", "5"} {
		one := judged(t, applied(text))
		same(t, rodtravel.VerdictOf(out.Verdict[row]), one.Verdict())
		same(t, rodtravel.ReasonsOf(out.Reasons[row]), one.Reasons())
		same(t, big.NewRat(int64(out.Stroke[row]), rodtravel.ColumnPerInch), one.AppliedStroke())
		same(t, big.NewRat(int64(out.Limit[row]), rodtravel.ColumnPerInch), one.Limit())
	}
	same(t, []any{rodtravel.FlagsOf(out.Flags[2]), out.Stroke[2], rodtravel.FlagsOf(out.Flags[3])}, "[[invalid] -1 [missing]]")
	first := &out.Stroke[0]
	same(t, []any{plan.Judge(columns, &out), first == &out.Stroke[0]}, "[<nil> true]")
	same(t, []any{plan.Judge(rodtravel.Columns{}, &out), len(out.Stroke)}, "[<nil> 0]")
}

func TestGoroutines(t *testing.T) {
	rules := rodtravel.DefaultRules()
	plan, err := rules.Plan(rodtravel.Form{})
	if err != nil {
		t.Fatal(err)
	}
	mark, _ := rodtravel.ReadChamber("30L")
	var all sync.WaitGroup
	for n := 0; n < 8; n++ {
		all.Add(1)
		go func() {
			defer all.Done()
			for i := 0; i < 100; i++ {
				found, err := rules.Judge(texts)
				if err != nil || found.Margin().Cmp(big.NewRat(-1, 16)) != 0 || found.String() == "" {
					t.Error(found, err)
				}
				if _, err := rules.Judge(applied("2-Jan")); !errors.Is(err, rodtravel.StatusDateCell) {
					t.Error(err)
				}
				var out rodtravel.Answers
				if i%10 == 0 {
					_, err = plan.Add(mark)
				}
				column := []int32{1, 2}
				if err := plan.Judge(rodtravel.Columns{Released: column, Applied: column, Chamber: []uint8{2, 2}}, &out); err != nil {
					t.Error(err)
				}
			}
		}()
	}
	all.Wait()
}

// Every field of a form is a member of the library's: one that is refused is named.
func TestFields(t *testing.T) {
	form := reflect.TypeOf(rodtravel.Form{})
	for i := 0; i < form.NumField(); i++ {
		field := form.Field(i)
		if field.Type.Kind() != reflect.String {
			continue
		}
		wrong := texts
		reflect.ValueOf(&wrong).Elem().Field(i).SetString("\x00")
		_, err := rodtravel.DefaultRules().Judge(wrong)
		var refused *rodtravel.Error
		if !errors.As(err, &refused) || strings.ReplaceAll(refused.Field, "_", "") != strings.ToLower(field.Name) {
			t.Error(field.Name, err)
		}
	}
}

// SPDX-License-Identifier: Apache-2.0

package rodtravel_test

import (
	"errors"
	"fmt"
	"math/big"
	"testing"

	"rodtravel"
)

// What each call must refuse: status, field, column and line.
func TestRefused(t *testing.T) {
	rules := rodtravel.DefaultRules()
	judge := func(change func(*rodtravel.Form)) error {
		form := texts
		change(&form)
		_, err := rules.Judge(form)
		return err
	}
	over := judged(t, texts)
	vehicle := func(brakes int, ends ...rodtravel.WheelEnd) error {
		_, err := rodtravel.JudgeVehicle(ends, brakes)
		return err
	}
	end := rodtravel.WheelEnd{Position: "1L", Finding: over}
	second := func(_ any, err error) error { return err }
	plan, _ := rules.Plan(rodtravel.Form{})
	three, two := []int32{1, 2, 3}, []int32{1, 2}
	var out rodtravel.Answers
	huge := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(30), nil))
	for _, each := range []struct {
		wanted string
		err    error
	}{
		{"date-cell applied 1 0", judge(func(f *rodtravel.Form) { f.Applied = "2-Jan" })},
		{"syntax applied 5 0", judge(func(f *rodtravel.Form) { f.Applied = "4 1/" })},
		{"negative applied 1 0", judge(func(f *rodtravel.Form) { f.Applied = rodtravel.Text(big.NewRat(-1, 8)) })},
		{"empty applied 0 0", judge(func(f *rodtravel.Form) { f.Applied = "" })},
		{"argument applied 0 0", judge(func(f *rodtravel.Form) { f.Applied = "4\x00" })},
		{"syntax applied 2 0", judge(func(f *rodtravel.Form) { f.Applied = "4\xff" })},
		{"syntax default_unit 1 0", judge(func(f *rodtravel.Form) { f.DefaultUnit = "ells" })},
		{"syntax date_order 1 0", judge(func(f *rodtravel.Form) { f.DateOrder = "any" })},
		{"syntax default_date 0 0", judge(func(f *rodtravel.Form) { f.DefaultDate.Year, f.DefaultDate.Day = 2024, 99 })},
		{"unknown-rules rules 0 0", second(rodtravel.FindRules("atlantis"))},
		{"unknown-rules rules 0 0", second((*rodtravel.RuleSet)(nil).Judge(texts))},
		{"unknown-rules rules 0 0", second(new(rodtravel.RuleSet).JudgeAir(rodtravel.AirForm{}))},
		{"unknown-rules rules 0 0", second(new(rodtravel.RuleSet).Plan(rodtravel.Form{}))},
		{"argument unit 0 0", second(rodtravel.ReadLength("3", "ells"))},
		{"syntax - 3 0", second(rodtravel.ReadLength("4½¼", ""))},
		{"argument - 0 0", second(rodtravel.ReadPressure("9\x00"))},
		{"range length 0 0", second(rodtravel.WriteLength(huge))},
		{"argument length 0 0", second(rodtravel.WriteLength(nil))},
		{"argument language 0 0", second(rodtravel.FindLanguage("xx"))},
		{"laxer limit 19 2", second(rules.Load("yard", "family,size,class,limit\nclamp,30,standard,3\n", nil))},
		{"table - 7 1", second(rules.Load("yard", "family\x00", nil))},
		{"argument name 0 0", second(rules.Load("us-cdl", "", nil))},
		{"argument ends 0 0", vehicle(0)},
		{"argument finding 0 1", vehicle(0, rodtravel.WheelEnd{Position: "1L"})},
		{"syntax position 1 2", vehicle(0, end, rodtravel.WheelEnd{Position: "left", Finding: over})},
		{"argument position 0 2", vehicle(0, end, end)},
		{"argument brakes 0 0", vehicle(-1, end)},
		{"argument brakes 0 0", vehicle(1<<40, end)},
		{"argument tally 0 0", second(rodtravel.Tally{Brakes: 1, Full: 2}.Judge(0))},
		{"negative brakes 1 0", second(rodtravel.Tally{Brakes: -1}.Judge(0))},
		{"syntax pressure 1 0", second(rules.JudgeAir(rodtravel.AirForm{Check: "warning", Pressure: "high"}))},
		{"empty check 0 0", second(rules.JudgeAir(rodtravel.AirForm{}))},
		{"argument colour 0 0", second(over.Get("colour"))},
		{"argument verdict 0 0", second(over.Exact("verdict"))},
		{"argument path 0 0", second(over.Get("a\x00"))},
		{"argument date 0 0", second(rules.FindLimit(over.Chamber(), rodtravel.Date{Year: 2023, Month: 2, Day: 29}))},
		{"argument - 0 0", second(rules.Identify(rodtravel.Clues{}, rodtravel.Date{}))},
		{"argument chamber 0 0", second(rules.FindLimit(rodtravel.Chamber{}, rodtravel.Date{}))},
		{"syntax psi 1 0", second(rules.Plan(rodtravel.Form{PSI: "high"}))},
		{"argument applied 0 0", plan.Judge(rodtravel.Columns{Released: three, Applied: two, Chamber: []uint8{2, 2, 2}}, &out)},
		{"argument psi 0 0", plan.Judge(rodtravel.Columns{Released: two, Applied: two, Chamber: []uint8{2, 2}, PSI: three}, &out)},
		{"argument date 0 0", plan.Judge(rodtravel.Columns{Released: two, Applied: two, Chamber: []uint8{2, 2}, DateValid: []byte{}}, &out)},
		{"argument plan 0 0", new(rodtravel.Plan).Judge(rodtravel.Columns{}, &out)},
	} {
		var refused *rodtravel.Error
		if !errors.As(each.err, &refused) {
			t.Errorf("%v, wanted %s", each.err, each.wanted)
			continue
		}
		field := refused.Field
		if field == "" {
			field = "-"
		}
		same(t, fmt.Sprint(string(refused.Status), " ", field, " ", refused.Column, " ", refused.Line), each.wanted)
	}
}

func TestError(t *testing.T) {
	_, err := rodtravel.DefaultRules().Judge(applied("2-Jan"))
	same(t, err, "applied, column 1: this is a date; a spreadsheet makes dates of fractions")
	same(t, errors.Is(err, rodtravel.StatusDateCell) && !errors.Is(err, rodtravel.StatusSyntax), true)
	var refused *rodtravel.Error
	if !errors.As(fmt.Errorf("row 3: %w", err), &refused) || !errors.Is(refused, &rodtravel.Error{Status: "date-cell"}) {
		t.Fatal(err)
	}
	same(t, refused.Say(language(t, "fr")) != refused.Text && refused.Say(rodtravel.English) == refused.Text, true)
	same(t, (&rodtravel.Error{Text: "own"}).Say(language(t, "fr")), "own")
	same(t, rodtravel.StatusDateCell.Error() != "" && rodtravel.Status("x").Error() == "unknown status", true)
}

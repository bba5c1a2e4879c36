# SPDX-License-Identifier: Apache-2.0
# What the package finds and refuses. Prints TAP.
require "rodtravel"

$count = $failed = 0

def ok(right, what, note = nil)
  $count += 1
  $failed += 1 unless right
  puts "#{"not " unless right}ok #{$count} - #{what}"
  puts "# #{note}" unless right || note.nil?
end

def is(found, wanted, what) = ok(found == wanted, what, "found #{found.inspect}, wanted #{wanted.inspect}")

# Status, field, column and line of what a call must refuse.
def refused(wanted)
  yield
  is("nothing", wanted, "refused: #{wanted}")
rescue Rodtravel::Error => error
  found = "#{error.status} #{error.field.empty? ? "-" : error.field} #{error.column} #{error.line}"
  is(found, wanted, "refused: #{wanted}")
end

R = Rodtravel
TEXTS = {chamber: "30L", released: "2 3/4", applied: "5 5/16", psi: 95}.freeze

# --- A wheel end -----------------------------------------------------------------------------------------------------

over = R.judge(**TEXTS)
is(over.verdict, "out-of-adjustment", "the verdict")
is(over.margin, Rational(-1, 16), "the margin is exact")
is([over.applied_stroke, over.limit], [Rational(41, 16), Rational(5, 2)], "stroke and limit")
is(over.reasons, ["over-limit"], "reasons")
is(over.to_s, "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text")
is(over.long_limit, nil, "what is not given is nil")
is(over.defect, "half", "the defect")
ok(over.source.start_with?("49 CFR Part 393, 393.47"), "the source")
is(over.get("law_row.published"), "2 1/2", "a member by its path")
ok(over.sentences("fr")[0].include?("dépasse la limite"), "a reason in French")
ok(over.sentence("es").include?("límite"), "the finding in Spanish")
ok(over.spoken.start_with?("Released 2 3/4"), "what is said aloud")
is(over.to_h["limit"], "2 1/2", "as a hash")
is(JSON.parse([over].to_json)[0], over.to_h, "in JSON of other things")
ok(over == R.judge(**TEXTS) && over.eql?(R.judge(**TEXTS)) && over != R.judge(**TEXTS, applied: "5"), "equal by value")
is({over => 1}[R.judge(**TEXTS)], 1, "a key of a hash")
ok(over.frozen? && over.dup.equal?(over), "frozen")
is(R.judge(**TEXTS, division: "1/8").proof, "not-resolved", "what the division proves")
is(R.judge(**TEXTS, date: Date.new(2024, 5, 6)).day, Date.new(2024, 5, 6), "a day in and out")

row = R.judge_row(**TEXTS, applied: "2-Jan")
is([row.verdict, row.error.status, row.error.field, row.error.column], ["undetermined", "date-cell", "applied", 1], "a row")
is(R.judge_row(**TEXTS).error, nil, "a sound row")
is(R.judge_row(**TEXTS), over, "is judged as by judge")
is(R.judge(chamber: "30", released: "50,8", applied: "104,8", default_unit: :mm, decimal_comma: true).verdict,
   "out-of-adjustment", "a form in millimetres with decimal commas")

# --- The rest of the job ---------------------------------------------------------------------------------------------

vehicle = R.judge_vehicle([{position: "1L", finding: over, adjuster: "automatic", arm_length: 6},
                           {position: "1R", finding: R.judge(**TEXTS, applied: "5")}])
is([vehicle.outcome, vehicle.share], ["ambiguous", Rational(1, 4)], "half a brake of two")
is(vehicle.out_of_adjustment + vehicle.in_adjustment, 2, "counts are numbers")
is(vehicle.to_h["wheel_ends"][0]["advice_code"], "find-fault", "what to do next")
is(R.judge_vehicle([{position: "1L", finding: over}], brakes: 10).outcome, "undetermined", "brakes that were not measured")
is(R.judge_air("warning", pressure: 62, rules: "us-cdl").result, "good", "the low-pressure warning")
is(R.judge_air("warning", pressure: "60", rules: "us-newvehicle").at_limit, true, "at the edge")
is(R.count(brakes: 6, full: 1, half: 1).outcome, "ambiguous", "the chart of whole brakes")
which = R.identify(stamp: "24")
is([which.strict_limit, which.next_observation], [Rational(7, 4), "long-sign"], "which chamber it can be")
ok(which.candidates.size > 2, "candidates")
is([R.read_chamber("30LS").size, R.read_chamber("30LS").stroke_class], %w[30 long], "a mark")
is(R.read_chamber("30LS").to_s, "clamp 30 long", "as a text")
is(R.find_limit("36", date: Date.new(2021, 10, 13)).limit, Rational(9, 4), "a limit on a day")
is(R.find_limit("24", rated_stroke: 3).limit, Rational(5, 2), "with a mark more")
ok(R.rule_sets.size > 5 && R.rule_set("us-fmcsr").limits.size > 30 && R.rule_set("us-cdl").air_limits("fr").size > 3, "rules")
kept = R.judge(**TEXTS, applied: "5 1/4", rules: R.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard"))
GC.start
ok(kept.reasons.include?("over-own-limit") && kept.limit < kept.law_limit && kept.rules == "yard", "a carrier's own limit")

# --- Columns, steps, reservoirs --------------------------------------------------------------------------------------

rows = {chamber: ["30L", "30", nil, "30L", "30"], released: ["2 3/4", "2 1/8", "1", "2-Jan", "2.750001"],
        applied: ["5 5/16", Rational(33, 8), "2", "5", "4.612345"]}
answers = R.judge_columns(**rows, psi: 95)
5.times do |i|
  one = R.judge_row(**rows.transform_values { |cells| cells[i] }, psi: 95)
  is([answers[:verdict][i], answers[:reasons][i], answers[:stroke][i], answers[:limit][i]],
     [one.verdict, one.reasons.join(", "), one.applied_stroke, one.limit], "row #{i} of columns")
end
is(answers[:flags], ["", "", "missing", "invalid", ""], "flags of cells")
is(R.judge_columns(chamber: [], released: [], applied: [])[:verdict], [], "no rows")
is(R.judge_columns(chamber: [""], released: [nil], applied: [""])[:verdict], ["undetermined"], "one blank row")
refused("argument released 0 0") { R.judge_columns(chamber: ["30", "30"], released: ["1"], applied: ["2", "2"]) }
refused("argument released 0 0") { R.judge_columns(chamber: ["30", "30"], released: ["1\u001f1"], applied: ["2\u001f2"]) }
refused("argument colour 0 0") { R.judge_columns(chamber: ["30"], released: ["1"], applied: ["2"], colour: ["red"]) }
refused("argument applied 0 0") { R.judge_columns(chamber: ["30"], released: ["1"], applied: [2.5]) }
refused("argument applied 0 0") { R.judge_columns(chamber: ["30"], released: ["1"]) }
refused("syntax psi 1 0") { R.judge_columns(chamber: ["30"], released: ["1"], applied: ["2"], psi: "high") }
steps = R.steps(rules: "ca-on", vehicle: "single")
is(steps[3][:step], "warning", "a step")
ok(steps[3][:defective].include?("below 55 psi") && steps[3][:row]["check"] == "warning", "its figures")
ok(R.steps(rules: "ca-on", language: "fr")[0][:title] != steps[0][:title], "in French")
ok(R.steps(rules: "ca-on", vehicle: "combination").size > steps.size, "a combination has more steps")
refused("syntax vehicle 1 0") { R.steps(vehicle: "sledge") }
is(R.rated_volume("30"), 89, "the volume of a chamber")
is(R.required_volume(89 * 4 + 54 * 2), 5568, "of its reservoirs")
is(R.required_volume(464, trailer: true), 3712, "of a trailer's")
is(R.build_up_seconds(11136, Rational(5568)), 50, "seconds")
is(R.estimate_application(pressure: 105, reservoir: 5568, chambers: 464), Rational(12453, 130), "an estimate")
is(R.estimate_applications(pressure: 105, least: 60, reservoir: 5568, chambers: 464), 5, "another")
refused("argument chambers 0 0") { R.required_volume(-1) }
refused("argument chambers 0 0") { R.required_volume(1.5) }
refused("argument volumes 0 0") { R.build_up_seconds(1, 0) }
refused("argument estimate 0 0") { R.estimate_application(pressure: 1, reservoir: 1, chambers: 1, fill: 2) }
refused("unknown-chamber chamber 0 0") { R.rated_volume("bolt A") }

# --- Numbers ---------------------------------------------------------------------------------------------------------

["4 1/8", "4.125", "4⅛", "4⅛".encode("UTF-16LE"), Rational(33, 8), BigDecimal("4.125")].each do |applied|
  is(R.judge(chamber: "30", released: "2 1/8", applied: applied).applied_stroke, 2, applied.class)
end
is(R.judge(chamber: "30", released: "2 1/8", applied: 4).applied_stroke, Rational(15, 8), "an integer")
is(R.read_length("44.45 mm"), Rational(7, 4), "millimetres")
is(R.read_length("44.45", unit: "mm"), Rational(7, 4), "by their unit")
is([R.read_pressure("95"), R.read_seconds("1:30"), R.read_date("14-OCT-21")], [95, 90, Date.new(2021, 10, 14)], "readers")
is(R.write_length(Rational(-7, 4)), "-1 3/4", "back to a text")

# --- What is refused -------------------------------------------------------------------------------------------------

[4.125, 4.0, 1e300, Float::NAN].each do |float|
  R.judge(**TEXTS, applied: float)
  ok(false, "a float: #{float}")
rescue R::Error => error
  ok(error.status == "argument" && error.field == "applied" && error.text.include?("binary float"), "a float: #{float}")
end
refused("argument applied 0 0") { R.judge(**TEXTS, applied: BigDecimal("NaN")) }
refused("date-cell applied 1 0") { R.judge(**TEXTS, applied: "2-Jan") }
refused("syntax applied 5 0") { R.judge(**TEXTS, applied: "4 1/") }
refused("negative applied 1 0") { R.judge(**TEXTS, applied: Rational(-1, 8)) }
refused("empty applied 0 0") { R.judge(**TEXTS, applied: nil) }
refused("argument colour 0 0") { R.judge(**TEXTS, colour: "red") }
refused("argument applied 0 0") { R.judge(**TEXTS, applied: "4\0") }
refused("argument applied 0 0") { R.judge(**TEXTS, applied: "4\xFF") }
refused("argument applied 0 0") { R.judge(**TEXTS, applied: [4]) }
refused("syntax default_unit 1 0") { R.judge(**TEXTS, default_unit: "ells") }
refused("unknown-rules - 0 0") { R.judge(**TEXTS, rules: "atlantis") }
refused("unknown-rules - 0 0") { R.rule_set(nil) }
refused("argument unit 0 0") { R.read_length("3", unit: "ells") }
refused("syntax - 3 0") { R.read_length("4½¼") }
refused("range length 0 0") { R.write_length(10**30) }
refused("argument length 0 0") { R.write_length(1.5) }
refused("laxer limit 19 2") { R.load_rules("family,size,class,limit\nclamp,30,standard,3\n", "yard") }
refused("argument ends 0 0") { R.judge_vehicle("1L") }
refused("argument ends 0 0") { R.judge_vehicle([]) }
refused("argument finding 0 1") { R.judge_vehicle([{position: "1L"}]) }
refused("argument colour 0 1") { R.judge_vehicle([{position: "1L", finding: over, colour: "red"}]) }
refused("syntax position 1 2") { R.judge_vehicle([{position: "1L", finding: over}, {position: "left", finding: over}]) }
refused("argument brakes 0 0") { R.judge_vehicle([{position: "1L", finding: over}], brakes: 1.5) }
refused("argument brakes 0 0") { R.judge_vehicle([{position: "1L", finding: over}], brakes: -1) }
refused("syntax pressure 1 0") { R.judge_air("warning", pressure: "high") }
refused("argument tally 0 0") { R.count(brakes: 1, full: 2) }
refused("argument language 0 0") { over.json("xx") }
refused("argument colour 0 0") { over.get("colour") }
refused("argument verdict 0 0") { over.exact("verdict") }
begin
  R.judge(**TEXTS, applied: "2-Jan")
rescue ArgumentError => error
  is(error.message, "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "an error as a text")
  ok(error.say("fr-CA") != error.text && error.say("xx") == error.text, "in another language")
end
is(R.judge(**TEXTS), over, "after an error all is well")

# --- Threads and memory ----------------------------------------------------------------------------------------------

is(4.times.map { Thread.new { 200.times.map { R.judge(**TEXTS).margin }.uniq } }.flat_map(&:value).uniq, [Rational(-1, 16)],
   "threads")

pages = -> { File.exist?("/proc/self/statm") ? File.read("/proc/self/statm").split[1].to_i : 0 }
work = lambda do
  3000.times do
    R.judge_row(**TEXTS).sentence
    begin
      R.judge(**TEXTS, applied: "2-Jan")
    rescue R::Error
      next
    end
  end
  GC.start
end
2.times { work.call }
before = pages.call
3.times { work.call }
ok(pages.call - before < 3000, "nothing is lost", pages.call - before)

# --- The README ------------------------------------------------------------------------------------------------------

runs = File.read(ARGV[0], encoding: "UTF-8").scan(/```ruby\n(.*?)```/m).flatten
is(runs.size, 3, "three runs")
runs.each do |run|
  said = []
  shown = Object.new
  shown.define_singleton_method(:puts) { |*lines| said.concat(lines.map(&:to_s)) }
  shown.instance_eval(run)
  is(said, run.scan(/^ *puts .*?\s# (.*)$/).flatten, "a run of the README")
end

puts "1..#{$count}"
exit $failed.zero?

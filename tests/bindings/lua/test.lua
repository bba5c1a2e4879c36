-- SPDX-License-Identifier: Apache-2.0
-- What the module finds and refuses. Prints TAP.
local rt = require "rodtravel"

local count, failed = 0, 0
local function ok(right, what)
  count = count + 1
  if not right then failed = failed + 1 end
  print((right and "ok " or "not ok ") .. count .. " - " .. what)
end
local function is(found, wanted, what)
  ok(found == wanted, what)
  if found ~= wanted then print("# found " .. tostring(found) .. ", wanted " .. tostring(wanted)) end
end

local function with(more)
  local texts = {chamber = "30L", released = "2 3/4", applied = "5 5/16", psi = 95}
  for name, value in pairs(more or {}) do texts[name] = value end
  return texts
end

-- Status, field, column and line of what a call must refuse.
local function refused(wanted, call, ...)
  local done, error = pcall(call, ...)
  local found = done and "nothing" or not rt.is_error(error) and tostring(error)
    or table.concat({error.status, error.field ~= "" and error.field or "-", error.column, error.line}, " ")
  is(found, wanted, "refused: " .. wanted)
end

-- --- A wheel end -----------------------------------------------------------------------------------------------------

local over = rt.judge(with())
is(over.verdict, "out-of-adjustment", "the verdict")
is(over.margin, rt.ratio("-1/16"), "the margin is exact")
ok(over.applied_stroke == rt.ratio(41, 16) and over.limit == rt.ratio("5/2"), "stroke and limit")
is(table.concat(over.reasons, " "), "over-limit", "reasons")
ok(over:has("over-limit") and not over:has("at-limit"), "a reason is there or not")
is(tostring(over), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text")
is(over.long_limit, nil, "what is not given is nil")
is(over.defect, "half", "the defect")
ok(over.source:find("49 CFR Part 393, 393.47", 1, true) == 1, "the source")
is(over:get("law_row.published"), "2 1/2", "a member by its path")
ok(over:sentences("fr")[1]:find("limite"), "a reason in French")
ok(over:sentence("es"):find("límite"), "the finding in Spanish")
ok(over:spoken():find("^Released 2 3/4"), "what is said aloud")
ok(over:json():find('"margin": "-1/16"', 1, true), "as JSON")
ok(over == rt.judge(with()) and over ~= rt.judge(with {applied = "5"}), "findings are equal by value")
refused("argument Finding 0 0", function() over.verdict = "in-adjustment" end)
is(over.colour, nil, "what no finding has")

local row, why = rt.judge_row(with {applied = "2-Jan"})
is(row.verdict, "undetermined", "a row that cannot be read")
is(why.status .. " " .. why.field .. " " .. why.column, "date-cell applied 1", "and why")
row, why = rt.judge_row(with())
ok(row == over and why == nil, "a sound row")
is(rt.judge {chamber = "30", released = "50,8", applied = "104,8", default_unit = "mm", decimal_comma = true}.verdict,
   "out-of-adjustment", "a form in millimetres with decimal commas")

-- --- The rest of the job ---------------------------------------------------------------------------------------------

local vehicle = rt.judge_vehicle {{position = "1L", finding = over, adjuster = "automatic", arm_length = "6"},
                                  {position = "1R", finding = rt.judge(with {applied = "5"})}}
is(vehicle.outcome, "ambiguous", "half a brake of two")
is(vehicle.share, rt.ratio(1, 4), "the share is exact")
is(vehicle.out_of_adjustment + vehicle.in_adjustment, 2, "counts are numbers")
ok(vehicle:json():find("find-fault", 1, true), "what to do next")
is(rt.judge_vehicle({{position = "1L", finding = over}}, 10).outcome, "undetermined", "brakes that were not measured")
is(rt.judge_air {check = "warning", pressure = 62, rules = "us-cdl"}.result, "good", "the low-pressure warning")
ok(rt.judge_air {check = "warning", pressure = "60", rules = "us-newvehicle"}.at_limit, "at the edge")
is(rt.count {brakes = 6, full = 1, half = 1}.outcome, "ambiguous", "the chart of whole brakes")
local which = rt.identify {stamp = "24"}
ok(which.strict_limit == rt.ratio(7, 4) and which.count > 2, "which chamber it can be")
is(which.next_observation, "long-sign", "what to look at next")
local chamber = rt.read_chamber("30LS")
is(chamber.size .. chamber.stroke_class, "30long", "a mark")
is(rt.find_limit {chamber = "30L"}.limit, rt.ratio(5, 2), "a limit")
is(rt.find_limit {chamber = "36", date = "2021-10-13"}.limit, rt.ratio(9, 4), "on a day")
is(rt.find_limit {chamber = "24", rated_stroke = "3"}.limit, rt.ratio(5, 2), "with a mark more")
ok(#rt.rule_sets() > 5 and rt.rule_set("us-fmcsr"):json():find("United States"), "rule sets")
ok(rt.rule_set("us-fmcsr"):limits_json("2024-01-01"):find('"class": "long"', 1, true), "limits")
local yard = rt.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard")
local kept = rt.judge(with {applied = "5 1/4", rules = yard})
yard = nil
collectgarbage()
ok(kept:has("over-own-limit") and kept.limit < kept.law_limit, "a carrier's own limit")
is(kept.rules, "yard", "the set lives as long as its findings")

-- --- Columns, steps, reservoirs --------------------------------------------------------------------------------------

local rows = {chamber = {"30L", "30", "", "30L", "30"}, released = {"2 3/4", "2 1/8", "1", "2-Jan", "2.750001"},
              applied = {"5 5/16", rt.ratio(33, 8), "2", "5", "4.612345"}}
local answers = rt.judge_columns {chamber = rows.chamber, released = rows.released, applied = rows.applied, psi = 95}
for i = 1, 5 do
  local one = rt.judge_row {chamber = rows.chamber[i], released = rows.released[i], applied = rows.applied[i], psi = 95}
  is(table.concat({answers.verdict[i], answers.reasons[i], tostring(answers.stroke[i] or nil), tostring(answers.limit[i] or nil)}, "|"),
     table.concat({one.verdict, table.concat(one.reasons, ", "), tostring(one.applied_stroke), tostring(one.limit)}, "|"),
     "row " .. i .. " of columns")
end
is(table.concat(answers.flags, "|"), "||missing|invalid|", "flags of cells")
is(rt.judge_columns({chamber = {}, released = {}, applied = {}}).verdict[1], nil, "no rows")
is(rt.judge_columns({chamber = {""}, released = {""}, applied = {""}}).verdict[1], "undetermined", "one blank row")
refused("argument released 0 0", rt.judge_columns, {chamber = {"30", "30"}, released = {"1"}, applied = {"2", "2"}})
refused("argument released 0 0", rt.judge_columns, {chamber = {"30", "30"}, released = {"1\x1f1"}, applied = {"2", "2"}})
refused("argument colour 0 0", rt.judge_columns, {chamber = {"30"}, released = {"1"}, applied = {"2"}, colour = {"red"}})
refused("argument applied 0 0", rt.judge_columns, {chamber = {"30"}, released = {"1"}, applied = {2.5}})
refused("argument applied 0 0", rt.judge_columns, {chamber = {"30"}, released = {"1"}})
refused("syntax psi 1 0", rt.judge_columns, {chamber = {"30"}, released = {"1"}, applied = {"2"}, psi = "high"})
local steps = rt.steps {rules = "ca-on", vehicle = "single"}
is(steps[4].step, "warning", "a step")
ok(steps[4].defective:find("below 55 psi", 1, true) and steps[4].row:find('"warning"', 1, true), "its figures")
ok(rt.steps({rules = "ca-on", language = "fr"})[1].title ~= steps[1].title, "in French")
ok(#rt.steps {rules = "ca-on", vehicle = "combination"} > #steps, "a combination has more steps")
refused("syntax vehicle 1 0", rt.steps, {vehicle = "sledge"})
is(rt.rated_volume("30"), rt.ratio(89), "the volume of a chamber")
is(rt.required_volume(89 * 4 + 54 * 2), rt.ratio(5568), "of its reservoirs")
is(rt.required_volume("464", true), rt.ratio(3712), "of a trailer's")
is(rt.build_up_seconds(11136, 5568), rt.ratio(50), "seconds")
is(rt.estimate_application {pressure = 105, reservoir = 5568, chambers = 464}, rt.ratio(12453, 130), "an estimate")
is(rt.estimate_applications {pressure = 105, least = 60, reservoir = 5568, chambers = 464}, 5, "another")
refused("argument chambers 0 0", rt.required_volume, -1)
refused("argument volumes 0 0", rt.build_up_seconds, 1, 0)
refused("argument estimate 0 0", rt.estimate_application, {pressure = 1, reservoir = 1, chambers = 1, fill = 2})
refused("unknown-chamber chamber 0 0", rt.rated_volume, "bolt A")
refused("syntax number 0 0", function() return "half" < rt.ratio(1, 2) end)

-- --- Numbers ---------------------------------------------------------------------------------------------------------

local half = rt.ratio(1, 2)
ok(half + half == rt.ratio(1) and half * half == rt.ratio("1/4") and half - 1 == -half and 1 / half == rt.ratio(2), "arithmetic")
ok(half < 1 and half <= "1/2" and half > rt.ratio(1, 3) and half.num == 1 and half.den == 2, "comparison")
is(tostring(rt.ratio(-6, 4)), "-3/2", "lowest terms")
for _, applied in ipairs {"4 1/8", "4.125", "4⅛", rt.ratio(33, 8)} do
  is(rt.judge {chamber = "30", released = "2 1/8", applied = applied}.applied_stroke, rt.ratio(2), tostring(applied))
end
is(rt.judge {chamber = "30", released = "2 1/8", applied = 4}.applied_stroke, rt.ratio(15, 8), "an integer")
is(rt.read_length("44.45 mm"), rt.ratio(7, 4), "millimetres")
is(rt.read_length("44.45", "mm"), rt.ratio(7, 4), "by their unit")
is(rt.read_pressure("95"), rt.ratio(95), "psi")
is(rt.read_seconds("1:30"), rt.ratio(90), "seconds")
is(rt.read_date("14-OCT-21"), "2021-10-14", "a day")
is(rt.write_length(rt.ratio(-7, 4)), "-1 3/4", "back to a text")

-- --- What is refused -------------------------------------------------------------------------------------------------

for _, float in ipairs {4.125, 4.0, 1e300, math.huge} do
  local _, error = pcall(rt.judge, with {applied = float})
  ok(rt.is_error(error) and error.status == "argument" and error.field == "applied" and error.text:find("binary float"),
     "a float: " .. float)
end
refused("argument number 0 0", function() return half + 0.5 end)
refused("range - 0 0", function() return rt.ratio(math.maxinteger) * 2 end)
refused("argument - 0 0", rt.ratio, 1, 0)
refused("syntax number 0 0", rt.ratio, "half")
refused("argument number 0 0", function() half.num = 2 end)
refused("date-cell applied 1 0", rt.judge, with {applied = "2-Jan"})
refused("syntax applied 5 0", rt.judge, with {applied = "4 1/"})
refused("empty applied 0 0", rt.judge, with {applied = ""})
refused("argument colour 0 0", rt.judge, with {colour = "red"})
refused("argument judge 0 0", rt.judge, "30")
refused("argument applied 0 0", rt.judge, with {applied = "4\0"})
refused("argument applied 0 0", rt.judge, with {applied = {}})
refused("syntax default_unit 1 0", rt.judge, with {default_unit = "ells"})
refused("unknown-rules - 0 0", rt.judge, with {rules = "atlantis"})
refused("argument unit 0 0", rt.read_length, "3", "ells")
refused("syntax - 3 0", rt.read_length, "4½¼")
refused("laxer limit 19 2", rt.load_rules, "family,size,class,limit\nclamp,30,standard,3\n", "yard")
refused("argument ends 0 0", rt.judge_vehicle, "1L")
refused("argument finding 0 1", rt.judge_vehicle, {{position = "1L"}})
refused("syntax position 1 2", rt.judge_vehicle, {{position = "1L", finding = over}, {position = "left", finding = over}})
refused("argument brakes 0 0", rt.judge_vehicle, {{position = "1L", finding = over}}, 1.5)
refused("syntax pressure 1 0", rt.judge_air, {check = "warning", pressure = "high"})
refused("argument tally 0 0", rt.count, {brakes = 1, full = 2})
refused("argument language 0 0", over.json, over, "xx")
refused("argument colour 0 0", over.get, over, "colour")
refused("argument verdict 0 0", over.exact, over, "verdict")
local _, error = pcall(rt.judge, with {applied = "2-Jan"})
is(tostring(error), "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "an error as a text")
ok(error:say("fr-CA") ~= error.text and error:say("xx") == error.text, "in another language")

-- --- Memory ----------------------------------------------------------------------------------------------------------

local function pages()
  local file = io.open("/proc/self/statm")
  local found = file and file:read("a"):match("%d+ (%d+)")
  if file then file:close() end
  return tonumber(found)
end
local function work()
  for _ = 1, 3000 do
    rt.judge_row(with()):sentence()
    pcall(rt.judge, with {applied = "2-Jan"})
  end
  collectgarbage()
end
work()
local before = pages()
for _ = 1, 3 do work() end
ok(before == nil or pages() - before < 500, "nothing is lost")

-- --- The README ------------------------------------------------------------------------------------------------------

local readme = assert(io.open(arg[1])):read("a")
local runs = 0
for run in readme:gmatch("```lua\n(.-)```") do
  local said, wanted = {}, {}
  for line in run:gmatch("print%b()%s+%-%- ([^\n]*)") do wanted[#wanted + 1] = line end
  local shown = setmetatable({print = function(...)
    local cells = table.pack(...)
    for i = 1, cells.n do cells[i] = tostring(cells[i]) end
    said[#said + 1] = table.concat(cells, " ")
  end}, {__index = _G})
  assert(load(run, "README", "t", shown))()
  is(table.concat(said, "\n"), table.concat(wanted, "\n"), "a run of the README")
  runs = runs + 1
end
is(runs, 3, "three runs")

print("1.." .. count)
os.exit(failed == 0)

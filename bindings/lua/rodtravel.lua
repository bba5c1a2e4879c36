-- SPDX-License-Identifier: Apache-2.0
-- Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly. README.md shows it.
local core = require "rodtravel_core"

local rodtravel = {version = core.version()}
local DEFAULT_RULES = "us-fmcsr"

-- Arguments that are about a whole form, and what they are called in C.
local FORM_WIDE = {default_unit = "style.unit", decimal_comma = "style.decimal_comma", date_order = "date_order",
                   default_date = "default_day"}

-- --- Errors ----------------------------------------------------------------------------------------------------------

-- What was refused, and where: status, field, column, line, text.
local Error = {}
Error.__index = Error
Error.__name = "rodtravel.Error"

function Error:__tostring()
  local where = self.field
  if self.line > 0 then where = where .. (where ~= "" and ", " or "") .. "line " .. self.line end
  if self.column > 0 then where = where .. (where ~= "" and ", " or "") .. "column " .. self.column end
  return (where ~= "" and where .. ": " or "") .. self.text
end

-- The sentence in a language of the library, where it is the library's.
function Error:say(language)
  return self.said[(language or ""):match("^%a*"):lower()] or self.text
end

local function raise(status, field, text, line)
  error(setmetatable({status = status, field = field, column = 0, line = line or 0, text = text, said = {}}, Error), 0)
end

-- Calls the library; raises what it refused. The line is that of a wheel end, the name that of the argument.
local function called(line, name, call, ...)
  local done, found = pcall(call, ...)
  if done then return found end
  local status = core.error_status()
  if status == "ok" then raise("argument", name or "", tostring(found), line) end
  local said = {}
  for i = 0, core.language_count() - 1 do
    local language = core.language(i)
    said[language:match("^%a+")] = core.error_say(language)
  end
  error(setmetatable({status = status, field = name or core.error_field(),
                      column = math.tointeger(core.error_column()), line = line or math.tointeger(core.error_line()),
                      text = core.error_text(), said = said}, Error), 0)
end

-- True for an error of this package, such as pcall catches.
function rodtravel.is_error(value) return getmetatable(value) == Error end

-- --- Exact numbers ---------------------------------------------------------------------------------------------------

-- A fraction of two integers in lowest terms; its arithmetic is the library's, exact or refused.
local Ratio = {}
Ratio.__name = "rodtravel.Ratio"
local parts = setmetatable({}, {__mode = "k"})

local function ratio_of_text(text)
  if text == nil or text == "" then return nil end
  local made = setmetatable({}, Ratio)
  local num, den = text:match("^(-?%d+)/(%d+)$")
  parts[made] = {text = text, num = math.tointeger(num or text), den = math.tointeger(den or 1)}
  return made
end

local function is_ratio(value) return getmetatable(value) == Ratio end

-- The text of a number that is exact: a whole number, a fraction.
local function exact_text(name, value)
  if is_ratio(value) then return parts[value].text end
  if math.type(value) == "integer" then return tostring(value) end
  if type(value) == "string" then return value end
  local what = math.type(value) == "float" and " is a binary float, which is only nearly what was read; give it as a text"
    or " is no exact number"
  raise("argument", name, tostring(value) .. what)
end

local function arithmetic(call)
  return function(a, b)
    return ratio_of_text(called(nil, nil, call, exact_text("number", a), exact_text("number", b)))
  end
end

Ratio.__add, Ratio.__sub = arithmetic(core.ratio_sum), arithmetic(core.ratio_difference)
Ratio.__mul, Ratio.__div = arithmetic(core.ratio_product), arithmetic(core.ratio_quotient)
function Ratio.__unm(a) return ratio_of_text(called(nil, nil, core.ratio_difference, "0", parts[a].text)) end
local function compare(a, b)
  return called(nil, nil, core.ratio_compare, exact_text("number", a), exact_text("number", b))
end
function Ratio.__eq(a, b) return is_ratio(a) and is_ratio(b) and parts[a].text == parts[b].text end
function Ratio.__lt(a, b) return compare(a, b) < 0 end
function Ratio.__le(a, b) return compare(a, b) <= 0 end
function Ratio.__tostring(a) return parts[a].text end
function Ratio.__index(a, name)
  if name == "num" or name == "den" then return parts[a][name] end
end
function Ratio.__newindex() raise("argument", "number", "an exact number is not changed") end

-- The exact number of a text "-1/16", an integer, or a fraction of two.
function rodtravel.ratio(num, den)
  local made = called(nil, nil, core.ratio_quotient, exact_text("number", num), exact_text("number", den or 1))
  return ratio_of_text(made)
end

-- --- In --------------------------------------------------------------------------------------------------------------

-- A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for 3 3/8.
local function decimal_text(ratio)
  local num, den, digits = parts[ratio].num, parts[ratio].den, 0
  local scaled = den
  while digits < 9 and 10 ^ digits % den ~= 0 do digits = digits + 1 end
  local scale = math.tointeger(10 ^ digits)
  if den == 1 or scale % scaled ~= 0 then return parts[ratio].text end
  local whole, rest = math.abs(num) // den, math.abs(num) % den
  return string.format("%s%d.%0" .. digits .. "d", num < 0 and "-" or "", whole, rest * (scale // den))
end

local function text_of(name, value)
  if value == nil then return "" end
  if is_ratio(value) then return decimal_text(value) end
  if type(value) == "boolean" then return value and "true" or "false" end
  local text = exact_text(name, value)
  if text:find("\0", 1, true) then raise("argument", name, "a text of the library has no zero character") end
  return text
end

-- A copy of named arguments; `rules` apart, as an object.
local function arguments(what, given)
  if type(given) ~= "table" then raise("argument", what, "arguments are a table by their names") end
  local texts = {}
  for name, value in pairs(given) do
    if type(name) ~= "string" then raise("argument", what, "arguments are a table by their names") end
    if name ~= "rules" then texts[name] = value end
  end
  return rodtravel.rule_set(given.rules or DEFAULT_RULES), texts
end

local function record_of(name, texts)
  local record = called(nil, nil, core.Record, name)
  for path, value in pairs(texts) do called(nil, nil, record.set, record, path, text_of(path, value)) end
  return record
end

local function form_of(texts)
  local form = core.Form()
  for name, value in pairs(texts) do
    local path = FORM_WIDE[name]
    called(nil, path and name, form.set, form, path or name, text_of(name, value))
  end
  return form
end

-- --- Out -------------------------------------------------------------------------------------------------------------

-- What the library found: read-only, equal by value. `of` maps names to how they are asked.
local cores = setmetatable({}, {__mode = "k"})

local function class(name, members, methods)
  local kind = {__name = "rodtravel." .. name, methods = methods or {}}
  function kind.methods.get(self, path) return called(nil, nil, cores[self].get, cores[self], text_of("path", path)) end
  function kind.methods.exact(self, path)
    return ratio_of_text(called(nil, nil, cores[self].exact, cores[self], text_of("path", path)))
  end
  for _, how in ipairs {"json", "sentence", "spoken"} do
    kind.methods[how] = kind.methods[how] or function(self, language)
      local call = cores[self][how == "sentence" and "say" or how]
      return called(nil, nil, call, cores[self], text_of("language", language))
    end
  end
  function kind.__index(self, key)
    local member = members[key]
    if member ~= nil then return member(self) end
    return kind.methods[key]
  end
  function kind.__newindex() raise("argument", name, "what the library found is not changed") end
  function kind.__eq(a, b) return getmetatable(a) == getmetatable(b) and a:json() == b:json() end
  function kind.__tostring(self) return members.shown and members.shown(self) or self:sentence() end
  return kind
end

local function value_of(kind, found)
  local made = setmetatable({}, kind)
  cores[made] = found
  return made
end

local function word(path)
  return function(self)
    local text = called(nil, nil, cores[self].get, cores[self], path)
    return text ~= "" and text or nil
  end
end
local function exact(path) return function(self) return getmetatable(self).methods.exact(self, path) end end
local function whole(path) return function(self) return math.tointeger(word(path)(self)) end end
local function own(of, names, into)
  into = into or {}
  for name in names:gmatch("%S+") do into[name] = of(name) end
  return into
end

local finding_members = own(word, "verdict proof evidence law_evidence law_basis day unit chamber rules")
own(exact, [[released applied applied_stroke limit law_limit long_limit margin division probability_over pressure
  pressure_after]], finding_members)
function finding_members.defect(self) return cores[self]:defect() end
function finding_members.source(self) return called(nil, nil, cores[self].source, cores[self]) end
function finding_members.reasons(self)
  local found = {}
  for reason in (word("reasons")(self) or ""):gmatch("[^, ]+") do found[#found + 1] = reason end
  return found
end
local finding_methods = {}
function finding_methods.has(self, reason)
  for _, one in ipairs(self.reasons) do if one == reason then return true end end
  return false
end
function finding_methods.sentences(self, language)
  local found = {}
  local text = called(nil, nil, cores[self].sentences, cores[self], text_of("language", language)) or ""
  for line in text:gmatch("[^\n]+") do found[#found + 1] = line end
  return found
end
local Finding = class("Finding", finding_members, finding_methods)

local vehicle_members = own(whole, "in_adjustment out_of_adjustment inoperative undetermined mismatched_axles")
vehicle_members.outcome, vehicle_members.brakes = word("count.outcome"), whole("count.brakes")
vehicle_members.share, vehicle_members.defective = exact("count.share"), exact("count.defective")
local Vehicle = class("Vehicle", vehicle_members)

local AirFinding = class("AirFinding", {result = word("result"), missing = word("missing"), at_limit = function(self)
  return word("at_limit")(self) == "true"
end})
local Count = class("Count", own(exact, "share worst_share known_share defective criterion",
                                 own(whole, "brakes whole_needed", {outcome = word("outcome")})))
local function json_of(self) return self:json() end
local Identification = class("Identification", {strict_limit = exact("strict_limit"), count = whole("count"), shown = json_of,
                                                next_observation = word("next_observation")})
local Limit = class("Limit", own(word, "evidence law_evidence law_basis",
                                 own(exact, "limit law_limit", {shown = json_of, document = word("source.document")})))
local Chamber = class("Chamber", own(word, "family size spring_size stroke_class",
                                     own(exact, "rated_stroke marked_limit", {shown = json_of})))
local Rules = class("Rules", {id = function(self) return cores[self]:id() end, shown = function(self) return self.id end},
                    {json = function(self) return called(nil, nil, cores[self].json, cores[self]) end})
function Rules.methods.limits_json(self, day)
  return called(nil, nil, cores[self].limits_json, cores[self], text_of("date", day))
end

-- --- Functions -------------------------------------------------------------------------------------------------------

-- One wheel end: chamber, released, applied, and what else rodt_form has; rules, default_unit, decimal_comma, date_order,
-- default_date. Raises for the first text that cannot be read.
function rodtravel.judge(given)
  local rules, texts = arguments("judge", given)
  local form = form_of(texts)
  return value_of(Finding, called(nil, nil, form.judge, form, cores[rules]))
end

-- The same for a row of a file, which no text stops: the finding, and an error or nil.
function rodtravel.judge_row(given)
  local rules, texts = arguments("judge_row", given)
  local form = form_of(texts)
  local found = called(nil, nil, form.judge_row, form, cores[rules])
  local failed
  if found:row_status() ~= "ok" then
    failed = setmetatable({status = found:row_status(), field = found:row_field(), column = math.tointeger(found:row_column()),
                           line = 0,
                           text = found:row_text(), said = {}}, Error)
  end
  return value_of(Finding, found), failed
end

-- An answer of so many rows; text_in makes of a cell what it is.
local CELL_END = "\x1f" -- between the cells of a column
local function column(columns, name, rows, text_in)
  local found = {}
  if rows > 0 then
    for text in (called(nil, nil, columns.column, columns, name) .. CELL_END):gmatch("([^\x1f]*)\x1f") do
      found[#found + 1] = text_in(text)
    end
  end
  return found
end

-- Many wheel ends at once, as judge_row judges them: a list is a column ("" = missing), anything else is that of every
-- row; the names of judge. Gives lists by name: verdict, flags and reasons as words with commas, stroke and limit in
-- inches, false where there is none or a stroke is no whole number of 1/127000000000 in (up to nine decimals are),
-- a limit none of 1/5080000 in.
function rodtravel.judge_columns(given)
  local rules, texts = arguments("judge_columns", given)
  local columns, rows = core.Columns(), 0
  for name, cells in pairs(texts) do
    if type(cells) == "table" and not is_ratio(cells) then
      local said = {}
      for i = 1, #cells do said[i] = text_of(name, cells[i]) end
      called(nil, nil, columns.set, columns, name, table.concat(said, CELL_END), #cells)
      rows, texts[name] = math.max(rows, #cells), nil
    end
  end
  called(nil, nil, columns.judge, columns, cores[rules], form_of(texts), rows)
  local numbers, found = {}, {}
  local function number(text)
    if numbers[text] == nil then numbers[text] = ratio_of_text(text) or false end
    return numbers[text]
  end
  for _, name in ipairs {"verdict", "flags", "reasons"} do
    found[name] = column(columns, name, rows, function(text) return text end)
  end
  for _, name in ipairs {"stroke", "limit"} do found[name] = column(columns, name, rows, number) end
  return found
end

-- The roadside criterion: a list of {position =, finding =, adjuster =, arm_length =}, and brakes.
function rodtravel.judge_vehicle(ends, brakes)
  local vehicle = core.Vehicle()
  if type(ends) ~= "table" then raise("argument", "ends", "wheel ends are a list of tables") end
  for line, of in ipairs(ends) do
    if type(of) ~= "table" or getmetatable(of.finding) ~= Finding then
      raise("argument", "finding", "a wheel end needs a finding", line)
    end
    called(line, nil, vehicle.add, vehicle, text_of("position", of.position), cores[of.finding],
           text_of("adjuster", of.adjuster), text_of("arm_length", of.arm_length))
  end
  if brakes ~= nil and math.type(brakes) ~= "integer" then raise("argument", "brakes", "a whole number was expected") end
  called(nil, nil, vehicle.judge, vehicle, brakes or 0)
  return value_of(Vehicle, vehicle)
end

-- A check of the air system, by the names of rodt_air_form.
function rodtravel.judge_air(given)
  local rules, texts = arguments("judge_air", given)
  if type(texts.answer) == "boolean" then texts.answer = texts.answer and "yes" or "no" end
  return value_of(AirFinding, called(nil, nil, core.judge_air, record_of("rodt_air_form", texts), cores[rules]))
end

-- Counts of brakes: brakes, full, half, unknown, inoperative.
function rodtravel.count(given)
  local _, texts = arguments("count", given)
  return value_of(Count, called(nil, nil, core.judge_tally, record_of("rodt_tally", texts), 0))
end

-- Which chamber it can be, by what was seen: stamp, family, port, tag, rated_stroke, diameter; rules, date.
function rodtravel.identify(given)
  local rules, texts = arguments("identify", given)
  local day = text_of("date", texts.date)
  texts.date = nil
  return value_of(Identification, called(nil, nil, core.identify, record_of("rodt_clues", texts), cores[rules], day))
end

-- The limit for a chamber's mark: chamber, stroke_class, rated_stroke, marked_limit; rules, date.
function rodtravel.find_limit(given)
  local rules, texts = arguments("find_limit", given)
  local day, mark = text_of("date", texts.date), text_of("chamber", texts.chamber)
  texts.date, texts.chamber = nil, nil
  local chamber = called(nil, nil, core.chamber, mark)
  local marks = {}
  for _, name in ipairs {"family", "size", "spring_size", "stroke_class"} do marks[name] = chamber:get(name) end
  for name, value in pairs(texts) do marks[name] = value end
  return value_of(Limit, called(nil, nil, core.find_limit, record_of("rodt_chamber", marks), cores[rules], day))
end

function rodtravel.read_chamber(mark) return value_of(Chamber, called(nil, nil, core.chamber, text_of("chamber", mark))) end

-- The steps of an inspection as they are said aloud: rules, vehicle, towed_units, built, language. A table of step, row (its
-- JSON), title, do, see, good and defective for each row of the rule set that the step can have.
function rodtravel.steps(given)
  local rules, texts = arguments("steps", given)
  local language = text_of("language", texts.language)
  texts.language = nil
  local law, vehicle, found = cores[rules], record_of("rodt_air_reading", texts), {}
  for index = 0, called(nil, nil, core.step_count, law, vehicle) - 1 do
    local rows = called(nil, nil, core.step_row_count, law, vehicle, index)
    for row = rows > 0 and 0 or -1, rows - 1 do
      local step = {step = core.step_name(law, vehicle, index)}
      for _, part in ipairs {"title", "do", "see", "good", "defective"} do
        step[part] = called(nil, nil, core.step_text, law, vehicle, index, row, part, language)
      end
      step.row = row >= 0 and called(nil, nil, core.step_row_json, law, vehicle, index, row, language) or nil
      found[#found + 1] = step
    end
  end
  return found
end

-- Cubic inches: rated volume of a chamber's mark, and required volume of the reservoirs for chambers of so many.
function rodtravel.rated_volume(mark)
  return ratio_of_text(called(nil, nil, core.chamber_rated_volume, called(nil, nil, core.chamber, text_of("chamber", mark))))
end
function rodtravel.required_volume(chambers, trailer)
  return ratio_of_text(called(nil, nil, core.reservoir_required_volume, exact_text("chambers", chambers), trailer and 1 or 0))
end

-- Seconds allowed from 85 to 100 psi.
function rodtravel.build_up_seconds(actual, required)
  return ratio_of_text(called(nil, nil, core.reservoir_build_up_seconds, exact_text("actual", actual),
                              exact_text("required", required)))
end

-- Estimates, no figures of law: psi after one full application, and how many keep at least so many psi, up to 99; pressure,
-- least, reservoir, chambers, fill (1).
local function estimate(call, names)
  return function(given)
    local texts = {}
    for name in names:gmatch("%S+") do
      texts[#texts + 1] = exact_text(name, given[name] == nil and name == "fill" and 1 or given[name])
    end
    return called(nil, nil, call, table.unpack(texts))
  end
end
local application = estimate(core.reservoir_estimate_application, "pressure reservoir chambers fill")
local applications = estimate(core.reservoir_estimate_applications, "pressure least reservoir chambers fill")
function rodtravel.estimate_application(given) return ratio_of_text(application(given)) end
function rodtravel.estimate_applications(given) return math.tointeger(applications(given)) end

-- Readers give an exact number, a day as YYYY-MM-DD.
function rodtravel.read_length(text, unit)
  return ratio_of_text(called(nil, nil, core.read_length, text_of("text", text), text_of("unit", unit)))
end
function rodtravel.read_pressure(text) return ratio_of_text(called(nil, nil, core.read_pressure, text_of("text", text))) end
function rodtravel.read_seconds(text) return ratio_of_text(called(nil, nil, core.read_seconds, text_of("text", text))) end
function rodtravel.read_date(text) return called(nil, nil, core.read_date, text_of("text", text)) end

-- Inches as a mixed fraction, "1 3/4".
function rodtravel.write_length(length)
  local of = parts[is_ratio(length) and length or rodtravel.ratio(length)]
  return called(nil, nil, core.write_length, of.num, of.den)
end

function rodtravel.rule_set(id)
  if getmetatable(id) == Rules then return id end
  return value_of(Rules, called(nil, nil, core.Rules, text_of("rules", id)))
end

function rodtravel.rule_sets()
  local found = {}
  for i = 0, core.rules_count() - 1 do found[i + 1] = rodtravel.rule_set(core.rules_id(i)) end
  return found
end

-- A carrier's own limits, the text of a table, on top of a law.
function rodtravel.load_rules(text, name, law, air_law)
  local on = cores[rodtravel.rule_set(law or DEFAULT_RULES)]
  local more = air_law ~= nil and {cores[rodtravel.rule_set(air_law)]} or {}
  return value_of(Rules, called(nil, nil, on.load, on, text_of("name", name), text_of("table", text), table.unpack(more)))
end

function rodtravel.tables_edition() return core.tables_edition() end

return rodtravel

-- SPDX-License-Identifier: Apache-2.0
-- What was deleted is refused, deleted twice or not, and what is found outlives what it was made of. Prints TAP; run.sh
-- exhaustive runs it under valgrind.
local rt = require "rodtravel"
local core = require "rodtravel_core"

local count, failed = 0, 0
local function ok(right, what)
  count = count + 1
  if not right then failed = failed + 1 end
  print((right and "ok " or "not ok ") .. count .. " - " .. what)
end

local texts = {chamber = "30L", released = "2 3/4", applied = "5 5/16", psi = 95}
local law = core.Rules("us-fmcsr")
local made = {Form = {}, Vehicle = {}, Columns = {}, Record = {"rodt_clues"}, Rules = {"us-fmcsr"}}
for name, how in pairs(made) do
  local object = core[name](table.unpack(how))
  local delete = getmetatable(object).__gc
  delete(object)
  delete(object)
  local asked = {Form = {"error_count"}, Vehicle = {"judge"}, Columns = {"column", "verdict"}, Record = {"json"}, Rules = {"json"}}
  local call = table.remove(asked[name], 1)
  local done, why = pcall(object[call], object, table.unpack(asked[name]))
  ok(not done and why:find("the object was deleted", 1, true), "a deleted " .. name)
end
local gone, form = core.Rules("us-fmcsr"), core.Form()
getmetatable(gone).__gc(gone)
ok(not pcall(form.judge, form, gone) and core.error_status() == "argument", "a deleted argument")
ok(not pcall(core.Form.judge, nil, law), "no object")
ok(not pcall(form.judge, law, law), "an object of another kind")

local kept = {}
for i = 1, 50 do
  local yard = rt.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard")
  kept[i] = rt.judge {chamber = "30L", released = "2 3/4", applied = "5 1/4", psi = 95, rules = yard}
  pcall(rt.judge, {chamber = "30L", released = "2-Jan", applied = "5", rules = yard})
  rt.judge_columns {chamber = {"30"}, released = {"1"}, applied = {"2"}, rules = yard}
  if i % 2 == 0 then kept[i - 1] = nil end
  collectgarbage()
end
local sound = true
for _, finding in pairs(kept) do sound = sound and finding:has("over-own-limit") and finding.rules == "yard" end
ok(sound, "findings outlive their rule set")

print("1.." .. count)
os.exit(failed == 0)

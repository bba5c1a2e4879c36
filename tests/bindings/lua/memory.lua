-- SPDX-License-Identifier: Apache-2.0
-- A million calls lose nothing, whether they find or refuse. Prints TAP.
local rt = require "rodtravel"

local function pages()
  local file = io.open("/proc/self/statm")
  local found = file and tonumber(file:read("a"):match("%d+ (%d+)")) or 0
  if file then file:close() end
  return found
end

local function work(calls)
  for _ = 1, calls, 10 do
    local found = rt.judge {chamber = "30L", released = "2 3/4", applied = "5 1/4"}
    found:sentences("fr")
    found = found.margin * 2
    local yard = rt.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard")
    local own = rt.judge_row {chamber = "30L", released = "2 3/4", applied = "5 1/4", rules = yard}
    rt.judge_vehicle({{position = "1L", finding = own}}):sentence()
    rt.judge_columns {chamber = {"30", "x"}, released = {"1", "1"}, applied = {"2", "2"}, rules = yard}
    for _, wrong in ipairs {{applied = "2-Jan"}, {applied = ""}, {rules = "atlantis"}, {colour = "red"}} do
      for name, text in pairs {chamber = "30", released = "2 1/8", applied = "4"} do wrong[name] = wrong[name] or text end
      assert(not pcall(rt.judge, wrong))
    end
  end
  collectgarbage()
end

print("1..1")
work(100000)
local before = pages()
work(1000000)
local more = pages() - before
print((more < 500 and "" or "not ") .. "ok 1 - memory after a million calls # " .. more .. " pages more")
os.exit(more < 500)

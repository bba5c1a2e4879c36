-- SPDX-License-Identifier: Apache-2.0
-- bench.lua call|lists|column COUNT (../languages.py)
local rt = require "rodtravel"

local what, count = arg[1], math.tointeger(arg[2])
if what == "call" then
  for _ = 1, count do
    local _ = rt.judge {chamber = "30L", released = "2 3/4", applied = "5 5/16", psi = "95"}.verdict
  end
  return
end
local columns = {chamber = {}, released = {}, applied = {}, psi = {}}
for i = 1, count do
  columns.chamber[i], columns.released[i], columns.psi[i] = "30L", "2 3/4", "95"
  columns.applied[i] = 4 + i % 2 .. " " .. 1 + 2 * (i % 8) .. "/16"
end
if what == "column" then rt.judge_columns(columns) end

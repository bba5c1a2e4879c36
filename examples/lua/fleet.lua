-- SPDX-License-Identifier: Apache-2.0
-- From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
--
--     lua fleet.lua [FLEET.csv]
--
-- Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
local rt = require "rodtravel"

local FIELDS = {"chamber", "stroke_class", "rated_stroke", "released", "applied", "psi", "division", "date"}
local VERDICTS = {"in-adjustment", "out-of-adjustment", "inoperative", "undetermined"}

-- The cells of a record: between commas, with quotes around what holds one, a quote doubled inside.
local function cells_of(record)
  local cells, cell, quoted, before = {}, "", false, ","
  for text, sign in (record .. ","):gmatch('([^",]*)([",])') do
    cell = cell .. text
    if sign == '"' then
      if not quoted and text == "" and before == '"' then cell = cell .. '"' end
      quoted = not quoted
    elseif quoted then
      cell = cell .. ","
    else
      cells[#cells + 1], cell = cell, ""
    end
    before = sign
  end
  return cells
end

-- Records of a file, which may go over several lines inside of quotes.
local function records(path)
  local file, rest = assert(io.open(path)), nil
  return function()
    local record = file:read("L")
    while record and select(2, record:gsub('"', "")) % 2 == 1 do
      local line = file:read("L")
      if not line then break end
      record = record .. line
    end
    return record and (record:gsub("^\u{FEFF}", ""):gsub("%s+$", ""))
  end
end

local headings, units, names = nil, {}, {}
for record in records(arg[1] or (arg[0]:match("^(.*)/") or ".") .. "/../data/fleet.csv") do
  local cells, row = cells_of(record), {}
  for i, heading in ipairs(headings or {}) do row[heading] = cells[i] or "" end
  if not headings then
    headings = cells
  elseif not ((row.chamber == "" or row.chamber == "chamber") and not row.released:find("[^releasd]")) then
    local texts = {}
    for _, field in ipairs(FIELDS) do texts[field] = row[field] end
    if not units[row.unit_no] then
      units[row.unit_no] = {}
      names[#names + 1] = row.unit_no
    end
    table.insert(units[row.unit_no], (rt.judge_row(texts)))
  end
end

print(("%-8s%5s%5s%6s%6s   least to spare"):format("unit", "in", "out", "dead", "open"))
table.sort(names)
for _, name in ipairs(names) do
  local counts, least = {}, nil
  for _, finding in ipairs(units[name]) do
    counts[finding.verdict] = (counts[finding.verdict] or 0) + 1
    local margin = finding.margin
    if margin and (not least or margin < least) then least = margin end
  end
  local columns = {}
  for i, verdict in ipairs(VERDICTS) do columns[i] = counts[verdict] or 0 end
  print(("%-8s%5d%5d%6d%6d   %s"):format(name, columns[1], columns[2], columns[3], columns[4],
                                         least and rt.write_length(least) .. " in" or "not known"))
end

-- SPDX-License-Identifier: Apache-2.0
-- Lua's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
-- standard output.
local rt = require "rodtravel"

-- A flat object of texts, as questions are.
local ESCAPES = {b = "\b", f = "\f", n = "\n", r = "\r", t = "\t", ['"'] = '"', ["\\"] = "\\", ["/"] = "/"}
local function unescaped(text)
  text = text:gsub("\\u(%x%x%x%x)", function(code) return utf8.char(tonumber(code, 16)) end)
  return (text:gsub("\\(.)", ESCAPES))
end
local function read_question(line)
  local question = {}
  -- An escaped backslash or quote must not close a text.
  line = line:gsub('\\\\', "\\u005c"):gsub('\\"', "\\u0022")
  for name, text in line:gmatch('"([^"]*)": ?"([^"]*)"') do question[unescaped(name)] = unescaped(text) end
  return question
end

local function quoted(text)
  return text and '"' .. text:gsub('[%c"\\]', function(sign) return ("\\u%04x"):format(sign:byte()) end) .. '"' or "null"
end
local function number(value) return quoted(value and tostring(value)) end
local function error_of(error)
  return error and ('{"status":%s,"field":%s,"column":%d}'):format(quoted(error.status), quoted(error.field), error.column)
    or "null"
end

local asked = {}
asked["wheel-end"] = function(question)
  local finding, error = rt.judge_row(question)
  local reasons = finding.reasons
  for i, reason in ipairs(reasons) do reasons[i] = quoted(reason) end
  return ('"verdict":%s,"stroke":%s,"limit":%s,"margin":%s,"proof":%s,"probability_over":%s,"reasons":[%s],"error":%s'):format(
    quoted(finding.verdict), number(finding.applied_stroke), number(finding.limit), number(finding.margin),
    quoted(finding.proof), number(finding.probability_over), table.concat(reasons, ","), error_of(error))
end
function asked.length(question) return '"value":' .. number(rt.read_length(question.text)) .. ',"error":null' end
function asked.chamber(question)
  local read = rt.read_chamber(question.text)
  return ('"family":%s,"size":%s,"spring_size":%s,"stroke_class":%s,"error":null'):format(quoted(read.family or ""),
    quoted(read.size or ""), quoted(read.spring_size or ""), quoted(read.stroke_class or ""))
end
function asked.count(question)
  local found = rt.count(question)
  return ('"outcome":%s,"share":%s,"error":null'):format(quoted(found.outcome), number(found.share))
end
function asked.air(question)
  local finding = rt.judge_air(question)
  return ('"result":%s,"at_limit":"%s","error":null'):format(quoted(finding.result), finding.at_limit and "yes" or "no")
end

for line in io.lines() do
  local question = read_question(line)
  local id, ask = question.id, question.ask
  question.id, question.ask = nil, nil
  local done, answer = pcall(asked[ask], question)
  if not done then
    assert(rt.is_error(answer), answer)
    answer = '"error":' .. error_of(answer)
  end
  print(('{"id":%s,%s}'):format(quoted(id), answer))
end

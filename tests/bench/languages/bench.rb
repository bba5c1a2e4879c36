# SPDX-License-Identifier: Apache-2.0
# bench.rb call|lists|column COUNT (../languages.py)
require "rodtravel"

what, count = ARGV[0], ARGV[1].to_i
if what == "call"
  count.times { Rodtravel.judge(chamber: "30L", released: "2 3/4", applied: "5 5/16", psi: "95").verdict }
  exit
end
applied = Array.new(count) { |i| "#{4 + i % 2} #{1 + 2 * (i % 8)}/16" }
columns = {chamber: ["30L"] * count, released: ["2 3/4"] * count, applied: applied, psi: ["95"] * count}
Rodtravel.judge_columns(**columns) if what == "column"

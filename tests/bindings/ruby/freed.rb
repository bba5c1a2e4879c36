# SPDX-License-Identifier: Apache-2.0
# What was never made is refused, and what is found outlives what it was made of, in whatever order a collector deletes.
# Ruby itself deletes nothing before. Prints TAP.
require "rodtravel"

$count = $failed = 0

def ok(right, what)
  $count += 1
  $failed += 1 unless right
  puts "#{"not " unless right}ok #{$count} - #{what}"
end

def refused(what)
  yield
  ok(false, what)
rescue StandardError
  ok(true, what)
end

R = Rodtravel
TEXTS = {chamber: "30L", released: "2 3/4", applied: "5 1/4", psi: 95}.freeze

{Form: :error_count, Vehicle: :judge, Columns: :judge, Record: :json, Rules: :json, Finding: :verdict}.each do |name, call|
  refused("a #{name} that was not made") { Rodtravel_core.const_get(name).allocate.public_send(call) }
end
refused("a finding that was not made") { R::Finding.allocate.verdict }
refused("no object") { Rodtravel_core::Form.instance_method(:judge).bind_call(nil, nil) }
refused("an object of another kind") { Rodtravel_core::Form.new.judge(Rodtravel_core::Form.new) }

GC.stress = true
kept = (1..6).map do
  yard = R.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard")
  begin
    R.judge(**TEXTS, released: "2-Jan", rules: yard)
  rescue R::Error
    R.judge_columns(chamber: ["30"], released: ["1"], applied: ["2"], rules: yard)
  end
  R.judge(**TEXTS, rules: yard)
end
GC.stress = false
GC.start
ok(kept.all? { |finding| finding.reasons.include?("over-own-limit") && finding.rules == "yard" }, "findings outlive their rule set")

puts "1..#{$count}"
exit($failed.zero?)

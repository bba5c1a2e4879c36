# SPDX-License-Identifier: Apache-2.0
# Ruby's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
# standard output.
require "rodtravel"

def number(value)
  value && (value.denominator == 1 ? value.numerator.to_s : value.to_s)
end

def error_of(error)
  error && {status: error.status, field: error.field, column: error.column}
end

ASKED = {
  "wheel-end" => lambda do |of|
    found = Rodtravel.judge_row(**of)
    {verdict: found.verdict, stroke: number(found.applied_stroke), limit: number(found.limit), margin: number(found.margin),
     proof: found.proof, probability_over: number(found.probability_over), reasons: found.reasons, error: error_of(found.error)}
  end,
  "length" => ->(of) { {value: number(Rodtravel.read_length(of[:text]))} },
  "chamber" => lambda do |of|
    read = Rodtravel.read_chamber(of[:text])
    %i[family size spring_size stroke_class].to_h { |name| [name, read.public_send(name).to_s] }
  end,
  "count" => lambda do |of|
    found = Rodtravel.count(**of)
    {outcome: found.outcome, share: number(found.share)}
  end,
  "air" => lambda do |of|
    found = Rodtravel.judge_air(of.delete(:check), **of)
    {result: found.result, at_limit: found.at_limit ? "yes" : "no"}
  end
}.freeze

$stdin.set_encoding(Encoding::UTF_8)
$stdin.each_line do |line|
  question = JSON.parse(line, symbolize_names: true)
  id, ask = question.delete(:id), question.delete(:ask)
  answer =
    begin
      {error: nil, **ASKED.fetch(ask).call(question)}
    rescue Rodtravel::Error => error
      {error: error_of(error)}
    end
  puts({id: id, **answer}.to_json)
end

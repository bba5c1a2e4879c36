# SPDX-License-Identifier: Apache-2.0
# From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
#
#     ruby fleet.rb [FLEET.csv]
#
# Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
require "csv"
require "rodtravel"

FLEET = File.join(__dir__, "..", "data", "fleet.csv")
FIELDS = %w[chamber stroke_class rated_stroke released applied psi division date].freeze
VERDICTS = %w[in-adjustment out-of-adjustment inoperative undetermined].freeze

# Records that are wheel ends: an empty one, or the heading once more, is none.
rows = CSV.read(ARGV[0] || FLEET, headers: true, encoding: "BOM|UTF-8").reject do |row|
  ["", "chamber"].include?(row["chamber"].to_s) && row["released"].to_s.delete("releasd").empty?
end
units = rows.group_by { |row| row["unit_no"].to_s }.transform_values do |of_unit|
  of_unit.map { |row| Rodtravel.judge_row(**FIELDS.to_h { |field| [field.to_sym, row[field]] }) }
end

puts format("%-8s%5s%5s%6s%6s   least to spare", *%w[unit in out dead open])
units.sort.each do |unit, findings|
  counts = findings.map(&:verdict).tally
  least = findings.filter_map(&:margin).min
  puts format("%-8s%5d%5d%6d%6d   %s", unit, *VERDICTS.map { |verdict| counts.fetch(verdict, 0) },
              least ? "#{Rodtravel.write_length(least)} in" : "not known")
end

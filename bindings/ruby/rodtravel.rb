# SPDX-License-Identifier: Apache-2.0
# frozen_string_literal: true

require "bigdecimal"
require "date"
require "json"
require "rodtravel_core"

# Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly. README.md shows it.
module Rodtravel
  VERSION = Rodtravel_core.version
  DEFAULT_RULES = "us-fmcsr"
  LANGUAGES = (0...Rodtravel_core.language_count).map { |i| Rodtravel_core.language(i) }.freeze

  # What was refused, and where: a stable word, which argument or "", characters from 1 or 0, the line of a table or the
  # number of a wheel end or 0.
  class Error < ArgumentError
    attr_reader :status, :field, :column, :line, :text

    def initialize(text, status: "argument", field: "", column: 0, line: 0, said: {})
      @status, @field, @column, @line, @text, @said = status, field, column, line, text, said
      where = [field, ("line #{line}" if line > 0), ("column #{column}" if column > 0)].reject { |part| part.to_s.empty? }
      super(where.empty? ? text : "#{where.join(", ")}: #{text}")
    end

    # The sentence in a language of the library, where it is the library's.
    def say(language)
      @said.fetch(language.to_s[/\A[A-Za-z]*/].downcase, @text)
    end
  end

  # Values of Ruby as texts of the library, and its answers as values of Ruby.
  module Core
    # Arguments that are about a whole form, and what they are called in C.
    FORM_WIDE = {default_unit: "style.unit", decimal_comma: "style.decimal_comma", date_order: "date_order",
                 default_date: "default_day"}.freeze
    CELL_END = "\u001f" # between the cells of a column
    MOST_DIGITS = 9 # after the point; a number with more is written as a fraction

    module_function

    def text_in(text)
      text.is_a?(String) ? text.dup.force_encoding(Encoding::UTF_8) : text
    end

    # Calls the library; raises what it refused. The line is that of a wheel end, the name that of the argument.
    def call(object, method, *arguments, line: nil, name: nil)
      found = object.public_send(method, *arguments)
      status = Rodtravel_core.error_status
      status == "ok" ? text_in(found) : raise(error(status, line, name))
    end

    def error(status, line, name)
      said = LANGUAGES.to_h { |tag| [tag[/\A\w+/], text_in(Rodtravel_core.error_say(tag))] }
      Error.new(text_in(Rodtravel_core.error_text), status: status, field: name || text_in(Rodtravel_core.error_field),
                column: Rodtravel_core.error_column, line: line || Rodtravel_core.error_line, said: said)
    end

    # A number is read as its text: as a decimal where it is a short one, so that 33/8 is not taken for 3 3/8.
    def number(value)
      digits = (0..MOST_DIGITS).find { |n| (value * 10**n).denominator == 1 }
      return value.to_s if digits.nil?
      return value.numerator.to_s if digits.zero?
      whole = (value.abs * 10**digits).to_i.to_s.rjust(digits + 1, "0")
      "#{"-" if value.negative?}#{whole[0...-digits]}.#{whole[-digits..]}"
    end

    def text(name, value)
      case value
      when nil then ""
      when String, Symbol then readable(name, value.to_s)
      when Integer then value.to_s
      when Rational then number(value)
      when BigDecimal
        raise Error.new("a number was expected", field: name.to_s) unless value.finite?
        number(value.to_r)
      when Date then value.strftime("%Y-%m-%d")
      when true, false then value.to_s
      when Float
        raise Error.new("#{value} is a binary float, which is only nearly what was read; give it as a text", field: name.to_s)
      else
        raise Error.new("#{value.class} is no text, exact number or day", field: name.to_s)
      end
    end

    def readable(name, value)
      raise EncodingError unless value.valid_encoding?
      value = value.encode(Encoding::UTF_8)
      raise Error.new("a text of the library has no zero character", field: name.to_s) if value.include?("\0")
      value
    rescue EncodingError
      raise Error.new("the text is not in the encoding that it names", field: name.to_s)
    end

    # The exact text of a number that is no reading.
    def exact_in(name, value)
      return value.to_r.to_s if value.is_a?(Rational) || value.is_a?(Integer)
      raise Error.new("a Rational or an Integer was expected", field: name.to_s)
    end

    # An answer of so many rows.
    def column(columns, name, rows)
      text = call(columns, :column, name.to_s)
      rows > 1 ? text.split(CELL_END, -1) : [text] * rows
    end

    def exact(text)
      text.nil? || text.empty? ? nil : Rational(text)
    end

    def record(name, texts)
      made = call(Rodtravel_core::Record, :new, name)
      texts.each { |path, value| call(made, :set, path.to_s, text(path, value)) unless value.nil? }
      made
    end

    def form(texts)
      made = Rodtravel_core::Form.new
      texts.each do |name, value|
        next if value.nil?
        path = FORM_WIDE[name]
        call(made, :set, path || name.to_s, text(name, value), name: (name.to_s if path))
      end
      made
    end
  end
  private_constant :Core

  # What the library found: frozen, and equal where its JSON is.
  class Value
    attr_reader :core
    protected :core

    def initialize(core)
      @core = core
      freeze
    end

    # Methods of members: words and texts, exact numbers, counts.
    def self.members(kind, paths)
      paths.each do |name, path|
        case kind
        when :exact then define_method(name) { exact(path) }
        when :whole then define_method(name) { get(path).to_i }
        when :yes then define_method(name) { get(path) == "true" }
        else define_method(name) { get(path).then { |text| text.empty? ? nil : text } }
        end
      end
    end
    private_class_method :members
    private_class_method def self.own(*names) = names.to_h { |name| [name, name.to_s] }

    def get(path) = Core.call(@core, :get, Core.text(:path, path))
    def exact(path) = Core.exact(Core.call(@core, :exact, Core.text(:path, path)))
    def json(language = nil) = Core.call(@core, :json, Core.text(:language, language))
    def to_h(language = nil) = JSON.parse(json(language))
    def to_json(*) = json
    def sentence(language = nil) = Core.call(@core, :say, Core.text(:language, language))
    def to_s = sentence
    def inspect = "#<#{self.class}: #{self}>"
    def ==(other) = other.instance_of?(self.class) && json == other.json
    alias eql? ==
    def hash = json.hash
    def dup = self
    def clone(**) = self
  end

  class Finding < Value
    members :word, own(:verdict, :proof, :evidence, :law_evidence, :law_basis, :unit, :chamber, :rules)
    members :exact, own(:released, :applied, :applied_stroke, :limit, :law_limit, :long_limit, :margin, :division,
                        :probability_over, :pressure, :pressure_after)
    def day = get("day").then { |text| text.empty? ? nil : Date.iso8601(text) }
    def reasons = get("reasons").split(", ")
    def defect = Core.text_in(@core.defect)
    def source = Core.call(@core, :source)
    def spoken(language = nil) = Core.call(@core, :spoken, Core.text(:language, language))
    def sentences(language = nil) = Core.call(@core, :sentences, Core.text(:language, language)).to_s.split("\n")

    # Of judge_row: the first text that could not be read, or nil.
    def error
      return nil if @core.row_status == "ok"
      Error.new(Core.text_in(@core.row_text), status: @core.row_status, field: @core.row_field, column: @core.row_column)
    end
  end

  class Vehicle < Value
    members :word, outcome: "count.outcome"
    members :exact, share: "count.share", worst_share: "count.worst_share", defective: "count.defective"
    members :whole, brakes: "count.brakes", **own(:in_adjustment, :out_of_adjustment, :inoperative, :undetermined,
                                                  :mismatched_axles)
  end

  class AirFinding < Value
    members :word, own(:result, :missing)
    members :yes, at_limit: "at_limit"
  end

  class Count < Value
    members :word, own(:outcome)
    members :exact, own(:share, :worst_share, :known_share, :defective, :criterion)
    members :whole, own(:brakes, :whole_needed)
  end

  # What has no sentence is its JSON as a text.
  class Identification < Value
    members :word, own(:next_observation)
    members :exact, own(:strict_limit)
    def candidates = to_h["candidates"]
    def to_s = json
  end

  class Limit < Value
    members :word, own(:evidence, :law_evidence, :law_basis)
    members :exact, own(:limit, :law_limit)
    def to_s = json
  end

  class Chamber < Value
    members :word, own(:family, :size, :spring_size, :stroke_class)
    members :exact, own(:rated_stroke, :marked_limit)
    def to_s = [family, size, stroke_class].compact.reject { |word| word == "unknown" }.join(" ")
  end

  class Rules < Value
    def id = Core.text_in(@core.id)
    def to_s = id
    def json(_language = nil) = Core.call(@core, :json)
    def limits(day = nil) = JSON.parse(Core.call(@core, :limits_json, Core.text(:date, day)))["limits"]

    def air_limits(language = nil)
      tag = Core.text(:language, language)
      (0...@core.air_limit_count).map { |row| JSON.parse(Core.call(@core, :air_limit_json, row, tag)) }
    end
  end

  class << self
    # One wheel end: chamber, released, applied, and what else rodt_form has; default_unit, decimal_comma, date_order,
    # default_date. Raises for the first text that cannot be read.
    def judge(rules: DEFAULT_RULES, **texts)
      Finding.new(Core.call(Core.form(texts), :judge, core_of(rule_set(rules))))
    end

    # The same for a row of a file, which no text stops; Finding#error says what could not be read.
    def judge_row(rules: DEFAULT_RULES, **texts)
      Finding.new(Core.call(Core.form(texts), :judge_row, core_of(rule_set(rules))))
    end

    # Many wheel ends at once, as judge_row judges them: an array is a column, anything else is that of every row; the
    # names of judge. Gives arrays by name: verdict, flags and reasons as words with commas, stroke and limit in inches, nil
    # where there is none or a stroke is no whole number of 1/127000000000 in (up to nine decimals are), a limit
    # none of 1/5080000 in.
    def judge_columns(rules: DEFAULT_RULES, **given)
      lists, texts = given.partition { |_, value| value.is_a?(Array) }.map(&:to_h)
      columns, rows = Rodtravel_core::Columns.new, lists.each_value.map(&:size).max || 0
      lists.each do |name, cells|
        Core.call(columns, :set, name.to_s, cells.map { |cell| Core.text(name, cell) }.join(Core::CELL_END), cells.size)
      end
      Core.call(columns, :judge, core_of(rule_set(rules)), Core.form(texts), rows)
      number = Hash.new { |known, text| known[text] = Core.exact(text) }
      {**%i[verdict flags reasons].to_h { |name| [name, Core.column(columns, name, rows)] },
       **%i[stroke limit].to_h { |name| [name, Core.column(columns, name, rows).map { |text| number[text] }] }}
    end

    # The roadside criterion: an array of {position:, finding:, adjuster:, arm_length:}.
    def judge_vehicle(ends, brakes: 0)
      vehicle = Rodtravel_core::Vehicle.new
      raise Error.new("wheel ends are an array of hashes", field: "ends") unless ends.is_a?(Array) && !ends.empty?
      raise Error.new("a whole number was expected", field: "brakes") unless brakes.is_a?(Integer) && brakes < 2**31
      ends.each.with_index(1) { |of, line| add_end(vehicle, of, line) }
      Core.call(vehicle, :judge, brakes)
      Vehicle.new(vehicle)
    end

    # A check of the air system, by the names of rodt_air_form.
    def judge_air(check, rules: DEFAULT_RULES, **texts)
      texts[:answer] = texts[:answer] ? "yes" : "no" if [true, false].include?(texts[:answer])
      AirFinding.new(Core.call(Rodtravel_core, :judge_air, Core.record("rodt_air_form", texts.merge(check: check)),
                               core_of(rule_set(rules))))
    end

    # Counts of brakes: brakes, full, half, unknown, inoperative.
    def count(**counts) = Count.new(Core.call(Rodtravel_core, :judge_tally, Core.record("rodt_tally", counts), 0))

    # Which chamber it can be, by what was seen: stamp, family, port, tag, rated_stroke, diameter.
    def identify(rules: DEFAULT_RULES, date: nil, **clues)
      Identification.new(Core.call(Rodtravel_core, :identify, Core.record("rodt_clues", clues), core_of(rule_set(rules)),
                                   Core.text(:date, date)))
    end

    # The limit for a chamber's mark: stroke_class, rated_stroke, marked_limit.
    def find_limit(mark, rules: DEFAULT_RULES, date: nil, **marks)
      chamber = read_chamber(mark)
      own = %i[family size spring_size stroke_class].to_h { |name| [name, chamber.get(name)] }
      Limit.new(Core.call(Rodtravel_core, :find_limit, Core.record("rodt_chamber", own.merge(marks)), core_of(rule_set(rules)),
                          Core.text(:date, date)))
    end

    def read_chamber(mark) = Chamber.new(Core.call(Rodtravel_core, :chamber, Core.text(:chamber, mark)))

    # The steps of an inspection as they are said aloud, for a vehicle: a hash of step, row, title, do, see, good and
    # defective for each row of the rule set that the step can have.
    def steps(rules: DEFAULT_RULES, language: nil, **vehicle)
      on = [core_of(rule_set(rules)), Core.record("rodt_air_reading", vehicle)]
      tag = Core.text(:language, language)
      (0...Core.call(Rodtravel_core, :step_count, *on)).flat_map do |index|
        rows = Core.call(Rodtravel_core, :step_row_count, *on, index)
        (rows > 0 ? (0...rows) : [-1]).map { |row| step(on, index, row, tag) }
      end
    end

    # Cubic inches: rated volume of a chamber's mark, and required volume of the reservoirs for chambers of so many.
    def rated_volume(mark)
      Core.exact(Core.call(Rodtravel_core, :chamber_rated_volume, Core.call(Rodtravel_core, :chamber, Core.text(:chamber, mark))))
    end

    def required_volume(chambers, trailer: false)
      Core.exact(Core.call(Rodtravel_core, :reservoir_required_volume, Core.exact_in(:chambers, chambers), trailer ? 1 : 0))
    end

    # Seconds allowed from 85 to 100 psi.
    def build_up_seconds(actual, required)
      reservoir(:reservoir_build_up_seconds, actual: actual, required: required).then { |text| Core.exact(text) }
    end

    # Estimates, no figures of law: psi after one full application, and how many keep at least so many psi, up to 99.
    def estimate_application(pressure:, reservoir:, chambers:, fill: 1)
      Core.exact(reservoir(:reservoir_estimate_application, pressure: pressure, reservoir: reservoir, chambers: chambers,
                                                            fill: fill))
    end

    def estimate_applications(pressure:, least:, reservoir:, chambers:, fill: 1)
      reservoir(:reservoir_estimate_applications, pressure: pressure, least: least, reservoir: reservoir, chambers: chambers,
                                                  fill: fill)
    end

    # Readers give a Rational, and a Date.
    def read_length(text, unit: nil)
      Core.exact(Core.call(Rodtravel_core, :read_length, Core.text(:text, text), Core.text(:unit, unit)))
    end

    def read_pressure(text) = Core.exact(Core.call(Rodtravel_core, :read_pressure, Core.text(:text, text)))
    def read_seconds(text) = Core.exact(Core.call(Rodtravel_core, :read_seconds, Core.text(:text, text)))
    def read_date(text) = Date.iso8601(Core.call(Rodtravel_core, :read_date, Core.text(:text, text)))

    # Inches as a mixed fraction, "1 3/4".
    def write_length(length)
      raise Error.new("an exact number was expected", field: "length") unless length.is_a?(Rational) || length.is_a?(Integer)
      parts = [length.numerator, length.denominator]
      unless parts.all? { |part| part.abs < 2**63 }
        raise Error.new("the number has more digits than an exact 64-bit fraction holds", status: "range", field: "length")
      end
      Core.call(Rodtravel_core, :write_length, *parts)
    end

    def rule_set(id) = id.is_a?(Rules) ? id : Rules.new(Core.call(Rodtravel_core::Rules, :new, Core.text(:rules, id)))
    def rule_sets = (0...Rodtravel_core.rules_count).map { |i| rule_set(Rodtravel_core.rules_id(i)) }

    # A carrier's own limits, the text of a table, on top of a law.
    def load_rules(table, name, law: DEFAULT_RULES, air_law: nil)
      air = air_law.nil? ? [] : [core_of(rule_set(air_law))]
      Rules.new(Core.call(core_of(rule_set(law)), :load, Core.text(:name, name), Core.text(:table, table), *air))
    end

    def tables_edition = Rodtravel_core.tables_edition

    private

    def core_of(value) = value.instance_variable_get(:@core)

    def reservoir(function, **numbers)
      Core.call(Rodtravel_core, function, *numbers.map { |name, value| Core.exact_in(name, value) })
    end

    def step(on, index, row, tag)
      row_of = row < 0 ? nil : JSON.parse(Core.call(Rodtravel_core, :step_row_json, *on, index, row, tag))
      {step: Core.call(Rodtravel_core, :step_name, *on, index), row: row_of,
       **%i[title do see good defective].to_h do |part|
         [part, Core.call(Rodtravel_core, :step_text, *on, index, row, part.to_s, tag)]
       end}
    end

    def add_end(vehicle, of, line)
      finding = of.is_a?(Hash) ? of[:finding] : nil
      raise Error.new("a wheel end needs a finding", field: "finding", line: line) unless finding.is_a?(Finding)
      odd = of.keys - %i[position finding adjuster arm_length]
      raise Error.new("a wheel end has no such member", field: odd[0].to_s, line: line) unless odd.empty?
      texts = %i[adjuster arm_length].map { |name| Core.text(name, of[name]) }
      Core.call(vehicle, :add, Core.text(:position, of[:position]), core_of(finding), *texts, line: line)
    end
  end
end

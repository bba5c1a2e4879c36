# SPDX-License-Identifier: Apache-2.0
# frozen_string_literal: true

Gem::Specification.new do |gem|
  gem.name = "rodtravel"
  gem.version = "@VERSION@"
  gem.summary = "Pushrod stroke of air brakes, judged exactly"
  gem.description = "From a tape reading to a verdict with its reasons and source. Exact fractions; binary floats are refused."
  gem.authors = ["The rodtravel authors"]
  gem.license = "Apache-2.0"
  gem.required_ruby_version = ">= 3.0"
  gem.files = File.readlines(File.join(__dir__, "MANIFEST"), chomp: true)
  gem.extensions = ["ext/rodtravel_core/extconf.rb"]
end

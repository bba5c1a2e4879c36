# SPDX-License-Identifier: Apache-2.0
# What one says aloud at an inspection, and the figures of reservoirs.

steps <- function(..., rules = default_rules, language = "") {
  rules <- rules_of(rules)
  vehicle <- record_of("rodt_air_reading", list(...))
  language <- text_of("language", language)
  of_index <- function(index) {
    rows <- core("step_row_count", rules, vehicle, index)
    lapply(if (rows > 0) seq_len(rows) - 1L else -1L, function(row) one_step(rules, vehicle, index, row, language))
  }
  unlist(lapply(seq_len(core("step_count", rules, vehicle)) - 1L, of_index), recursive = FALSE)
}

one_step <- function(rules, vehicle, index, row, language) {
  parts <- c("title", "do", "see", "good", "defective")
  texts <- sapply(parts, function(part) core("step_text", rules, vehicle, index, row, part, language), simplify = FALSE)
  figures <- if (row >= 0) json_read(core("step_row_json", rules, vehicle, index, row, language))
  c(list(step = core("step_name", rules, vehicle, index), row = figures), texts)
}

# The exact text of one number.
exact_of <- function(name, value) {
  if (length(value) != 1 || is.na(value)) refuse("one exact number was expected", field = name)
  ratio_text(value, name)
}

rated_volume <- function(mark) {
  read_ratio(core("chamber_rated_volume", core("chamber", text_of("chamber", mark))))
}

required_volume <- function(chambers, trailer = FALSE) {
  if (!isTRUE(trailer) && !isFALSE(trailer)) refuse("TRUE or FALSE was expected", field = "trailer")
  read_ratio(core("reservoir_required_volume", exact_of("chambers", chambers), as.integer(trailer)))
}

build_up_seconds <- function(actual, required) {
  read_ratio(core("reservoir_build_up_seconds", exact_of("actual", actual), exact_of("required", required)))
}

estimate_application <- function(pressure, reservoir, chambers, fill = 1L) {
  read_ratio(core("reservoir_estimate_application", exact_of("pressure", pressure), exact_of("reservoir", reservoir),
                  exact_of("chambers", chambers), exact_of("fill", fill)))
}

estimate_applications <- function(pressure, least, reservoir, chambers, fill = 1L) {
  core("reservoir_estimate_applications", exact_of("pressure", pressure), exact_of("least", least),
       exact_of("reservoir", reservoir), exact_of("chambers", chambers), exact_of("fill", fill))
}

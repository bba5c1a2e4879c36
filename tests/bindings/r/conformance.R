# SPDX-License-Identifier: Apache-2.0
# R's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
# standard output. Wheel ends are judged by columns, as a data frame is, and once more one by one.
library(rodtravel)

quoted <- function(text) {
  if (length(text) == 0 || is.na(text)) return("null")
  paste0("\"", gsub("([\"\\\\])", "\\\\\\1", as.character(text)), "\"")
}

object <- function(members) paste0("{", paste0("\"", names(members), "\": ", members, collapse = ", "), "}")

error_of <- function(error) {
  if (is.null(error)) return("null")
  object(list(status = quoted(error$status), field = quoted(error$field), column = error$column))
}

wheel_end <- function(of) {
  found <- do.call(judge_row, of)
  cells <- utils::modifyList(list(chamber = NA, released = NA, applied = NA), of[setdiff(names(of), "rules")])
  column <- do.call(judge_rows, c(list(as.data.frame(cells)), of["rules"]))
  stopifnot(identical(column$verdict, found$verdict), identical(column$margin, as.character(found$margin)),
            identical(column$status, if (is.null(found$error)) NA_character_ else found$error$status),
            identical(column$reasons, paste(found$reasons, collapse = ", ")))
  list(verdict = quoted(found$verdict), stroke = quoted(found$applied_stroke), limit = quoted(found$limit),
       margin = quoted(found$margin), proof = quoted(found$proof), probability_over = quoted(found$probability_over),
       reasons = paste0("[", paste(vapply(found$reasons, quoted, ""), collapse = ", "), "]"),
       error = error_of(found$error))
}

asked <- list(
  "wheel-end" = wheel_end,
  length = function(of) list(value = quoted(read_length(of$text))),
  chamber = function(of) {
    read <- read_chamber(of$text)
    names <- c("family", "size", "spring_size", "stroke_class")
    sapply(names, function(name) quoted(get_text(read, name)), simplify = FALSE)
  },
  count = function(of) {
    found <- do.call(count_brakes, of)
    list(outcome = quoted(found$outcome), share = quoted(found$share))
  },
  air = function(of) {
    found <- do.call(judge_air, of)
    list(result = quoted(found$result), at_limit = if (found$at_limit) "\"yes\"" else "\"no\"")
  })

input <- file("stdin", encoding = "UTF-8")
open(input)
while (length(line <- readLines(input, 1, warn = FALSE, encoding = "UTF-8")) > 0) {
  question <- rodtravel:::json_read(line)
  answer <- tryCatch(asked[[question$ask]](question[setdiff(names(question), c("id", "ask"))]),
                     rodtravel_error = function(error) list(error = error_of(error)))
  if (is.null(answer$error)) answer$error <- "null"
  cat(object(c(list(id = quoted(question$id)), answer)), "\n", sep = "")
}

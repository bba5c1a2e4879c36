# SPDX-License-Identifier: Apache-2.0
# R's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
# standard output. Wheel ends are judged by columns, 256 questions at a time, and once more one by one.
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

# By columns: the questions with the same rules are rows of one data frame. Gives an answer for each question, or NULL.
judged_by_columns <- function(questions) {
  found <- vector("list", length(questions))
  ends <- which(vapply(questions, function(of) of$ask == "wheel-end", TRUE))
  rules <- vapply(questions[ends], function(of) c(of$rules, "")[1], "")
  for (at in split(ends, rules)) {
    names <- union(c("chamber", "released", "applied"), setdiff(unlist(lapply(questions[at], names)), c("id", "ask", "rules")))
    cells <- sapply(names, function(name) vapply(questions[at], function(of) c(of[[name]], NA_character_)[1], ""),
                    simplify = FALSE)
    rows <- tryCatch(do.call(judge_rows, c(list(as.data.frame(cells)), questions[[at[1]]]["rules"])),
                     rodtravel_error = function(error) NULL)
    if (!is.null(rows)) found[at] <- lapply(seq_along(at), function(row) lapply(rows, `[`, row))
  }
  found
}

wheel_end <- function(of, row) {
  found <- do.call(judge_row, of)
  stopifnot(identical(row$verdict, found$verdict), identical(row$margin, as.character(found$margin)),
            identical(row$status, if (is.null(found$error)) NA_character_ else found$error$status),
            identical(row$reasons, paste(found$reasons, collapse = ", ")))
  list(verdict = quoted(found$verdict), stroke = quoted(found$applied_stroke), limit = quoted(found$limit),
       margin = quoted(found$margin), proof = quoted(found$proof), probability_over = quoted(found$probability_over),
       reasons = paste0("[", paste(vapply(found$reasons, quoted, ""), collapse = ", "), "]"),
       error = error_of(found$error))
}

asked <- list(
  "wheel-end" = wheel_end,
  length = function(of, row) list(value = quoted(read_length(of$text))),
  chamber = function(of, row) {
    read <- read_chamber(of$text)
    names <- c("family", "size", "spring_size", "stroke_class")
    sapply(names, function(name) quoted(get_text(read, name)), simplify = FALSE)
  },
  count = function(of, row) {
    found <- do.call(count_brakes, of)
    list(outcome = quoted(found$outcome), share = quoted(found$share))
  },
  air = function(of, row) {
    found <- do.call(judge_air, of)
    list(result = quoted(found$result), at_limit = if (found$at_limit) "\"yes\"" else "\"no\"")
  })

input <- file("stdin", encoding = "UTF-8")
open(input)
while (length(lines <- readLines(input, 256, warn = FALSE, encoding = "UTF-8")) > 0) {
  questions <- lapply(lines, rodtravel:::json_read)
  rows <- judged_by_columns(questions)
  for (i in seq_along(questions)) {
    question <- questions[[i]]
    answer <- tryCatch(asked[[question$ask]](question[setdiff(names(question), c("id", "ask"))], rows[[i]]),
                       rodtravel_error = function(error) list(error = error_of(error)))
    if (is.null(answer$error)) answer$error <- "null"
    cat(object(c(list(id = quoted(question$id)), answer)), "\n", sep = "")
  }
}

# SPDX-License-Identifier: Apache-2.0
# JSON of the library as lists: objects are named lists, arrays are lists, null is NULL.

json_text <- function(token) {
  text <- substr(token, 2, nchar(token) - 1)
  if (!grepl("\\", text, fixed = TRUE)) return(text)
  signs <- gregexpr("\\\\(u[0-9A-Fa-f]{4}|.)", text)
  regmatches(text, signs) <- list(vapply(regmatches(text, signs)[[1]], json_sign, ""))
  text
}

json_sign <- function(escape) {
  letter <- substr(escape, 2, 2)
  if (letter == "u") return(intToUtf8(strtoi(substr(escape, 3, 6), 16L)))
  named <- c(n = "\n", t = "\t", r = "\r", b = "\b", f = "\f")
  if (letter %in% names(named)) named[[letter]] else letter
}

json_read <- function(text) {
  sign <- '"([^"\\\\]|\\\\.)*"|[-+0-9.eE]+|true|false|null|[][{},:]'
  tokens <- regmatches(text, gregexpr(sign, text, perl = TRUE))[[1]]
  at <- 0L
  following <- function() tokens[[at <<- at + 1L]]
  value <- function(token = following()) {
    switch(substr(token, 1, 1), "{" = many("}", TRUE), "[" = many("]", FALSE), "\"" = json_text(token), t = TRUE,
           f = FALSE, n = NULL, as.numeric(token))
  }
  many <- function(end, named) {
    found <- list()
    repeat {
      token <- following()
      if (token == end) return(found)
      if (token == ",") next
      name <- NULL
      if (named) {
        name <- json_text(token)
        following()
        token <- following()
      }
      one <- list(value(token))
      if (named) names(one) <- name
      found <- c(found, one)
    }
  }
  value()
}

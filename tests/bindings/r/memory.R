# SPDX-License-Identifier: Apache-2.0
# A million calls of the library lose nothing, whether they find or refuse. Prints TAP.
library(rodtravel)

pages <- function() {
  if (file.exists("/proc/self/statm")) as.numeric(strsplit(readLines("/proc/self/statm"), " ")[[1]][2]) else 0
}

work <- function(times) { # some forty calls each
  for (i in seq_len(times)) {
    yard <- load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard")
    found <- judge(chamber = "30L", released = "2 3/4", applied = "5 1/4", rules = yard)
    sentences(found, "fr")
    judge_vehicle(list(list(position = "1L", finding = found)))
    for (wrong in c("2-Jan", "", "4 1/")) {
      tryCatch(judge(chamber = "30", released = "2 1/8", applied = wrong), rodtravel_error = identity)
    }
  }
  rows <- judge_rows(data.frame(chamber = rep("30L", 10 * times), released = "2 3/4", applied = "5 1/4"))
  stopifnot(all(rows$verdict == "in-adjustment"))
}

cat("1..1\n")
work(2500)
invisible(gc())
before <- pages()
for (round in 1:10) work(2500)
invisible(gc())
more <- pages() - before
cat(if (more < 2000) "" else "not ", "ok 1 - memory after a million calls # ", more, " pages more\n", sep = "")

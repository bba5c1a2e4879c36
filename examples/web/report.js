// SPDX-License-Identifier: Apache-2.0
// The command's report of a record: shown, printed, saved, shared.
"use strict";

function reportOf(record) {
  return call({ do: "report", record, format: "html", language: LANGUAGES[language] }).out || "";
}

/* A page of the command in a frame of its own, where no script runs. */
function showPage(title, page, name, close, more = []) {
  const frame = make("iframe", {
    title,
    class: "page",
    sandbox: "allow-same-origin allow-modals",
    srcdoc: page,
  });
  const type = "text/html";
  paint({
    name: "report",
    top: [make("h1", { class: "hidden" }, title), frame],
    panel: [
      keyRow(
        "names",
        [
          button(word("print"), () => frame.contentWindow.print(), "key primary"),
          button(word("savePage"), () => saveAs(name, type, page)),
          ...more,
          canShare(name, type) ? button(word("share"), () => shareFile(name, type, page)) : null,
          button(word("close"), close),
        ].filter(Boolean),
      ),
    ],
  });
}

function showReport(entry, close) {
  showPage(word("report"), reportOf(entry.record), fileNameOf(entry.record, ".html"), close);
}

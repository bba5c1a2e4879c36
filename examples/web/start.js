// SPDX-License-Identifier: Apache-2.0
// The first screen is there at the first paint; what only the database still has joins it later.
"use strict";

const call = openModule(
  Uint8Array.from(atob(document.getElementById("module").textContent.trim()), (byte) => byte.charCodeAt(0)),
);

loadSettings();
applySettings();
showHome();
recoverRecords(() => {
  if (document.body.dataset.screen === "home") showHome();
});

/* A page that a server gave is kept for the next visit by the script beside it, if there is one. */
const worker = document.documentElement.dataset.worker;
if (worker && location.protocol !== "file:" && navigator.serviceWorker)
  navigator.serviceWorker.register(worker).catch(() => null); // without it the page is asked for again

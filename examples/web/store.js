// SPDX-License-Identifier: Apache-2.0
// What the browser keeps: a record after every answer, the clock that runs, the settings.
"use strict";

const PLACE = "rodtravel/";
const RECORD_PLACE = PLACE + "record/";
const settings = {
  language: null,
  leftHand: false,
  sun: false,
  sound: true,
  vibration: true,
  speak: false,
  mm: false,
  kpa: false,
  rules: null,
  airRules: null,
};

let storageWorks = true; // false: nothing is kept, and the page says so

function keepText(place, text) {
  try {
    localStorage.setItem(place, text);
    return localStorage.getItem(place) === text;
  } catch (refused) {
    return false;
  }
}

function keptText(place) {
  try {
    return localStorage.getItem(place);
  } catch (refused) {
    return null;
  }
}

function keptObject(place) {
  try {
    const found = JSON.parse(keptText(place));
    return typeof found === "object" ? found : null;
  } catch (broken) {
    return null;
  }
}

function forget(place) {
  try {
    localStorage.removeItem(place);
  } catch (refused) {
    storageWorks = false;
  }
}

function loadSettings() {
  const kept = keptObject(PLACE + "settings") || {};
  for (const name of Object.keys(settings)) {
    if (name in kept) settings[name] = kept[name];
  }
}

function saveSettings() {
  keepText(PLACE + "settings", JSON.stringify(settings));
}

/* Never the name of another one, whatever the clock says. */
function newName() {
  let name;
  do name = Date.now().toString(36) + Math.random().toString(36).slice(2, 6);
  while (keptText(RECORD_PLACE + name) !== null);
  return name;
}

/* True: it is kept. The record is the command's own text, and stays untouched. */
function keepRecord(entry) {
  entry.saved = new Date().toISOString();
  storageWorks = keepText(RECORD_PLACE + entry.name, JSON.stringify(entry));
  return storageWorks;
}

/* The database writes through to the disk, which the other store does some seconds later: a record is in both. */
let database = null;

function openDatabase(found) {
  try {
    const request = indexedDB.open("rodtravel", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("records", { keyPath: "name" });
    request.onsuccess = () => {
      database = request.result;
      const all = database.transaction("records").objectStore("records").getAll();
      all.onsuccess = () => found(all.result.filter(isEntry));
    };
    request.onerror = () => found([]);
  } catch (refused) {
    found([]);
  }
}

/* Takes back what only the database still has, or has later. Calls back if that is something. */
function recoverRecords(changed) {
  openDatabase((entries) => {
    let news = false;
    for (const entry of entries) {
      const kept = keptRecord(entry.name);
      if (kept === null || kept.saved < entry.saved)
        news = keepText(RECORD_PLACE + entry.name, JSON.stringify(entry)) || news;
    }
    if (news) changed();
  });
}

/* Goes on once the disk has it, or after a while: a slow disk does not stop the work. */
function keepOnDisk(entry, goOn) {
  let waiting = true;
  const once = () => {
    if (waiting) goOn();
    waiting = false;
  };
  if (!database) return once();
  try {
    const change = database.transaction("records", "readwrite", { durability: "strict" });
    change.objectStore("records").put(entry);
    change.oncomplete = () => {
      storageWorks = true;
      once();
    };
    change.onerror = change.onabort = once;
    setTimeout(once, 400);
  } catch (refused) {
    once();
  }
}

function removeRecord(name) {
  forget(RECORD_PLACE + name);
  if (database) database.transaction("records", "readwrite").objectStore("records").delete(name);
}

function isEntry(entry) {
  return entry !== null && typeof entry.name === "string" && typeof entry.record === "string";
}

function keptRecord(name) {
  const entry = keptObject(RECORD_PLACE + name);
  return isEntry(entry) ? entry : null;
}

/* The latest first. */
function keptRecords() {
  const found = [];
  try {
    for (let i = 0; i < localStorage.length; i++) {
      const place = localStorage.key(i);
      const entry = place.startsWith(RECORD_PLACE) ? keptObject(place) : null;
      if (isEntry(entry)) found.push(entry);
    }
  } catch (refused) {
    storageWorks = false;
  }
  return found.sort((a, b) => (a.saved < b.saved ? 1 : -1));
}

function recordObject(text) {
  try {
    return JSON.parse(text) || {};
  } catch (broken) {
    return {};
  }
}

/* "T-114, 2026-11-29, 06:40" */
function titleOf(entry) {
  const record = recordObject(entry.record);
  return [record.unit, record.date, record.time].filter(Boolean).join(", ") || word("title");
}

function fileNameOf(text, ending) {
  const record = recordObject(text);
  const plain = [record.unit, record.date]
    .filter(Boolean)
    .join("-")
    .replace(/[^A-Za-z0-9.-]+/g, "-");
  return (plain || "inspection") + ending;
}

/* Asked once; a browser that says no may clear what it keeps. */
function askToPersist() {
  if (navigator.storage && navigator.storage.persist) navigator.storage.persist().catch(() => false);
}

function saveAs(name, type, text) {
  const link = make("a", { href: URL.createObjectURL(new Blob([text], { type })), download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

/* False: this browser cannot share files. */
function canShare(name, type) {
  return Boolean(navigator.canShare) && navigator.canShare({ files: [new File([""], name, { type })] });
}

function shareFile(name, type, text) {
  navigator
    .share({ files: [new File([text], name, { type })], title: name })
    .catch(() => saveAs(name, type, text));
}

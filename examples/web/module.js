// SPDX-License-Identifier: Apache-2.0
// Requests to the module of WebAssembly: objects in, objects out. Page and Node alike.
"use strict";

// The time of the place, to the second: "2026-11-20T06:40:00".
function placeTime(date) {
  const two = number => String(number).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}` +
         `T${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
}

// Gives the function `call` of the module whose bytes these are. A walk-round lives in an instance of its own,
// everything else in one that is used once: no request finds what another one left, and the memory of none grows.
function openModule(bytes) {
  const code = new WebAssembly.Module(bytes);
  const encoder = new TextEncoder(), decoder = new TextDecoder();
  let walk = null;

  function open() {
    const instance = new WebAssembly.Instance(code, {});
    instance.exports._initialize();
    return instance.exports;
  }

  function exchange(module, text) {
    const sent = encoder.encode(text);
    const room = module.room(sent.length);
    if (room === 0) return { error: "too-long" };
    new Uint8Array(module.memory.buffer, room, sent.length).set(sent);
    const reply = module.call(sent.length);
    if (reply === 0) return { error: "no-memory" };
    return JSON.parse(decoder.decode(new Uint8Array(module.memory.buffer, reply, module.size())));
  }

  // A trap ends the instance; what was not given out is lost, and the page has the record of the answer before.
  return function call(request) {
    const walks = request.do === "begin" || request.do === "answer";
    const module = request.do === "answer" ? walk : open();
    if (module === null) return { error: "no-question" };
    if (walks) walk = module;
    try {
      return exchange(module, JSON.stringify({ now: placeTime(new Date()), ...request }));
    } catch (error) {
      if (walks) walk = null;
      return { error: "trap", text: String(error) };
    }
  };
}

if (typeof module === "object") module.exports = { openModule, placeTime };

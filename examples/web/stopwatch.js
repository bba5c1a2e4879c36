// SPDX-License-Identifier: Apache-2.0
// A clock that keeps the time of its start, so that it outlives a locked phone, a reload and a closed browser.
"use strict";

let awake = null; // what keeps the screen on
let beeper = null; // made by the tap that starts the clock: a browser plays nothing without one
let ticking = null;

function clockPlace(name, id) {
  return `${PLACE}clock/${name}/${id}`;
}

function stopTicking() {
  clearInterval(ticking);
  ticking = null;
  if (awake) awake.release().catch(() => false);
  awake = null;
}

function stayAwake() {
  if (!navigator.wakeLock) return;
  navigator.wakeLock
    .request("screen")
    .then((lock) => {
      if (ticking === null) lock.release();
      else awake = lock;
    })
    .catch(() => false);
}

function prepareSound() {
  const Context = window.AudioContext || window.webkitAudioContext;
  if (!settings.sound || !Context) return;
  beeper = beeper || new Context();
  if (beeper.state === "suspended") beeper.resume();
}

function beep() {
  if (!settings.sound || !beeper) return;
  for (const at of [0, 0.35, 0.7]) {
    const tone = beeper.createOscillator(),
      loud = beeper.createGain();
    tone.frequency.value = 1320;
    loud.gain.value = 0.5;
    tone.connect(loud).connect(beeper.destination);
    tone.start(beeper.currentTime + at);
    tone.stop(beeper.currentTime + at + 0.22);
  }
}

function minutes(seconds) {
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/* `timed.counts`: so many seconds are counted down; else the clock runs until it is stopped. */
function stopwatch(host, send, timed, place) {
  const shown = make("output", { class: "clock", role: "timer" });
  const seconds = timed.seconds || 60;
  const elapsed = () => Math.max(0, (Date.now() - keptObject(place).start) / 1000);
  const drop = () => {
    stopTicking();
    forget(place);
  };

  function offerStart() {
    drop();
    setStep("");
    timed.over = false;
    shown.textContent = timed.counts ? minutes(seconds) : minutes(0);
    host.replaceChildren(
      shown,
      keyRow("one", [
        button(
          word("start"),
          () => {
            keepText(place, JSON.stringify({ start: Date.now() }));
            prepareSound();
            run();
            announce(word("running"));
          },
          "key primary",
        ),
      ]),
    );
  }

  function offerResult(value) {
    stopTicking();
    let text = String(value);
    const show = () => {
      shown.textContent = `${text} s`;
    };
    const change = (by) => {
      text = String(Math.max(0, Math.round((Number(text) + by) * 10) / 10));
      show();
    };
    show();
    const mend = timed.counts
      ? []
      : [button(word("lessSecond"), () => change(-1)), button(word("moreSecond"), () => change(1))];
    host.replaceChildren(
      shown,
      keyRow("two", [
        ...mend,
        button(word("restart"), offerStart),
        button(
          word("use"),
          () => {
            drop();
            send(text);
          },
          "key primary",
        ),
      ]),
    );
  }

  /* What is read long after the end is seen to be late. */
  function end() {
    if (timed.over) return;
    timed.over = true;
    buzz("over");
    beep();
    announce(word("timeIsUp"));
    setStep(word("timeIsUp"));
    host.replaceChildren(
      shown,
      keyRow("two", [
        button(word("restart"), offerStart),
        button(
          `${word("use")} ${seconds} s`,
          () => {
            drop();
            send(String(seconds));
          },
          "key primary",
        ),
      ]),
    );
    host.querySelector(".primary").focus({ preventScroll: true });
  }

  function tick() {
    if (!shown.isConnected) return stopTicking();
    const now = elapsed();
    if (!timed.counts) shown.textContent = minutes(now);
    else if (now < seconds) shown.textContent = minutes(Math.ceil(seconds - now));
    else {
      end();
      shown.textContent = "+" + minutes(now - seconds);
    }
    return null;
  }

  function run() {
    setStep(word("running"));
    host.replaceChildren(
      shown,
      keyRow("one", [
        timed.counts
          ? button(word("restart"), offerStart)
          : button(word("stop"), () => offerResult(Math.round(elapsed() * 10) / 10), "key primary"),
      ]),
    );
    clearInterval(ticking);
    ticking = setInterval(tick, 200);
    stayAwake();
    tick();
  }

  const kept = keptObject(place);
  if (kept && Number.isFinite(kept.start) && kept.start <= Date.now()) run();
  else offerStart();
  return () => {
    if (!keptText(place)) return false;
    offerStart();
    return true;
  };
}

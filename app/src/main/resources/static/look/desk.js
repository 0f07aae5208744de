"use strict";
// Small things that a page does better with a script; every page works without it.

// The clock of this device against the desk's: offset and its uncertainty (half the way there and back).
let offset = 0, uncertainty = null;
if (document.querySelector("[data-clock], [data-since]")) {
  const sent = Date.now();
  fetch("/clock").then(answer => answer.text()).then(text => {
    const back = Date.now();
    offset = Math.round(Number(text) - (sent + back) / 2);
    uncertainty = Math.round((back - sent) / 2);
  }).catch(() => { /* The desk's own clock is used then. */ });
}

// When the button was pressed, not when it arrived.
document.addEventListener("submit", event => {
  const form = event.target;
  if (form.matches("[data-clock]")) {
    const values = {deviceTime: Date.now(), clockOffset: offset, clockUncertainty: uncertainty};
    for (const [name, value] of Object.entries(values)) {
      if (value !== null) {
        let field = form.elements.namedItem(name);
        if (!field) {
          field = document.createElement("input");
          field.type = "hidden";
          field.name = name;
          form.append(field);
        }
        field.value = value;
      }
    }
  }
});

for (const clock of document.querySelectorAll("[data-since]")) {
  const since = Number(clock.dataset.since);
  setInterval(() => {
    const seconds = Math.max(0, Math.round((Date.now() + offset - since) / 1000));
    clock.textContent = Math.floor(seconds / 60) + ":" + String(seconds % 60).padStart(2, "0");
  }, 500);
}

// The number beside a slider follows it at once.
document.addEventListener("input", event => {
  if (event.target.type === "range") {
    const shown = document.querySelector('output[for="' + CSS.escape(event.target.id) + '"]');
    if (shown) { shown.textContent = event.target.value; }
  }
});

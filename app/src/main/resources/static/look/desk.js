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

// Going back shows an old form: whatever is sent from it now is a new thing.
addEventListener("pageshow", event => {
  const [visit] = performance.getEntriesByType("navigation");
  if (event.persisted || visit && visit.type === "back_forward") {
    for (const key of document.querySelectorAll("input[type=hidden][name=key]")) {
      const fresh = crypto.getRandomValues(new Uint32Array(2));
      key.value = key.defaultValue + "-" + fresh[0].toString(36) + fresh[1].toString(36);
    }
  }
});

// Files on their way: a bar, a refusal before gigabytes are sent, and the form stays when it fails.
const MOST_BYTES = 500 * 1024 * 1024;

function say(form, words) {
  let line = form.querySelector(".busy");
  if (!line) {
    line = document.createElement("p");
    line.className = "busy";
    line.setAttribute("role", "status");
    form.append(line);
  }
  line.textContent = words;
  return line;
}

function show(answer, form) {
  if (answer.responseURL && new URL(answer.responseURL).pathname !== new URL(form.action).pathname) {
    location.assign(answer.responseURL);
    return;
  }
  const page = new DOMParser().parseFromString(answer.responseText, "text/html");
  const main = page.querySelector("main");
  if (main) { document.querySelector("main").replaceWith(main); window.scrollTo(0, 0); }
}

document.addEventListener("submit", event => {
  const form = event.target;
  if (!form.matches("[data-busy]") || event.defaultPrevented) { return; }
  const files = [...form.querySelectorAll("input[type=file]")].flatMap(field => [...field.files]);
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  if (bytes > MOST_BYTES) {
    event.preventDefault();
    say(form, Math.ceil(bytes / 1048576) + " MB are chosen; at most 500 MB go at once. Nothing was sent.");
    return;
  }
  if (!files.length || form.dataset.sending) {
    if (form.dataset.sending) { event.preventDefault(); }
    return;
  }
  event.preventDefault();
  form.dataset.sending = "yes";
  const line = say(form, form.dataset.busy + " …");
  const bar = document.createElement("progress");
  bar.max = 100;
  bar.setAttribute("aria-label", form.dataset.busy);
  line.append(bar);
  const post = new XMLHttpRequest();
  post.open("POST", form.action);
  post.upload.onprogress = at => { if (at.lengthComputable) { bar.value = 100 * at.loaded / at.total; } };
  post.upload.onload = () => bar.removeAttribute("value");
  post.onload = () => { delete form.dataset.sending; show(post, form); };
  post.onerror = () => {
    delete form.dataset.sending;
    say(form, "The connection ended before everything was sent. Nothing was kept of it; send it again.");
  };
  post.send(new FormData(form));
});

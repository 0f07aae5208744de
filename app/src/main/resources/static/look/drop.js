"use strict";
// Drop files on the sheet; many of them go up in parts, with a bar, and can be stopped and gone on
// with. Without this the form sends them at once.
const PART_FILES = 5, PART_BYTES = 4e7;

for (const form of document.querySelectorAll("[data-drop]")) {
  const input = form.querySelector("input[type=file]"), words = form.querySelector(".progress-words");
  const go = form.querySelector("button");
  let sent = 0, sending = null;

  for (const kind of ["dragenter", "dragover"]) {
    form.addEventListener(kind, event => { event.preventDefault(); form.classList.add("over"); });
  }
  form.addEventListener("dragleave", () => form.classList.remove("over"));
  form.addEventListener("drop", event => {
    event.preventDefault();
    form.classList.remove("over");
    if (event.dataTransfer.files.length && !sending) {
      input.files = event.dataTransfer.files;
      input.dispatchEvent(new Event("change"));
    }
  });
  input.addEventListener("change", () => { sent = 0; words.textContent = input.files.length + " files chosen"; });

  form.addEventListener("submit", event => {
    const files = [...input.files];
    if (sending) { event.preventDefault(); return; }
    if (files.length < 2) { return; }
    event.preventDefault();
    sending = new AbortController();
    const bar = document.createElement("progress"), stop = document.createElement("button");
    bar.max = files.length;
    bar.setAttribute("aria-label", "Files sent");
    stop.type = "button";
    stop.className = "tin stop";
    stop.textContent = "Stop sending";
    stop.addEventListener("click", () => sending.abort());
    words.after(bar, stop);
    go.disabled = true;
    input.disabled = true;
    send(files, bar).then(next => location.assign(next)).catch(() => {
      words.textContent = "The sending stopped after " + sent + " of " + files.length
        + ". “" + go.textContent + "” goes on from there; nothing is kept before you say so.";
    }).finally(() => {
      sending = null;
      bar.remove();
      stop.remove();
      go.disabled = false;
      input.disabled = false;
      go.focus();
    });
  });

  async function send(files, bar) {
    let next = "";
    while (sent < files.length) {
      bar.value = sent;
      words.textContent = sent + " of " + files.length + " sent";
      const part = partOf(files);
      const data = new FormData(form);
      data.delete("files");
      part.forEach(file => data.append("files", file));
      const answer = await fetch(form.action, {method: "POST", body: data, signal: sending.signal});
      if (!answer.ok) { throw new Error(answer.status); }
      sent += part.length;
      next = answer.url;
    }
    return next;
  }

  /** The next few: small enough that the bar moves and a lost one is soon sent again. */
  function partOf(files) {
    const part = [files[sent]];
    let bytes = files[sent].size;
    for (let i = sent + 1; i < files.length && part.length < PART_FILES; i++) {
      bytes += files[i].size;
      if (bytes > PART_BYTES) { break; }
      part.push(files[i]);
    }
    return part;
  }
}

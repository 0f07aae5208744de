"use strict";
// Drop files on the sheet; many of them go up in parts. Without this the form sends them at once.
for (const form of document.querySelectorAll("[data-drop]")) {
  const input = form.querySelector("input[type=file]"), words = form.querySelector(".progress-words");
  for (const kind of ["dragenter", "dragover"]) {
    form.addEventListener(kind, event => { event.preventDefault(); form.classList.add("over"); });
  }
  form.addEventListener("dragleave", () => form.classList.remove("over"));
  form.addEventListener("drop", event => {
    event.preventDefault();
    form.classList.remove("over");
    if (event.dataTransfer.files.length) { input.files = event.dataTransfer.files; words.textContent = input.files.length + " files chosen"; }
  });
  form.addEventListener("submit", event => {
    const files = [...input.files];
    if (files.length < 2) { return; }
    event.preventDefault();
    send(files).catch(() => { words.textContent = "The sending stopped. Nothing was kept; send them again."; });
  });
  async function send(files) {
    let part = [], bytes = 0, sent = 0;
    const post = async () => {
      const data = new FormData(form);
      data.delete("files");
      part.forEach(file => data.append("files", file));
      const answer = await fetch(form.action, {method: "POST", body: data});
      if (!answer.ok) { throw new Error(answer.status); }
      sent += part.length;
      words.textContent = sent + " of " + files.length + " sent";
      part = []; bytes = 0;
      return answer.url;
    };
    let next = "";
    for (const file of files) {
      part.push(file);
      bytes += file.size;
      if (part.length >= 20 || bytes > 2e8) { next = await post(); }
    }
    if (part.length) { next = await post(); }
    location.assign(next);
  }
}

"use strict";
// Outlines over a photograph: drag, split, merge, delete, name; by touch, mouse and keys.
// Everything ends up as text in the form, which works without this as well.
(() => {
  const shot = document.getElementById("shot");
  if (!shot) { return; }
  const svg = shot.querySelector("svg"), form = document.querySelector(".mend"), text = form.querySelector("#outlines");
  const name = form.querySelector("#piece-name"), said = form.querySelector(".said");
  const width = Number(shot.dataset.width), height = Number(shot.dataset.height);
  const NS = "http://www.w3.org/2000/svg";
  let pieces = read(), chosen = -1, mode = "", cut = null;
  const past = [];
  form.querySelector(".tools").hidden = false;
  svg.removeAttribute("aria-hidden");
  svg.setAttribute("role", "group");
  svg.setAttribute("aria-label", "Outlines of the pieces");

  function read() {
    return text.value.split("\n").map(line => line.match(/^\s*([^:]+?)\s*:\s*(.*)$/)).filter(Boolean)
      .map(m => ({name: m[1], at: m[2].trim().split(/\s+/).map(c => c.split(",").map(Number)).filter(c => c.length === 2 && c.every(Number.isFinite))}))
      .filter(p => p.at.length > 2);
  }
  const held = (v, most) => Math.max(0, Math.min(most, Math.round(v)));
  function write() { text.value = pieces.map(p => p.name + ": " + p.at.map(c => held(c[0], width) + "," + held(c[1], height)).join(" ")).join("\n"); }
  function remember() { past.push(JSON.stringify(pieces)); if (past.length > 60) { past.shift(); } }
  function say(words) { said.textContent = words; }
  const middle = at => [at.reduce((s, c) => s + c[0], 0) / at.length, at.reduce((s, c) => s + c[1], 0) / at.length];
  function scale() { return width / Math.max(1, svg.getBoundingClientRect().width); }
  function place(event) {
    const box = svg.getBoundingClientRect();
    return [(event.clientX - box.left) * width / box.width, (event.clientY - box.top) * height / box.height];
  }
  function part(tag, values, parent) {
    const p = document.createElementNS(NS, tag);
    for (const [k, v] of Object.entries(values)) { p.setAttribute(k, v); }
    parent.append(p);
    return p;
  }
  function freeName() {
    for (let n = pieces.length + 1; ; n++) { if (!pieces.some(p => p.name === String(n))) { return String(n); } }
  }

  function draw(focus) {
    svg.replaceChildren();
    pieces.forEach((piece, i) => {
      const group = part("g", {}, svg);
      const edge = part("polygon", {class: "edge" + (i === chosen ? " chosen" : ""), points: piece.at.map(c => c.join(",")).join(" "), tabindex: 0, role: "button",
        "aria-pressed": i === chosen, "aria-label": "Piece " + piece.name + ", " + piece.at.length + " corners", "data-piece": i}, group);
      const m = middle(piece.at);
      part("text", {x: m[0], y: m[1]}, group).textContent = piece.name;
      if (i === chosen) {
        piece.at.forEach((c, k) => part("circle", {class: "corner", cx: c[0], cy: c[1], r: 12 * scale(), tabindex: 0, role: "button",
          "aria-label": "Corner " + (k + 1) + " of piece " + piece.name, "data-corner": k}, group));
      }
      if (focus === "piece" && i === chosen) { edge.focus(); }
    });
    if (cut) { part("line", {class: "cut", x1: cut[0][0], y1: cut[0][1], x2: cut[1][0], y2: cut[1][1]}, svg); }
    if (typeof focus === "number") { const c = svg.querySelector('[data-corner="' + focus + '"]'); if (c) { c.focus(); } }
    for (const t of svg.querySelectorAll("text")) { t.style.fontSize = 18 * scale() + "px"; }
    name.value = chosen >= 0 ? pieces[chosen].name : "";
    name.disabled = chosen < 0;
    write();
  }
  function choose(i) {
    if (mode === "merge" && chosen >= 0 && i !== chosen) { merge(chosen, i); return; }
    chosen = i;
    say("Piece " + pieces[i].name + " of " + pieces.length + " chosen.");
    draw("piece");
  }

  // ----- changes -----
  function hull(points) {
    const p = points.slice().sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    const turn = (o, a, b) => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
    const half = list => list.reduce((h, c) => { while (h.length > 1 && turn(h[h.length - 2], h[h.length - 1], c) <= 0) { h.pop(); } h.push(c); return h; }, []);
    const low = half(p), high = half(p.slice().reverse());
    return low.slice(0, -1).concat(high.slice(0, -1));
  }
  function merge(a, b) {
    remember();
    mode = "";
    const one = {name: pieces[a].name, at: hull(pieces[a].at.concat(pieces[b].at))};
    pieces = pieces.filter((_, i) => i !== a && i !== b);
    pieces.splice(Math.min(a, b), 0, one);
    chosen = Math.min(a, b);
    say("Merged; " + pieces.length + " pieces now.");
    draw("piece");
  }
  function side(c, p, d) { return (c[0] - p[0]) * d[1] - (c[1] - p[1]) * d[0]; }
  function clipped(at, p, d, sign) {
    const out = [];
    at.forEach((c, i) => {
      const n = at[(i + 1) % at.length], s = sign * side(c, p, d), t = sign * side(n, p, d);
      if (s >= 0) { out.push(c); }
      if ((s > 0 && t < 0) || (s < 0 && t > 0)) { const f = s / (s - t); out.push([c[0] + f * (n[0] - c[0]), c[1] + f * (n[1] - c[1])].map(Math.round)); }
    });
    return out;
  }
  function split(p, d) {
    if (chosen < 0) { say("Choose a piece first."); return; }
    const piece = pieces[chosen], one = clipped(piece.at, p, d, 1), two = clipped(piece.at, p, d, -1);
    if (one.length < 3 || two.length < 3) { say("The line does not part this piece. Draw it across."); return; }
    remember();
    const second = {name: freeName(), at: two};
    pieces.splice(chosen, 1, {name: piece.name, at: one}, second);
    say("Split into " + piece.name + " and " + second.name + "; " + pieces.length + " pieces now.");
    draw("piece");
  }
  function acrossLongSide() {
    if (chosen < 0) { say("Choose a piece first."); return; }
    const at = pieces[chosen].at, m = middle(at);
    let xx = 0, yy = 0, xy = 0;
    for (const c of at) { xx += (c[0] - m[0]) ** 2; yy += (c[1] - m[1]) ** 2; xy += (c[0] - m[0]) * (c[1] - m[1]); }
    const angle = Math.atan2(2 * xy, xx - yy) / 2;
    split(m, [-Math.sin(angle), Math.cos(angle)]);
  }
  function resize(by) {
    if (chosen < 0) { say("Choose a piece first."); return; }
    remember();
    const m = middle(pieces[chosen].at);
    pieces[chosen].at = pieces[chosen].at.map(c => [held(m[0] + by * (c[0] - m[0]), width), held(m[1] + by * (c[1] - m[1]), height)]);
    draw();
  }
  const doing = {
    add() {
      remember();
      const r = Math.min(width, height) / 8;
      pieces.push({name: freeName(), at: Array.from({length: 16}, (_, k) => [Math.round(width / 2 + r * Math.cos(k * Math.PI / 8)), Math.round(height / 2 + r * Math.sin(k * Math.PI / 8))])});
      chosen = pieces.length - 1;
      say("Piece " + pieces[chosen].name + " added in the middle. Drag it to its place.");
      draw("piece");
    },
    split: acrossLongSide,
    line() { if (chosen < 0) { say("Choose a piece first."); } else { mode = "line"; say("Draw a line across piece " + pieces[chosen].name + "."); } },
    merge() { if (chosen < 0) { say("Choose a piece first."); } else { mode = "merge"; say("Now choose the piece to merge with " + pieces[chosen].name + "."); } },
    larger() { resize(1.03); },
    smaller() { resize(1 / 1.03); },
    undo() { if (past.length) { pieces = JSON.parse(past.pop()); chosen = Math.min(chosen, pieces.length - 1); say("Undone."); draw(); } else { say("Nothing to undo."); } },
    delete() {
      if (chosen < 0) { say("Choose a piece first."); return; }
      remember();
      const gone = pieces.splice(chosen, 1)[0];
      chosen = -1;
      say("Piece " + gone.name + " deleted; " + pieces.length + " left. Undo brings it back.");
      draw();
    }};
  form.addEventListener("click", event => {
    const what = event.target.dataset && event.target.dataset.do;
    if (what) { if (what !== "line" && what !== "merge") { mode = ""; } doing[what](); }
  });
  name.addEventListener("change", () => {
    const wanted = name.value.trim().replace(/[^\p{L}\p{N}_.-]+/gu, "-");
    if (chosen < 0 || !wanted || wanted === pieces[chosen].name) { return; }
    if (pieces.some((p, i) => i !== chosen && p.name.toLowerCase() === wanted.toLowerCase())) { say("Another piece is called " + wanted + " already."); name.value = pieces[chosen].name; return; }
    remember();
    pieces[chosen].name = wanted;
    say("Named " + wanted + ".");
    draw();
  });
  text.addEventListener("change", () => { remember(); pieces = read(); chosen = -1; draw(); });

  // ----- pointer -----
  let drag = null;
  svg.addEventListener("pointerdown", event => {
    const at = place(event), target = event.target;
    if (mode === "line") { cut = [at, at]; drag = {kind: "line"}; }
    else if (target.dataset.corner !== undefined) { remember(); drag = {kind: "corner", corner: Number(target.dataset.corner), from: at}; }
    else if (target.dataset.piece !== undefined) {
      const i = Number(target.dataset.piece);
      if (i !== chosen || mode === "merge") { choose(i); }
      drag = {kind: "piece", from: at, moved: false};
    } else { return; }
    svg.setPointerCapture(event.pointerId);
    event.preventDefault();
  });
  svg.addEventListener("pointermove", event => {
    if (!drag) { return; }
    const at = place(event);
    if (drag.kind === "line") { cut[1] = at; }
    else if (drag.kind === "corner") { pieces[chosen].at[drag.corner] = [held(at[0], width), held(at[1], height)]; }
    else {
      const dx = at[0] - drag.from[0], dy = at[1] - drag.from[1];
      if (!drag.moved && Math.hypot(dx, dy) < 4 * scale()) { return; }
      if (!drag.moved) { remember(); drag.moved = true; }
      pieces[chosen].at = pieces[chosen].at.map(c => [c[0] + dx, c[1] + dy]);
      drag.from = at;
    }
    draw();
  });
  for (const end of ["pointerup", "pointercancel"]) {
    svg.addEventListener(end, () => {
      if (drag && drag.kind === "line" && cut) {
        const p = cut[0], d = [cut[1][0] - p[0], cut[1][1] - p[1]];
        cut = null;
        mode = "";
        if (Math.hypot(...d) > 4) { split(p, d); } else { draw(); }
      } else if (drag && drag.kind === "piece" && drag.moved) {
        pieces[chosen].at = pieces[chosen].at.map(c => [held(c[0], width), held(c[1], height)]);
        draw("piece");
      }
      drag = null;
    });
  }

  // ----- keys -----
  const arrows = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]};
  svg.addEventListener("keydown", event => {
    const data = event.target.dataset, step = arrows[event.key];
    if (data.piece !== undefined && (event.key === "Enter" || event.key === " ")) { event.preventDefault(); choose(Number(data.piece)); return; }
    if (event.key === "Escape") { mode = ""; cut = null; say("Left as it is."); draw(); return; }
    if (step && (data.corner !== undefined || Number(data.piece) === chosen)) {
      event.preventDefault();
      remember();
      const by = event.shiftKey ? 10 : 1, move = c => [held(c[0] + by * step[0] * Math.max(1, scale()), width), held(c[1] + by * step[1] * Math.max(1, scale()), height)];
      if (data.corner !== undefined) { const k = Number(data.corner); pieces[chosen].at[k] = move(pieces[chosen].at[k]); draw(k); }
      else { pieces[chosen].at = pieces[chosen].at.map(move); draw("piece"); }
    } else if (event.key === "Delete" && data.corner !== undefined && pieces[chosen].at.length > 3) {
      remember();
      pieces[chosen].at.splice(Number(data.corner), 1);
      draw(Math.max(0, Number(data.corner) - 1));
    } else if (event.key === "Delete" && data.piece !== undefined && Number(data.piece) === chosen) { doing.delete(); }
  });

  // ----- chart -----
  const frame = document.querySelector("form.frame"), corners = frame && frame.querySelector("#corners");
  if (frame) {
    const mark = frame.querySelector("[data-mark]"), told = frame.querySelector(".said");
    let marked = null;
    mark.parentElement.hidden = false;
    mark.addEventListener("click", () => {
      marked = [];
      told.textContent = "Tap the first corner of the patches, then go around. Escape leaves it as it was.";
      shot.scrollIntoView({block: "center"});
    });
    document.addEventListener("keydown", event => { if (event.key === "Escape" && marked) { marked = null; ring(); told.textContent = "Left as it was."; } });
    function ring() {
      svg.querySelectorAll(".chart-ring").forEach(old => old.remove());
      const at = marked || corners.value.trim().split(/\s+/).map(c => c.split(",").map(Number)).filter(c => c.length === 2 && c.every(Number.isFinite));
      if (at.length > 1) { part("polygon", {class: "edge chart-ring", points: at.map(c => c.join(",")).join(" ")}, svg); }
      for (const c of at) { part("circle", {class: "corner chart-ring", cx: c[0], cy: c[1], r: 9 * scale()}, svg); }
    }
    svg.addEventListener("pointerdown", event => {
      if (!marked) { return; }
      event.preventDefault();
      event.stopImmediatePropagation();
      const at = place(event);
      marked.push([held(at[0], width), held(at[1], height)]);
      ring();
      if (marked.length === 4) {
        corners.value = marked.map(c => c.join(",")).join(" ");
        marked = null;
        told.textContent = "Four corners marked. Keep them, or mark them again.";
        corners.focus();
      } else { told.textContent = (4 - marked.length) + (marked.length === 3 ? " corner" : " corners") + " to go."; }
    }, true);
    corners.addEventListener("change", ring);
  }
  window.addEventListener("resize", () => draw());
  draw();
})();

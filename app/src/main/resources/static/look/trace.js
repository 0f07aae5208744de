"use strict";
// Looking closer at curves; a mark opens its definition. The pages work without this.

// A mark in the picture leads to a definition that may be folded.
function openTarget() {
  const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const folded = target && target.closest("details");
  if (folded) {
    folded.open = true;
    target.closest("tr").scrollIntoView({block: "center"});
    target.focus({preventScroll: true});
  }
}
window.addEventListener("hashchange", openTarget);
openTarget();

function loaded(tag, name, address) {
  return new Promise((done, failed) => {
    const part = document.createElement(tag);
    if (tag === "link") { part.rel = "stylesheet"; }
    part[name] = address;
    part.onload = done;
    part.onerror = failed;
    document.head.append(part);
  });
}

const colours = ["--heat", "--hold", "--ink", "--fail", "--edge", "--ink-2"];
const dashes = [[], [10, 4], [2, 4], [12, 4, 2, 4]];

async function draw(box, address) {
  const root = "/webjars/uplot/1.6.30/dist/";
  const [answer] = await Promise.all([
    fetch(address).then(a => a.json()),
    loaded("link", "href", root + "uPlot.min.css"),
    window.uPlot ? null : loaded("script", "src", root + "uPlot.iife.min.js")]);
  const style = getComputedStyle(document.documentElement);
  const ink = style.getPropertyValue("--ink-2").trim(), wire = style.getPropertyValue("--wire").trim();
  const data = uPlot.join(answer.lines.map(l => [l.x, l.y]));
  const units = [...new Set(answer.lines.map(l => l.unit))].slice(0, 2);
  const axis = {stroke: ink, grid: {stroke: wire, width: 1}, ticks: {stroke: wire, width: 1}, font: "14px Sofia Sans, sans-serif"};
  const options = {
    width: box.clientWidth, height: 420,
    scales: {x: {time: false}},
    axes: [{...axis}, ...units.map((u, i) => ({...axis, scale: u, side: i ? 1 : 3, grid: i ? {show: false} : axis.grid, size: 64, values: (_, v) => v.map(n => n + " " + u)}))],
    series: [{label: "min", value: (_, v) => v === null ? "–" : v.toFixed(2)},
      ...answer.lines.map((l, i) => ({label: l.name, scale: l.unit, spanGaps: true, width: 2,
        stroke: style.getPropertyValue(colours[i % colours.length]).trim(), dash: dashes[Math.floor(i / colours.length) % dashes.length],
        value: (_, v) => v === null || v === undefined ? "–" : v.toFixed(1) + " " + l.unit}))]};
  const plot = new uPlot(options, data, box);
  new ResizeObserver(() => { if (box.clientWidth) { plot.setSize({width: box.clientWidth, height: 420}); } }).observe(box);
  return plot;
}

function zoomed(plot, how) {
  const x = plot.data[0], first = x[0], last = x[x.length - 1];
  let {min, max} = plot.scales.x;
  const width = max - min;
  if (how === "in") { min += width / 4; max -= width / 4; }
  if (how === "out") { min -= width / 2; max += width / 2; }
  if (how === "left") { min -= width / 2; max -= width / 2; }
  if (how === "right") { min += width / 2; max += width / 2; }
  if (how === "all" || max - min >= last - first) { min = first; max = last; }
  if (min < first) { max += first - min; min = first; }
  if (max > last) { min -= max - last; max = last; }
  plot.setScale("x", {min: Math.max(min, first), max: Math.min(max, last)});
}

for (const closer of document.querySelectorAll("[data-closer]")) {
  closer.hidden = false;
  let plot = null;
  closer.addEventListener("toggle", () => {
    if (closer.open && !plot) {
      plot = draw(closer.querySelector(".plot"), closer.dataset.closer);
      plot.catch(() => { closer.querySelector(".plot").textContent = "The lines could not be loaded. Close this and open it again."; plot = null; });
    }
  });
  closer.addEventListener("click", event => {
    const how = event.target.dataset && event.target.dataset.zoom;
    if (how && plot) { plot.then(p => zoomed(p, how)); }
  });
}

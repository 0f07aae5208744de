"use strict";
// Corners of a value curve, by pointer or keyboard. The fields hold the values; without this script
// they are typed, and the picture follows when the page comes back.
for (const form of document.querySelectorAll(".curve-form")) {
  const chart = form.querySelector(".curve-edit");
  const number = name => Number(chart.dataset[name]);
  const low = number("low"), high = number("high"), step = number("step");
  const top = number("top"), floor = number("floor");
  const units = new Map(form.dataset.units.split(";").map(entry => {
    const at = entry.lastIndexOf("=");
    return [entry.slice(0, at), entry.slice(at + 1).split(",").map(Number)];
  }));
  const field = id => id ? form.querySelector("#" + CSS.escape(id)) : null;

  // A quantity as it is typed, in the unit of the axis; NaN when it is not one.
  function read(text) {
    const parts = /^\s*([-−+]?[\d.,]+)\s*(.*?)\s*$/.exec(text);
    if (!parts) { return {value: NaN, unit: chart.dataset.unit}; }
    const unit = units.has(parts[2]) ? parts[2] : parts[2] === "" ? chart.dataset.unit : null;
    if (unit === null) { return {value: NaN, unit: chart.dataset.unit}; }
    const digits = Number(parts[1].replace("−", "-").replace(",", "."));
    return {value: convert(digits, unit, chart.dataset.unit), unit};
  }

  function convert(value, from, to) {
    const [factor, offset] = units.get(from), [otherFactor, otherOffset] = units.get(to);
    return (value * factor + offset - otherOffset) / otherFactor;
  }

  function write(value, unit, grain) {
    const shown = convert(value, chart.dataset.unit, unit);
    const decimals = Math.max(0, Math.ceil(-Math.log10(grain * Math.abs(units.get(chart.dataset.unit)[0] / units.get(unit)[0])) - 1e-9));
    return Number(shown.toFixed(Math.min(6, decimals))) + (unit ? " " + unit : "");
  }

  const y = points => floor - (floor - top) * Math.max(0, Math.min(10, points)) / 10;
  const handles = [...chart.querySelectorAll(".handle")];

  function corner(handle) {
    const at = field(handle.dataset.at), points = field(handle.dataset.points);
    return {
      value: read(at.value).value,
      points: points ? Number(points.value.replace(",", ".")) : Number(handle.dataset.fixed)
    };
  }

  function draw() {
    const corners = [];
    for (const handle of handles) {
      const {value, points} = corner(handle);
      if (Number.isFinite(value) && Number.isFinite(points)) {
        const percent = 100 * (value - low) / (high - low);
        handle.setAttribute("cx", percent + "%");
        handle.setAttribute("cy", y(points));
        handle.setAttribute("aria-valuenow", Number(value.toPrecision(6)));
        handle.setAttribute("aria-valuetext", field(handle.dataset.at).value + ", " + points + " points");
        corners.push([percent, y(points), points]);
      }
    }
    corners.sort((a, b) => a[0] - b[0]);
    if (!corners.length) { return; }
    const line = [];
    if (form.dataset.shape === "STEPS") {
      let height = y(Number(field("below").value.replace(",", ".")) || 0);
      line.push([0, height]);
      for (const [x, high] of corners) { line.push([x, height], [x, high]); height = high; }
      line.push([100, height]);
    } else {
      line.push([0, corners[0][1]], ...corners, [100, corners[corners.length - 1][1]]);
    }
    chart.querySelector(".curve").setAttribute("d", "M" + line.map(p => p[0].toFixed(2) + " " + p[1].toFixed(1)).join(" L"));
  }

  function move(handle, value, points, grain) {
    const at = field(handle.dataset.at), worth = field(handle.dataset.points);
    const unit = read(at.value).unit;
    at.value = write(Math.max(low, Math.min(high, value)), unit, grain);
    if (worth) { worth.value = Number(Math.max(0, Math.min(10, points)).toFixed(1)); }
    draw();
  }

  for (const handle of handles) {
    handle.addEventListener("pointerdown", event => {
      handle.setPointerCapture(event.pointerId);
      event.preventDefault();
      handle.focus();
    });
    handle.addEventListener("pointermove", event => {
      if (!handle.hasPointerCapture(event.pointerId)) { return; }
      const box = chart.getBoundingClientRect();
      const grain = step / 20;
      const value = low + (high - low) * (event.clientX - box.left) / box.width;
      const points = 10 * (floor - (event.clientY - box.top)) / (floor - top);
      move(handle, Math.round(value / grain) * grain, Math.round(points * 2) / 2, grain);
    });
    handle.addEventListener("keydown", event => {
      const grain = step / (event.shiftKey ? 4 : 20);
      const by = {ArrowLeft: [-grain, 0], ArrowRight: [grain, 0], ArrowUp: [0, .5], ArrowDown: [0, -.5]}[event.key];
      if (by) {
        event.preventDefault();
        const {value, points} = corner(handle);
        move(handle, value + by[0], points + by[1], grain);
      }
    });
  }
  form.addEventListener("input", draw);
}

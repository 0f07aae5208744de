"use strict";
// Puts the name of a figure where the person last wrote.
const text = document.getElementById("text");
const find = document.getElementById("find-figure");
const insert = document.getElementById("insert-figure");
if (text && find && insert) {
  insert.hidden = false;
  insert.addEventListener("click", () => {
    if (find.value) {
      text.setRangeText("{" + find.value + "}", text.selectionStart, text.selectionEnd, "end");
      text.focus();
      text.dispatchEvent(new Event("input", {bubbles: true}));
      find.value = "";
    }
  });
}

"use strict";
(function () {
  // Ticks are kept on this device alone, and lost without harm where it keeps nothing.
  var store = null;
  try {
    store = window.localStorage;
    store.getItem("pierbook");
  } catch (e) {
    store = null;
  }
  function keep(key, on) {
    try {
      if (store) { on ? store.setItem(key, "1") : store.removeItem(key); }
    } catch (e) { store = null; }
  }
  function tickBoxes(sheet) {
    var job = "pierbook/" + document.body.dataset.keep + "/" + sheet.id + "/";
    sheet.querySelectorAll("span.tick").forEach(function (box, i) {
      var label = document.createElement("label");
      var input = document.createElement("input");
      var key = job + i;
      input.type = "checkbox";
      input.setAttribute("aria-label", (box.closest("li, tr, p").textContent || "done").trim().slice(0, 120));
      input.checked = store ? store.getItem(key) === "1" : false;
      label.className = "tick";
      label.classList.toggle("ticked", input.checked);
      input.addEventListener("change", function () {
        label.classList.toggle("ticked", input.checked);
        keep(key, input.checked);
      });
      label.appendChild(input);
      box.replaceWith(label);
    });
  }

  // Lengths are whole nanometres, as in the program that made this page.
  var inch = 25400000, millimetre = 1000000;
  function number(input) {
    var text = input.value.trim().replace(",", ".");
    return text === "" ? 0 : Number(text);
  }
  function add(parent, name, text) {
    var element = document.createElement(name);
    if (text) { element.textContent = text; }
    parent.appendChild(element);
    return element;
  }
  function field(parent, name, unit) {
    var input = add(parent, "input");
    input.inputMode = "decimal";
    input.autocomplete = "off";
    input.setAttribute("aria-label", name + ", " + unit);
    parent.appendChild(document.createTextNode(" " + unit + " "));
    return input;
  }
  // Each reading is made of fields that suit the rod; its function returns nanometres, or null while it is not filled.
  function reading(form, name, reads) {
    add(form, "label", name);
    var row = add(form, "div");
    if (reads === "feet_inches") {
      var feet = field(row, name, "ft"), inches = field(row, name, "in"), part = add(row, "select");
      part.setAttribute("aria-label", name + ", fraction of an inch");
      for (var i = 0; i !== 32; i++) {
        var bottom = 32, top = i;
        while (top !== 0 ? top % 2 === 0 : false) { top /= 2; bottom /= 2; }
        add(part, "option", i === 0 ? "0" : top + "/" + bottom).value = String(i);
      }
      return function () {
        return feet.value === "" ? (inches.value === "" ? null : read()) : read();
        function read() { return (number(feet) * 12 + number(inches) + Number(part.value) / 32) * inch; }
      };
    }
    var tenths = reads === "feet_tenths";
    var single = field(row, name, tenths ? "ft" : "mm");
    return function () {
      return single.value === "" ? null : number(single) * (tenths ? 12 * inch : millimetre);
    };
  }
  function feetInches(length, fraction) {
    var sign = Math.sign(length) === -1 ? "−" : "";
    var steps = Math.round(Math.abs(length) / fraction), each = Math.round(inch / fraction);
    var whole = Math.floor(steps / each), top = steps % each, bottom = each;
    while (top !== 0 ? top % 2 === 0 : false) { top /= 2; bottom /= 2; }
    return sign + whole + (top === 0 ? "" : " " + top + "/" + bottom) + " in";
  }
  function sum(box) {
    var data = box.dataset, points = JSON.parse(data.points), form = add(box, "form");
    add(form, "label", "At");
    var at = add(form, "select");
    at.setAttribute("aria-label", "At");
    points.forEach(function (point, i) { add(at, "option", point[0]).value = String(i); });
    var plus = reading(form, data.plus, data.reads), minus = reading(form, data.minus, data.reads);
    var output = add(form, "output");
    function work() {
      var up = plus(), down = minus();
      output.textContent = "";
      if (up === null ? true : down === null) { return; }
      var length = points[Number(at.value)][1] + up - down;
      if (Number.isNaN(length)) { output.textContent = "a reading is not a number"; return; }
      var text = data.reads === "millimetres" ? Math.round(length / millimetre) + " mm" : feetInches(length, Number(data.fraction));
      output.textContent = data.result + " = " + text;
      if (Math.max(length, Number(data.least)) !== length) {
        output.textContent += ": STOP, shorter than the least";
      } else if (Number(data.most) !== 0 ? Math.min(length, Number(data.most)) !== length : false) {
        output.textContent += ": STOP, longer than the most";
      }
    }
    form.addEventListener("input", work);
    form.addEventListener("submit", function (e) { e.preventDefault(); });
  }
  // What was chosen to print stays chosen on this device; a set that this issue has no more does not.
  function toPrint(choice) {
    var key = "pierbook/to-print", last = store ? store.getItem(key) : null;
    Array.from(choice.options).forEach(function (option) {
      if (option.value === last) { choice.value = last; }
    });
    choice.addEventListener("change", function () {
      try {
        if (store) { store.setItem(key, choice.value); }
      } catch (e) { store = null; }
    });
  }
  document.querySelectorAll("#to-print").forEach(toPrint);
  document.querySelectorAll(".sheet").forEach(tickBoxes);
  document.querySelectorAll(".sum").forEach(sum);

  // The list of sheets closes once one is chosen.
  document.querySelectorAll(".jump a").forEach(function (link) {
    link.addEventListener("click", function () { link.closest("details").open = false; });
  });
})();

// The friend's form: it works from a file on a phone, without a network, and sends nothing. What it saves is read by
// runboard/review/answers.py, where the form of it is written down.
"use strict";
const form = document.querySelector("form");
const operations = [...document.querySelectorAll("[data-operation]")];
const button = document.querySelector("[data-file]");
const said = document.querySelector("[data-said]");
const text = document.querySelector("textarea.text");
let unsaved = false;

function minutes(typed) {
  const number = typed.trim() === "" ? null : Number(typed.trim().replace(",", "."));
  return number === null || (number >= 0 && number <= 10000) ? number : NaN;
}

function answer(section) {
  const key = section.dataset.operation;
  const field = (name) => form.elements[`${name}-${key}`];
  const saves = minutes(field("saves").value);
  const wrong = Number.isNaN(saves);
  field("saves").toggleAttribute("aria-invalid", wrong);
  section.querySelector("fieldset .wrong").hidden = !wrong;
  return { operation: key, do: field("do").value, why: field("why").value.trim(), saves_minutes: saves };
}

function sheet() {
  const { run, opened } = form.dataset;
  const answers = operations.map(answer).filter((one) => one.do || one.why || one.saves_minutes !== null);
  return { runboard_answers: 1, run, opened, from: form.elements.from.value.trim(), answers };
}

function lines({ run, opened, from, answers }) {
  const of = new Map(answers.map((one) => [one.operation, one]));
  // Whoever answers one operation sends that one; the others would be six empty ones in a message.
  const asked = operations.filter(({ dataset }) => of.has(dataset.operation));
  const some = (asked.length > 0 ? asked : operations).map(({ dataset: { operation, name } }) => {
    const one = of.get(operation) ?? { do: "", why: "", saves_minutes: null };
    const why = one.why.replace(/\s+/g, " ");
    return `[${operation}] ${name}\ndo: ${one.do}\nwhy: ${why}\nsaves: ${one.saves_minutes ?? ""}\n`;
  });
  return `runboard answers 1\nrun: ${run} ${opened}\nfrom: ${from}\n${some.join("")}`;
}

function save() {
  const found = sheet();
  const wrong = form.querySelector("[aria-invalid]");
  if (wrong) {
    wrong.closest("details").open = true;
    wrong.focus();
    return;
  }
  if (found.answers.length === 0) {
    said.textContent = said.dataset.nothing;
    return;
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([JSON.stringify(found, null, 1)], { type: "application/json" }));
  link.download = button.dataset.file;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  unsaved = false;
  said.textContent = said.dataset.said;
}

form.addEventListener("submit", (event) => event.preventDefault());
form.addEventListener("input", (event) => {
  if (event.target === text) return;
  unsaved = true;
  said.textContent = "";
  text.value = lines(sheet());
});
button.addEventListener("click", save);
button.hidden = false;
document.querySelector("[data-without-script]").hidden = true;
text.readOnly = true;
text.addEventListener("focus", () => text.select());
document.querySelector(".end details").open = false;
addEventListener("beforeprint", () => {
  for (const { firstElementChild: details } of operations) details.open = true;
});
addEventListener("beforeunload", (event) => {
  if (unsaved) event.preventDefault();
});

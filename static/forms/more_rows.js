// One more row of a form, without a trip to the server: the empty row is copied with the next number.

function numbered(row, from, to) {
  for (const element of [row, ...row.querySelectorAll("*")]) {
    for (const name of ["id", "name", "for", "list", "aria-describedby"]) {
      const value = element.getAttribute(name);
      if (value) element.setAttribute(name, value.replaceAll(`.${from}.`, `.${to}.`));
    }
  }
  const number = row.querySelector(".row-number");
  if (number) number.textContent = Number(to) + 1;
}

function wire(rows) {
  const details = rows.querySelector(".new-row");
  const empty = details?.querySelector("[data-fresh]");
  if (!empty) return;
  const pattern = empty.cloneNode(true);
  let last = Number(empty.querySelector("[name]").name.split(".")[1]);
  const first = last;
  const more = document.createElement("button");
  more.type = "button";
  more.textContent = "And another";
  more.className = "full";
  more.addEventListener("click", () => {
    const row = pattern.cloneNode(true);
    last += 1;
    numbered(row, first, last);
    more.before(row);
    row.querySelector("input:not([type=hidden]), select, textarea")?.focus();
  });
  details.append(more);
}

for (const rows of document.querySelectorAll(".form-rows")) wire(rows);

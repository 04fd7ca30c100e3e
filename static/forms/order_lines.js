// A press on an order line changes its card where it stands. Nothing else moves, so a second press in the same place cannot
// meet another customer; lines change their place when the page is loaded again.

const list = document.querySelector("[data-lines]");
const SETTLES = 600; // ms in which a press is the second half of a double one

function swapped(card, page) {
  const next = page.getElementById(card.id);
  if (!next) return document.querySelector("main").replaceChildren(...page.querySelector("main").childNodes);
  const was = document.activeElement?.value;
  const top = card.getBoundingClientRect().top;
  next.dataset.since = performance.now();
  card.replaceWith(next);
  scrollBy(0, next.getBoundingClientRect().top - top);
  [...next.querySelectorAll("button")].find((one) => one.value === was)?.focus({ preventScroll: true });
}

async function changed(card, address, body) {
  card.dataset.busy = "";
  try {
    const answer = await fetch(address, body ? { method: "POST", body } : {});
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (!answer.ok && answer.status !== 422) throw new Error(answer.status);
    swapped(card, page);
  } catch {
    delete card.dataset.busy;
    const told = card.querySelector(".error") ?? card.appendChild(Object.assign(document.createElement("p"), { className: "error", role: "alert" }));
    told.textContent = list.dataset.failed;
  }
}

const waits = (card) => "busy" in card.dataset || performance.now() - Number(card.dataset.since ?? -SETTLES) < SETTLES;

list?.addEventListener("submit", (event) => {
  const card = event.target.closest("li[id]");
  event.preventDefault();
  if (waits(card)) return;
  const body = new URLSearchParams(new FormData(event.target));
  body.append(event.submitter.name, event.submitter.value);
  changed(card, event.target.action, body);
});

list?.addEventListener("click", (event) => {
  if (!event.target.closest("[data-no]")) return;
  event.preventDefault();
  changed(event.target.closest("li[id]"), event.target.href);
});

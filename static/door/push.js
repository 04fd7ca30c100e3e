// 'Send alerts to this phone when it is locked', on the Shop page. Nothing is asked of the browser before the press.

const section = document.getElementById("push");
let shopKey = "";

function show(state, sentence = "") {
  for (const line of section.querySelectorAll("[data-push]")) {
    line.hidden = line.dataset.push === "failed" ? !sentence : line.dataset.push !== state;
    if (line.dataset.push === "failed") line.textContent = sentence;
  }
  section.hidden = false;
}

const isPossible = () => window.isSecureContext && "serviceWorker" in navigator && "PushManager" in window && "Notification" in window;

/** Whether it is on: the browser holds a subscription to this shop's key, and the shop sends to it. */
async function look() {
  if (!isPossible()) return "impossible";
  const shop = await asked("GET", "/push/key");
  shopKey = shop.key;
  if (Notification.permission === "denied") return "forbidden";
  const held = await (await navigator.serviceWorker.getRegistration("/"))?.pushManager.getSubscription();
  return held && isOfThisShop(held) && held.endpoint === shop.endpoint ? "on" : "off";
}

async function turnOn() {
  // The very first thing after the press: Safari asks only then.
  if ((await Notification.requestPermission()) !== "granted") return "forbidden";
  await navigator.serviceWorker.register("/worker.js", { scope: "/" });
  const { pushManager } = await navigator.serviceWorker.ready;
  const held = await pushManager.getSubscription();
  // One of a key that the shop no longer has (it was put back without it) is of no use.
  if (held && !isOfThisShop(held)) await held.unsubscribe();
  const made = await pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: bytes(shopKey) });
  said((await asked("POST", "/push/subscription", made.toJSON())).sentence);
  return "on";
}

async function turnOff() {
  said((await asked("DELETE", "/push/subscription")).sentence);
  const held = await (await navigator.serviceWorker.getRegistration("/"))?.pushManager.getSubscription();
  await held?.unsubscribe();
  return "off";
}

async function asked(method, address, record) {
  const body = record && { body: JSON.stringify(record), headers: { "Content-Type": "application/json" } };
  const answer = await fetch(address, { method, ...body });
  const found = await answer.json();
  if (!answer.ok) throw new Error(found.sentence);
  return found;
}

function isOfThisShop({ options }) {
  const key = options?.applicationServerKey;
  return !key || String(new Uint8Array(key)) === String(bytes(shopKey));
}

const bytes = (text) => Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (sign) => sign.charCodeAt(0));

const said = (sentence) => { document.getElementById("said").textContent = sentence; };

/** Does it, and shows how it stands then; what failed is said beside the button, which stays. */
async function turn(change, before) {
  const buttons = section.querySelectorAll("button");
  for (const button of buttons) button.disabled = true;
  try {
    show(await change());
  } catch (error) {
    show(before, error.message);
  } finally {
    for (const button of buttons) button.disabled = false;
  }
}

section.querySelector("button[data-push=off]").addEventListener("click", () => turn(turnOn, "off"));
section.querySelector("button[data-push=on]").addEventListener("click", () => turn(turnOff, "on"));
void turn(look, "off");

// The way to the installed app: the service worker, and storage that the browser does not clear by itself.

const LOOK_MS = 3_600_000;

/** Registers the worker where the browser allows it (https, or this computer); elsewhere the page works as long as it is open. */
export async function keepForOffline() {
  if (!window.isSecureContext || !navigator.serviceWorker) return;
  try {
    const registration = await navigator.serviceWorker.register("/worker.js", { scope: "/" });
    // A page that stays open for days finds a new version too; it is shown when the page is next opened.
    setInterval(() => registration.update().catch(() => {}), LOOK_MS);
    await navigator.storage?.persist?.();
  } catch {
    // A browser that refuses (private mode, storage off) still has the open page.
  }
}

/** A new version that waited when this page was opened takes over, if no other page is open: then the page opens again,
 *  with its files. Nothing is held up meanwhile: a version that does not take over is tried when the page is next opened. */
export function changeOver(waiting) {
  waiting.addEventListener("statechange", () => { if (waiting.state === "activated") openAgain(); });
  waiting.postMessage("take over");
}

// What is typed into an open sheet is not taken away from under the hand.
function openAgain() {
  const sheet = document.querySelector("dialog[open]");
  if (sheet) sheet.addEventListener("close", () => location.reload(), { once: true });
  else location.reload();
}

// Keeps the screen on while a machine that must be watched runs under this person's eyes: a locked phone calls nobody.

let lock = null;
let asking = false;

/** Asks for the screen to stay on, or lets it go; where the browser has no wake lock (plain http), nothing happens. */
export async function stayAwake(wanted) {
  if (!wanted) {
    void lock?.release();
    lock = null;
  } else if (!lock && !asking && document.visibilityState === "visible" && navigator.wakeLock) {
    asking = true;
    lock = await navigator.wakeLock.request("screen").catch(() => null);
    asking = false;
    lock?.addEventListener("release", () => { lock = null; });
  }
}

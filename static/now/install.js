// The way to the installed app: the service worker, and storage that the browser does not clear by itself.

/** Registers the worker where the browser allows it (https, or this computer); elsewhere the page works as long as it is open. */
export async function keepForOffline() {
  if (!window.isSecureContext || !navigator.serviceWorker) return;
  try {
    await navigator.serviceWorker.register("/worker.js", { scope: "/" });
    await navigator.storage?.persist?.();
  } catch {
    // A browser that refuses (private mode, storage off) still has the open page.
  }
}

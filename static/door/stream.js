// The event stream: only a hint to poll now. Read by hand, since its heartbeat is a comment that EventSource hides.

const SILENT_MS = 25_000;

/** Calls `hint` at every event and at each opening; a stream that fell silent is opened again. */
export async function listen(hint) {
  for (let waitMs = 1000; ; waitMs = Math.min(waitMs * 2, 30_000)) {
    try {
      await readOnce(() => { waitMs = 1000; hint(); });
    } catch {
      // polling goes on without it
    }
    await new Promise((done) => setTimeout(done, waitMs));
  }
}

async function readOnce(hint) {
  const stop = new AbortController();
  let watchdog = setTimeout(() => stop.abort(), SILENT_MS);
  try {
    const answer = await fetch("/stream", { headers: { Accept: "text/event-stream" }, signal: stop.signal });
    if (!answer.ok || !answer.body) throw new Error("no stream");
    hint();
    const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      clearTimeout(watchdog);
      watchdog = setTimeout(() => stop.abort(), SILENT_MS);
      if (part.value.includes("event:") || part.value.includes("data:")) hint();
    }
  } finally {
    clearTimeout(watchdog);
  }
}

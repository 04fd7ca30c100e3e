// How a phone is heard and seen: tones, a shake, a screen that stays on. A browser lets a page sound only after a press on it.

let audio = null;

/** Whether a tone would be heard. */
export const maySound = () => audio?.state === "running";

/** Called at a press: from then on the page may sound. */
export async function resumeSound() {
  audio ??= "AudioContext" in globalThis ? new AudioContext() : null;
  if (audio && !maySound()) await audio.resume();
}

/** Schedules [frequency, after, seconds] notes; gives a function that stops them. */
export function tone(notes, volume, delay = 0) {
  if (!maySound()) return () => {};
  const playing = notes.map(([frequency, after, seconds]) => {
    const start = audio.currentTime + delay + after;
    const voice = audio.createOscillator();
    const gain = audio.createGain();
    voice.frequency.value = frequency;
    gain.gain.setValueAtTime(0, start);
    gain.gain.linearRampToValueAtTime(volume, start + 0.02);
    gain.gain.setValueAtTime(volume, start + seconds - 0.03);
    gain.gain.linearRampToValueAtTime(0, start + seconds);
    voice.connect(gain).connect(audio.destination);
    voice.start(start);
    voice.stop(start + seconds);
    return voice;
  });
  return () => playing.forEach((voice) => { try { voice.stop(); } catch { /* it has ended */ } });
}

/** Shakes the phone, where a hand has been on the page. */
export const shake = (pattern) => { if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(pattern); };

export const LOUD = [[880, 0, 0.22], [660, 0.28, 0.22], [880, 0.56, 0.34]];

let lock = null;
let asking = false;

/** Asks for the screen to stay on, or lets it go: a locked phone calls nobody. Where the browser has no wake lock (plain http),
 *  nothing happens, and the phone's own settings must say so. */
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

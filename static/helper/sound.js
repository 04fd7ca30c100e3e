// A tone and a shake when a machine wants to be looked at. A browser lets a page sound only after a press on it.

const EVERY_MS = 5000;
const NOTES = [[880, 0, 0.22], [660, 0.28, 0.22], [880, 0.56, 0.34]];
let audio = null;
let last = 0;

/** Called at a press: from then on the page may sound. */
export function mayRing() {
  audio ??= "AudioContext" in globalThis ? new AudioContext() : null;
  if (audio?.state === "suspended") void audio.resume();
}

/** Called every second while somebody is wanted: rings now and then, the louder the later. */
export function ring(louder) {
  if (Date.now() - last < (louder ? EVERY_MS / 2 : EVERY_MS)) return;
  last = Date.now();
  if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(louder ? [600, 150, 600] : [300, 120, 300]);
  if (audio?.state !== "running") return;
  for (const [frequency, after, seconds] of NOTES) {
    const start = audio.currentTime + after;
    const voice = audio.createOscillator();
    const gain = audio.createGain();
    voice.frequency.value = frequency;
    gain.gain.setValueAtTime(louder ? 0.9 : 0.4, start);
    gain.gain.linearRampToValueAtTime(0, start + seconds);
    voice.connect(gain).connect(audio.destination);
    voice.start(start);
    voice.stop(start + seconds);
  }
}

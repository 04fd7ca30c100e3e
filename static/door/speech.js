// The browser's own voice: offline only, and in the language of the words. Nothing is asked of a server far away.

const synthesis = globalThis.speechSynthesis;
synthesis?.getVoices(); // some browsers gather them at the first question only

/** The voice for a language that this phone has itself; undefined where it has none. The phone's own accent comes first. */
export function voiceFor(language) {
  const own = (synthesis?.getVoices() ?? []).filter((voice) => voice.localService && tagOf(voice.lang) === tagOf(language));
  return own.find((voice) => voice.lang.replace("_", "-") === navigator.language) ?? own.find((voice) => voice.default) ?? own[0];
}

const tagOf = (language) => language.split(/[-_]/)[0].toLowerCase();

/** Says a text once, after what is being said; `volume` is from 0 to 1. False where this phone has no voice for it. */
export function speak(text, volume = 1, language = document.documentElement.lang || "en") {
  const voice = voiceFor(language);
  if (!voice) return false;
  const said = new SpeechSynthesisUtterance(text);
  Object.assign(said, { voice, lang: voice.lang, volume });
  synthesis.speak(said);
  return true;
}

/** Says nothing more of what still waits to be said. */
export const hush = () => synthesis?.cancel();

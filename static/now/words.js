// The sentences: one Fluent catalogue, the same file that the server reads.

import { FluentBundle, FluentResource } from "../vendor/fluent-bundle-0.19.1.js";
import { moment } from "./clock.js";

const bundle = new FluentBundle("en", { useIsolating: false });
const ISO = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

/** Loads the catalogue once; without it the page shows codes, which is better than nothing. */
export async function loadWords(url = "/static/words/en.ftl") {
  const answer = await fetch(url);
  if (answer.ok) bundle.addResource(new FluentResource(await answer.text()));
}

export const slug = (code) => String(code).replaceAll(" ", "-");
export const knows = (id) => bundle.hasMessage(id);

/** 'a, b and c' */
export const list = (words) => (words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`);

function readable(value) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return list(value.map(readable));
  if (typeof value === "string") return ISO.test(value) ? moment(value) : value;
  if (typeof value === "number") return value;
  return typeof value === "object" ? list(Object.keys(value)) : String(value);
}

/** The sentence for an id, filled with facts; ISO moments become the shop's local time. */
export function say(id, facts = {}) {
  const message = bundle.getMessage(id);
  if (!message?.value) return id;
  const ready = Object.fromEntries(Object.entries(facts ?? {}).map(([name, value]) => [name, readable(value)]));
  return bundle.formatPattern(message.value, ready, []);
}

/** The sentence for a code of a family, '' where nobody wrote one. */
export function sayCode(family, code, facts) {
  const id = `${family}-${slug(code ?? "")}`;
  return code && knows(id) ? say(id, facts) : "";
}

/** Why a press was refused: the catalogue's sentence, else the server's, else the code itself. */
export const sayRefused = (one) =>
  sayCode("refused", one.code, one.facts) || one.sentence || say("refused-other", { code: one.code ?? "" });

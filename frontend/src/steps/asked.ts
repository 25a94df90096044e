/** A refusal that asks: it names the setting, the choices, and what each means. */

import type { Refusal } from "../server/types.ts";

export interface Asked {
  readonly setting: string;
  readonly choices: readonly { readonly value: unknown; readonly said: string }[];
  /** The question without the choices, which stand below it. */
  readonly question: string;
  /** How an answer of her own is written; empty where only the choices are answers. */
  readonly typed: string;
}

export type Ranges = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** What the refusal asks for; null when it only refuses. `ranges` are the ranges of its choices in the
 * reader's unit, by setting: they stand instead of those that the refusal states. */
export function askedIn(refusal: Refusal | null | undefined, ranges: Ranges = {}): Asked | null {
  const { setting, choices, said, typed } = refusal?.facts ?? {};
  if (typeof setting !== "string" || !Array.isArray(choices) || !choices.length) return null;
  const words: readonly unknown[] = Array.isArray(said) ? said : [];
  const spoken = (value: unknown, index: number): string => {
    const whole = String(words[index] ?? value);
    const range = ranges[setting]?.[String(value)];
    return range ? `${whole.split(":")[0]}: ${range}` : whole;
  };
  const message = refusal?.message ?? "";
  const listed = words.length ? message.indexOf(`: ${String(words[0])}`) : -1;
  const question = listed < 0 ? message : `${message.slice(0, listed)}.`;
  return { setting, question, typed: typeof typed === "string" ? typed : "", choices: choices.map((value: unknown, index) => ({ value, said: spoken(value, index) })) };
}

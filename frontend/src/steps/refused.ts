/** A field that was refused, said as the form calls it. */

import { calledOf, type Form } from "../server/form.ts";
import type { Refusal } from "../server/types.ts";

/** The refusal of a step's field in the words of its form; any other refusal as it is. */
export function inWordsOf(form: Form, refusal: Refusal | null): Refusal | null {
  const { field, reason } = refusal?.facts ?? {};
  if (refusal?.code !== "parameter-refused" || typeof field !== "string" || typeof reason !== "string") return refusal;
  const name = field.split(/[^a-z_]+/).filter(Boolean).at(-1) ?? "";
  const parts = [form, ...Object.values(form.$defs ?? {})];
  const found = parts.map((part) => part.properties?.[name]).find((part) => part !== undefined);
  const called = calledOf(name, found ?? {});
  return { ...refusal, message: `${called.charAt(0).toUpperCase()}${called.slice(1)}: ${reason}`, next_step: "Change it here." };
}

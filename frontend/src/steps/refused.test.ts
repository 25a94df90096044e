import assert from "node:assert/strict";
import { test } from "node:test";
import type { Form } from "../server/form.ts";
import type { Refusal } from "../server/types.ts";
import { inWordsOf } from "./refused.ts";

const form: Form = { properties: { angle: { called: "opens, degrees" } }, $defs: { Neck: { properties: { first_depth: {} } } } };
const refused = (code: string, facts: object): Refusal =>
  ({ code, message: "godet-1, angle: too large.", next_step: "", facts, offers: [], cures: [], contradiction: null }) as Refusal;

test("a refused field is called as the form calls it, one inside a list too", () => {
  assert.equal(inWordsOf(form, refused("parameter-refused", { field: "angle", reason: "it must be 180 or less." }))?.message, "Opens, degrees: it must be 180 or less.");
  assert.equal(inWordsOf(form, refused("parameter-refused", { field: "necks.0.first_depth", reason: "no." }))?.message, "First depth: no.");
});

test("any other refusal stays as it is", () => {
  const other = refused("edge-lost", { field: "angle", reason: "x" });
  assert.equal(inWordsOf(form, other), other);
  assert.equal(inWordsOf(form, null), null);
});

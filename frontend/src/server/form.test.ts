import assert from "node:assert/strict";
import { test } from "node:test";
import { changesIn, emptyValues, isFilled, kindOf, partsOf, plainForm, withInstead, type Form, type Values } from "./form.ts";

const root: Form = {
  type: "object",
  $defs: { Part: { type: "object", properties: { edge: { type: "string", kind: "edge" } }, required: ["edge"] } },
  properties: {
    edges: { type: "array", minItems: 1, items: { $ref: "#/$defs/Part" } },
    depth: { type: "string", kind: "amount", default: "5 cm" },
    width: { anyOf: [{ type: "string", kind: "amount" }, { type: "null" }], default: null },
    darts: { enum: ["auto", 0, 1], default: "auto" },
  },
};

test("references and 'or nothing' are looked through", () => {
  assert.equal(plainForm({ $ref: "#/$defs/Part" }, root).form.type, "object");
  assert.deepEqual(plainForm(root.properties?.width ?? {}, root), { form: { type: "string", kind: "amount" }, optional: true });
  assert.equal(kindOf(root.properties?.darts ?? {}), "choice");
});

test("an empty form has its defaults and one empty row, and is not filled", () => {
  const empty = emptyValues(root, root);
  assert.deepEqual(empty, { edges: [{ edge: "" }], depth: "5 cm", width: null, darts: "auto" });
  assert.equal(isFilled(root, root, empty), false);
  assert.equal(isFilled(root, root, { ...empty, edges: [{ edge: "skirt.front/hem" }] }), true);
});

test("only what differs is sent", () => {
  assert.deepEqual(changesIn({ a: 1, b: [1] }, { a: 1, b: [2] }), { b: [2] });
});

test("a long form has an open part and folded ones, and knows which of those were touched", () => {
  const form: Form = { properties: { front_darts: { group: "darts" }, length: {}, bust_ease: { group: "ease" }, waist_ease: { group: "ease" } } };
  const usual = { length: "waist", bust_ease: null, waist_ease: null, front_darts: "auto" };
  const shown = (typed: Values): unknown =>
    partsOf(form, { ...usual, waist_ease: "2 cm", front_darts: 1 }, usual, typed).map((part) => [part.name, part.fields.length, part.touched]);
  assert.deepEqual(shown({}), [["", 1, false], ["ease", 2, true], ["darts", 1, false]], "what the draft settled is not touched");
  assert.deepEqual(shown({ front_darts: 1 }), [["", 1, false], ["ease", 2, true], ["darts", 1, true]]);
});

test("what is said in one field empties the field that it stands instead of, and nothing said empties nothing", () => {
  const form: Form = { properties: { start: { instead: "dart" }, dart: { instead: "start" }, ease: {} } };
  const both = { start: [{ edge: "a" }], dart: "b", ease: "1" };
  assert.deepEqual(withInstead(both, form, "dart"), { ...both, start: [] });
  assert.deepEqual(withInstead(both, form, "start"), { ...both, dart: null });
  assert.deepEqual(withInstead(both, form, "ease"), both);
  assert.deepEqual(withInstead({ ...both, dart: null }, form, "dart"), { ...both, dart: null });
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { changesIn, emptyValues, isFilled, kindOf, plainForm, type Form } from "./form.ts";

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

import assert from "node:assert/strict";
import { test } from "node:test";
import type { StepOffer } from "../server/types.ts";
import { matching, withPicked } from "./offers.ts";

function offer(operation: string, title: string): StepOffer {
  return { operation, title, summary: "", kind: "style", sided: true, form: {}, defaults: {}, range_texts: {}, superseded_by: "" };
}

const offers = [offer("change_length", "Change length"), offer("cut_style_line", "Cut style line"), offer("vent", "Vent")];

test("a word as it was typed comes before one that only begins so", () => {
  const flares = [offer("circle_skirt", "Draft circle skirt"), offer("dart_to_flare", "Dart to flare")];
  assert.deepEqual(matching(flares, "flare").map((one) => one.operation), ["dart_to_flare", "circle_skirt"]);
});

test("an older step that another serves in place of is not offered", () => {
  const facings = [offer("facing", "Facing"), { ...offer("waist_facing", "Waist facing"), superseded_by: "facing" }];
  assert.deepEqual(matching(facings, "facing").map((one) => one.operation), ["facing"]);
  assert.deepEqual(matching(facings, "").map((one) => one.operation), ["facing"]);
});

test("a step is found by its title or by another word of the trade", () => {
  assert.deepEqual(matching(offers, "yo").map((one) => one.operation), ["cut_style_line"]);
  assert.deepEqual(matching(offers, "Change len").map((one) => one.operation), ["change_length"]);
  assert.equal(matching(offers, "").length, 3);
  assert.equal(matching(offers, "sleeve").length, 0);
});

test("the picked edge fills the first edge field, a list too", () => {
  const form = { properties: { hems: { type: "array", items: { type: "string", kind: "edge" } }, amount: { type: "string", kind: "amount" } } };
  assert.deepEqual(withPicked({ hems: [""], amount: "" }, form, "skirt.front/hem", null), { hems: ["skirt.front/hem"], amount: "" });
  assert.deepEqual(withPicked({ hems: [""] }, form, null, null), { hems: [""] });
});

test("a picked edge begins a list that may stay empty, and nothing picked leaves it so", () => {
  const edges = { type: "array", items: { type: "object", properties: { edge: { type: "string", kind: "edge" } } } };
  const form = { properties: { edges } };
  assert.deepEqual(withPicked({ edges: [] }, form, "top.front/neck", null), { edges: [{ edge: "top.front/neck" }] });
  assert.deepEqual(withPicked({ edges: [] }, form, null, null), { edges: [] });
});

test("a step comes first that is called so, and a hyphen is typed or not", () => {
  const steps = [offer("lining", "Lining"), offer("pleats", "Pleats"), offer("change_neckline", "Change neckline")];
  assert.deepEqual(matching(steps, "pleat").map((one) => one.operation), ["pleats", "lining"]);
  assert.deepEqual(matching(steps, "v-neck").map((one) => one.operation), ["change_neckline"]);
  assert.deepEqual(matching(steps, "deeper neck").map((one) => one.operation), ["change_neckline"]);
});

test("a picked dart fills the first dart field", () => {
  const form = { properties: { edge: { type: "string", kind: "edge" }, dart: { type: "string", kind: "intake" } } };
  const choices = { edges: [], levels: [], intakes: [{ name: "top.front/bust_dart", said: "front, bust dart" }], pieces: [], notches: [], inner_darts: [], pivots: [], seams: [] };
  assert.deepEqual(withPicked({ edge: "", dart: "" }, form, "top.front/bust_dart", choices), { edge: "", dart: "top.front/bust_dart" });
});

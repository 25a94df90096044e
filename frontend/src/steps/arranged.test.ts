import assert from "node:assert/strict";
import { test } from "node:test";
import { calledOf, emptyValues, isFilled, type Form } from "../server/form.ts";
import type { StepOffer } from "../server/types.ts";
import { arranged } from "./arranged.ts";

const amount = { type: "string", kind: "amount" };
const place: Form = { type: "object", properties: { distance: { anyOf: [amount, { type: "null" }], default: null }, fraction: { anyOf: [{ type: "number" }, { type: "null" }], default: null } } };
const form: Form = {
  type: "object",
  $defs: { Place: place },
  properties: { places: { type: "array", items: { $ref: "#/$defs/Place" }, default: [] }, pivot: { ...amount, label: "about" }, number: amount },
};

function offer(kind: StepOffer["kind"]): StepOffer {
  return { operation: "transfer_dart", title: "", summary: "", kind, sided: true, form, defaults: {}, range_texts: {} } as StepOffer;
}

test("fields are called in the words of the trade, a field's own label comes first", () => {
  const shown = arranged(offer("style")).form as Form;
  assert.equal(calledOf("number", shown.properties?.number ?? {}), "how many");
  assert.equal(calledOf("pivot", shown.properties?.pivot ?? {}), "about");
  assert.equal(shown.properties?.pivot?.group, "more");
  assert.equal(shown.$defs?.Place?.properties?.distance?.empty, "as 1.5 or 1/4 hip");
});

test("a block keeps its form", () => {
  assert.equal(arranged(offer("block")).form, form);
});

test("a list begins with a place, which is not filled before it says where", () => {
  const shown = arranged(offer("style")).form as Form;
  const empty = emptyValues(shown, shown);
  assert.equal((empty.places as unknown[]).length, 1);
  const said = { ...empty, pivot: "1", number: "1" };
  assert.equal(isFilled(shown, shown, said), false);
  assert.equal(isFilled(shown, shown, { ...said, places: [{ distance: "6 cm", fraction: null }] }), true);
  assert.equal(isFilled(shown, shown, { ...said, places: [] }), true);
});

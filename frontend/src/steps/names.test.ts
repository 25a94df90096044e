import assert from "node:assert/strict";
import { test } from "node:test";
import type { EdgeChoice, NameChoices } from "../server/types.ts";
import { edgeFieldOf, intakeAt, knownAs, namesFor, withEnds } from "./names.ts";

function edge(name: string, first: string, second: string): EdgeChoice {
  const ends: EdgeChoice["ends"] = [{ name: first, said: first }, { name: second, said: second }];
  return { name, said: name, length_text: "", members: [name], ends };
}

const choices: NameChoices = {
  edges: [edge("skirt.back/center_back", "a.b/top", "a.b/foot"), edge("skirt.back/hem", "a.b/foot", "a.b/side")],
  intakes: [],
  pieces: [],
  notches: [],
  inner_darts: [],
  pivots: [],
};
const form = {
  properties: { edge: { type: "string", kind: "edge" }, hem_end: { type: "string", kind: "point" }, height: { type: "string", kind: "amount" } },
};

test("an edge that a later step has cut is known by its old name, a sided one without its side", () => {
  assert.equal(knownAs("skirt.back/center_back/seam", choices), "skirt.back/center_back");
  assert.equal(knownAs("skirt.back/hem@left", choices), "skirt.back/hem");
  assert.equal(knownAs("vent.back/top", choices), null);
});

test("a new edge brings its own end; an end that fits stays", () => {
  const values = { edge: "skirt.back/hem", hem_end: "a.b/top", height: "18 cm" };
  assert.deepEqual(withEnds(values, form, form, "edge", choices), { ...values, hem_end: "a.b/foot" });
  const fits = { ...values, hem_end: "a.b/side" };
  assert.deepEqual(withEnds(fits, form, form, "edge", choices), fits);
  assert.deepEqual(withEnds(values, form, form, "height", choices), values);
});

test("a dart is picked by either of its legs, nothing else is", () => {
  const darts = { ...choices, intakes: [{ name: "skirt.front/waist_dart", said: "front, waist dart" }] };
  const found = ["skirt.front/waist_dart/side_leg", "skirt.front/waist_dart/center_leg@left", "skirt.front/waist_dart_side/side_leg", "skirt.front/hem"];
  assert.deepEqual(found.map((name) => intakeAt(name, darts)), ["skirt.front/waist_dart", "skirt.front/waist_dart", null, null]);
});

test("edges of the same words are told apart by their length", () => {
  const hem = { ...edge("skirt.back/hem", "a", "b"), said: "back, hem", length_text: "26.3 cm" };
  const vent = { ...edge("skirt.back/vent_hem", "c", "a"), said: "back, hem", length_text: "4.0 cm" };
  const side = { ...edge("skirt.back/side", "b", "d"), said: "back, side seam", length_text: "63.9 cm" };
  const said = namesFor("edge", { ...choices, edges: [hem, vent, side] }, "").map((one) => one.said);
  assert.deepEqual(said, ["back, hem, 26.3 cm", "back, hem, 4.0 cm", "back, side seam"]);
});

test("points offered are the ends of the edge beside", () => {
  assert.deepEqual(namesFor("point", choices, "skirt.back/hem").map((one) => one.name), ["a.b/foot", "a.b/side"]);
  assert.equal(namesFor("point", choices, "").length, 3);
});

test("where a step names two edges, each point goes with the edge that it is called after", () => {
  const fields = ["edge", "from_point", "across", "across_point"];
  assert.deepEqual(["from_point", "across_point", "hem_end"].map((name) => edgeFieldOf(name, fields)), ["edge", "across", "edge"]);
  const point = { type: "string", kind: "point" };
  const line = { type: "string", kind: "edge" };
  const two = { properties: { edge: line, from_point: point, across: line, across_point: point } };
  const values = { edge: "skirt.back/center_back", from_point: "a.b/top", across: "skirt.back/hem", across_point: "a.b/top" };
  assert.deepEqual(withEnds(values, two, two, "across", choices), { ...values, across_point: "a.b/foot" });
});

import assert from "node:assert/strict";
import { test } from "node:test";
import type { EdgeChoice, NameChoices } from "../server/types.ts";
import { byPiece, edgeFieldOf, intakeAt, knownAs, namesFor, pieceNamed, withEnds } from "./names.ts";

function edge(name: string, first: string, second: string): EdgeChoice {
  const ends: EdgeChoice["ends"] = [{ name: first, said: first }, { name: second, said: second }];
  return { name, said: name, length_text: "", members: [name], ends };
}

const choices: NameChoices = {
  edges: [edge("skirt.back/center_back", "a.b/top", "a.b/foot"), edge("skirt.back/hem", "a.b/foot", "a.b/side")],
  levels: [{ name: "skirt.back/hip_line", said: "back, hip line" }],
  intakes: [],
  pieces: [],
  notches: [],
  inner_darts: [],
  pivots: [],
  seams: [],
};
const form = {
  properties: { edge: { type: "string", kind: "edge" }, hem_end: { type: "string", kind: "point" }, height: { type: "string", kind: "amount" } },
};

test("an edge that a later step has cut is known by its old name, a sided one without its side", () => {
  assert.equal(knownAs("skirt.back/center_back/seam", choices), "skirt.back/center_back");
  assert.equal(knownAs("skirt.back/hem@left", choices), "skirt.back/hem");
  assert.equal(knownAs("vent.back/top", choices), null);
});

test("a place is measured from a level or from an edge", () => {
  const names = namesFor("level", choices, "").map((one) => one.name);
  assert.deepEqual(names, ["skirt.back/hip_line", "skirt.back/center_back", "skirt.back/hem"]);
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
  assert.deepEqual(withEnds(values, two, two, "across", choices), { ...values, across_point: "a.b/side" }, "the side on which the seam's top lies");
  const foot = { ...values, across: "skirt.back/hem", from_point: "a.b/foot" };
  assert.deepEqual(withEnds(foot, two, two, "from_point", choices), { ...foot, across_point: "a.b/foot" }, "and it follows the other");
});

test("an end that may stay open is not filled, one is chosen by what its field is called after", () => {
  const open = { properties: { center: form.properties.edge, over: { anyOf: [{ type: "string", kind: "point" }, { type: "null" }] } } };
  const values = { center: "skirt.back/hem", over: null };
  assert.deepEqual(withEnds(values, open, open, "center", choices), values);
  const neck = edge("top.front/neck", "top.front/side_neck_point", "top.front/neck_pit");
  const fold = edge("top.front/center_front", "top.front/neck_pit", "top.front/waist_center");
  const necks = { properties: { edge: form.properties.edge, center: form.properties.hem_end } };
  const asked = { edge: neck.name, center: "" };
  assert.equal(withEnds(asked, necks, necks, "edge", { ...choices, edges: [neck, fold] }).center, "top.front/neck_pit");
});

test("an edge that may stay open brings the end that is called after it, and takes it away", () => {
  const hem = edge("skirt.back/hem", "skirt.back/hem_side", "skirt.back/hem_center");
  const open = (kind: string) => ({ anyOf: [{ type: "string", kind }, { type: "null" }] });
  const cowl = { properties: { across: open("edge"), across_center: open("point") } };
  const known = { ...choices, edges: [hem] };
  const filled = withEnds({ across: hem.name, across_center: null }, cowl, cowl, "across", known);
  assert.equal(filled.across_center, "skirt.back/hem_center");
  assert.equal(withEnds({ ...filled, across: null }, cowl, cowl, "across", known).across_center, null);
});

test("the upper end of a seam is the one at the waist, and a center without a field of its own is that of the neck", () => {
  const seam = edge("skirt.front/side_seam", "skirt.front/hem_side", "skirt.front/waist_side");
  const pocket = { properties: { edge: form.properties.edge, upper_end: form.properties.hem_end } };
  const asked = { edge: seam.name, upper_end: "" };
  assert.equal(withEnds(asked, pocket, pocket, "edge", { ...choices, edges: [seam] }).upper_end, "skirt.front/waist_side");
  assert.equal(edgeFieldOf("center", ["neck", "center", "shoulder", "armhole"]), "neck");
});

test("names stand piece by piece, those of the piece that is worked on first", () => {
  const edges = [{ ...edge("a.back/hem", "a.back/x", "a.back/y"), said: "back, hem" }, { ...edge("a.front/hem", "a.front/x", "a.front/y"), said: "front, hem" }];
  const both = { ...choices, edges };
  assert.equal(pieceNamed({ starts: [{ edge: "a.front/hem" }] }, both), "front");
  assert.deepEqual(byPiece(edges, "front").map(([piece, names]) => [piece, names.length]), [["front", 1], ["back", 1]]);
  assert.deepEqual(namesFor("point", both, "").map((one) => one.said), ["back, a.back/x", "back, a.back/y", "front, a.front/x", "front, a.front/y"]);
});

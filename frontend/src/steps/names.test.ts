import assert from "node:assert/strict";
import { test } from "node:test";
import type { EdgeChoice, NameChoices } from "../server/types.ts";
import { knownAs, namesFor, withEnds } from "./names.ts";

function edge(name: string, first: string, second: string): EdgeChoice {
  const ends: EdgeChoice["ends"] = [{ name: first, said: first }, { name: second, said: second }];
  return { name, said: name, length_text: "", members: [name], ends };
}

const choices: NameChoices = {
  edges: [edge("skirt.back/center_back", "a.b/top", "a.b/foot"), edge("skirt.back/hem", "a.b/foot", "a.b/side")],
  intakes: [],
  pieces: [],
  notches: [],
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

test("points offered are the ends of the edge beside", () => {
  assert.deepEqual(namesFor("point", choices, "skirt.back/hem").map((one) => one.name), ["a.b/foot", "a.b/side"]);
  assert.equal(namesFor("point", choices, "").length, 3);
});

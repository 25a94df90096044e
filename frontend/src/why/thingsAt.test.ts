import assert from "node:assert/strict";
import { test } from "node:test";
import type { StyleAnswer } from "../server/types.ts";
import { thingsAt } from "./thingsAt.ts";

const point = (name: string, mark = false) => ({ name, said: name, mark });
const front = {
  name: "b.front", title: "Front",
  edges: [{ name: "b.front/dart/low", said: "leg", start: "b.front/a", end: "b.front/p" }, { name: "b.front/hem", said: "hem", start: "b.front/x", end: "b.front/a" }],
  points: [point("b.front/a"), point("b.front/p"), point("b.front/x"), point("b.front/bust", true)],
  intakes: [{ name: "b.front/dart", said: "front, dart" }],
};
const style = { pieces: [front], seams: [{ name: "b/side", said: "side", first: ["b.front/hem"], second: [] }] } as unknown as StyleAnswer;

const names = (edge: string): readonly string[] => thingsAt(edge, style).map((one) => one.name);

test("a leg of a dart asks about itself, its ends, its dart, its piece and the marked points", () => {
  assert.deepEqual(names("b.front/dart/low"), ["b.front/dart/low", "b.front/a", "b.front/p", "b.front/dart", "b.front", "b.front/bust"]);
});

test("an edge in a seam asks about the seam too, in words that say so", () => {
  assert.deepEqual(names("b.front/hem"), ["b.front/hem", "b.front/a", "b.front/x", "b/side", "b.front", "b.front/dart", "b.front/bust"]);
  assert.equal(thingsAt("b.front/hem", style).find((one) => one.name === "b/side")?.said, "side, the seam");
});

test("an edge that is not drawn asks nothing", () => {
  assert.deepEqual(names("b.back/hem"), []);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import type { SheetPiece, SheetSeam } from "../server/types.ts";
import { spotsOf } from "./spots.ts";

const at = (x: number, y: number) => ({ x, y });
const edge = (name: string, x: number) => ({ name, middle: at(x, 0) });

/** A front with a dart whose legs are edges, a dart inside and a bust point. */
const front = {
  name: "bodice.front@left",
  title_at: at(50, 50),
  points: [{ name: "bodice.front/bust_point@left", place: at(10, 20) }],
  notches: [{ name: "bodice.front/notch", place: at(1, 1) }],
  intakes: [{ name: "bodice.front/bust_dart", said: "front, bust dart" }],
  edges: [edge("bodice.front/bust_dart/low", 7), edge("bodice.front/side", 9)],
  lines: [{ name: "bodice.front/inside/center_leg", kind: "dart_leg", path: "M0 0L4 4" }],
} as unknown as SheetPiece;
const seam = { name: "bodice/side", first: ["bodice.front/side"], second: [] } as unknown as SheetSeam;
const drawn = { pieces: [front], seams: [seam], places: new Map([["bodice.front@left", at(100, 0)]]) };

const named = (name: string) => ({ name, said: `the ${name}` });

test("points, darts, notches, seams and pieces stand where they are drawn", () => {
  const wanted = ["bodice.front/bust_point", "bodice.front/bust_dart", "bodice.front/notch", "bodice/side", "bodice.front"].map(named);
  const spots = new Map(spotsOf(wanted, drawn).map((spot) => [spot.name, spot.at]));
  assert.deepEqual(spots.get("bodice.front/bust_point"), at(110, 20));
  assert.deepEqual(spots.get("bodice.front/bust_dart"), at(107, 0));
  assert.deepEqual(spots.get("bodice.front/notch"), at(101, 1));
  assert.deepEqual(spots.get("bodice/side"), at(109, 0));
  assert.deepEqual(spots.get("bodice.front"), at(150, 50));
});

test("a dart inside a piece stands on its leg, and what is not wanted or not drawn has no spot", () => {
  const spots = spotsOf([named("bodice.front/inside"), named("bodice.back/gone")], drawn);
  assert.deepEqual(spots.map((spot) => spot.name), ["bodice.front/inside"]);
});

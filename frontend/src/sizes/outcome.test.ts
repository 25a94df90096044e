import assert from "node:assert/strict";
import { test } from "node:test";
import type { SizesAnswer } from "../server/types.ts";
import { outcome } from "./outcome.ts";

type Standings = readonly SizesAnswer["sizes"][number]["standing"][];
const told = (state: SizesAnswer["state"], standings: Standings): string =>
  outcome({ chart: "Old sizes", labels: ["S", "M", "L"], state, sizes: standings.map((standing, index) => ({ label: String(index), standing })) });

test("how far it is, and what came of it, is one sentence", () => {
  assert.equal(told("running", ["right"]), "1 of 3 sizes checked …");
  assert.equal(told("done", ["right", "right", "right"]), "3 sizes of Old sizes: nothing to check in any.");
  assert.equal(told("done", ["right", "look", "not drafted"]), "3 sizes of Old sizes: nothing to check in 1, something in 2.");
  assert.equal(told("done", ["wrong", "look", "look"]), "3 sizes of Old sizes: something to check in each.");
  assert.equal(told("stopped", ["right"]), "Stopped after 1 of 3 sizes of Old sizes: nothing to check in any.");
  assert.equal(told("stopped", []), "Stopped after 0 of 3 sizes of Old sizes.");
});

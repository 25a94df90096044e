import assert from "node:assert/strict";
import { test } from "node:test";
import { pictured } from "./fitIn.ts";

test("the view box holds every piece, y turned down", () => {
  const front = { name: "skirt.front", block: "skirt", derived: false, box: { left: -240, right: 0, top: 200, bottom: -400 } };
  const { places, viewBox } = pictured([front], 0);
  assert.deepEqual(places.get("skirt.front"), { x: 240, y: -200 });
  assert.equal(viewBox, "0 0 240 600");
});

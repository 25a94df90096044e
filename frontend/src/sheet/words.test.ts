import assert from "node:assert/strict";
import { test } from "node:test";
import { broken } from "./words.ts";

test("words are broken where they must, and not at all where they cannot fit", () => {
  assert.deepEqual(broken("cut 1 on fold self", 30, 3), ["cut 1 on fold self"]);
  assert.deepEqual(broken("cut 1 on fold self", 10, 3), ["cut 1 on", "fold self"]);
  assert.equal(broken("cut 1 on fold self", 10, 1), null);
  assert.equal(broken("cut 1 fusible", 6, 3), null);
});

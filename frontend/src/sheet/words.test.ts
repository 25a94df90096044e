import assert from "node:assert/strict";
import { test } from "node:test";
import { broken, roomBelow, titled, type TitlePiece } from "./words.ts";

test("words are broken where they must, and not at all where they cannot fit", () => {
  assert.deepEqual(broken("cut 1 on fold self", 30, 3), ["cut 1 on fold self"]);
  assert.deepEqual(broken("cut 1 on fold self", 10, 3), ["cut 1 on", "fold self"]);
  assert.equal(broken("cut 1 on fold self", 10, 1), null);
  assert.equal(broken("cut 1 fusible", 6, 3), null);
});

const sleeve: TitlePiece = {
  title: "Under sleeve", cut: "cut 1 pair", title_width: 120, title_height: 500, low: { x: 0, y: -600 }, high: { x: 200, y: 0 },
};

test("a title stands in its piece where there is room, else under it in lines of its width", () => {
  assert.equal(titled(sleeve, 2).form, "column");
  assert.deepEqual(titled(sleeve, 0.4), { form: "under", lines: ["Under sleeve"] });
  assert.deepEqual(titled(sleeve, 0.2), { form: "under", lines: ["Under", "sleeve"] });
});

test("words under a piece take room, those in it and those that are not drawn take none", () => {
  assert.ok(roomBelow(sleeve, 0.2).height > roomBelow(sleeve, 0.4).height);
  assert.ok(roomBelow(sleeve, 0.4).width > roomBelow(sleeve, 0.2).width);
  assert.equal(roomBelow(sleeve, 2).height, 0);
  assert.equal(roomBelow(sleeve, Infinity).height, 0);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { laidOut, type Laid } from "./layout.ts";
import type { Box, Extent } from "./view.ts";

const front: Laid = { name: "skirt.front", block: "skirt", derived: false, box: { left: -240, right: 0, top: 200, bottom: -412 } };
const back: Laid = { name: "skirt.back", block: "skirt", derived: false, box: { left: 0, right: 255, top: 199, bottom: -412 } };
const band: Laid = { name: "band.band", block: "band", derived: true, box: { left: 0, right: 700, top: 70, bottom: 0 } };
const sleeve: Laid = { name: "sleeve.sleeve", block: "sleeve", derived: false, box: { left: -180, right: 170, top: -500, bottom: -1100 } };

function placed(pieces: Laid[]): Box[] {
  const { places } = laidOut(pieces);
  return pieces.map(({ name, box }) => {
    const at = places.get(name);
    assert.ok(at);
    return { left: box.left + at.x, right: box.right + at.x, top: box.top + at.y, bottom: box.bottom + at.y };
  });
}

function apart(a: Box, b: Box): boolean {
  return a.right <= b.left || b.right <= a.left || a.top <= b.bottom || b.top <= a.bottom;
}

test("no two pieces lie on each other, and the box holds them all", () => {
  const boxes = placed([front, back, band]);
  const { box } = laidOut([front, back, band]);
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => assert.ok(apart(a, b))));
  for (const one of boxes) {
    assert.ok(one.left >= box.left && one.right <= box.right && one.top <= box.top && one.bottom >= box.bottom);
  }
});

test("many small pieces lie in several rows, so that all is drawn larger", () => {
  const strips = Array.from({ length: 6 }, (_, n) => ({ ...band, name: `band.band_${n}` }));
  const boxes = placed([front, back, ...strips]);
  const rows = new Set(boxes.slice(2).map((one) => one.top));
  assert.ok(rows.size > 1 && rows.size < 6);
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach((b) => assert.ok(apart(a, b))));
});

test("front and back stay level, the back left of the front", () => {
  const { places } = laidOut([front, back]);
  assert.equal(places.get("skirt.front")?.y, places.get("skirt.back")?.y);
  const [f, b] = placed([front, back]);
  assert.ok(f && b && b.right < f.left);
});

test("a left and a right back lie as they meet at the center", () => {
  const right: Laid = { ...back, name: "skirt.back@right" };
  const left: Laid = { ...back, name: "skirt.back@left", box: { left: -255, right: 0, top: 199, bottom: -412 } };
  const [r, l, f] = placed([right, left, front]);
  assert.ok(r && l && f && l.right < r.left && r.right < f.left);
});

test("the legs of two sides lie with their centers together, though their frames do not say which side they are", () => {
  const box = { left: -160, right: 130, top: 260, bottom: -780 };
  const legs = ["front@left", "front@right", "back@right", "back@left"].map((word) => ({ name: `trousers.${word}`, block: "trousers", derived: false, box }));
  const { places } = laidOut(legs);
  const order = legs.map((leg) => leg.name).sort((a, b) => (places.get(a)?.x ?? 0) - (places.get(b)?.x ?? 0));
  assert.deepEqual(order.map((name) => name.split(".")[1]), ["back@left", "back@right", "front@right", "front@left"]);
});

test("gores lie in the order in which they are sewn", () => {
  const words = ["center_front", "side_front", "side", "side_back", "center_back"];
  const gores = words.map((word) => ({ name: `gored_skirt.${word}`, block: "gored_skirt", derived: false, box: { left: -90, right: 90, top: 0, bottom: -600 } }));
  const { places } = laidOut(gores);
  const order = [...words].sort((a, b) => (places.get(`gored_skirt.${a}`)?.x ?? 0) - (places.get(`gored_skirt.${b}`)?.x ?? 0));
  assert.deepEqual(order, ["center_back", "side_back", "side", "side_front", "center_front"]);
});

test("a yoke lies over its skirt in the same column", () => {
  const yoke: Laid = { name: "yoke.front_above", block: "skirt", derived: false, box: { left: -249, right: 0, top: 223, bottom: 23 } };
  const rest: Laid = { name: "yoke.front_below", block: "skirt", derived: false, box: { left: -383, right: 0, top: 79, bottom: -462 } };
  const [a, b] = placed([yoke, rest]);
  assert.ok(a && b && apart(a, b) && a.bottom > b.top && Math.abs(a.right - b.right) < 1e-9);
});

test("a sleeve lies beside its bodice, its head level with the highest piece, whatever its frame", () => {
  const [f, b, s] = placed([front, back, sleeve]);
  assert.ok(f && b && s && apart(f, s) && apart(b, s) && s.left > f.right);
  assert.equal(s.top, f.top);
});

test("derived pieces lie below the others", () => {
  const [f, , d] = placed([front, back, band]);
  assert.ok(f && d && d.top < f.bottom);
});

test("on an upright sheet a second block lies below the first, on a wide one beside it", () => {
  const upright = laidOut([front, back, sleeve], { width: 300, height: 900 }).places;
  const wide = laidOut([front, back, sleeve], { width: 900, height: 300 }).places;
  const top = (places: Map<string, { y: number }>): number => sleeve.box.top + (places.get(sleeve.name)?.y ?? NaN);
  assert.ok(top(upright) < front.box.bottom, "below");
  assert.equal(top(wide), 0);
  assert.equal(upright.get("skirt.front")?.y, upright.get("skirt.back")?.y);
});

test("derived pieces lie in more rows on an upright sheet than on a wide one", () => {
  const strips = Array.from({ length: 6 }, (_, n) => ({ ...band, name: `band.band_${n}` }));
  const rows = (seen: Extent): number => {
    const { places } = laidOut([front, back, ...strips], seen);
    return new Set(strips.map((strip) => places.get(strip.name)?.y)).size;
  };
  assert.ok(rows({ width: 300, height: 900 }) > rows({ width: 1500, height: 300 }));
});

test("words below small pieces have room, beside each other and over the next row", () => {
  const words = { width: 90, height: 38 };
  const seen = { width: 400, height: 500 };
  const small = ["back", "front", "top", "under"].map((word) => ({
    name: `skirt.${word}`, block: "skirt", derived: false, box: { left: 0, right: 200, top: 0, bottom: -600 }, below: () => words,
  }));
  const under = { ...band, below: () => words };
  const pieces = [...small, under];
  const { places, box } = laidOut(pieces, seen);
  const scale = Math.min(seen.width / (box.right - box.left), seen.height / (box.top - box.bottom));
  const said = pieces.map((one) => {
    const at = places.get(one.name);
    assert.ok(at);
    const middle = (one.box.left + one.box.right) / 2 + at.x;
    const half = words.width / scale / 2;
    const top = one.box.bottom + at.y;
    return { left: middle - half, right: middle + half, top, bottom: top - words.height / scale };
  });
  said.forEach((a, i) => said.slice(i + 1).forEach((b) => assert.ok(apart(a, b))));
  const at = places.get(under.name);
  assert.ok(at && said.slice(0, 4).every((one) => one.bottom > under.box.top + at.y));
});

test("an empty sheet has a box", () => {
  assert.deepEqual(laidOut([]).box, { left: 0, right: 0, top: 0, bottom: -90 });
});

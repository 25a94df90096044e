import assert from "node:assert/strict";
import { test } from "node:test";
import { MIDDLE, scaleFor, section, WIDTH, type Level } from "./section.ts";

function near(found: number, wanted: number): void {
  assert.ok(Math.abs(found - wanted) < 1e-9, `${found} is not ${wanted}`);
}

test("the form stands about the middle and the wadding on both sides of it", () => {
  const drawn = section({ form: 1000, client: 1060, front: 8, back: 12 }, 0.5);
  near(drawn.form.x + drawn.form.width / 2, MIDDLE);
  near(drawn.front.x + drawn.front.width, drawn.form.x);
  near(drawn.back.x, drawn.form.x + drawn.form.width);
  near(drawn.back.width / drawn.front.width, 1.5);
});

test("an even layer of the right thickness reaches the client: 2 pi t is added to the girth", () => {
  const thickness = 10;
  const drawn = section({ form: 1000, client: 1000 + 2 * Math.PI * thickness, front: thickness, back: thickness }, 0.5);
  near(drawn.front.x, drawn.client.x);
});

test("every level fits into the drawing, all to one scale", () => {
  const levels: Level[] = [
    { form: 370, client: 380, front: 1, back: 2 },
    { form: 1800, client: 1900, front: 20, back: 40 },
    { form: 1900, client: 1500, front: 0, back: 0 },
  ];
  const scale = scaleFor(levels);
  const ends = levels.map((level) => section(level, scale)).flatMap(({ form, front, back, client }) => [form, front, back, client]);
  assert.ok(ends.every(({ x, width }) => x >= 0 && x + width <= WIDTH));
  assert.ok(Math.min(...ends.map(({ x }) => x)) < 12, "the room is used");
});

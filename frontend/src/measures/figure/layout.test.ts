import assert from "node:assert/strict";
import { test } from "node:test";
import { numberSize, placed, threeOf, widestOf } from "./layout.ts";

const views = [{ width: 88, height: 213 }, { width: 84, height: 213 }, { width: 56, height: 213 }];

test("the views lie beside each other in one scale and fit", () => {
  const board = placed(views, 600, 640);
  assert.ok(board);
  assert.deepEqual(board.views.map((one) => one.x), [0, 92, 180]);
  assert.ok(board.width * board.scale <= 600 && board.height * board.scale <= 640);
  assert.equal(placed(views, 0, 0), null);
});

test("numbers are readable, and left out where many of them would touch", () => {
  for (const scale of [1.2, 2.6, 5]) assert.ok(numberSize(scale, 54).picked * scale >= 13);
  assert.ok(numberSize(2.6, 54).other * 2.6 >= 10);
  assert.equal(numberSize(1.2, 54).other, 0);
  assert.ok(numberSize(2, 6).other * 2 >= 10);
  assert.equal(numberSize(1.15, 6).other, 0);
});

test("the third view is the one that shows what is in focus, and the board does not jump", () => {
  const view = (name: string, width: number, ...keys: string[]) => ({ name, width, height: 213, tapes: keys.map((key) => ({ key })) });
  const four = [view("front", 88, "waist_girth"), view("back", 84), view("side", 56, "hip_depth"), view("seated", 70, "sitting_rise")];
  const third = (focus: string | null) => threeOf(four, focus)[2]?.name;
  assert.deepEqual([null, "waist_girth", "hip_depth", "sitting_rise"].map(third), ["side", "side", "side", "seated"]);
  const boards = [null, "sitting_rise"].map((focus) => placed(threeOf(four, focus), 600, 640, widestOf(four))?.width);
  assert.deepEqual(boards, [250, 250]);
});

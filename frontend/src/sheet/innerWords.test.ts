import assert from "node:assert/strict";
import { test } from "node:test";
import type { SheetLine, SheetPiece } from "../server/types.ts";
import { innerWords, type WordPiece } from "./innerWords.ts";

function level(name: string, y: number): SheetLine {
  return { name, kind: "level", word: name, path: `M0 ${y}L300 ${y}`, length: 300, upright: false, words_at: { x: 200, y } } as unknown as SheetLine;
}

function point(name: string, x: number, y: number): SheetPiece["points"][number] {
  return { name, said: `front, ${name}`, place: { x, y }, mark: true, button: false } as unknown as SheetPiece["points"][number];
}

function piece(lines: SheetLine[], points: SheetPiece["points"]): WordPiece {
  return { outline: "M0 0L300 0L300 400L0 400Z", lines, points, grain_low: { x: 10, y: 20 }, grain_high: { x: 10, y: 380 }, title: "Front", cut: "", title_at: { x: 150, y: 350 }, title_width: 100 };
}

test("the words of a line and of a point on it never lie on each other", () => {
  for (let x = 60; x < 260; x += 4) {
    // A second line close below leaves the point no room but above the first, where the words of that one stand.
    const close = { ...level("", 190), kind: "dart_leg" } as SheetLine;
    const { lines, points } = innerWords(piece([level("bust line", 200), close], [point("bust point", x, 200)]), 1);
    const [line, mark] = [lines.get("bust line"), points.get("bust point")];
    assert.ok(line && mark, `both have room at ${x}`);
    const [left, right] = [line.x - 26, line.x + 26];
    const [from, to] = mark.anchor === "start" ? [x + mark.x, x + mark.x + 56] : [x + mark.x - 56, x + mark.x];
    const apart = right <= from || to <= left || Math.abs(line.base - mark.y) >= 12;
    assert.ok(apart, `at ${x}: line ${left} to ${right} base ${line.base}, point ${from} to ${to} base ${mark.y}`);
  }
});

test("a line that darts cut is named once, and small pieces not at all", () => {
  const parts = [{ ...level("waist line (left)", 100), length: 80 }, level("waist line (right)", 100)];
  assert.deepEqual([...innerWords(piece(parts, []), 1).lines.keys()], ["waist line (right)"]);
  assert.equal(innerWords(piece(parts, [point("bust point", 50, 200)]), 0.49).points.size, 0);
});

test("words keep clear of the mark of a point near by", () => {
  const free = innerWords(piece([level("hip line", 200)], []), 1).lines.get("hip line");
  assert.equal(free?.x, 200);
  const buttons = { ...point("button", 200, 210), button: true } as SheetPiece["points"][number];
  const moved = innerWords(piece([level("hip line", 200)], [buttons]), 1).lines.get("hip line");
  assert.ok(moved && Math.abs(moved.x - 200) > 24);
});

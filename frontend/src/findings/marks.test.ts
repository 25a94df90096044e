import assert from "node:assert/strict";
import { test } from "node:test";
import type { FindingNote } from "../server/types.ts";
import { moreWords, numbered } from "./marks.ts";

function note(code: string, place: FindingNote["place"] = null): FindingNote {
  return { code, severity: "look", message: code, numbers: "", suggestion: "", why: "", piece: null, where: null, place, cures: [], contradiction: null, wish: null };
}

test("three findings alike without a place are one mark, two are two", () => {
  const marks = numbered([note("cup"), note("estimate"), note("estimate"), note("estimate"), note("slope"), note("slope")]);
  assert.deepEqual(marks.map((mark) => [mark.number, mark.note.code, mark.alike.length]), [[1, "cup", 0], [2, "estimate", 2], [3, "slope", 0], [4, "slope", 0]]);
});

test("what has a place of its own keeps its mark", () => {
  assert.equal(numbered([1, 2, 3].map((x) => note("bump", { x, y: 0 }))).length, 3);
});

test("a mere note is not said to be to check", () => {
  const look = numbered([note("bump", { x: 0, y: 0 }), note("cup")]);
  const said = numbered(["slope", "level"].map((code) => ({ ...note(code), severity: "note" as const })));
  assert.equal(moreWords(look), "2 more to check");
  assert.equal(moreWords(said), "2 more notes");
  assert.equal(moreWords(said.slice(1)), "1 more note");
  assert.equal(moreWords([...look, ...said]), "2 more to check, 2 notes");
});

test("what is to check stands before what is said for the record, each in its own order", () => {
  const grades = ["note", "look", "stop", "note", "look"] as const;
  const marks = numbered(grades.map((severity, x) => ({ ...note(`${severity} ${x}`, { x, y: 0 }), severity })));
  assert.deepEqual(marks.map((mark) => mark.note.code), ["stop 2", "look 1", "look 4", "note 0", "note 3"]);
  assert.deepEqual(marks.map((mark) => mark.number), [1, 2, 3, 4, 5]);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { progressWords } from "./progressWords.ts";

test("before anything is known it says that it tries", () => {
  assert.equal(progressWords(null, false), "trying …");
});

test("numbers are told with how many there are, drafts without", () => {
  assert.equal(progressWords({ tried: 3, of: 24 }, false), "3 of 24 numbers tried …");
  assert.equal(progressWords({ tried: 1, of: null }, false), "1 draft tried …");
  assert.equal(progressWords({ tried: 7, of: null }, false), "7 drafts tried …");
});

test("once asked to stop it says so", () => {
  assert.equal(progressWords({ tried: 3, of: 24 }, true), "stopping …");
});

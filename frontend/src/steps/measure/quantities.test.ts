import assert from "node:assert/strict";
import test from "node:test";
import { pickedFirst } from "./quantities.ts";

const line = (text: string, ...edges: string[]) => ({ text, said: text, now_text: "1 cm", edges });
const all = [line("finished waist", "skirt/waist_girth"), line("around hem", "front/hem", "back/hem"), line("length", "front/hem")];

test("without a picked edge the order stays", () => {
  assert.deepEqual(pickedFirst(all, null), all);
});

test("what names the picked edge comes first, in its order", () => {
  assert.deepEqual(pickedFirst(all, "front/hem").map((one) => one.text), ["around hem", "length", "finished waist"]);
});

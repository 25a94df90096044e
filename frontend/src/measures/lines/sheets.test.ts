import assert from "node:assert/strict";
import { test } from "node:test";
import type { BlockSheet, MeasureLine, MeasureValue } from "../../server/types.ts";
import { ALL, firstSheet, linesOf, markOf, missing, shortSheet, TAKEN, withRise, type ShortSheet } from "./sheets.ts";

function line(key: string, taken = false): MeasureLine {
  const values = taken ? [{ side: "both" } as MeasureValue] : [];
  return { key, label: key, definition: "", kind: "girth", sided: true, usual_text: "", values, remarks: [] };
}

const lines = [line("height", true), line("waist_girth"), line("hip_girth", true), line("hip_depth")];
const short: ShortSheet = { id: "skirt", said: "skirt", needed: ["hip_girth", "waist_girth"], asked: ["hip_girth", "waist_girth"] };

test("every sheet stays in measuring order", () => {
  const keys = (sheet: string) => linesOf(lines, sheet, short).map((one) => one.key);
  assert.deepEqual(keys("skirt"), ["waist_girth", "hip_girth"]);
  assert.deepEqual(keys(TAKEN), ["height", "waist_girth", "hip_girth"]);
  assert.equal(keys(ALL).length, 4);
});

test("a new body begins with the short sheet, or with all where nothing is asked", () => {
  const fresh = [line("waist_girth"), line("hip_girth")];
  assert.equal(firstSheet(fresh, short), "skirt");
  assert.equal(firstSheet(fresh, null), ALL);
  assert.equal(firstSheet(lines, short), TAKEN);
});

test("what changes little waits on a short sheet until it is asked for or taken", () => {
  const weighty: ShortSheet = { ...short, asked: [...short.asked, "hip_depth", "height"], most: ["hip_depth"], less: ["height"] };
  const fresh = [line("height"), line("waist_girth"), line("hip_girth"), line("hip_depth")];
  const keys = (from: readonly MeasureLine[], more: boolean) => linesOf(from, "skirt", weighty, more).map((one) => one.key);
  assert.deepEqual(keys(fresh, false), ["waist_girth", "hip_girth", "hip_depth"]);
  assert.deepEqual(keys(fresh, true), ["height", "waist_girth", "hip_girth", "hip_depth"]);
  assert.deepEqual(keys(lines, false), ["height", "waist_girth", "hip_girth", "hip_depth"]);
  assert.equal(missing(fresh, weighty), 3);
  assert.deepEqual(["waist_girth", "hip_depth", "height"].map((key) => markOf(weighty, key)), ["needed", "helps most", ""]);
  assert.equal(markOf(withRise({ ...weighty, asked: ["standing_rise"] }, null), "sitting_rise"), "needed, one of the two");
});

test("what is asked for and not taken is counted", () => {
  assert.equal(missing(lines, short), 1);
  assert.equal(missing(lines, null), 0);
});

test("a block asks for what those before it ask for too, each measure once", () => {
  const about = { helpful: [], sometimes: [], estimated: [], drafted_with: [], eases: [], refuses: [] };
  const bodice: BlockSheet = { ...about, block: "bodice", said: "bodice block", needed: ["bust_girth"], sometimes: [{ when: "with bust shaping", keys: ["front_waist_length"] }], estimated: ["scye_depth"], helpful: ["height"] };
  const sleeve: BlockSheet = { ...about, block: "sleeve", said: "sleeve block", needed: ["upper_arm_girth"], helpful: ["height"], drafted_with: ["bodice"] };
  const asked = shortSheet(sleeve, [bodice, sleeve]);
  assert.deepEqual(asked.needed, ["bust_girth", "upper_arm_girth"]);
  assert.deepEqual(asked.asked, ["bust_girth", "upper_arm_girth", "front_waist_length", "scye_depth", "height"]);
  assert.deepEqual(shortSheet(bodice, [bodice, sleeve]).needed, ["bust_girth"]);
});

test("the rise stands on the sheet as it is taken, and both rises until it is said", () => {
  const trousers: ShortSheet = { id: "trousers", said: "the trousers block", needed: ["hip_girth", "standing_rise"], asked: ["hip_girth", "standing_rise"] };
  const sitting = withRise(trousers, "sitting");
  assert.deepEqual([sitting.needed, sitting.asked], [["hip_girth", "sitting_rise"], ["hip_girth", "sitting_rise"]]);
  assert.deepEqual(withRise(trousers, "outside_minus_inside").asked, ["hip_girth", "outside_leg", "inside_leg"]);
  const either = withRise(trousers, null);
  assert.deepEqual([either.needed, either.asked], [["hip_girth"], ["hip_girth", "standing_rise", "sitting_rise"]]);
  assert.equal(withRise(short, "sitting"), short);
  const taken = [line("hip_girth", true), line("standing_rise"), line("sitting_rise", true)];
  assert.equal(missing(taken, either), 0);
  assert.equal(missing([line("hip_girth", true), line("standing_rise"), line("sitting_rise")], either), 1);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Refusal } from "../server/types.ts";
import { askedIn } from "./asked.ts";

const refused = (facts: Record<string, unknown>): Refusal =>
  ({ code: "sleeve-fabric-not-named", message: "", next_step: "", facts, offers: [], cures: [], contradiction: null });

test("a refusal that names a setting and its choices asks", () => {
  const asked = askedIn(refused({ setting: "fabric", choices: ["knit", "shirting"], said: ["knit: 0 to 1.2 cm", "shirting: 1 to 2 cm"] }));
  assert.equal(asked?.setting, "fabric");
  assert.deepEqual(asked?.choices[1], { value: "shirting", said: "shirting: 1 to 2 cm" });
});

test("ranges are said in the reader's unit", () => {
  const refusal = refused({ setting: "fabric", choices: ["shirting", "other"], said: ["shirting, poplin: 0 to 10 mm", "other: 5 mm"] });
  const asked = askedIn(refusal, { fabric: { shirting: '0 to 3/8"' } });
  assert.deepEqual(asked?.choices.map((one) => one.said), ['shirting, poplin: 0 to 3/8"', "other: 5 mm"]);
});

test("a question that can be answered by a test of her own says how, and leaves out what stands on the buttons", () => {
  const facts = { setting: "across", choices: ["18 %"], said: ["stable knit: 10 cm to 11.8 cm"], typed: "10 cm to 14 cm" };
  const asked = askedIn({ ...refused(facts), message: "How far it stretches is not said: stable knit: 10 cm to 11.8 cm." });
  assert.equal(asked?.question, "How far it stretches is not said.");
  assert.equal(asked?.typed, "10 cm to 14 cm");
});

test("any other refusal asks for nothing", () => {
  assert.equal(askedIn(refused({ setting: "fabric" })), null);
  assert.equal(askedIn(refused({ setting: "fabric", choices: [] })), null);
  assert.equal(askedIn(null), null);
});

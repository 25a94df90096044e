import assert from "node:assert/strict";
import { test } from "node:test";
import type { BodyAnswer, MeasureLine, MeasureValue } from "../../server/types.ts";
import { editOf, fieldIn, fieldName, fieldsOf, sidesOf, type Field } from "./fields.ts";

function value(text: string, more: Partial<MeasureValue> = {}): MeasureValue {
  return { side: "both", text, value: 0, status: "measured", error_text: "", note: "", readings: [], ...more };
}

function line(...values: MeasureValue[]): MeasureLine {
  return { key: "hip_girth", label: "Hip girth", definition: "", kind: "girth", sided: true, usual_text: "", values, remarks: [] };
}

function field(of: MeasureLine, reading = 0): Field {
  const found = fieldsOf(of, "both", true, true)[reading];
  assert.ok(found);
  return found;
}

test("a measure that is taken twice has two boxes, a third when the readings lie apart", () => {
  const two = line(value("94.3 cm", { readings: ["94.0 cm", "94.6 cm"] }));
  assert.deepEqual(fieldsOf(line(), "both", false, false).map((one) => one.text), [""]);
  assert.deepEqual(fieldsOf(line(value("94.0 cm")), "both", true, true).map((one) => one.text), ["94.0", ""]);
  assert.deepEqual(fieldsOf(two, "both", true, false).map((one) => one.text), ["94.0", "94.6"]);
  assert.deepEqual(fieldsOf(two, "both", true, true).map(fieldName), ["", "again", "third time"]);
});

test("sides are alike until they are broken", () => {
  assert.deepEqual(sidesOf(line(value("94.0 cm")), false), ["both"]);
  assert.deepEqual(sidesOf(line(value("94.0 cm")), true), ["left", "right"]);
  assert.deepEqual(sidesOf(line(value("94.0 cm", { side: "left" })), false), ["left", "right"]);
});

test("what is typed becomes an edit of its own reading", () => {
  const at = { key: "hip_girth", side: "both" };
  const once = line(value("94.0 cm"));
  const two = line(value("94.3 cm", { readings: ["94.0 cm", "94.6 cm"] }));
  assert.deepEqual(editOf(field(line()), " 94 "), { do: "set-measure", ...at, text: "94" });
  assert.deepEqual(editOf(field(line(), 1), "94"), { do: "set-measure", ...at, text: "94" });
  assert.deepEqual(editOf(field(once), "95"), { do: "set-reading", ...at, text: "95", reading: 0 });
  assert.deepEqual(editOf(field(once, 1), "95"), { do: "set-reading", ...at, text: "95", reading: 1 });
  assert.deepEqual(editOf(field(two, 2), "95"), { do: "set-reading", ...at, text: "95", reading: 2 });
  assert.deepEqual(editOf(field(two, 1), ""), { do: "clear-reading", ...at, reading: 1 });
  assert.deepEqual(editOf(field(once), ""), { do: "clear-measure", ...at });
  assert.equal(editOf(field(once), "94.0 "), null);
});

test("the tape takes the place of an estimate", () => {
  const guess = line(value("94.0 cm", { status: "estimated", error_text: "± 2.0 cm" }));
  assert.equal(editOf(field(guess), "95")?.do, "set-measure");
  assert.equal(editOf(field(guess, 1), "95")?.do, "add-reading");
});

test("a second reading that is typed before the first is stored does not take its place", () => {
  const early = field(line(), 1);
  const body = { lines: [line(value("94.0 cm"))] } as unknown as BodyAnswer;
  assert.equal(editOf(early, "94.6")?.do, "set-measure");
  assert.deepEqual(editOf(fieldIn(body, early), "94.6"), { do: "set-reading", key: "hip_girth", side: "both", text: "94.6", reading: 1 });
});

/** Which fields a measure has on the sheet, what stands in them, and what is stored when one is left. */

import { bare } from "../../server/fraction.ts";
import type { BodyAnswer, BodyEdit, MeasureLine, MeasureValue, Side } from "../../server/types.ts";

/** One box of the sheet: a reading of a measure on one side. */
export interface Field {
  readonly key: string;
  readonly side: Side;
  /** 0 for the first reading, 1 for the one taken again. */
  readonly reading: number;
  /** As it is stored, without the unit that stands over the column. */
  readonly text: string;
  readonly value: MeasureValue | null;
}

/** The sides that have fields of their own. */
export function sidesOf(line: MeasureLine, apart: boolean): readonly Side[] {
  return apart || line.values.some((value) => value.side !== "both") ? ["left", "right"] : ["both"];
}

/** The fields of one side, in the order in which they are filled; a third when two readings lie `apart`. */
export function fieldsOf(line: MeasureLine, side: Side, twice: boolean, apart: boolean): readonly Field[] {
  const value = line.values.find((one) => one.side === side) ?? null;
  const stored = textsOf(value);
  const count = Math.max(twice ? 2 : 1, stored.length, apart && stored.length === 2 ? 3 : 0);
  return Array.from({ length: count }, (_, reading) => ({ key: line.key, side, reading, text: stored[reading] ?? "", value }));
}

/** The field as it is in this body: typing goes on while an earlier number is still being stored. */
export function fieldIn(body: BodyAnswer, field: Field): Field {
  const line = body.lines.find((one) => one.key === field.key);
  const now = line && fieldsOf(line, field.side, field.reading > 0, true)[field.reading];
  return now ?? field;
}

function textsOf(value: MeasureValue | null): readonly string[] {
  if (!value) return [];
  return value.readings.length ? value.readings.map(bare) : [bare(value.text)];
}

/** What a field is called beside its line; nothing for the only one. */
export function fieldName(field: Field): string {
  const which = ["", "again", "third time"][field.reading] ?? `reading ${field.reading + 1}`;
  return [field.side === "both" ? "" : field.side, which].filter(Boolean).join(", ");
}

/** The edit that stores what was typed; null when it says nothing new. */
export function editOf(field: Field, typed: string): BodyEdit | null {
  const text = typed.trim();
  const { key, side, value, reading } = field;
  if (text === field.text) return null;
  const known = textsOf(value).length;
  if (!text) return known > 1 ? { do: "clear-reading", key, side, reading } : { do: "clear-measure", key, side };
  if (!value) return { do: "set-measure", key, side, text };
  // An estimate or a size of a chart is no reading: what the tape says takes its place.
  if (value.status !== "measured") return { do: reading ? "add-reading" : "set-measure", key, side, text };
  return { do: "set-reading", key, side, text, reading: Math.min(reading, known) };
}

/** Which lines stand on the sheet: what a style or a block asks for, what is taken, or all. */

import type { BlockSheet, MeasureLine } from "../../server/types.ts";

/** A short sheet: what something asks for, by the key of each measure. */
export interface ShortSheet {
  readonly id: string;
  readonly said: string;
  readonly needed: readonly string[];
  readonly asked: readonly string[];
}

export const TAKEN = "taken";
export const ALL = "all";

/** The lines of a sheet. They come in measuring order and stay in it. */
export function linesOf(lines: readonly MeasureLine[], sheet: string, short: ShortSheet | null): readonly MeasureLine[] {
  if (sheet === ALL) return lines;
  const asked = short?.asked ?? [];
  const withTaken = sheet === TAKEN;
  return lines.filter((line) => asked.includes(line.key) || (withTaken && line.values.length > 0));
}

/** The sheet that a body begins with: a new one is measured for what is asked, else what is taken is shown. */
export function firstSheet(lines: readonly MeasureLine[], short: ShortSheet | null): string {
  if (lines.some((line) => line.values.length)) return TAKEN;
  return short?.asked.length ? short.id : ALL;
}

/** What a block asks for, with those of the `blocks` that must be drafted before it. */
export function shortSheet(block: BlockSheet, blocks: readonly BlockSheet[]): ShortSheet {
  const together = [...blocks.filter((one) => block.drafted_with.includes(one.block)), block];
  const needed = together.flatMap((one) => one.needed);
  const more = together.flatMap((one) => [...one.sometimes.flatMap((at) => at.keys), ...one.estimated, ...one.helpful]);
  return { id: block.block, said: `the ${block.said}`, needed, asked: [...new Set([...needed, ...more])] };
}

/** The measures that say the rise, by the way in which it is taken. */
const RISE_KEYS: Readonly<Record<string, readonly string[]>> = {
  standing: ["standing_rise"],
  sitting: ["sitting_rise"],
  outside_minus_inside: ["outside_leg", "inside_leg"],
};

/** The two rises that stand side by side until it is said which one is taken: one of them is enough. */
const EITHER_RISE: readonly string[] = ["standing_rise", "sitting_rise"];

/** The sheet with the rise as this body's is taken; where nothing is said, both rises stand on it. */
export function withRise(short: ShortSheet, method: string | null): ShortSheet {
  if (!short.asked.some((key) => EITHER_RISE.includes(key))) return short;
  const rise = (method ? RISE_KEYS[method] : null) ?? EITHER_RISE;
  const without = (keys: readonly string[]) => keys.filter((key) => !EITHER_RISE.includes(key));
  const isNeeded = method !== null && short.needed.some((key) => EITHER_RISE.includes(key));
  const needed = isNeeded ? [...without(short.needed), ...rise] : without(short.needed);
  return { ...short, needed: [...new Set(needed)], asked: [...new Set([...without(short.asked), ...rise])] };
}

/** How many of what is asked are not taken; of two rises one is enough. */
export function missing(lines: readonly MeasureLine[], short: ShortSheet | null): number {
  const asked = lines.filter((line) => short?.asked.includes(line.key));
  const open = asked.filter((line) => !line.values.length);
  const rises = asked.filter((line) => EITHER_RISE.includes(line.key));
  return rises.length > 1 && open.some((line) => rises.includes(line)) ? open.length - 1 : open.length;
}

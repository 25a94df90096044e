/** Which lines stand on the sheet: what a style or a block asks for, what is taken, or all. */

import type { BlockSheet, MeasureLine } from "../../server/types.ts";

/** A short sheet: what something asks for, by the key of each measure. */
export interface ShortSheet {
  readonly id: string;
  readonly said: string;
  readonly needed: readonly string[];
  readonly asked: readonly string[];
  /** Where one is missing a stated figure is taken: these help most. */
  readonly most?: readonly string[];
  /** What is asked for and changes little: it waits behind a button. */
  readonly less?: readonly string[];
  /** Of these one is enough. */
  readonly either?: readonly string[];
}

export const TAKEN = "taken";
export const ALL = "all";

/** The lines of a sheet. They come in measuring order and stay in it. A short sheet leaves out what changes little
 * and is not taken, unless it was asked for (`more`). */
export function linesOf(lines: readonly MeasureLine[], sheet: string, short: ShortSheet | null, more = true): readonly MeasureLine[] {
  if (sheet === ALL) return lines;
  const asked = short?.asked ?? [];
  const withTaken = sheet === TAKEN;
  const waits = (line: MeasureLine): boolean => !more && !withTaken && !line.values.length && (short?.less ?? []).includes(line.key);
  return lines.filter((line) => (asked.includes(line.key) && !waits(line)) || (withTaken && line.values.length > 0));
}

/** How a measure stands on a short sheet, in words; empty for one that only helps. */
export function markOf(short: ShortSheet | null, key: string): string {
  if (short?.either?.includes(key)) return "needed, one of the two";
  if (short?.needed.includes(key)) return "needed";
  return short?.most?.includes(key) ? "helps most" : "";
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
  return { id: block.block, said: `the ${block.said}`, needed, asked: [...new Set([...needed, ...more])], ...weighed(together) };
}

/** What estimates begin from; it never waits. */
const BASES: readonly string[] = ["height"];

/** What helps most, and what changes little, of all that these blocks ask for. */
export function weighed(blocks: readonly BlockSheet[]): { most: readonly string[]; less: readonly string[] } {
  const most = blocks.flatMap((one) => one.estimated);
  const weighty = [...BASES, ...most, ...blocks.flatMap((one) => [...one.needed, ...one.sometimes.flatMap((at) => at.keys)])];
  return { most, less: blocks.flatMap((one) => one.helpful).filter((key) => !weighty.includes(key)) };
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
  const either = method === null ? EITHER_RISE : [];
  return { ...short, needed: [...new Set(needed)], asked: [...new Set([...without(short.asked), ...rise])], either };
}

/** How many of what is asked are not taken, but for what changes little; of two rises one is enough. */
export function missing(lines: readonly MeasureLine[], short: ShortSheet | null): number {
  const asked = lines.filter((line) => short?.asked.includes(line.key) && !short.less?.includes(line.key));
  const open = asked.filter((line) => !line.values.length);
  const rises = asked.filter((line) => EITHER_RISE.includes(line.key));
  return rises.length > 1 && open.some((line) => rises.includes(line)) ? open.length - 1 : open.length;
}

/** The marks of a ruler along the sheet, in the reader's unit. */

import type { View } from "./view.ts";

export type Unit = "cm" | "in" | "mm";

export interface Tick {
  /** px along the ruler */
  readonly at: number;
  readonly size: "small" | "middle" | "large";
  readonly label: string;
}

const MM: Record<Unit, number> = { mm: 1, cm: 10, in: 25.4 };

/** From the finest: small step, middle every, large every (in units of the small step); `unit` numbers a large one. */
const STEPS: Record<Unit, readonly [number, number, number][]> = {
  mm: [[1, 5, 10], [5, 2, 10], [10, 5, 10], [50, 2, 10], [100, 5, 10]],
  cm: [[0.1, 5, 10], [0.5, 2, 10], [1, 5, 10], [5, 2, 10], [10, 5, 10], [50, 2, 4]],
  in: [[1 / 16, 4, 16], [1 / 8, 4, 8], [1 / 2, 2, 4], [1, 3, 12], [3, 2, 4], [12, 3, 6]],
};

/** px between two marks, and between two numbers, so that "104" and "106" stand apart. */
const SMALLEST_GAP = 5;
const NUMBER_GAP = 28;

/** The ruler's step for a scale: mm of one small step, and how many make a middle and a large one. */
export function rulerStep(scale: number, unit: Unit): { small: number; middle: number; large: number } {
  const rows = STEPS[unit];
  const px = MM[unit] * scale;
  const fits = rows.find(([step, , large]) => step * px >= SMALLEST_GAP && step * large * px >= NUMBER_GAP) ?? rows.at(-1) ?? [1, 5, 10];
  return { small: fits[0] * MM[unit], middle: fits[1], large: fits[2] };
}

/** The marks between 0 and `length` px. Along the top the numbers run right, along the left they run down. */
export function ticks(view: View, along: "x" | "y", length: number, unit: Unit): Tick[] {
  const { small, middle, large } = rulerStep(view.scale, unit);
  const origin = along === "x" ? view.x : view.y;
  const gap = small * view.scale;
  const first = Math.ceil(-origin / gap);
  const last = Math.floor((length - origin) / gap);
  const found: Tick[] = [];
  for (let index = first; index <= last; index += 1) {
    const size = index % large === 0 ? "large" : index % middle === 0 ? "middle" : "small";
    const number = Math.round((index * small * 1000) / MM[unit]) / 1000;
    found.push({ at: origin + index * gap, size, label: size === "large" ? String(number) : "" });
  }
  return found;
}

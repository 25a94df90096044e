/** Places on the small ruler of sizes. */

const WIDTH = 300;
/** Room on both sides for the first and last label, and for a mark beyond the chart. */
const MARGIN = 22;

/** The x of a place, counted in sizes from the first. */
export function scalePlace(place: number, count: number): number {
  return count < 2 ? WIDTH / 2 : MARGIN + (place / (count - 1)) * (WIDTH - 2 * MARGIN);
}

/** The pencil mark: at its place, or at the end of the ruler, pointing on, when it lies beyond the sizes. */
export function markAt(place: number, count: number): { x: number; beyond: "below" | "above" | null } {
  if (place < 0) return { x: scalePlace(0, count) - 6, beyond: "below" };
  if (place > count - 1) return { x: scalePlace(count - 1, count) + 6, beyond: "above" };
  return { x: scalePlace(place, count), beyond: null };
}

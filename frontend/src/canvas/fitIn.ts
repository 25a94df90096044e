/** Laying pieces small into a box, for pictures that are only looked at. */

import { laidOut, type Laid } from "./layout.ts";
import type { Point } from "./view.ts";

/** Where each piece lies (mm, y up) and the view box that shows all of them with some room around. */
export function pictured(pieces: readonly Laid[], room = 0.04): { places: ReadonlyMap<string, Point>; viewBox: string } {
  const { places, box } = laidOut(pieces);
  const width = box.right - box.left;
  const height = box.top - box.bottom;
  const margin = room * Math.max(width, height);
  return { places, viewBox: `${box.left - margin} ${-box.top - margin} ${width + 2 * margin} ${height + 2 * margin}` };
}

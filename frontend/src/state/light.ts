/** Which edges light up with an edge: both sides of its seams. */

import type { SheetSeam } from "../server/types.ts";

/** The seams of an edge; where a side is made of several edges the edge may be any of them. */
export function seamsOf(edge: string, seams: readonly SheetSeam[]): SheetSeam[] {
  return seams.filter((seam) => seam.first.includes(edge) || seam.second.includes(edge));
}

/** All edges of these seams. */
export function edgesOf(seams: readonly SheetSeam[]): Set<string> {
  return new Set(seams.flatMap((seam) => [...seam.first, ...seam.second]));
}

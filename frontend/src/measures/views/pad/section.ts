/** A level of a form seen from the side: how deep it is drawn, and how thick the wadding lies. */

/** px; the line through the side seam, to the left of it is the front. */
export const MIDDLE = 110;
export const WIDTH = 220;
/** px left free at both ends. */
const MARGIN = 4;

interface Stretch { readonly x: number; readonly width: number }

/** What is drawn of one level: girths and thicknesses in mm. */
export interface Level { readonly form: number; readonly client: number; readonly front: number; readonly back: number }

export interface Section {
  /** The form: from its front to its back. */
  readonly form: Stretch;
  /** The wadding in front and behind; no width where there is none. */
  readonly front: Stretch;
  readonly back: Stretch;
  /** How deep the client is, taken as round. */
  readonly client: Stretch;
}

/** px for a mm, so that the deepest level just fits: all levels are drawn to one scale. */
export function scaleFor(levels: readonly Level[]): number {
  const deepest = Math.max(...levels.map((one) => Math.max(halfDepth(one.form) + Math.max(one.front, one.back), halfDepth(one.client))), 1);
  return (MIDDLE - MARGIN) / deepest;
}

/** The section of a level. */
export function section(level: Level, scale: number): Section {
  const half = halfDepth(level.form) * scale;
  const hers = halfDepth(level.client) * scale;
  return {
    form: { x: MIDDLE - half, width: 2 * half },
    front: { x: MIDDLE - half - level.front * scale, width: level.front * scale },
    back: { x: MIDDLE + half, width: level.back * scale },
    client: { x: MIDDLE - hers, width: 2 * hers },
  };
}

/** Half the depth in mm of a round section of this girth. */
function halfDepth(girth: number): number {
  return girth / (2 * Math.PI);
}

/** The view of the sheet: where a place on the sheet (mm, y up) stands on the screen (px, y down). */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** `scale` is px for one mm; `x`, `y` are the px of the sheet's origin. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Insets {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Width and height of a part of the screen, px. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

export const SMALLEST_SCALE = 0.05;
export const LARGEST_SCALE = 40;

export function toScreen(view: View, place: Point): Point {
  return { x: place.x * view.scale + view.x, y: view.y - place.y * view.scale };
}

export function toSheet(view: View, place: Point): Point {
  return { x: (place.x - view.x) / view.scale, y: (view.y - place.y) / view.scale };
}

export function panned(view: View, dx: number, dy: number): View {
  return { ...view, x: view.x + dx, y: view.y + dy };
}

/** Zoomed by a factor; what lies under the screen place `at` stays there. */
export function zoomed(view: View, factor: number, at: Point): View {
  const scale = Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, view.scale * factor));
  const kept = toSheet(view, at);
  return { scale, x: at.x - kept.x * scale, y: at.y + kept.y * scale };
}

/** What is free of a screen of this size within the insets. */
export function freeOf(width: number, height: number, insets: Insets): Extent {
  return { width: Math.max(40, width - insets.left - insets.right), height: Math.max(40, height - insets.top - insets.bottom) };
}

/** The view that shows the whole box within a screen of this size, clear of the insets. */
export function fitted(box: Box, width: number, height: number, insets: Insets): View {
  const room = freeOf(width, height, insets);
  const boxX = Math.max(1, box.right - box.left);
  const boxY = Math.max(1, box.top - box.bottom);
  const scale = Math.min(LARGEST_SCALE, Math.max(SMALLEST_SCALE, Math.min(room.width / boxX, room.height / boxY)));
  const middleX = insets.left + room.width / 2;
  const middleY = insets.top + room.height / 2;
  return {
    scale,
    x: middleX - ((box.left + box.right) / 2) * scale,
    y: middleY + ((box.bottom + box.top) / 2) * scale,
  };
}

/** Whether a box has outgrown the view, or fills less than half of what it could. */
export function unfit(view: View, box: Box, width: number, height: number, insets: Insets): boolean {
  const low = toScreen(view, { x: box.left, y: box.bottom });
  const high = toScreen(view, { x: box.right, y: box.top });
  const outgrown = low.x < 20 || high.y < 20 || high.x > width || low.y > height;
  return outgrown || fitted(box, width, height, insets).scale > 2 * view.scale;
}

/** The view of the same scale (or `least`, when that is closer) with a place in the middle of the free room. */
export function centered(view: View, place: Point, width: number, height: number, insets: Insets, least = 0): View {
  const scale = Math.max(view.scale, least);
  const middleX = insets.left + (width - insets.left - insets.right) / 2;
  const middleY = insets.top + (height - insets.top - insets.bottom) / 2;
  return { scale, x: middleX - place.x * scale, y: middleY + place.y * scale };
}

/** Part of the way from one view to another, 0 to 1: what is in the middle glides, the scale grows evenly. */
export function between(from: View, to: View, share: number): View {
  const scale = from.scale * (to.scale / from.scale) ** share;
  const mix = (a: number, b: number): number => a + (b - a) * share;
  return { scale, x: mix(from.x, to.x), y: mix(from.y, to.y) };
}

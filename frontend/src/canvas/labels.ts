/** Putting words beside a place so that they lie on no other words. */

import type { Rect } from "./route.ts";
import type { Point } from "./view.ts";

const AWAY = 12;
const STEP = 18;
const TRIES = 7;

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The box for words of this size beside `at`: outside first (where `outward`, length 1, points), then inside.
 *
 * `taken` are boxes of other words, `lines` are drawn lines that words should not lie on; `room` is never left.
 */
export function beside(
  at: Point,
  outward: Point,
  { width, height }: Size,
  taken: readonly Rect[],
  room: Rect,
  lines: readonly (readonly Point[])[] = [],
): Rect {
  const boxes = [1, -1].flatMap((side) =>
    Array.from({ length: TRIES * 2 }, (_, n) => {
      // Along the edge both ways, a little further each time.
      const slide = Math.ceil(n / 2) * STEP * (n % 2 ? 1 : -1);
      const x = at.x + side * outward.x * (AWAY + width / 2) - outward.y * slide;
      const y = at.y + side * outward.y * (AWAY + height / 2) + outward.x * slide;
      return kept({ left: x - width / 2, top: y - height / 2, right: x + width / 2, bottom: y + height / 2 }, room);
    }),
  );
  const free = boxes.filter((box) => !taken.some((other) => overlaps(box, other)));
  const clear = free.find((box) => !lines.some((line) => crosses(line, box)));
  return clear ?? free[0] ?? boxes[0] ?? { left: at.x, top: at.y, right: at.x + width, bottom: at.y + height };
}

/** Whether a chain of points runs through a box. */
export function crosses(line: readonly Point[], box: Rect): boolean {
  return line.some((end, index) => {
    const start = line[index - 1] ?? end;
    return within(start, end, box);
  });
}

/** Whether any part of a segment lies in a box: what is left of it after cutting at the four sides. */
function within(start: Point, end: Point, box: Rect): boolean {
  let from = 0;
  let to = 1;
  const cuts: [number, number, number][] = [
    [start.x, end.x - start.x, box.left],
    [-start.x, start.x - end.x, -box.right],
    [start.y, end.y - start.y, box.top],
    [-start.y, start.y - end.y, -box.bottom],
  ];
  for (const [origin, step, limit] of cuts) {
    if (step === 0) {
      if (origin < limit) return false;
      continue;
    }
    const share = (limit - origin) / step;
    if (step > 0) from = Math.max(from, share);
    else to = Math.min(to, share);
  }
  return from < to || (from === to && start.x === end.x && start.y === end.y);
}

export function overlaps(a: Rect, b: Rect): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function kept(box: Rect, room: Rect): Rect {
  const dx = Math.max(0, room.left - box.left) - Math.max(0, box.right - room.right);
  const dy = Math.max(0, room.top - box.top) - Math.max(0, box.bottom - room.bottom);
  return { left: box.left + dx, right: box.right + dx, top: box.top + dy, bottom: box.bottom + dy };
}

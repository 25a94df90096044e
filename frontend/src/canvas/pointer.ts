/** What fingers, pen and mouse mean on the sheet: a click, a pan, a pinch. Pure: state in, state out. */

import type { Point } from "./view.ts";

export interface PointerState {
  readonly down: ReadonlyMap<number, Point>;
  readonly start: Point | null;
  readonly moved: boolean;
}

export type PointerAction =
  | { readonly kind: "none" }
  | { readonly kind: "click"; readonly at: Point }
  | { readonly kind: "pan"; readonly dx: number; readonly dy: number }
  | { readonly kind: "pinch"; readonly factor: number; readonly at: Point; readonly dx: number; readonly dy: number };

export type PointerHappening = "down" | "move" | "up" | "cancel";

/** px that a press may stray and still be a click. */
export const SLACK = 4;

export const AT_REST: PointerState = { down: new Map(), start: null, moved: false };
const NOTHING: PointerAction = { kind: "none" };

/** The state after a happening of pointer `id` at a place (px), and what is to be done. */
export function pointed(
  state: PointerState,
  happening: PointerHappening,
  id: number,
  at: Point,
): [PointerState, PointerAction] {
  if (happening === "down") return [pressed(state, id, at), NOTHING];
  if (happening === "move") return movedTo(state, id, at);
  const down = new Map(state.down);
  if (!down.delete(id)) return [state, NOTHING];
  if (down.size) return [{ ...state, down }, NOTHING];
  const clicked = happening === "up" && !state.moved;
  return [AT_REST, clicked ? { kind: "click", at } : NOTHING];
}

function pressed(state: PointerState, id: number, at: Point): PointerState {
  const down = new Map(state.down).set(id, at);
  // A second finger makes a pinch; when it is lifted again that is no click.
  return { down, start: state.start ?? at, moved: down.size > 1 };
}

function movedTo(state: PointerState, id: number, at: Point): [PointerState, PointerAction] {
  const before = state.down.get(id);
  if (!before || !state.start) return [state, NOTHING];
  const strayed = Math.hypot(at.x - state.start.x, at.y - state.start.y) > SLACK;
  if (!state.moved && !strayed) return [state, NOTHING];
  const down = new Map(state.down).set(id, at);
  const next = { ...state, down, moved: true };
  if (down.size === 1) {
    const from = state.moved ? before : state.start;
    return [next, { kind: "pan", dx: at.x - from.x, dy: at.y - from.y }];
  }
  return [next, pinch([...state.down.values()], [...down.values()])];
}

function pinch(before: Point[], after: Point[]): PointerAction {
  const [a, b] = before;
  const [c, d] = after;
  if (!a || !b || !c || !d) return NOTHING;
  const apart = (p: Point, q: Point): number => Math.max(1, Math.hypot(p.x - q.x, p.y - q.y));
  const middle = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const from = middle(a, b);
  const at = middle(c, d);
  return { kind: "pinch", factor: apart(c, d) / apart(a, b), at, dx: at.x - from.x, dy: at.y - from.y };
}

/** How the views of the figure lie beside each other, and how large its numbers are. */

export interface Sized {
  readonly width: number;
  readonly height: number;
}

export interface Named extends Sized {
  readonly tapes: readonly { readonly key: string }[];
}

export interface Board<View> {
  readonly views: readonly { readonly view: View; readonly x: number }[];
  readonly width: number;
  readonly height: number;
  /** px of the screen for one mm of the drawing. */
  readonly scale: number;
}

/** mm between two views. */
const GAP = 4;
/** mm of a number as the figure was drawn for, so that none touches another. */
const NUMBER = 3.1;
/** px below which a number is not read. */
const READABLE = 10;
/** How many numbers may be larger than drawn before they would touch. */
const FEW = 14;

/** Front and back, and beside them the one that shows the measure in focus: the side, or seated. */
export function threeOf<View extends Named>(views: readonly View[], focus: string | null): readonly View[] {
  const [front, back, ...others] = views;
  if (!front || !back) return views;
  const shows = (view: View): boolean => view.tapes.some((tape) => tape.key === focus);
  const onBoth = shows(front) || shows(back);
  const third = (onBoth ? undefined : others.find(shows)) ?? others[0];
  return third ? [front, back, third] : [front, back];
}

/** The views from left to right in one scale, on a board of at least the `widest` mm; null while there is no room. */
export function placed<View extends Sized>(views: readonly View[], room: number, tall: number, widest = 0): Board<View> | null {
  if (room < 40 || tall < 40) return null;
  let x = 0;
  const found = views.map((view) => {
    const place = { view, x };
    x += view.width + GAP;
    return place;
  });
  const width = Math.max(x - GAP, widest);
  // The last one stands in the middle of what is left.
  const last = found.at(-1);
  if (last) last.x += (width - (x - GAP)) / 2;
  const height = Math.max(...views.map((view) => view.height));
  return { views: found, width, height, scale: Math.min(room / width, tall / height) };
}

/** The sizes of the numbers in mm: of the one in focus, and of the others, 0 where they would only be in the way. */
export function numberSize(scale: number, count: number): { readonly picked: number; readonly other: number } {
  const readable = READABLE / scale;
  const largest = (count <= FEW ? 2 : 1.35) * NUMBER;
  return { picked: Math.max(NUMBER, 13 / scale), other: readable <= largest ? Math.max(NUMBER, readable) : 0 };
}

/** The width (mm) that holds front, back and the widest of the other views: the board does not jump. */
export function widestOf(views: readonly Sized[]): number {
  const [front, back, ...others] = views.map((view) => view.width);
  return (front ?? 0) + (back ?? 0) + Math.max(0, ...others) + 2 * GAP;
}

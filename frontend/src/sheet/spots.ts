/** Where the things stand on the sheet that a field may be filled with: points, darts, notches, seams, pieces. */

import { pathPoints } from "../canvas/path.ts";
import type { Point } from "../canvas/view.ts";
import type { Named, SheetPiece, SheetSeam } from "../server/types.ts";
import { moved } from "./drawing.ts";

/** One thing that can be picked, and its place on the sheet. */
export interface Spot {
  readonly name: string;
  readonly said: string;
  readonly at: Point;
}

/** What is drawn of a style, and where each of its pieces lies. */
export interface Drawn {
  readonly pieces: readonly SheetPiece[];
  readonly seams: readonly SheetSeam[];
  readonly places: ReadonlyMap<string, Point>;
}

/** The spots of the named things, piece by piece; what is not drawn has none. */
export function spotsOf(wanted: readonly Named[], drawn: Drawn): readonly Spot[] {
  const said = new Map(wanted.map((one) => [one.name, one.said]));
  const starts = new Map(drawn.seams.map((seam) => [seam.first[0] ?? "", seam.name]));
  return drawn.pieces.flatMap((piece) => {
    const at = drawn.places.get(piece.name) ?? { x: 0, y: 0 };
    const found = new Map<string, Spot>();
    for (const [name, place] of placesOn(piece, starts)) {
      const known = said.has(name) ? name : plain(name);
      const words = said.get(known);
      if (words !== undefined && !found.has(known)) found.set(known, { name: known, said: words, at: moved(place, at) });
    }
    return [...found.values()];
  });
}

/** Without the side at its end. */
function plain(name: string): string {
  return name.replace(/@(left|right)$/, "");
}

/** Every name of a piece that is no edge, with a place for it: a dart stands at its first leg, a piece at its title. */
function* placesOn(piece: SheetPiece, starts: ReadonlyMap<string, string>): Generator<readonly [string, Point]> {
  yield [piece.name, piece.title_at];
  for (const point of piece.points) yield [point.name, point.place];
  for (const notch of piece.notches) yield [notch.name, notch.place];
  for (const dart of piece.intakes) {
    const leg = piece.edges.find((edge) => edge.name.startsWith(`${dart.name}/`));
    if (leg) yield [dart.name, leg.middle];
  }
  for (const line of piece.lines.filter((one) => one.kind === "dart_leg")) {
    const points = pathPoints(line.path);
    const middle = points[Math.floor(points.length / 2)];
    if (middle) yield [line.name.split("/").slice(0, -1).join("/"), middle];
  }
  for (const edge of piece.edges) {
    const seam = starts.get(edge.name);
    if (seam) yield [seam, edge.middle];
  }
}

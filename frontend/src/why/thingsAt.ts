/** What can be asked about where an edge was picked: the edge, what it belongs to, and the points of its piece. */

import type { Named, StyleAnswer } from "../server/types.ts";
import { seamsOf } from "../state/light.ts";

/** The edge first, then its ends, its dart, its seams, its piece, and the other darts and marked points of that piece. */
export function thingsAt(edge: string, style: Pick<StyleAnswer, "pieces" | "seams">): readonly Named[] {
  const piece = style.pieces.find((one) => one.edges.some(({ name }) => name === edge));
  const own = piece?.edges.find(({ name }) => name === edge);
  if (!piece || !own) return [];
  const isOwn = ({ name }: Named): boolean => edge.startsWith(`${name}/`);
  const ends = piece.points.filter(({ name }) => name === own.start || name === own.end);
  const seams = seamsOf(edge, style.seams).map(({ name, said }) => ({ name, said: said.includes("seam") ? said : `${said}, the seam` }));
  const whole = { name: piece.name, said: `${piece.title}, the whole piece` };
  const found = [own, ...ends, ...piece.intakes.filter(isOwn), ...seams, whole, ...piece.intakes, ...piece.points.filter((point) => point.mark)];
  return [...new Map(found.map(({ name, said }) => [name, { name, said }])).values()];
}

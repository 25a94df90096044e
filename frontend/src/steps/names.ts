/** Which names a field offers, and what an edge that was picked on the sheet is called there. */

import { kindOf, plainForm, type Form, type Values } from "../server/form.ts";
import type { EdgeChoice, NameChoices, Named } from "../server/types.ts";

/** The names of a kind; for a point the two ends of the edge beside it. */
export function namesFor(kind: string, choices: NameChoices | null, edge: string): readonly Named[] {
  if (!choices) return [];
  if (kind === "edge") return toldApart(choices.edges);
  if (kind === "intake") return choices.intakes;
  if (kind === "piece") return choices.pieces;
  if (kind === "notch") return choices.notches;
  if (kind === "inner_dart") return choices.inner_darts;
  if (kind === "pivot") return choices.pivots;
  const found = choices.edges.find((one) => one.name === edge);
  if (found) return found.ends;
  const every = new Map(choices.edges.flatMap((one) => one.ends.map((end) => [end.name, end] as const)));
  return [...every.values()];
}

/** Edges of the same words are told apart by their length. */
function toldApart(edges: readonly EdgeChoice[]): readonly Named[] {
  const times = new Map<string, number>();
  for (const { said } of edges) times.set(said, (times.get(said) ?? 0) + 1);
  return edges.map((one) => ((times.get(one.said) ?? 0) > 1 ? { name: one.name, said: `${one.said}, ${one.length_text}` } : one));
}

/** The name under which a step knows an edge of the sheet: without its side, or what it was before it was cut. */
export function knownAs(edge: string, choices: NameChoices | null): string | null {
  const plain = edge.replace(/@(left|right)$/, "");
  const names = (choices?.edges ?? []).map((one) => one.name);
  const found = names.filter((name) => name === edge || name === plain || plain.startsWith(`${name}/`));
  return found.sort((a, b) => b.length - a.length)[0] ?? null;
}

/** The dart one of whose legs is this edge of the sheet. */
export function intakeAt(edge: string, choices: NameChoices | null): string | null {
  const plain = edge.replace(/@(left|right)$/, "");
  return choices?.intakes.find((one) => plain.startsWith(`${one.name}/`))?.name ?? null;
}

/** The field whose edge a point lies at: the one that the point's own name begins with, else `edge` or `edges`. */
export function edgeFieldOf(point: string, fields: readonly string[]): string {
  const named = fields.filter((name) => point.startsWith(`${name}_`)).sort((a, b) => b.length - a.length);
  return named[0] ?? (fields.includes("edge") ? "edge" : "edges");
}

/** The values after a field was changed: the ends beside a new edge become ends of that edge. */
export function withEnds(values: Values, form: Form, root: Form, changed: string, choices: NameChoices | null): Values {
  const part = form.properties?.[changed];
  if (!part || kindOf(plainForm(part, root).form) !== "edge") return values;
  const ends = choices?.edges.find((one) => one.name === values[changed])?.ends.map((end) => end.name);
  if (!ends?.length) return values;
  const fields = Object.entries(form.properties ?? {});
  const edges = fields.filter(([, other]) => kindOf(plainForm(other, root).form) === "edge").map(([name]) => name);
  const points = fields.filter(([name, other]) => kindOf(plainForm(other, root).form) === "point" && (edges.length < 2 || edgeFieldOf(name, edges) === changed));
  const moved = points.filter(([name]) => !ends.includes(String(values[name])));
  return { ...values, ...Object.fromEntries(moved.map(([name]) => [name, ends[0]])) };
}

/** A name in words, for one that the server has no words for any more. */
export function spokenOf(name: string): string {
  return (name.split("/").slice(1).join(", ") || name).replaceAll("_", " ");
}

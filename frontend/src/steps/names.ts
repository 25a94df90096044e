/** Which names a field offers, and what an edge that was picked on the sheet is called there. */

import { kindOf, plainForm, type Form, type Values } from "../server/form.ts";
import type { EdgeChoice, NameChoices, Named } from "../server/types.ts";

/** The names of a kind; for a point the two ends of the edge beside it. */
export function namesFor(kind: string, choices: NameChoices | null, edge: string): readonly Named[] {
  if (!choices) return [];
  if (kind === "edge") return toldApart(choices.edges);
  if (kind === "level") return [...choices.levels, ...toldApart(choices.edges)];
  if (kind === "intake") return choices.intakes;
  if (kind === "piece") return choices.pieces;
  if (kind === "notch") return choices.notches;
  if (kind === "inner_dart") return choices.inner_darts;
  if (kind === "pivot") return choices.pivots;
  if (kind === "seam") return choices.seams;
  const found = choices.edges.find((one) => one.name === edge);
  if (found) return found.ends;
  const onPiece = (one: EdgeChoice, said: string): string => `${one.said.split(", ")[0]}, ${said}`;
  const every = choices.edges.flatMap((one) => one.ends.map((end) => [end.name, { name: end.name, said: onPiece(one, end.said) }] as const));
  return [...new Map(every).values()];
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

/** The field whose edge a point lies at: the one that the point's own name begins with, else `edge`, `neck` or `edges`. */
export function edgeFieldOf(point: string, fields: readonly string[]): string {
  const named = fields.filter((name) => point.startsWith(`${name}_`)).sort((a, b) => b.length - a.length);
  return named[0] ?? ["edge", "neck"].find((name) => fields.includes(name)) ?? "edges";
}

/** The values after a field was changed: the ends beside a new edge become ends of that edge, and where a step
 * names two edges their ends go together. */
export function withEnds(values: Values, form: Form, root: Form, changed: string, choices: NameChoices | null): Values {
  const optional = openEnd(form, root, changed);
  if (optional && choices) return withOpenEnd(values, changed, optional, choices);
  const kinds = kindsOf(form, root);
  const edges = namesOf(kinds, "edge");
  const points = namesOf(kinds, "point");
  if (!choices || ![...edges, ...points].includes(changed)) return values;
  const after: Values = { ...values };
  const lead = points[0] ?? "";
  for (const name of points) {
    const edge = edgeFieldOf(name, edges);
    const ends = endsOf(values[edge], choices);
    if (!ends.length) continue;
    const follows = name !== lead && edge !== edgeFieldOf(lead, edges) && [edge, lead, edgeFieldOf(lead, edges)].includes(changed);
    const mate = follows ? ends[1 - endsOf(values[edgeFieldOf(lead, edges)], choices).indexOf(String(after[lead]))] : undefined;
    if (mate) after[name] = mate;
    else if (changed === edge && !ends.includes(String(values[name]))) after[name] = likelyEnd(name.replace(`${edge}_`, ""), ends, choices);
  }
  return after;
}

/** The end that may stay open and belongs to an edge that may stay open: `across_center` to `across`. */
function openEnd(form: Form, root: Form, edge: string): string | undefined {
  const isOpen = (name: string, kind: string): boolean => {
    const plain = plainForm(form.properties?.[name] ?? {}, root);
    return plain.optional && kindOf(plain.form) === kind;
  };
  if (!isOpen(edge, "edge")) return undefined;
  return Object.keys(form.properties ?? {}).find((name) => name.startsWith(`${edge}_`) && isOpen(name, "point"));
}

/** An edge that was chosen brings its end, and takes it away again. */
function withOpenEnd(values: Values, edge: string, end: string, choices: NameChoices): Values {
  const ends = endsOf(values[edge], choices);
  return { ...values, [end]: ends.length ? likelyEnd(end.replace(`${edge}_`, ""), ends, choices) : null };
}

/** The kind of each field that must be said. */
function kindsOf(form: Form, root: Form): readonly (readonly [string, string])[] {
  const fields = Object.entries(form.properties ?? {}).map(([name, part]) => [name, plainForm(part, root)] as const);
  return fields.filter(([, plain]) => !plain.optional).map(([name, plain]) => [name, kindOf(plain.form)] as const);
}

function namesOf(kinds: readonly (readonly [string, string])[], wanted: string): readonly string[] {
  return kinds.filter(([, kind]) => kind === wanted).map(([name]) => name);
}

/** The ends of an edge in the order in which the outline runs: so the first of one edge lies on the same side of
 * the piece as the second of an edge across. */
function endsOf(edge: unknown, choices: NameChoices): readonly string[] {
  return choices.edges.find((one) => one.name === edge)?.ends.map((end) => end.name) ?? [];
}

/** What lies at the end that a field asks for by another word. */
const LIES_AT: Readonly<Record<string, readonly string[]>> = { from: ["center"], starts: ["center"], upper: ["upper", "waist", "armhole"] };

/** The end that the field is called after (center, hem, underarm); what is counted is counted from the center. */
function likelyEnd(field: string, ends: readonly string[], choices: NameChoices): string | undefined {
  const first = field.split("_")[0] ?? "";
  const found = (LIES_AT[first] ?? [first]).map((word) => endAt(word, ends, choices));
  return found.find((end) => end !== undefined) ?? ends[0];
}

/** The end that has the word in its name, or at which an edge of that name meets. */
function endAt(meant: string, ends: readonly string[], choices: NameChoices): string | undefined {
  const last = (name: string): string => name.split("/").at(-1) ?? "";
  const whole = (name: string): string => name.split("/")[1] ?? ""; // its own word, were it cut in two
  const meets = (end: string): boolean =>
    choices.edges.some((one) => whole(one.name).startsWith(meant) && one.ends.some(({ name }) => name === end));
  return ends.find((end) => last(end).includes(meant)) ?? ends.find(meets);
}

/** The names piece by piece, in order; the piece of what the step names already comes first. */
export function byPiece(names: readonly Named[], first: string): readonly (readonly [string, readonly Named[]])[] {
  const found = new Map<string, Named[]>();
  for (const one of names) {
    const piece = pieceIn(one.said);
    found.set(piece, [...(found.get(piece) ?? []), one]);
  }
  return [...found].sort(([a], [b]) => Number(b === first) - Number(a === first));
}

/** The piece that a name in words begins with; none where it says no piece. */
export function pieceIn(said: string): string {
  return said.includes(", ") ? (said.split(", ")[0] ?? "") : "";
}

/** The piece of the first edge or dart that the values name. */
export function pieceNamed(values: unknown, choices: NameChoices | null): string {
  const named = JSON.stringify(values ?? null).match(/"[^"]+"/g) ?? [];
  const known = new Map([...(choices?.edges ?? []), ...(choices?.intakes ?? [])].map((one) => [`"${one.name}"`, one.said]));
  const said = named.map((name) => known.get(name)).find((one) => one !== undefined);
  return said ? pieceIn(said) : "";
}

/** A name in words, for one that the server has no words for any more. */
export function spokenOf(name: string): string {
  return (name.split("/").slice(1).join(", ") || name).replaceAll("_", " ");
}

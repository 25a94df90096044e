/** In which order the measures stand: those that the style asks for first, each group in measuring order. */

import type { MeasureLine } from "../server/types.ts";

export interface Groups {
  readonly needed: readonly MeasureLine[];
  readonly taken: readonly MeasureLine[];
  readonly open: readonly MeasureLine[];
}

/** The lines come in measuring order from the server and stay in it. */
export function inOrder(lines: readonly MeasureLine[], asked: readonly string[]): Groups {
  // What is needed comes before what only helps: the server names it first.
  const place = (line: MeasureLine): number => asked.indexOf(line.key);
  const needed = lines.filter((line) => asked.includes(line.key)).sort((a, b) => place(a) - place(b));
  const rest = lines.filter((line) => !asked.includes(line.key));
  return { needed, taken: rest.filter((line) => line.values.length), open: rest.filter((line) => !line.values.length) };
}

/** Her answers about the lines of a foreign table, and about single bodies in it. */

import type { LineSaid, RowSaid } from "../../../server/types.ts";

/** The answers with this one put in; a line has one answer, and what was said of it before stays beside. */
export function withAnswer(lines: readonly LineSaid[], number: number, said: Partial<LineSaid>): LineSaid[] {
  const before = lines.find((line) => line.number === number) ?? { number, target: "", unit: "", left_out: false };
  return [...lines.filter((line) => line.number !== number), { ...before, ...said }];
}

/** The answers about bodies with the same said of all these; what was said of them before stays beside. */
export function withRows(rows: readonly RowSaid[], numbers: readonly number[], said: Partial<RowSaid>): RowSaid[] {
  const before = new Map(rows.map((row) => [row.number, row]));
  for (const number of numbers) before.set(number, { ...(before.get(number) ?? { number }), ...said });
  return [...before.values()];
}

/** What can be made to measure, in the order in which it is offered. */

import type { QuantityLine } from "../../server/types.ts";

/** Those in which the edge picked on the sheet stands come first; else the order stays. */
export function pickedFirst(quantities: readonly QuantityLine[], picked: string | null): readonly QuantityLine[] {
  if (!picked) return quantities;
  const has = (one: QuantityLine): boolean => one.edges.includes(picked);
  return [...quantities.filter(has), ...quantities.filter((one) => !has(one))];
}

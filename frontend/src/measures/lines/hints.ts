/** What stands in soft pencil in an empty box: an estimate, clearly no value. */

import type { EstimateLine, MeasureLine } from "../../server/types.ts";

/** The hint of the first box, and what stands beside it: `≈ 41.2` and `± 2.0`. */
export function hintsOf(line: MeasureLine, estimate: EstimateLine | null): readonly [string, string] {
  if (!estimate || line.values.length) return ["", ""];
  const [value = "", error = ""] = estimate.text.replace(/\s*(cm|mm|kg|°|")$/, "").split(" ± ");
  return [`≈ ${value}`, `± ${error}`];
}

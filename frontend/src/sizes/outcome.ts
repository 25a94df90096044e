/** What came of a check of sizes, in one sentence. */

import type { SizesAnswer } from "../server/types.ts";

export function outcome(answer: Pick<SizesAnswer, "chart" | "labels" | "sizes" | "state">): string {
  const done = answer.sizes.length;
  const right = answer.sizes.filter((size) => size.standing === "right").length;
  if (answer.state === "running") return `${done} of ${answer.labels.length} sizes checked …`;
  const which = answer.state === "stopped" ? `Stopped after ${done} of ${answer.labels.length} sizes` : `${done} sizes`;
  const found = right === done ? "nothing to check in any" : right ? `nothing to check in ${right}, something in ${done - right}` : "something to check in each";
  return done ? `${which} of ${answer.chart}: ${found}.` : `${which} of ${answer.chart}.`;
}

/** What typing in a line of the ease table changes: the measure of the body, or the ease that a step states. */

import { bare } from "../server/fraction.ts";
import type { BodyEdit, EaseLine, StyleEdit } from "../server/types.ts";

/** mm beyond rounding: a flare and its like change a line after the draft, so that body and ease are not its sum. */
const ROUNDING = 0.5;

/** What a line is called: "neck base", "across back". */
export function said(line: EaseLine): string {
  return line.label.replace(/[_ ]girth$/, "").replaceAll("_", " ");
}

/** Whether the line has a body and an ease of its own; else it is a plain length of the garment, such as a hem. */
export function hasBody(line: EaseLine): boolean {
  return line.measure !== "" || line.ease_field !== null || Math.abs(line.ease) > ROUNDING;
}

/** The ease as a share of the body, for a garment that is smaller than it: "-10 %"; empty for any other. */
export function reduction(line: EaseLine): string {
  if (line.measure === "" || line.body <= 0 || line.ease > -ROUNDING) return "";
  return `${Math.round((100 * line.ease) / line.body)} %`;
}

export function bodyEdit(line: EaseLine, text: string): BodyEdit {
  return { do: "set-measure", key: line.measure, text, side: "both" };
}

export function easeEdit(line: EaseLine, text: string): StyleEdit {
  return { do: "change-step", step: line.ease_field?.step ?? "", changes: { [line.ease_field?.parameter ?? ""]: text } };
}

/** The ease that the pattern has over the body now: "now + 41.0 cm"; "changed since" for a plain length of the garment. */
export function nowWords(line: EaseLine): string {
  if (!hasBody(line) || line.ease_now_text === null) return "changed since";
  const ease = bare(line.ease_now_text);
  return ease.startsWith("-") || ease.startsWith("−") ? `now ${ease}` : `now + ${ease}`;
}

/** Whether the pattern was changed after the draft, so that this line is no longer body and ease. */
export function isRestyled(line: EaseLine): boolean {
  return line.pattern !== null && Math.abs(line.body + line.ease - line.pattern) > ROUNDING;
}

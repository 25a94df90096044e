/** The views of the Measures room, in the order of their words. */

import type { Component } from "svelte";
import type { BodyAnswer } from "../../server/types.ts";
import ChartsView from "./ChartsView.svelte";
import CompareView from "./CompareView.svelte";
import ImportView from "./ImportView.svelte";
import MeasureView from "./MeasureView.svelte";
import PadView from "./PadView.svelte";
import PersonalView from "./PersonalView.svelte";

export interface RoomView {
  readonly word: string;
  readonly view: Component<{ body: BodyAnswer }>;
}

export const VIEWS: readonly [RoomView, ...RoomView[]] = [
  { word: "measure", view: MeasureView },
  { word: "compare", view: CompareView },
  { word: "pad", view: PadView },
  { word: "size charts", view: ChartsView },
  { word: "import", view: ImportView },
  { word: "personal data", view: PersonalView },
];

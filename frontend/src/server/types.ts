/** Short names for the server's forms; `api.d.ts` is made from the server itself. */

import type { components } from "./api.d.ts";

type Forms = components["schemas"];

export type At = Forms["At"];
export type CutAnswer = Forms["CutAnswer"];
export type CutLine = Forms["CutLine"];
export type BodyAnswer = Forms["BodyAnswer"];
export type EdgeChoice = Forms["EdgeChoice"];
export type Entry = Forms["Entry"];
export type Findings = Forms["Findings"];
export type FindingNote = Forms["FindingNote"];
export type Girth = Forms["Girth"];
export type MeasureLine = Forms["MeasureLine"];
export type MeasureValue = Forms["MeasureValue"];
export type Named = Forms["Named"];
export type NameChoices = Forms["NameChoices"];
export type Offer = Forms["Offer"];
export type Proven = Forms["Proven"];
export type Refusal = Forms["Refusal"];
export type SheetEdge = Forms["SheetEdge"];
export type SheetPiece = Forms["SheetPiece"];
export type SheetSeam = Forms["SheetSeam"];
export type Shelf = Forms["Shelf"];
export type StepLine = Forms["StepLine"];
export type StepOffer = Forms["StepOffer"];
export type StyleAnswer = Forms["StyleAnswer"];
export type NewStyle = Forms["NewStyle"];
export type StyleEdit = Forms["StyleChange"]["edit"];
export type BodyEdit = Forms["BodyChange"]["edit"];
export type Side = Forms["SetMeasure"]["side"];
export type { Unit } from "../canvas/ticks.ts";

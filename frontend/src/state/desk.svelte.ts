/** The style on the table: what is kept, what is only looked at, and what is picked on the sheet. */

import { call, Refused } from "../server/call.ts";
import { Latest } from "../server/latest.ts";
import type { BodyEdit, CutAnswer, CutLine, Findings, NameChoices, Named, NewStyle, NoteWish, Refusal, StyleAnswer, StyleEdit, StyleFromRack, Unit } from "../server/types.ts";
import { workroom } from "./workroom.svelte.ts";

/** A field that waits for something to be picked on the sheet: an edge, or one of `spots`. */
export interface Picking {
  readonly words: string;
  /** What may be picked besides edges: points, darts, notches, seams, pieces. */
  readonly spots?: readonly Named[];
  /** What is to be done, for the line above the sheet. */
  readonly how: string;
  /** Whether it was begun by keyboard. */
  readonly byKey: boolean;
  readonly take: (name: string) => void;
  /** Called when nothing is picked. */
  readonly leave?: () => void;
}

/** What came after a drawing; it holds for that drawing only. */
interface Later<Kind> {
  readonly of: StyleAnswer;
  readonly what: Kind;
}

/** A look: which edit it is of, and where it was asked. */
interface Look {
  readonly at: "preview" | "body-preview";
  readonly edit: StyleEdit | BodyEdit;
}

class Desk {
  style = $state.raw<StyleAnswer | null>(null);
  preview = $state.raw<StyleAnswer | null>(null);
  refusal = $state.raw<Refusal | null>(null);
  opened = $state<string | null>(null);
  adding = $state(false);
  picking = $state.raw<Picking | null>(null);
  picked = $state<string | null>(null);
  finding = $state<number | null>(null);
  /** What a finding would have come out, while a number is looked for. */
  wish = $state.raw<NoteWish | null>(null);
  naming = $state<"rename" | "new" | null>(null);
  withCut = $state(localStorage.getItem("cut line") === "shown");
  private report = $state.raw<Later<Findings> | null>(null);
  private cut = $state.raw<Later<readonly CutLine[] | Refusal> | null>(null);
  private looked: Look | null = null;
  private turn: Promise<boolean> = Promise.resolve(true);
  private readonly questions = new Latest();

  /** What the sheet shows in full lines. */
  get shown(): StyleAnswer | null {
    return this.preview ?? this.style;
  }

  /** The findings of what is shown; while they are not there yet those of what is kept. */
  get findings(): Findings | null {
    const own = this.report && this.report.of === this.shown ? this.report.what : this.shown?.findings;
    if (own) return own;
    return this.report && this.report.of === this.style ? this.report.what : (this.style?.findings ?? null);
  }

  /** The drawing whose findings are still to come, and after how long a rest (ms) they are asked for. */
  get unread(): { readonly style: StyleAnswer; readonly rest: number } | null {
    const style = this.shown;
    return style && this.report?.of !== style ? { style, rest: this.preview ? 300 : 500 } : null;
  }

  /** The cut lines of what is kept; none while something else is looked at. */
  get cutLines(): readonly CutLine[] {
    const what = this.cutOfNow;
    return what && "length" in what ? what : [];
  }

  /** Why what is kept has no cut lines. */
  get uncuttable(): Refusal | null {
    const what = this.cutOfNow;
    return what && "code" in what ? what : null;
  }

  private get cutOfNow(): readonly CutLine[] | Refusal | null {
    return this.withCut && !this.preview && this.cut && this.cut.of === this.style ? this.cut.what : null;
  }

  /** The style whose cut lines are wanted and not there. */
  get uncut(): StyleAnswer | null {
    return this.withCut && this.cut?.of !== this.style ? this.style : null;
  }

  /** The names that the open step, or a new one, may refer to. */
  get choices(): NameChoices | null {
    return this.style?.choices[this.adding ? "" : (this.opened ?? "")] ?? null;
  }

  /** What an empty ease of a step comes to in what is shown; `step` is null for one that is only looked at. */
  figureOf(step: string | null, parameter: string): string {
    const known = new Set(this.style?.steps.map((one) => one.id));
    const row = this.shown?.eases.find(({ ease_field: field }) =>
      field?.parameter === parameter && (step === null ? !known.has(field.step) : field.step === step));
    return row?.ease_text ?? "";
  }

  async open(id: number): Promise<void> {
    this.style = await call<StyleAnswer>(`/styles/${id}`, workroom.unit);
  }

  /** A new style in the book, and it is put on the table. */
  begin(asked: NewStyle): Promise<Refusal | null> {
    return this.begun("/styles", asked);
  }

  /** A style of the rack, run on a body. */
  beginFromRack(asked: StyleFromRack): Promise<Refusal | null> {
    return this.begun("/styles/from-rack", asked);
  }

  private begun(path: string, asked: NewStyle | StyleFromRack): Promise<Refusal | null> {
    return workroom.write(async () => {
      this.style = await call<StyleAnswer>(path, workroom.unit, asked);
      this.clear();
      await workroom.lookAtShelf();
    });
  }

  /** Put away all that belongs to the style that was on the table. */
  clear(): void {
    this.forget();
    this.opened = null;
    this.picked = null;
    this.adding = false;
    this.finding = null;
    this.wish = null;
    this.naming = null;
  }

  showCut(shown: boolean): void {
    this.withCut = shown;
    localStorage.setItem("cut line", shown ? "shown" : "not shown");
  }

  /** Ask what the checks say of a drawing: of a look the quick ones, else all, the papers too. */
  async lookOver(style: StyleAnswer): Promise<void> {
    const look = style === this.preview ? this.looked : null;
    const path = `/styles/${style.id}/${look ? `${look.at}/` : ""}report`;
    const what = await this.later<Findings>(path, look?.edit);
    if (what && "notes" in what && this.shown === style) this.report = { of: style, what };
  }

  /** Ask for the cut lines of what is kept, or why it has none. */
  async lookAtCut(style: StyleAnswer): Promise<void> {
    const answer = await this.later<CutAnswer>(`/styles/${style.id}/cut`);
    if (answer && this.style === style) this.cut = { of: style, what: "lines" in answer ? answer.lines : answer };
  }

  async again(): Promise<void> {
    if (this.style) await this.open(this.style.id);
  }

  /** Look at what an edit would give; nothing is stored. */
  look(edit: StyleEdit): void {
    this.ask("preview", edit);
  }

  lookAtBody(edit: BodyEdit): void {
    this.ask("body-preview", edit);
  }

  /** Wait for the look that is on its way. */
  looksDone(): Promise<void> {
    return this.questions.rest();
  }

  /** Back to what is kept. */
  forget(): void {
    this.lookAway();
    this.refusal = null;
    this.picking = null;
  }

  /** Pick nothing after all. */
  stopPicking(): void {
    const leave = this.picking?.leave;
    this.picking = null;
    leave?.();
  }

  /** Store an edit; whether it is on disk now. `unit` is the one in which its lengths were typed. */
  keep(edit: StyleEdit, unit = workroom.unit): Promise<boolean> {
    return this.write("edits", (version) => ({ expected_version: version, edit }), unit);
  }

  undo(): Promise<boolean> {
    return this.write("undo", (version) => ({ expected_version: version }));
  }

  redo(): Promise<boolean> {
    return this.write("redo", (version) => ({ expected_version: version }));
  }

  /** Nothing is looked at any more; an answer that is on its way is put away when it comes. */
  private lookAway(): void {
    this.preview = null;
    this.questions.ask(async () => {
      this.preview = null;
    });
  }

  /** What may come later, or why it does not come; null when the workroom does not answer. */
  private async later<Answer>(path: string, sent?: unknown): Promise<Answer | Refusal | null> {
    try {
      return await call<Answer>(path, workroom.unit, sent);
    } catch (error) {
      return workroom.failed(error, null);
    }
  }

  private ask(at: Look["at"], edit: Look["edit"]): void {
    this.questions.ask(async () => {
      const style = this.style;
      if (!style) return;
      try {
        this.preview = await call<StyleAnswer>(`/styles/${style.id}/${at}`, workroom.unit, edit);
        this.looked = { at, edit };
        this.refusal = null;
      } catch (error) {
        this.refusal = workroom.failed(error, null);
      }
    });
  }

  /** One edit after the other: whoever undoes twice quickly undoes two edits. */
  private write(what: string, sent: (version: number) => unknown, unit = workroom.unit): Promise<boolean> {
    const turn = this.turn.then(() => this.writeNow(what, sent, unit));
    this.turn = turn.catch(() => false);
    return turn;
  }

  private async writeNow(what: string, sent: (version: number) => unknown, unit: Unit): Promise<boolean> {
    let done = false;
    this.refusal = await workroom.write(async () => {
      const style = this.style;
      if (!style) return;
      try {
        this.style = await call<StyleAnswer>(`/styles/${style.id}/${what}`, unit, sent(style.version));
        if (unit !== workroom.unit) await this.again();
      } catch (error) {
        if (error instanceof Refused && error.isConflict) await this.again();
        throw error;
      }
      this.lookAway();
      done = true;
      if (this.style?.name !== style.name) await workroom.lookAtShelf();
    });
    return done;
  }
}

export const desk = new Desk();

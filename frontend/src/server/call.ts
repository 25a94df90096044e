/** Asking the server. A refusal in words is thrown as `Refused`, no answer at all as `Unreachable`. */

import type { Refusal } from "./types.ts";

export class Refused extends Error {
  readonly status: number;
  readonly refusal: Refusal;

  constructor(status: number, refusal: Refusal) {
    super(refusal.message);
    this.status = status;
    this.refusal = refusal;
  }

  /** Whether another edit came first. */
  get isConflict(): boolean {
    return this.status === 409;
  }
}

/** Characters, so that every letter may take four bytes. */
const KEPT_ALIVE = 15_000;

export class Unreachable extends Error {}

/** The answer to a question at `/api/...`; with `sent` it is a POST. */
export async function call<Answer>(path: string, unit: string, sent?: unknown): Promise<Answer> {
  const init: RequestInit =
    sent === undefined
      ? {}
      : { method: "POST", body: JSON.stringify(sent), headers: { "content-type": "application/json" } };
  // What is sent while the page is left still goes out; a browser carries so at most 64 kB.
  if (typeof init.body === "string") init.keepalive = init.body.length < KEPT_ALIVE;
  let answer: Response;
  try {
    answer = await fetch(`/api${path}${path.includes("?") ? "&" : "?"}unit=${unit}`, init);
  } catch {
    throw new Unreachable("The workroom does not answer.");
  }
  if (answer.ok) return (await answer.json()) as Answer;
  throw new Refused(answer.status, await refusalOf(answer));
}

async function refusalOf(answer: Response): Promise<Refusal> {
  const text = await answer.text();
  try {
    return JSON.parse(text) as Refusal;
  } catch {
    const [message = "", next_step = ""] = text.split("\n");
    return { code: "workroom-locked", message, next_step, facts: {}, offers: [], cures: [], contradiction: null };
  }
}

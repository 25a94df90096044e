import assert from "node:assert/strict";
import { test } from "node:test";
import { Latest } from "./latest.ts";

test("one is in flight, and of those that wait only the newest is asked", async () => {
  const asked: number[] = [];
  const open: (() => void)[] = [];
  const latest = new Latest();
  const job = (n: number) => () => new Promise<void>((done) => { asked.push(n); open.push(done); });
  latest.ask(job(1));
  latest.ask(job(2));
  latest.ask(job(3));
  assert.deepEqual(asked, [1]);
  open[0]?.();
  await new Promise((done) => setTimeout(done));
  assert.deepEqual(asked, [1, 3]);
  open[1]?.();
});

test("what was forgotten is not asked", async () => {
  const asked: number[] = [];
  const latest = new Latest();
  let end: (() => void) | undefined;
  latest.ask(() => new Promise<void>((done) => { end = done; }));
  latest.ask(async () => { asked.push(2); });
  latest.forget();
  end?.();
  await new Promise((done) => setTimeout(done));
  assert.deepEqual(asked, []);
});

test("it rests when the last that was asked is done", async () => {
  const done: number[] = [];
  const latest = new Latest();
  const job = (n: number) => async () => { await new Promise((end) => setTimeout(end)); done.push(n); };
  await latest.rest();
  latest.ask(job(1));
  latest.ask(job(2));
  await latest.rest();
  assert.deepEqual(done, [1, 2]);
});

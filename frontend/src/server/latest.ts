/** One question in flight; of those that wait only the newest is asked. */

export class Latest {
  private busy = false;
  private waiting: (() => Promise<void>) | null = null;
  private turn: Promise<void> = Promise.resolve();

  /** Ask now, or when the one in flight is done, unless something newer comes. */
  ask(job: () => Promise<void>): void {
    this.waiting = job;
    if (!this.busy) this.turn = this.run();
  }

  /** Wait until nothing is in flight. */
  rest(): Promise<void> {
    return this.turn;
  }

  /** Forget what waits. */
  forget(): void {
    this.waiting = null;
  }

  private async run(): Promise<void> {
    this.busy = true;
    try {
      while (this.waiting) {
        const job = this.waiting;
        this.waiting = null;
        await job();
      }
    } finally {
      this.busy = false;
    }
  }
}

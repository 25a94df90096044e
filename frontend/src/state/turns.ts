/** Jobs begun in the order in which they were asked for, so many at a time. */

type Job = () => Promise<void>;

export class Turns {
  private readonly waiting: Job[] = [];
  private readonly most: number;
  private busy = 0;

  constructor(most: number) {
    this.most = most;
  }

  /** Ask for a turn; what is returned gives it up and says so, false where it has come. A job that fails does not hold
   * up the next. */
  ask(job: Job): () => boolean {
    this.waiting.push(job);
    if (this.busy < this.most) void this.run();
    return () => {
      const place = this.waiting.indexOf(job);
      return place >= 0 && this.waiting.splice(place, 1).length > 0;
    };
  }

  private async run(): Promise<void> {
    this.busy += 1;
    for (let job = this.waiting.shift(); job; job = this.waiting.shift()) {
      try {
        await job();
      } catch {
        // Whoever asks says what became of it; here the next one has its turn.
      }
    }
    this.busy -= 1;
  }
}

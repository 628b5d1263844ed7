export interface Step {
  /** From 0 to 100. */
  progress: number;
  /** What is being done, in words. */
  stage: string;
}

/** Another attempt has taken the work over: what this one does is for nothing. */
export class ClaimLost extends Error {
  override name = 'ClaimLost';
}

const tickMs = 500;
const heartbeatMs = 3_000;

/**
 * Writes how far a long piece of work has come: at most twice a second, and every three seconds when nothing has
 * changed, as a sign of life.
 */
export class Pulse {
  readonly #write: (step: Step) => Promise<boolean>;
  readonly #timer: NodeJS.Timeout;
  #step: Step;
  #written: Step | undefined;
  #writtenAt = Date.now();
  #writing: Promise<void> | undefined;
  #lost = false;

  /** @param write answers false when the work belongs to another by now; an error it throws counts as a missed beat. */
  constructor(first: Step, write: (step: Step) => Promise<boolean>) {
    this.#step = first;
    this.#write = write;
    this.#timer = setInterval(() => this.#tick(), tickMs);
  }

  /** Moves on to another step. @throws ClaimLost when the work has been taken over. */
  show(step: Step): void {
    if (this.#lost) throw new ClaimLost('Another attempt has taken this work over.');
    this.#step = step;
  }

  /** Changes how far the step has come; for callbacks, which must not throw. */
  advance(progress: number): void {
    this.#step = { ...this.#step, progress };
  }

  async stop(): Promise<void> {
    clearInterval(this.#timer);
    await this.#writing;
  }

  #tick(): void {
    if (this.#writing || this.#lost) return;
    if (this.#step === this.#written && Date.now() - this.#writtenAt < heartbeatMs) return;
    const step = this.#step;
    this.#writing = this.#write(step)
      .then((mine) => {
        this.#lost = !mine;
        this.#written = step;
        this.#writtenAt = Date.now();
      })
      .catch(() => undefined)
      .finally(() => {
        this.#writing = undefined;
      });
  }
}

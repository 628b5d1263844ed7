/** What the service has acknowledged, kept outside of it. */
export interface Acknowledged {
  session: { tokenHash: string; personId: string };
  survey: { id: string; key: string };
  finding: { id: string; surveyId: string; title: string; key: string };
  photo: { id: string; surveyId: string; sha256: string };
  report: { id: string; surveyId: string; key: string };
  issued: { id: string; surveyId: string; revision: number; sha256: string };
  evidence: { id: string; findingId: string; key: string; files: string[] };
  decision: { id: string };
}

export type Kind = keyof Acknowledged;

/** How the service behaved towards the load that has no fault of its own. */
export interface Behaviour {
  /** Requests that got their answer at the first attempt. */
  atOnce: number;
  /** Requests that had to be sent again, under the same key. */
  repeated: number;
  /** Answers 503 with a time to wait. */
  askedToWait: number;
  /** Connections refused or broken. */
  unreachable: number;
}

/** The account of a run: what was acknowledged, what was answered meanwhile, and what was found wrong. */
export class Ledger {
  readonly behaviour: Behaviour = { atOnce: 0, repeated: 0, askedToWait: 0, unreachable: 0 };
  /** Sentences, each once, with how often it was so. */
  readonly violations = new Map<string, number>();
  readonly #entries: { [K in Kind]: Acknowledged[K][] } = {
    ...{ session: [], survey: [], finding: [], photo: [] },
    ...{ report: [], issued: [], evidence: [], decision: [] },
  };

  /** Notes that the service has said yes. */
  acknowledge<K extends Kind>(kind: K, what: Acknowledged[K]): void {
    this.#entries[kind].push(what);
  }

  /** Everything of a kind, from this place on. */
  since<K extends Kind>(kind: K, place = 0): readonly Acknowledged[K][] {
    return this.#entries[kind].slice(place);
  }

  /** How much of each kind there is. */
  counts(): Record<Kind, number> {
    const entries = Object.entries(this.#entries).map(([kind, list]) => [kind, list.length]);
    return Object.fromEntries(entries) as Record<Kind, number>;
  }

  get acknowledged(): number {
    return Object.values(this.counts()).reduce((sum, count) => sum + count, 0);
  }

  /** Notes something that must never be. */
  violation(sentence: string): void {
    const times = this.violations.get(sentence) ?? 0;
    if (times === 0) console.error(`VIOLATION ${new Date().toISOString()} ${sentence}`);
    this.violations.set(sentence, times + 1);
  }
}

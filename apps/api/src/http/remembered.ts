import type { PersonActor } from '@garboard/core/access/actor';
import type { Ahead } from '@garboard/db/reading';
import { type SessionRow, sessionsOf } from '@garboard/db/special-reads';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { LRUCache } from 'lru-cache';
import type { Deps } from './deps.ts';
import { factsOf, noteUse, personOf } from './session-person.ts';

/**
 * Who most likely asks: whom this session belonged to a moment ago. What the guess is good for is that the session can
 * be looked up in the same message as what is asked for; until that has said so, nothing is answered.
 */
export interface Guess extends Ahead {
  /** Whether the database has said that it is so. */
  holds: boolean;
  /** Notes that the session was used. */
  noteUse(): Promise<void>;
  /** Finds out who asks as if nothing had been guessed. @throws Refusal `not-signed-in` */
  again(): Promise<void>;
}

/** The session has ended, or its person may touch other things now. */
class WrongGuess extends Error {}

export interface People {
  /** Remembers whose session this is, and answers who that is. */
  remember(sessionHash: string, row: SessionRow): PersonActor;
  /** Takes the person remembered with a session for the one who asks; false when none is. */
  guess(request: FastifyRequest, sessionHash: string, again: () => Promise<void>): boolean;
}

/** Remembers the people of the sessions used last, in this process alone. */
export function rememberPeople(app: FastifyInstance, deps: Deps): People {
  const known = new LRUCache<string, { person: PersonActor; facts: string }>({ max: 10_000 });
  app.decorateRequest('guess', null);
  return {
    remember(sessionHash, row) {
      const person = personOf(row);
      known.set(sessionHash, { person, facts: factsOf(row) });
      return person;
    },
    guess(request, sessionHash, again) {
      const one = known.get(sessionHash);
      if (!one) return false;
      request.actor = one.person;
      request.sessionHash = sessionHash;
      let lastSeen: Date | undefined;
      const guess: Guess = {
        from: sessionsOf(sessionHash),
        holds: false,
        see([row]) {
          const found = row as SessionRow | undefined;
          if (!found || factsOf(found) !== one.facts) throw new WrongGuess();
          guess.holds = true;
          lastSeen = found.last_seen_at;
        },
        async noteUse() {
          if (lastSeen) await noteUse(request, deps, sessionHash, lastSeen);
        },
        again() {
          known.delete(sessionHash);
          Object.assign(request, { guess: null, actor: null, sessionHash: null });
          return again();
        },
      };
      request.guess = guess;
      return true;
    },
  };
}

declare module 'fastify' {
  interface FastifyRequest {
    guess: Guess | null;
  }
  interface FastifyContextConfig {
    /** Whether who asks may be found out together with what is asked for; see `serveReading`. */
    reads?: boolean;
  }
}

import { hash, verify } from '@node-rs/argon2';

// OWASP's password storage cheat sheet: argon2id with 19 MiB of memory, 2 passes, 1 lane.
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** argon2id hash of a password (the library's default kind), in PHC string form. */
export const hashPassword = (password: string): Promise<string> => hash(password, cost);

let decoy: Promise<string> | undefined;

/** Whether a secret that a person chose or wrote down fits; takes as long when none is kept, so that timing tells nothing. */
export async function secretFits(kept: string | null, given: string): Promise<boolean> {
  decoy ??= hashPassword('nobody has this password');
  const fits = await verify(kept ?? (await decoy), given);
  return kept !== null && fits;
}

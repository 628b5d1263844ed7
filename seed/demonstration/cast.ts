import { randomBytes } from 'node:crypto';
import type { PersonActor } from '@garboard/core/access/actor';
import { hashPassword } from '@garboard/core/people/passwords';
import { keepKey } from '@garboard/core/signing/keep-key';
import type { KeyPair } from '@garboard/core/signing/open-p12';
import { inTransaction } from '@garboard/db/database';
import { newId } from '@garboard/db/ids';
import { openSealer } from '@garboard/platform/sealing';
import { selfMadeKey } from '../self-made-key.ts';
import type { World } from '../world/types.ts';
import { dayFrom, type Stage } from './stage.ts';

export interface SignIn {
  role: string;
  name: string;
  email: string;
  password: string;
  /** 2 for people of the second firm. */
  firm?: number;
}

/** Four words' worth of chance, easy to type. */
const newPassword = (): string => randomBytes(9).toString('base64url').replace(/[-_]/g, 'x');

/** The part a person plays: their role at a firm, else their first role in a survey. */
function roleOf(world: World, key: string): string {
  const person = world.people.find((p) => p.key === key);
  const party = world.surveys.flatMap((s) => s.parties).find((p) => p.person === key);
  return person?.firm?.role ?? party?.role ?? 'owner';
}

/** A key that the firm made itself: reports of the demonstration are signed, but nobody vouches for the firm. */
const demonstrationKey = (stage: Stage, firmName: string) =>
  selfMadeKey({
    firmName,
    country: 'GB',
    validFrom: dayFrom(stage, -400),
    validUntil: new Date(stage.loadedAt.getTime() + 3 * 365 * 86_400_000),
    kind: 'rsa',
  });

/** Founds the firms and gives everybody an account; returns the sign-ins. */
export async function castPeople(stage: Stage, world: World): Promise<SignIn[]> {
  for (const firm of world.firms) stage.firmIds.set(firm.key, newId());
  const all = [...stage.firmIds.values()];
  const signIns: SignIn[] = [];
  const sealer = await openSealer(stage.env);
  const pairs = new Map<string, KeyPair>();
  for (const firm of world.firms) pairs.set(firm.key, await demonstrationKey(stage, firm.name));
  await inTransaction(stage.db, all, async (tx) => {
    for (const firm of world.firms) {
      const { name, email, phone } = firm;
      const id = stage.firmIds.get(firm.key) ?? '';
      await tx.firm.create({ data: { id, name, email, phone, addressLines: firm.address.split(', ') } });
      const pair = pairs.get(firm.key);
      const clock = () => stage.loadedAt;
      if (pair) await keepKey({ tx, clock }, { firmId: id, pair, sealer, addedBy: 'The demonstration' });
    }
    for (const person of world.people) {
      const password = newPassword();
      const id = newId();
      const { name, email } = person;
      const passwordHash = await hashPassword(password);
      await tx.person.create({ data: { id, name, email, passwordHash, joinedAt: stage.loadedAt } });
      const memberships: PersonActor['memberships'] = person.firm
        ? [{ firmId: stage.firmIds.get(person.firm.key) ?? '', role: person.firm.role }]
        : [];
      for (const { firmId, role } of memberships) {
        await tx.firmMember.create({ data: { id: newId(), firmId, personId: id, role } });
      }
      const surveys = world.surveys.filter((s) => s.parties.some((p) => p.person === person.key));
      const invitedBy = surveys.map((s) => stage.firmIds.get(s.firm) ?? '');
      const firmIds = [...new Set([...memberships.map((m) => m.firmId), ...invitedBy])];
      stage.actors.set(person.key, { kind: 'person', personId: id, name, email, memberships, firmIds });
      const home = person.firm?.key ?? surveys[0]?.firm;
      const second = home !== undefined && home !== world.firms[0]?.key;
      signIns.push({
        role: roleOf(world, person.key),
        name,
        email,
        password,
        ...(second ? { firm: 2 } : {}),
      });
    }
  });
  return signIns;
}

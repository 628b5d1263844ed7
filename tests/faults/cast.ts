import { hashPassword } from '@garboard/core/people/passwords';
import { type Database, inTransaction } from '@garboard/db/database';
import { buildFirm, buildJpeg, buildPerson, type Signed } from '@garboard/seed/builders';
import type { Installation } from './processes.ts';

/** Who works in a run: one firm, an owner to whom it reports, people who sign in. */
export interface Cast {
  firm: { id: string; principal: Signed; surveyor: Signed };
  owner: Signed;
  password: string;
  signingIn: Signed[];
  /** A real photograph, of which each upload gets bytes of its own. */
  jpeg: Buffer;
}

const password = 'a long password for a test of faults';
/** Longer than any run, and than the hours by which clocks are set. */
const sessionMs = 20 * 24 * 3_600_000;

/** Founds the firm of a run, before the first fault. */
export async function assemble(db: Database, installation: Installation, receiverUrl: string): Promise<Cast> {
  const firm = await buildFirm(db, ['principal', 'surveyor']);
  const owner = await buildPerson(db, { name: 'Ada Holm' });
  const signingIn = await Promise.all([1, 2, 3].map((n) => buildPerson(db, { name: `Visitor ${n}` })));
  const passwordHash = await hashPassword(password);
  await inTransaction(db, [firm.id], async (tx) => {
    await tx.person.updateMany({ where: { id: { in: signingIn.map((p) => p.id) } }, data: { passwordHash } });
    await tx.session.updateMany({ data: { expiresAt: new Date(Date.now() + sessionMs) } });
  });
  const answer = await fetch(`${installation.url}/v1/webhook-endpoints`, {
    method: 'POST',
    headers: { authorization: `Bearer ${firm.principal.token}`, 'content-type': 'application/json' },
    body: JSON.stringify({
      ...{ firmId: firm.id, role: 'principal', label: 'Ledger of faults' },
      ...{ url: receiverUrl, kinds: ['report.issued'] },
    }),
  });
  if (answer.status !== 201) throw new Error(`No webhook: ${await answer.text()}`);
  return { firm, owner, password, signingIn, jpeg: await buildJpeg(7, { width: 480, height: 360 }) };
}

/** The same picture in bytes of its own: a comment behind the marker that begins every JPEG (ITU-T T.81, B.2.4.5). */
export function ownBytes(jpeg: Buffer, words: string): Buffer<ArrayBuffer> {
  const text = Buffer.from(words);
  const head = Buffer.from([0xff, 0xfe, 0, 0]);
  head.writeUInt16BE(text.length + 2, 2);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
}

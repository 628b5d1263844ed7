import type { member } from '@garboard/contract/people';
import type { Prisma } from '@garboard/db/database';
import type { FirmRole } from '@garboard/trade/vocabulary';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { loadFirm } from './load-firm.ts';

type MemberRow = Prisma.FirmMemberGetPayload<{ include: { person: true } }>;
export type MemberView = z.output<typeof member>;

export function presentMember(row: MemberRow): MemberView {
  return {
    id: row.personId,
    role: row.role as FirmRole,
    name: row.person.name,
    email: row.person.email,
    qualifications: row.qualifications,
    joined: row.person.joinedAt !== null,
  };
}

/** The firm's staff, in the order they joined. @throws Refusal `not-found` */
export async function listMembers(
  ctx: Ctx,
  input: PageInput & { firmId: string },
): Promise<Page<MemberView>> {
  await loadFirm(ctx, input.firmId);
  const after = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.firmMember.findMany({
    where: { firmId: input.firmId, ...(after ? { id: { gt: after } } : {}) },
    include: { person: true },
    orderBy: { id: 'asc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map(presentMember), next: page.next };
}

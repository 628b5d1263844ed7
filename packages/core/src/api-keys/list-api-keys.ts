import type { apiKey } from '@garboard/contract/account';
import type { Prisma } from '@garboard/db/database';
import type { Role } from '@garboard/trade/permissions';
import type { z } from 'zod';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page, type PageInput, uuidForm } from '../paging.ts';
import { atTheKeyboard } from '../people/prove-presence.ts';

type KeyRow = Prisma.ApiKeyGetPayload<{ include: { firm: { select: { id: true; name: true } } } }>;
export type ApiKeyView = z.output<typeof apiKey>;

export function presentKey(row: KeyRow): ApiKeyView {
  return {
    id: row.id,
    name: row.name,
    firm: row.firm,
    role: row.role as Role,
    access: row.access === 'write' ? 'write' : 'read',
    beginning: row.beginning,
    createdAt: row.createdAt.toISOString(),
    expiresAt: row.expiresAt?.toISOString() ?? null,
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
  };
}

/** The person's keys for programs that were not ended, the newest first; expired ones too. */
export async function listApiKeys(ctx: Ctx, input: PageInput): Promise<Page<ApiKeyView>> {
  const { personId } = atTheKeyboard(ctx);
  const before = decodeCursor(input.cursor, uuidForm);
  const rows = await ctx.tx.apiKey.findMany({
    where: { personId, revokedAt: null, ...(before ? { id: { lt: before } } : {}) },
    include: { firm: { select: { id: true, name: true } } },
    orderBy: { id: 'desc' },
    take: input.limit + 1,
  });
  const page = cutPage(rows, input.limit, (row) => row.id);
  return { items: page.items.map(presentKey), next: page.next };
}

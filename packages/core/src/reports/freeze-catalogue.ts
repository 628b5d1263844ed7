import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import { diagrams } from '@garboard/trade/catalogue/diagrams';
import { titlesOf } from '../catalogue/present-entry.ts';
import type { Ctx } from '../context.ts';

type FrozenCatalogue = Extract<ReportSnapshot, { kind: 'full' }>['catalogue'];

/** The known defects that these findings began from: the firm's title for each, and our diagram where there is one. */
export async function freezeCatalogue(
  ctx: Ctx,
  firmId: string,
  findings: readonly { catalogueKey: string | null }[],
): Promise<FrozenCatalogue> {
  const keys = [...new Set(findings.flatMap((f) => f.catalogueKey ?? []))].sort();
  if (keys.length === 0) return {};
  const titles = await titlesOf(ctx, firmId, keys);
  const ours = await ctx.tx.catalogueEntry.findMany({
    where: { key: { in: keys }, diagram: { not: null } },
    select: { key: true, diagram: true },
  });
  const named = new Map(ours.map(({ key, diagram }) => [key, diagram]));
  return Object.fromEntries(
    keys.flatMap((key) => {
      const title = titles.get(key);
      const name = named.get(key);
      return title === undefined ? [] : [[key, { title, diagram: (name && diagrams[name]) || null }]];
    }),
  );
}

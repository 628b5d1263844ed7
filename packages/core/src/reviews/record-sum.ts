import { createHash } from 'node:crypto';
import type { ReportSnapshot } from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import { photosOf } from '../reports/freeze-snapshot.ts';

/**
 * SHA-256 over everything in a record that its surveyors write and the report prints, the marks on its photos among
 * it. What passes by itself is left out: the day, the number, what owners send and what is decided on it.
 */
export async function recordSum(ctx: Ctx, snapshot: ReportSnapshot & { kind: 'full' }): Promise<string> {
  const pictures = await ctx.tx.photo.findMany({
    where: { id: { in: photosOf(snapshot) } },
    orderBy: { id: 'asc' },
    select: { id: true, sha256: true, marks: true, quarterTurns: true },
  });
  const { survey, vessel, surveyor, attendances, present, leadPhoto } = snapshot;
  const { worksheets, coverage, inventory, catalogue } = snapshot;
  const findings = snapshot.findings.map(
    ({ state, clearance, evidence, extensions, withdrawal, limit, dueOn, items, ...written }) => ({
      ...written,
      items: items.map(({ id, text }) => ({ id, text })),
    }),
  );
  const written = {
    ...{ survey, vessel, surveyor, attendances, present, leadPhoto },
    ...{ findings, worksheets, coverage, inventory, catalogue, pictures },
  };
  return createHash('sha256').update(JSON.stringify(written)).digest('hex');
}

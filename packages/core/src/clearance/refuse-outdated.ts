import type { SnapshotFinding } from '@garboard/contract/report-snapshot';
import type { Ctx } from '../context.ts';
import type { LoadedFinding } from '../findings/load-finding.ts';
import { invalidField, wrongState } from '../problems.ts';
import { partsThatDiffer } from '../reports/changes-between.ts';

/** What of a finding decides what evidence has to show. */
const read = [
  'title',
  'what was seen',
  'why it matters',
  'what to do',
  'items',
  'urgency',
  'time limit',
  'references',
];

/**
 * Refuses evidence from somebody who read an earlier revision of the report, when the finding reads differently in
 * the one that stands. Where it reads the same, the earlier revision will do.
 *
 * @throws Refusal `wrong-state` telling what changed; `invalid-input` for a revision that doesn't hold the finding
 */
export async function refuseOutdated(
  ctx: Ctx,
  finding: LoadedFinding,
  revision: number | undefined,
): Promise<void> {
  const standing = finding.issuedRevision;
  if (revision === undefined || standing === null || revision === standing) return;
  const before = revision < standing ? await asIssuedIn(ctx, finding, revision) : null;
  if (!before) {
    throw invalidField('/revision', `Revision ${revision} of the report doesn’t hold this finding.`);
  }
  const now = finding.issued as SnapshotFinding;
  const changed = partsThatDiffer(before, now).filter((part) => read.includes(part));
  if (changed.length === 0) return;
  throw wrongState(
    `You read revision ${revision} of the report. Revision ${standing} words this finding differently: ${changed.join(', ')}. Read it, then send the evidence again.`,
  );
}

async function asIssuedIn(
  ctx: Ctx,
  finding: LoadedFinding,
  revision: number,
): Promise<SnapshotFinding | null> {
  const rows = await ctx.tx.$queryRaw<{ finding: SnapshotFinding }[]>`
    SELECT listed AS finding FROM reports, json_array_elements(reports.snapshot->'findings') AS listed
     WHERE reports.survey_id = ${finding.surveyId}::uuid AND reports.kind = 'full' AND reports.state = 'issued'
       AND reports.revision = ${revision} AND listed->>'id' = ${finding.id}`;
  return rows[0]?.finding ?? null;
}

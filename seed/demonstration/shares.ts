import { createShareLink } from '@garboard/core/shares/create-share-link';
import { openShareLink } from '@garboard/core/shares/open-share-link';
import { inTransaction } from '@garboard/db/database';
import { actorOf, as, dayFrom, type Stage } from './stage.ts';

const hourMs = 3_600_000;

/** A browser of nobody's, for the list of openings. */
const userAgent = 'Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0';

/** Gives a report to somebody without an account by a link, which is opened twice and can be twice more. */
export async function shareReport(
  stage: Stage,
  { reportId, sharedBy, day }: { reportId: string; sharedBy: string; day: number },
): Promise<void> {
  const { publicUrl } = stage.env;
  const at = dayFrom(stage, day, 18);
  const link = { label: 'The marina’s berthing office', days: 60, passcode: null, viewLimit: 4 };
  const { url } = await as(stage, actorOf(stage, sharedBy), at, (ctx) =>
    createShareLink(ctx, { reportId, link, publicUrl }),
  );
  const token = new URL(url).hash.replace('#token=', '');
  for (const hours of [1, 15]) {
    const opened = new Date(Math.min(at.getTime() + hours * hourMs, stage.loadedAt.getTime()));
    await inTransaction(stage.db, [], (tx) =>
      openShareLink(
        {
          actor: { kind: 'system', firmIds: [] },
          ...{ tx, store: stage.store, clock: () => opened, log: stage.log },
        },
        { token, userAgent },
      ),
    );
  }
}

import type { Photo, photoQuery } from '@garboard/contract/photos';
import type { z } from 'zod';
import { isStaff } from '../access/policy.ts';
import type { Ctx } from '../context.ts';
import { cutPage, decodeCursor, type Page } from '../paging.ts';
import { loadSurvey } from '../surveys/load-survey.ts';
import { asIssued } from './issued-pictures.ts';
import { photoInclude, presentPhotos, presentPhotoToParty } from './present-photo.ts';
import { visiblePhotos } from './visible-photos.ts';

/** An order key: the time in UTC, then the id. */
export const orderKeyForm = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z_[0-9a-f-]{36}$/;

/** Photos of a survey in the order they were taken; parties get those of reports issued to them. */
export async function listPhotos(
  ctx: Ctx,
  { surveyId, query }: { surveyId: string; query: z.output<typeof photoQuery> },
): Promise<Page<Photo>> {
  const survey = await loadSurvey(ctx, surveyId);
  const after = decodeCursor(query.cursor, orderKeyForm);
  const rows = await ctx.tx.photo.findMany({
    where: {
      AND: [{ surveyId }, await visiblePhotos(ctx), after === undefined ? {} : { orderKey: { gt: after } }],
    },
    include: photoInclude,
    orderBy: { orderKey: 'asc' },
    take: query.limit + 1,
  });
  const page = cutPage(rows, query.limit, (row) => row.orderKey);
  const whole = after === undefined && page.next === null;
  const items = isStaff(ctx.actor, survey)
    ? await presentPhotos(ctx, surveyId, page.items, whole)
    : (await asIssued(ctx, page.items)).map(presentPhotoToParty);
  return { items, next: page.next };
}

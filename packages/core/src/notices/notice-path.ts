import { noticeRule } from '@garboard/trade/notice-kinds';

/** The page of the portal on which a notice's matter is read, below the address of the installation. */
export function noticePath({
  kind,
  surveyId,
  findingId,
}: {
  kind: string;
  surveyId: string | null;
  findingId: string | null;
}): string {
  const page = noticeRule(kind)?.page;
  if (page === 'finding' && findingId) return `/findings/${findingId}`;
  if (!surveyId) return '/notices';
  return page === undefined || page === 'survey' || page === 'finding'
    ? `/surveys/${surveyId}`
    : `/surveys/${surveyId}/${page}`;
}

import type { Survey } from '@garboard/contract/surveys';
import { outcomeLabels } from '@garboard/trade/re-inspection';
import { attendanceConditionLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { isStatus } from '../../../api/problems.ts';
import { useList } from '../../../api/queries.ts';
import { Button } from '../../../ui/Button.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { formatDay } from '../../../ui/format.ts';
import { whoWas } from '../../surveys/EventSteps.tsx';
import { limitWords } from '../decide/Decided.tsx';

/** The visits after the report, latest first; nothing where there was none. */
export function Visits({ survey }: { survey: Survey }) {
  const list = useList('listReInspections', { params: { id: survey.id } });
  if (list.error && !list.items) {
    return isStatus(list.error, 403) ? null : <ErrorNotice quiet error={list.error} onRetry={list.retry} />;
  }
  if (!list.items?.length) return null;
  return (
    <section className="stack">
      <h2>Visits after the report</h2>
      <ol className="steps">
        {list.items.map((visit) => (
          <li key={visit.id}>
            <div className="stack">
              <p>
                <strong>
                  {formatDay(visit.date)}, {visit.place}
                </strong>
                , {attendanceConditionLabels[visit.condition].toLowerCase()}
                <br />
                <span className="soft small">{whoWas(visit.by)}</span>
              </p>
              {visit.note ? (
                <p className="text" dir="auto">
                  {visit.note}
                </p>
              ) : null}
              <ul className="plain-list">
                {visit.items.map((seen) => (
                  <li key={`${seen.findingId} ${seen.itemIds.join(' ')}`}>
                    {seen.number}. <Link href={`/findings/${seen.findingId}`}>{seen.title}</Link>:{' '}
                    {seen.limit
                      ? `may stay as it is: ${limitWords(seen.limit, seen.limitUntil)}`
                      : outcomeLabels[seen.outcome].toLowerCase()}
                    {seen.note ? (
                      <span className="soft" dir="auto">
                        {' '}
                        {seen.note}
                      </span>
                    ) : null}
                  </li>
                ))}
              </ul>
            </div>
          </li>
        ))}
      </ol>
      {list.hasMore ? (
        <Button busy={list.fetchingMore} busyLabel="Fetching more…" onClick={list.more}>
          Show more
        </Button>
      ) : null}
    </section>
  );
}

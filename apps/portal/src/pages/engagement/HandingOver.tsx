import type { Survey } from '@garboard/contract/surveys';
import { releaseRuleLabels } from '@garboard/trade/engagement';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { mayDo } from '../../app/roles.ts';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { formatInstant } from '../../ui/format.ts';
import { Reason } from './Reason.tsx';

/** When the issued report is handed over, whether it is withheld, and the principal's word. */
export function HandingOver({ survey }: { survey: Survey }) {
  const [giving, setGiving] = useState(false);
  const params = { id: survey.id };
  const release = useAnswer('getRelease', { params });
  const give = useAction({
    run: (reason: string) => call('giveRelease', { params, body: { reason } }),
    done: 'The report is handed over to those it is released to.',
    touches: ['getRelease', 'getSurvey', 'listEvents', 'listJobs'],
    onDone: () => setGiving(false),
  });
  const { data } = release;
  return (
    <section className="stack measure">
      <h2>Handing the report over</h2>
      {release.error ? (
        <ErrorNotice quiet error={release.error} onRetry={() => void release.refetch()} />
      ) : null}
      {data ? null : <Loading what="the rule" />}
      {data ? (
        <>
          <p>
            {data.settled
              ? 'The report of this survey is handed over'
              : 'By your firm’s rule the report will be handed over'}{' '}
            {lower(releaseRuleLabels[data.rule])}.{' '}
            {data.held
              ? 'It is withheld now: no party sees what was issued.'
              : data.settled
                ? 'Nothing is withheld now.'
                : 'The rule is fixed for this survey when its report is first issued.'}
          </p>
          {data.wordAt ? (
            <p>
              {data.wordBy} gave the word on {formatInstant(data.wordAt, survey.timeZone)}: {data.reason}
            </p>
          ) : null}
          {data.held && mayDo('release.give', survey) ? (
            <p>
              <Button onClick={() => setGiving(true)}>Hand it over now…</Button>
            </p>
          ) : null}
        </>
      ) : null}
      {giving ? (
        <Reason
          title="Hand the report over"
          words="Every party to whom it is released sees it at once. This is recorded under your name."
          confirm="Hand it over"
          busy={give.busy}
          error={give.error}
          onConfirm={give.run}
          onClose={() => setGiving(false)}
        />
      ) : null}
    </section>
  );
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

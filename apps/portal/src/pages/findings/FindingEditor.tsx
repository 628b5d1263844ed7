import type { Finding } from '@garboard/contract/findings';
import { useState } from 'react';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { EditorOf } from './EditorOf.tsx';
import { anotherId, idForNew } from './newFinding.ts';

/**
 * Writes a new finding, or changes one; `which` is `new` or the finding's id. A new one has its id from the start and
 * stays on this screen when, saved for the first time, it gets an address of its own.
 */
export default function FindingEditor({ surveyId, which }: { surveyId: string; which: string }) {
  const [fresh, setFresh] = useState(() => idForNew(surveyId));
  const isNew = which === 'new' || which === fresh;
  const finding = useAnswer('getFinding', { params: { id: which } }, { enabled: !isNew, anew: true });
  if (!isNew) {
    if (isStatus(finding.error, 404) || isStatus(finding.error, 422)) return <NotFound />;
    if (!(finding.data && finding.isFetchedAfterMount)) {
      return finding.error ? <ErrorNotice error={finding.error} /> : <Loading what="the finding" />;
    }
  }
  const loaded: Finding | null = isNew ? null : (finding.data ?? null);
  const id = loaded?.id ?? fresh;
  return (
    <WithSurvey id={surveyId}>
      {(survey) => (
        <EditorOf
          key={id}
          survey={survey}
          finding={loaded}
          id={id}
          onAnother={() => setFresh(anotherId(surveyId))}
        />
      )}
    </WithSurvey>
  );
}

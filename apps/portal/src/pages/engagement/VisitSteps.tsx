import type { VisitView } from '@garboard/contract/visits';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Reason } from './Reason.tsx';

/** What the firm can do with a visit that is still to come. */
export function VisitSteps({ visit, onChange }: { visit: VisitView; onChange: () => void }) {
  const [cancelling, setCancelling] = useState(false);
  const params = { id: visit.id };
  const touches = ['listVisits', 'getSurvey', 'listSurveys', 'listEvents'] as const;
  const attend = useAction({
    run: () => call('attendVisit', { params }),
    done: 'Recorded as an attendance of the survey.',
    touches,
  });
  const cancel = useAction({
    run: (reason: string) => call('cancelVisit', { params, body: { reason } }),
    done: 'The visit is called off; who was asked is told.',
    touches,
    onDone: () => setCancelling(false),
  });
  if (visit.state !== 'arranged') return null;
  const which = `the visit at ${visit.place}`;
  return (
    <>
      <ErrorNotice error={attend.error} />
      <div className="row">
        <Button aria-label={`Change ${which}`} onClick={onChange}>
          Change
        </Button>
        <Button aria-label={`It was made: ${which}`} busy={attend.busy} onClick={() => attend.run(undefined)}>
          It was made
        </Button>
        <Button kind="quiet" aria-label={`Call off ${which}`} onClick={() => setCancelling(true)}>
          Call off
        </Button>
      </div>
      {cancelling ? (
        <Reason
          title="Call the visit off"
          words="Everybody who was asked is told, and it is marked as called off in their calendars."
          confirm="Call it off"
          busy={cancel.busy}
          error={cancel.error}
          onConfirm={cancel.run}
          onClose={() => setCancelling(false)}
        />
      ) : null}
    </>
  );
}

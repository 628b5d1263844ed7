import { etagOf } from '@garboard/contract/client';
import type { Vessel } from '@garboard/contract/vessels';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { NotFound } from '../../app/NotFound.tsx';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { VesselFields } from './VesselFields.tsx';
import { bodyOf, draftOf } from './vesselDraft.ts';

/** A new vessel, or the particulars of one we have. */
export default function VesselEditor({ id }: { id?: string }) {
  const vessel = useAnswer('getVessel', { params: { id: id ?? '' } }, { enabled: Boolean(id), anew: true });
  if (!id) return <Editor vessel={null} />;
  if (isStatus(vessel.error, 404)) return <NotFound />;
  if (vessel.error && !vessel.data) return <ErrorNotice error={vessel.error} />;
  if (!vessel.data || !vessel.isFetchedAfterMount) return <Loading what="the vessel" />;
  return <Editor vessel={vessel.data} />;
}

function Editor({ vessel }: { vessel: Vessel | null }) {
  const [, go] = useLocation();
  // What was loaded stays the ground of this edit, whatever is fetched meanwhile.
  const [base] = useState(vessel);
  const [draft, setDraft] = useState(() => draftOf(base));
  const [touched, setTouched] = useState(false);
  const leaving = useLeaveWarning(touched, () => undefined);
  const save = useAction({
    run: (body: CallArgs<'createVessel'>['body'], idempotencyKey) =>
      base
        ? call('updateVessel', { params: { id: base.id }, body, ifMatch: etagOf(base) })
        : call('createVessel', { body, idempotencyKey }),
    done: (saved) => `${saved.name} saved.`,
    touches: ['listVessels', 'getVessel', 'listSurveys', 'getSurvey'],
    onDone: (saved) => leaving.pass(() => go(`/vessels/${saved.id}`)),
  });
  return (
    <Page title={base ? `Edit ${base.name}` : 'New vessel'} over="Vessels">
      <form
        className="stack measure"
        onChange={() => setTouched(true)}
        onSubmit={(event) => {
          event.preventDefault();
          save.run(bodyOf(draft));
        }}
      >
        <ErrorNotice error={save.error} />
        {isStatus(save.error, 412) && base ? (
          <p>
            What you wrote is still here.{' '}
            <a href={`/vessels/${base.id}`} target="_blank" rel="noreferrer">
              See what stands now
            </a>{' '}
            in another window before you write over it, then load this page again.
          </p>
        ) : null}
        <VesselFields
          draft={draft}
          set={(change) => setDraft((now) => ({ ...now, ...change }))}
          error={save.error}
        />
        <div className="actions">
          <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
            Save
          </Button>
        </div>
      </form>
      {leaving.dialog}
    </Page>
  );
}

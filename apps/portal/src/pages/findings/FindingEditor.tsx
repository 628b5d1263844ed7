import { etagOf } from '@garboard/contract/client';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer, useWholeList } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { NotFound } from '../../app/NotFound.tsx';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import { whilePreparing } from '../photos/preparing.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { Measured } from '../worksheets/Measured.tsx';
import { ChoosePhotos } from './ChoosePhotos.tsx';
import { DeleteFinding } from './DeleteFinding.tsx';
import { FindingFields } from './FindingFields.tsx';
import type { FindingDraft } from './findingDraft.ts';
import { bodyOf, draftOf, findingLabels, showField } from './findingDraft.ts';

/** Writes a new finding, or changes one. */
export default function FindingEditor({ surveyId, findingId }: { surveyId: string; findingId?: string }) {
  const finding = useAnswer(
    'getFinding',
    { params: { id: findingId ?? '' } },
    { enabled: Boolean(findingId), anew: true },
  );
  if (isStatus(finding.error, 404) || isStatus(finding.error, 422)) return <NotFound />;
  if (findingId && !(finding.data && finding.isFetchedAfterMount)) {
    return finding.error ? <ErrorNotice error={finding.error} /> : <Loading what="the finding" />;
  }
  return (
    <WithSurvey id={surveyId}>
      {(survey) => <Editor survey={survey} finding={finding.data ?? null} />}
    </WithSurvey>
  );
}

function Editor({ survey, finding }: { survey: Survey; finding: Finding | null }) {
  const [, go] = useLocation();
  const photos = useWholeList('listPhotos', { params: { id: survey.id } }, { again: whilePreparing });
  const home = `/surveys/${survey.id}/findings`;
  const edit = useRecordEdit<Finding, FindingDraft>({
    record: finding,
    valuesOf: draftOf,
    save: (draft, base, idempotencyKey) =>
      base
        ? call('updateFinding', { params: { id: base.id }, body: bodyOf(draft), ifMatch: etagOf(base) })
        : call('createFinding', { params: { id: survey.id }, body: bodyOf(draft), idempotencyKey }),
    reload: () => call('getFinding', { params: { id: finding?.id ?? '' } }),
    keepAs: `unsaved:finding:${finding?.id ?? `new:${survey.id}`}`,
    touches: ['listFindings', 'getFinding', 'getSurvey', 'listSurveys', 'listEvents', 'listRecommendations'],
    done: (saved) => `Saved: ${saved.title}.`,
    onDone: () => leaving.pass(() => go(home)),
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  const number = (id: string) => (photos.data ?? []).findIndex((photo) => photo.id === id) + 1;
  const title = finding ? `Edit finding ${finding.number}` : 'Record a finding';
  if (edit.theirs) {
    return (
      <SurveyFrame survey={survey} title={title}>
        <Merge
          base={draftOf(edit.base)}
          mine={edit.values}
          theirs={draftOf(edit.theirs)}
          labels={findingLabels}
          show={(key, draft) => showField(key, draft, number)}
          busy={edit.busy}
          onSettle={edit.settle}
          onPostpone={edit.postpone}
        />
      </SurveyFrame>
    );
  }
  return (
    <SurveyFrame survey={survey} title={title}>
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          edit.save();
        }}
      >
        <Restored when={edit.restored} onDiscard={edit.discard} />
        {finding && finding.state !== 'draft' ? (
          <p className="soft">This finding has been issued. A change shows in the report's next revision.</p>
        ) : null}
        <FindingFields draft={edit.values} set={edit.set} error={edit.error} />
        <ErrorNotice quiet error={photos.error} onRetry={() => void photos.refetch()} />
        <ChoosePhotos
          photos={photos.data ?? []}
          ids={edit.values.photoIds}
          onChange={(photoIds) => edit.set({ photoIds })}
        />
        {finding ? (
          <Measured
            worksheets={finding.worksheets}
            href={(id) => `/surveys/${survey.id}/worksheets/${id}`}
            action={
              <ButtonLink href={`/surveys/${survey.id}/worksheets/new?finding=${finding.id}`}>
                Fill in a worksheet for it
              </ButtonLink>
            }
          />
        ) : null}
        <ErrorNotice error={edit.error} />
        <div className="actions">
          <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
            Save the finding
          </Button>
          <Button
            onClick={() => {
              edit.discard();
              leaving.pass(() => go(home));
            }}
          >
            Cancel
          </Button>
          {finding?.state === 'draft' ? (
            <DeleteFinding finding={finding} onDeleted={() => leaving.pass(() => go(home))} />
          ) : null}
        </div>
      </form>
      {leaving.dialog}
    </SurveyFrame>
  );
}

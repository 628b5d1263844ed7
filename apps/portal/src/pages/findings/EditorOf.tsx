import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import { SurveyFrame } from '../surveys/SurveyFrame.tsx';
import { Measured } from '../worksheets/Measured.tsx';
import { BeginFrom } from './BeginFrom.tsx';
import { ChoosePhotos } from './ChoosePhotos.tsx';
import { EntryBeside } from './EntryBeside.tsx';
import { FindingFields } from './FindingFields.tsx';
import { draftOf, findingLabels, missingFrom, showField } from './findingDraft.ts';
import { PhotoNumbers } from './PhotoNumbers.tsx';
import { RelatedEntries } from './RelatedEntries.tsx';
import { SavedLine } from './SavedLine.tsx';
import { SlotFields } from './SlotFields.tsx';
import { useFindingDesk } from './useFindingDesk.ts';

/** The form of one finding with what helps to write it: a known defect, its slots, photos by number, grading. */
export function EditorOf({
  survey,
  finding,
  id,
  onAnother,
}: {
  survey: Survey;
  /** Null for a new one. */
  finding: Finding | null;
  /** Its id, also before it is kept. */
  id: string;
  /** Makes the next new finding another one. */
  onAnother: () => void;
}) {
  const desk = useFindingDesk({ survey, finding, id, onAnother });
  const { edit, photos, leaving, remove } = desk;
  const record = desk.record;
  const title = finding ? `Edit finding ${finding.number}` : 'Record a finding';
  if (edit.theirs) {
    const number = (photoId: string) => desk.photos.findIndex((photo) => photo.id === photoId) + 1;
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
  const draft = edit.values;
  return (
    <SurveyFrame survey={survey} title={title}>
      <div className={draft.origin ? 'drafting' : 'stack'}>
        <form
          ref={desk.form}
          className="stack measure"
          onSubmit={(event) => {
            event.preventDefault();
            edit.save();
          }}
        >
          <Restored when={edit.restored} onDiscard={edit.discard} />
          {record && record.state !== 'draft' ? (
            <p className="soft">
              This finding has been issued. A change shows in the report's next revision.
            </p>
          ) : null}
          {desk.after ? <RelatedEntries survey={survey} findings={desk.findings} after={desk.after} /> : null}
          {draft.origin ? null : (
            <BeginFrom ref={desk.beginBox} survey={survey} open={desk.blank} onChoose={desk.begin} />
          )}
          <SlotFields
            key={desk.template.at}
            template={desk.template.texts}
            draft={draft}
            set={edit.set}
            focus={desk.template.at > 0}
          />
          <PhotoNumbers all={photos} ids={draft.photoIds} onChange={(photoIds) => edit.set({ photoIds })} />
          <FindingFields
            draft={draft}
            set={edit.set}
            survey={survey}
            findings={desk.findings}
            error={edit.error}
          />
          <ErrorNotice quiet error={desk.photosError} />
          <ChoosePhotos
            photos={photos}
            ids={draft.photoIds}
            onChange={(photoIds) => edit.set({ photoIds })}
          />
          {record ? (
            <Measured
              worksheets={record.worksheets}
              href={(worksheetId) => `/surveys/${survey.id}/worksheets/${worksheetId}`}
              action={
                <ButtonLink href={`/surveys/${survey.id}/worksheets/new?finding=${record.id}`}>
                  Fill in a worksheet for it
                </ButtonLink>
              }
            />
          ) : null}
          <ErrorNotice error={edit.error ?? remove.error ?? desk.moveError} />
          {desk.autosaves ? (
            <SavedLine
              auto={edit.auto}
              unsaved={edit.unsaved}
              saved={edit.base !== null}
              missing={missingFrom(draft)}
              onPutTogether={() => edit.save()}
            />
          ) : null}
          <div className="actions">
            <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
              Save the finding
            </Button>
            <Button aria-keyshortcuts="Control+Enter" onClick={desk.saveAndNext}>
              Save and record the next
            </Button>
            {desk.autosaves && edit.base ? (
              <Button kind="quiet" onClick={desk.toList}>
                Back to the findings
              </Button>
            ) : (
              <Button kind="quiet" onClick={desk.cancel}>
                Cancel
              </Button>
            )}
            {record?.state === 'draft' ? (
              <Button
                kind="quiet"
                busy={remove.busy}
                onClick={() => remove.run({ id: record.id, title: record.title })}
              >
                Delete this finding
              </Button>
            ) : null}
          </div>
        </form>
        {draft.origin ? (
          <EntryBeside survey={survey} entryKey={draft.origin.key} findingId={record?.id} />
        ) : null}
      </div>
      {leaving.dialog}
    </SurveyFrame>
  );
}

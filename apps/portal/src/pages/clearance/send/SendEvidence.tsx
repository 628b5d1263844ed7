import type { Finding } from '@garboard/contract/findings';
import { uploadLimits } from '@garboard/contract/limits';
import { awaitsEvidence } from '@garboard/trade/states';
import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../../../api/client.ts';
import { fieldError, isStatus } from '../../../api/problems.ts';
import { useAction } from '../../../api/queries.ts';
import { upload } from '../../../api/upload.ts';
import { Button } from '../../../ui/Button.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { CheckboxGroup, TextArea, TextField } from '../../../ui/Field.tsx';
import { FileDrop } from '../../../ui/FileDrop.tsx';
import { FilePicker } from '../../../ui/FilePicker.tsx';
import { megabytes, today } from '../../../ui/format.ts';
import { ProgressBar } from '../../../ui/ProgressBar.tsx';
import { KeptDraft } from '../KeptDraft.tsx';
import { ChosenFiles } from './ChosenFiles.tsx';
import { evidenceForm } from './evidenceForm.ts';
import { Remeasure } from './Remeasure.tsx';
import type { EvidenceDraft } from './useEvidenceDraft.ts';
import { useEvidenceDraft } from './useEvidenceDraft.ts';

/** What was done, by whom and when, with photos, invoices and a measurement. */
export function SendEvidence({ finding, timeZone }: { finding: Finding; timeZone: string }) {
  const draft = useEvidenceDraft(finding, timeZone);
  if (!draft.value) return null;
  return <Form finding={finding} timeZone={timeZone} draft={draft} value={draft.value} />;
}

function Form({
  finding,
  timeZone,
  draft,
  value,
}: {
  finding: Finding;
  timeZone: string;
  draft: ReturnType<typeof useEvidenceDraft>;
  value: EvidenceDraft;
}) {
  const queryClient = useQueryClient();
  const [share, setShare] = useState(0);
  const left = finding.items.filter((item) => awaitsEvidence.includes(item.state));
  const covered = left.map(({ id }) => id).filter((id) => value.itemIds?.includes(id) ?? true);
  const send = useAction({
    run: async ({ attempt: _, ...sent }: EvidenceDraft) => {
      setShare(0);
      const kind = sent.measured
        ? await call('getWorksheetKind', { params: { kind: sent.measured.kind } })
        : undefined;
      const body = await evidenceForm(draft.personId, sent, finding.items.length ? covered : null, kind);
      const key = draft.attemptKey(JSON.stringify({ ...sent, covered }));
      try {
        return await upload('sendClearance', finding.id, body, setShare, { 'idempotency-key': key });
      } catch (error) {
        // What stands in the way may have come while this was written: it is shown with the refusal.
        if (isStatus(error, 409)) void queryClient.invalidateQueries({ queryKey: ['getFinding'] });
        throw error;
      }
    },
    done: 'Evidence sent. You will see the decision here.',
    touches: [
      'listClearances',
      'getFinding',
      'listFindings',
      'listFindingEvents',
      'listRecommendations',
      'listSurveys',
    ],
    onDone: () => void draft.forget(),
  });
  const { set } = draft;
  const changed = value.revision !== null && value.revision !== finding.revision;
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        send.run(value);
      }}
    >
      <h3>{finding.state === 'returned' ? 'Send new evidence' : 'Send evidence that it was put right'}</h3>
      {changed ? (
        <div className="notice" role="status">
          <p>This finding was issued anew while you were writing. Read above what it asks for now.</p>
          <Button onClick={() => set({ revision: finding.revision })}>
            My evidence fits it as it is now
          </Button>
        </div>
      ) : null}
      {left.length > 1 ? (
        <CheckboxGroup
          label="What has been put right"
          hint="Leave out what is still to be done; it can be sent later."
          values={covered}
          options={Object.fromEntries(left.map((item) => [item.id, item.text]))}
          onChange={(itemIds) => set({ itemIds })}
          error={fieldError(send.error, '/itemIds')}
        />
      ) : left[0] ? (
        <p>
          It is for what is left: <strong>{left[0].text}</strong>
        </p>
      ) : null}
      <TextArea
        label="What was done"
        required
        maxLength={20_000}
        value={value.statement}
        onChange={(statement) => set({ statement })}
        error={fieldError(send.error, '/statement')}
      />
      <div className="fields-2">
        <TextField
          label="Who did the work"
          required
          maxLength={200}
          value={value.workDoneBy}
          onChange={(workDoneBy) => set({ workDoneBy })}
          error={fieldError(send.error, '/workDoneBy')}
        />
        <TextField
          label="Done on"
          type="date"
          required
          max={today(timeZone)}
          value={value.workDoneOn}
          onChange={(workDoneOn) => set({ workDoneOn })}
          error={fieldError(send.error, '/workDoneOn')}
        />
      </div>
      <div className="by-hand">
        <FilePicker camera label="Take a photo" onFiles={(files) => void draft.addFiles(files)} />
      </div>
      <FileDrop
        label="Choose photos or invoices"
        accept="image/jpeg,image/png,image/webp,image/heic,image/heif,application/pdf,.heic,.heif,.pdf"
        hint={`or drop them here. Photos up to ${megabytes(uploadLimits.photoBytes)} and PDF files up to ${megabytes(uploadLimits.documentBytes)} each.`}
        onFiles={(files) => void draft.addFiles(files)}
      />
      {draft.keeping ? <p role="status">Keeping the files on this device…</p> : null}
      {draft.trouble ? (
        <p className="field-error" role="alert">
          {draft.trouble}
        </p>
      ) : null}
      <ChosenFiles
        personId={draft.personId}
        files={value.files}
        photos={finding.photos}
        onPair={(id, beforePhotoId) =>
          set({ files: value.files.map((file) => (file.id === id ? { ...file, beforePhotoId } : file)) })
        }
        onTakeOut={draft.takeOut}
      />
      <Remeasure finding={finding} draft={value} set={set} error={send.error} />
      {send.busy ? <ProgressBar label="Sending," value={share} /> : null}
      <ErrorNotice error={send.error} />
      <KeptDraft
        draft={draft}
        busy={send.busy}
        throwAway={{
          title: 'Throw away what you began?',
          words: 'The words and the files chosen here are removed from this device.',
        }}
      >
        <Button kind="main" type="submit" busy={send.busy || draft.keeping} busyLabel="Sending…">
          Send the evidence
        </Button>
      </KeptDraft>
    </form>
  );
}

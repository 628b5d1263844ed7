import type { Finding } from '@garboard/contract/findings';
import { uploadLimits } from '@garboard/contract/limits';
import { useState } from 'react';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { upload } from '../../api/upload.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea, TextField } from '../../ui/Field.tsx';
import { FileDrop } from '../../ui/FileDrop.tsx';
import { formatBytes, megabytes, today } from '../../ui/format.ts';
import { ProgressBar } from '../../ui/ProgressBar.tsx';

interface Form {
  statement: string;
  workDoneBy: string;
  workDoneOn: string;
}

/** What was done, by whom and when, with photos and invoices. */
export function SendEvidence({ finding, timeZone }: { finding: Finding; timeZone: string }) {
  const me = useMe();
  const [form, setForm] = useState<Form>({
    statement: '',
    workDoneBy: me.parties.some((p) => p.surveyId === finding.surveyId && p.role === 'yard')
      ? me.person.name
      : '',
    workDoneOn: today(timeZone),
  });
  const [files, setFiles] = useState<File[]>([]);
  const [share, setShare] = useState(0);
  const send = useAction({
    // The names only tell one attempt from another: files themselves look alike to the idempotency key.
    run: async ({ fields }: { fields: Form; names: string[] }, idempotencyKey) => {
      setShare(0);
      const body = new FormData();
      // Text parts go first, so that the server knows them before it takes in a file.
      for (const [name, value] of Object.entries(fields)) body.append(name, value);
      for (const file of files) body.append('file', file, file.name);
      return upload('sendClearance', finding.id, body, setShare, { 'idempotency-key': idempotencyKey });
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
    onDone: () => {
      setFiles([]);
      setForm((now) => ({ ...now, statement: '' }));
    },
  });
  const leaving = useLeaveWarning(Boolean(form.statement || files.length), () => undefined);
  const set = (change: Partial<Form>) => setForm((now) => ({ ...now, ...change }));
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        send.run({ fields: form, names: files.map((file) => `${file.name} ${file.size}`) });
      }}
    >
      <h3>{finding.state === 'returned' ? 'Send new evidence' : 'Send evidence that it was put right'}</h3>
      <TextArea
        label="What was done"
        required
        value={form.statement}
        onChange={(statement) => set({ statement })}
        error={fieldError(send.error, '/statement')}
      />
      <div className="fields-2">
        <TextField
          label="Who did the work"
          required
          maxLength={200}
          value={form.workDoneBy}
          onChange={(workDoneBy) => set({ workDoneBy })}
          error={fieldError(send.error, '/workDoneBy')}
        />
        <TextField
          label="Done on"
          type="date"
          required
          max={today(timeZone)}
          value={form.workDoneOn}
          onChange={(workDoneOn) => set({ workDoneOn })}
          error={fieldError(send.error, '/workDoneOn')}
        />
      </div>
      <FileDrop
        label="Choose photos or invoices"
        accept="image/jpeg,image/png,image/webp,image/heic,image/heif,application/pdf,.heic,.heif,.pdf"
        hint={`or drop them here. Photos up to ${megabytes(uploadLimits.photoBytes)} and PDF files up to ${megabytes(uploadLimits.documentBytes)} each.`}
        onFiles={(more) => setFiles((now) => [...now, ...more])}
      />
      {files.length ? (
        <ul className="plain-list">
          {files.map((file) => (
            <li key={`${file.name} ${file.size} ${file.lastModified}`} className="row">
              <span>
                {file.name} <span className="soft">{formatBytes(file.size)}</span>
              </span>
              <Button
                kind="quiet"
                aria-label={`Take out ${file.name}`}
                onClick={() => setFiles((now) => now.filter((other) => other !== file))}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
      {send.busy ? <ProgressBar label="Sending," value={share} /> : null}
      <ErrorNotice error={send.error} />
      <div className="actions">
        <Button kind="main" type="submit" busy={send.busy} busyLabel="Sending…">
          Send the evidence
        </Button>
      </div>
      {leaving.dialog}
    </form>
  );
}

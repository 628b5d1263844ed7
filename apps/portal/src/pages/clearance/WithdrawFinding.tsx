import type { Finding } from '@garboard/contract/findings';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { formatInstantDay } from '../../ui/format.ts';

/** That a finding was withdrawn, and why. */
export function Withdrawn({
  withdrawal,
  timeZone,
}: {
  withdrawal: NonNullable<Finding['withdrawal']>;
  timeZone: string;
}) {
  return (
    <section className="notice">
      <h2>Withdrawn on {formatInstantDay(withdrawal.at, timeZone)}</h2>
      <p className="text" dir="auto">
        {withdrawal.reason}
      </p>
      <p className="soft small">{withdrawal.by}</p>
    </section>
  );
}

/** Takes back an issued finding that should not have been made. */
export function WithdrawFinding({ finding }: { finding: Finding }) {
  const [asking, setAsking] = useState(false);
  const [reason, setReason] = useState('');
  const withdraw = useAction({
    run: () => call('withdrawFinding', { params: { id: finding.id }, body: { reason } }),
    done: 'Withdrawn. Everyone to whom the report was released is told.',
    touches: [
      'getFinding',
      'listFindings',
      'listFindingEvents',
      'listEvents',
      'listRecommendations',
      'getSurvey',
      'getSurveyChanges',
    ],
    onDone: () => setAsking(false),
  });
  return (
    <section className="stack measure">
      <h2>If it should not have been made</h2>
      <p>The report that has it stays as it is; the next revision lists it as withdrawn.</p>
      <Button onClick={() => setAsking(true)}>Withdraw the finding</Button>
      {asking ? (
        <Dialog title={`Withdraw finding ${finding.number}?`} onClose={() => setAsking(false)}>
          <p>Everyone to whom the report was released is told, with your reason. It can't be undone.</p>
          <TextArea
            label="Why it is withdrawn"
            required
            maxLength={2000}
            value={reason}
            onChange={setReason}
            error={fieldError(withdraw.error, '/reason')}
          />
          <ErrorNotice error={withdraw.error} />
          <div className="actions">
            <Button onClick={() => setAsking(false)}>Cancel</Button>
            <Button kind="main" busy={withdraw.busy} onClick={() => withdraw.run(undefined)}>
              Withdraw it
            </Button>
          </div>
        </Dialog>
      ) : null}
    </section>
  );
}

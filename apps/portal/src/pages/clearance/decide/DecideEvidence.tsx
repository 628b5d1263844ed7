import type { Clearance } from '@garboard/contract/clearances';
import type { Decision } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { RadioGroup, TextArea } from '../../ui/Field.tsx';

const choices: Record<Decision, string> = {
  accept: 'Accept: it has been put right',
  return: 'Return: something is still missing',
  'accept-as-is': 'Accept as it is: not put right, acceptable within a limit',
};

const reasonLabels: Record<Decision, string> = {
  accept: 'Remark',
  return: 'What is still missing',
  'accept-as-is': 'The limit within which it is accepted',
};

const said: Record<Decision, string> = {
  accept: 'Accepted. The finding is cleared.',
  return: 'Returned to the owner with your reason.',
  'accept-as-is': 'Accepted as it is, with the limit you stated.',
};

/** The decision on evidence; it is final. */
export function DecideEvidence({ clearance }: { clearance: Clearance }) {
  const [decision, setDecision] = useState<Decision | ''>('');
  const [reason, setReason] = useState('');
  const decide = useAction({
    run: (body: { decision: Decision; reason: string }) =>
      call('decideClearance', { params: { id: clearance.id }, body }),
    done: (_, body) => said[body.decision],
    touches: [
      'listClearances',
      'getFinding',
      'listFindings',
      'listFindingEvents',
      'listRecommendations',
      'getSurvey',
      'listSurveys',
    ],
  });
  return (
    <form
      className="stack measure section"
      onSubmit={(event) => {
        event.preventDefault();
        if (decision) decide.run({ decision, reason });
      }}
    >
      <RadioGroup
        label="Your decision"
        required
        hint="It can't be changed afterwards."
        name={`decision-${clearance.id}`}
        value={decision}
        options={choices}
        onChange={setDecision}
      />
      {decision ? (
        <TextArea
          label={reasonLabels[decision]}
          optional={decision === 'accept'}
          required={decision !== 'accept'}
          maxLength={4000}
          value={reason}
          onChange={setReason}
          error={fieldError(decide.error, '/reason')}
        />
      ) : null}
      <ErrorNotice error={decide.error} />
      <div className="actions">
        <Button kind="main" type="submit" busy={decide.busy} busyLabel="Recording…">
          Record the decision
        </Button>
      </div>
    </form>
  );
}

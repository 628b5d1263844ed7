import { etagOf } from '@garboard/contract/client';
import type { MeasureSystem, Paper } from '@garboard/contract/people';
import { useState } from 'react';
import type { Answer, CallArgs } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Checkbox, SelectField, TextArea, TextField } from '../../ui/Field.tsx';

const paperLabels: Record<Paper, string> = { A4: 'A4', Letter: 'US Letter' };
const measureLabels: Record<MeasureSystem, string> = {
  metric: 'Metric',
  us: 'US customary',
  both: 'Metric, with US customary beside it',
};

type FirmAnswer = Answer<'getFirm'>;

/** Name, address and how its documents are made; the principal may change them. */
export function FirmDetails({ firm, editable }: { firm: FirmAnswer; editable: boolean }) {
  const [editing, setEditing] = useState(false);
  if (editing) return <Editor firm={firm} onClose={() => setEditing(false)} />;
  return (
    <section className="stack">
      <Facts
        facts={[
          [
            'Address',
            <span key="address" className="text">
              {firm.addressLines.join('\n') || 'Not stated'}
            </span>,
          ],
          ['E-mail', firm.email ?? 'Not stated'],
          ['Telephone', firm.phone ?? 'Not stated'],
          ['Documents are printed on', paperLabels[firm.paper]],
          ['Measures in documents', measureLabels[firm.measures]],
          [
            'Before a report is issued',
            firm.reviewRequired ? 'A second surveyor approves it' : 'No review asked',
          ],
        ]}
      />
      {editable ? <Button onClick={() => setEditing(true)}>Edit the firm's details</Button> : null}
    </section>
  );
}

function Editor({ firm, onClose }: { firm: FirmAnswer; onClose: () => void }) {
  const [base] = useState(firm);
  const [name, setName] = useState(firm.name);
  const [address, setAddress] = useState(firm.addressLines.join('\n'));
  const [email, setEmail] = useState(firm.email ?? '');
  const [phone, setPhone] = useState(firm.phone ?? '');
  const [paper, setPaper] = useState(firm.paper);
  const [measures, setMeasures] = useState(firm.measures);
  const [review, setReview] = useState(firm.reviewRequired);
  const save = useAction({
    run: (body: CallArgs<'updateFirm'>['body']) =>
      call('updateFirm', { params: { id: base.id }, body, ifMatch: etagOf(base) }),
    done: 'The firm’s details are saved.',
    touches: ['getFirm', 'getMe'],
    onDone: onClose,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        save.run({
          name,
          addressLines: address
            .split('\n')
            .map((line) => line.trim())
            .filter(Boolean),
          email: email.trim() || null,
          phone: phone.trim() || null,
          reviewRequired: review,
          paper,
          measures,
        });
      }}
    >
      <ErrorNotice error={save.error} />
      <TextField
        label="Name of the firm"
        required
        maxLength={160}
        value={name}
        onChange={setName}
        error={fieldError(save.error, '/name')}
      />
      <TextArea
        label="Address"
        optional
        hint="As on a letter, up to six lines."
        value={address}
        onChange={setAddress}
        error={fieldError(save.error, '/addressLines')}
      />
      <div className="fields-2">
        <TextField
          label="E-mail"
          optional
          type="email"
          value={email}
          onChange={setEmail}
          error={fieldError(save.error, '/email')}
        />
        <TextField
          label="Telephone"
          optional
          type="tel"
          maxLength={40}
          value={phone}
          onChange={setPhone}
          error={fieldError(save.error, '/phone')}
        />
      </div>
      <div className="fields-2">
        <SelectField
          label="Paper of documents"
          value={paper}
          options={paperLabels}
          onChange={(value) => value && setPaper(value)}
        />
        <SelectField
          label="Measures in documents"
          value={measures}
          options={measureLabels}
          onChange={(value) => value && setMeasures(value)}
        />
      </div>
      <Checkbox
        label="A second surveyor approves every report before it is issued"
        checked={review}
        onChange={setReview}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}

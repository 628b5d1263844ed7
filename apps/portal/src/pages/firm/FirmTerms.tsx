import { useState } from 'react';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextArea } from '../../ui/Field.tsx';
import { formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';

/** The firm's terms of business, each version as it was saved; the principal writes the next. */
export function FirmTerms({ firmId, editable }: { firmId: string; editable: boolean }) {
  const list = useList('listFirmTerms', { params: { id: firmId } });
  const [writing, setWriting] = useState(false);
  const latest = list.items?.[0];
  return (
    <section className="stack">
      <h2>Terms of business</h2>
      <MoreList
        list={list}
        what="the terms"
        empty={
          <p className="measure">
            Not written yet. They go to the client with every quotation, and are accepted together with it.
          </p>
        }
      >
        {(versions) =>
          versions.map((terms, at) => (
            <details key={terms.version}>
              <summary>
                Version {terms.version}
                {at === 0 ? ', in use' : ''}, saved {formatInstant(terms.savedAt)} by {terms.savedBy}
              </summary>
              <p className="text measure" dir="auto">
                {terms.text}
              </p>
            </details>
          ))
        }
      </MoreList>
      {editable && list.items && !writing ? (
        <p>
          <Button onClick={() => setWriting(true)}>
            {latest ? 'Write a new version' : 'Write your terms'}
          </Button>
        </p>
      ) : null}
      {writing ? (
        <Editor firmId={firmId} text={latest?.text ?? ''} onClose={() => setWriting(false)} />
      ) : null}
    </section>
  );
}

function Editor({ firmId, text: begun, onClose }: { firmId: string; text: string; onClose: () => void }) {
  const [text, setText] = useState(begun);
  const save = useAction({
    run: (body: { text: string }) => call('saveFirmTerms', { params: { id: firmId }, body }),
    done: (terms) => `Version ${terms.version} of your terms is saved and goes with the next quotation.`,
    touches: ['listFirmTerms'],
    onDone: onClose,
  });
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        save.run({ text });
      }}
    >
      <ErrorNotice error={save.error} />
      <TextArea
        label="Terms of business"
        hint="An empty line begins a new paragraph. What was sent before stays as it was sent."
        rows={14}
        required
        maxLength={60_000}
        value={text}
        onChange={setText}
        error={fieldError(save.error, '/text')}
      />
      <div className="actions">
        <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
          Save as the next version
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}

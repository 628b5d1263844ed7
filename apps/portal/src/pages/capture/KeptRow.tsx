import { useState } from 'react';
import { Link } from 'wouter';
import { bytesOf, removeKept, sendAgain } from '../../capture/keep.ts';
import type { Kept } from '../../capture/kept.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { useOnBoard } from './person.ts';
import { Thumb } from './Thumb.tsx';
import { clockWords, stateOf, whatIs, whereIs } from './words.ts';

/** One thing kept: what, where, when, what has become of it, and what can be done. */
export function KeptRow({ item }: { item: Kept }) {
  const { state, refusal, kind } = item;
  return (
    <li className={kind === 'photo' ? 'kept kept-photo' : 'kept'} data-state={state}>
      {kind === 'photo' ? <Thumb photo={item} /> : null}
      <div>
        <strong dir="auto">{whatIs(item)}</strong>
        <span className="soft small">{whereIs(item)}</span>
        <span className={state === 'refused' ? 'signal' : undefined}>
          {stateOf(item)}
          <span className="soft small">, {clockWords(item.sentAt ?? item.keptAt)}</span>
        </span>
        {state === 'sending' && item.bytes > 0 ? (
          <progress aria-label="Sent of it" max={item.bytes} value={item.sentBytes} />
        ) : null}
        {refusal ? <p dir="auto">{refusal}</p> : null}
        {kind === 'worksheet' && item.reasons.length ? <p>{item.reasons.join(' ')}</p> : null}
        <WhatToDo item={item} />
      </div>
    </li>
  );
}

function WhatToDo({ item }: { item: Kept }) {
  const { me } = useOnBoard();
  const personId = me.person.id;
  const [sure, setSure] = useState(false);
  const untouched = item.state === 'waiting' && item.attempts === 0;
  if (item.state !== 'refused' && !untouched) return null;
  const refused = item.state === 'refused';
  const choice = refused && item.kind === 'coverage' && item.theirs !== null;
  const home = `/capture/${item.surveyId}/${item.system}`;
  return (
    <div className="actions">
      {refused && item.kind === 'note' ? (
        <Link className="button button-plain" href={`${home}/note/${item.id}`}>
          Correct it
        </Link>
      ) : null}
      {refused && item.kind === 'worksheet' ? (
        <Link className="button button-plain" href={`${home}/worksheets/${item.worksheetKind}/${item.id}`}>
          Correct it
        </Link>
      ) : null}
      {refused ? (
        <Button onClick={() => void sendAgain(personId, item)}>
          {choice ? 'Mine stands' : 'Send again'}
        </Button>
      ) : null}
      {refused && item.kind === 'photo' ? (
        <Button onClick={() => void saveFile(personId, item.id, item.name)}>Save among my files</Button>
      ) : null}
      {choice ? (
        <Button onClick={() => void removeKept(personId, item.id)}>Theirs stands</Button>
      ) : (
        <Button kind="quiet" onClick={() => setSure(true)}>
          Remove
        </Button>
      )}
      {sure ? (
        <ConfirmDialog
          title="Remove it from this telephone?"
          confirmLabel="Remove"
          cancelLabel="Leave it"
          onClose={() => setSure(false)}
          onConfirm={() => void removeKept(personId, item.id)}
        >
          <p dir="auto">
            {whatIs(item)}, {whereIs(item)}. It has not been sent, so it is lost.
          </p>
        </ConfirmDialog>
      ) : null}
    </div>
  );
}

async function saveFile(personId: string, id: string, name: string): Promise<void> {
  const bytes = await bytesOf(personId, id);
  if (!bytes) return;
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes]));
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

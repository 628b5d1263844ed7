import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { etagOf } from '@garboard/contract/client';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { useEffect, useRef, useState } from 'react';
import { useLocation, useSearch } from 'wouter';
import { call } from '../../api/client.ts';
import { useAnswer, useWholeList } from '../../api/queries.ts';
import { arrival } from '../../app/arrival.ts';
import { useKeys } from '../../app/keys.ts';
import { useCloseWarning, useLeaveWarning } from '../../app/leaving.tsx';
import { same } from '../../app/merge.ts';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { whilePreparing } from '../photos/preparing.ts';
import { useEntry } from './BeginFrom.tsx';
import type { FindingDraft } from './findingDraft.ts';
import { bodyOf, draftOf, missingFrom } from './findingDraft.ts';
import { findingPath, useFindingOrder } from './findingOrder.ts';
import { begunFrom, keptAs } from './newFinding.ts';
import { textsOf } from './slotTexts.ts';
import { useDeleteFinding } from './useDeleteFinding.ts';

interface Desk {
  survey: Survey;
  finding: Finding | null;
  id: string;
  onAnother: () => void;
}

/** Everything the form of a finding does: begin, save by itself or by hand, go on, move, delete; and its keys. */
export function useFindingDesk({ survey, finding, id, onAnother }: Desk) {
  const [, go] = useLocation();
  const asked = new URLSearchParams(useSearch());
  const [start] = useState(() => ({
    photoIds: [...asked.getAll('photo'), ...(asked.get('photos') ?? '').split(',')].filter(Boolean),
    entry: finding ? '' : (asked.get('entry') ?? ''),
    after: asked.get('after') ?? '',
  }));
  const home = `/surveys/${survey.id}/findings`;
  const photos = useWholeList('listPhotos', { params: { id: survey.id } }, { again: whilePreparing });
  const { findings, move } = useFindingOrder(survey.id);
  const autosaves = !finding || finding.state === 'draft';
  const valuesOf = (record: Finding | null) => draftOf(record, start.photoIds);

  const edit = useRecordEdit<Finding, FindingDraft>({
    record: finding,
    valuesOf,
    save: (draft, base, idempotencyKey) =>
      base
        ? call('updateFinding', { params: { id: base.id }, body: bodyOf(draft), ifMatch: etagOf(base) })
        : call('createFinding', {
            params: { id: survey.id },
            body: { id, ...bodyOf(draft) },
            idempotencyKey,
          }),
    reload: () => call('getFinding', { params: { id } }),
    keepAs: keptAs(id),
    touches: ['listFindings', 'getFinding', 'getSurvey', 'listSurveys', 'listEvents', 'listRecommendations'],
    done: (saved) => `Saved: ${saved.title}.`,
    onDone: (saved) => leaving.pass(() => go(saved.catalogueKey ? `${home}?after=${saved.id}` : home)),
    autosave: autosaves
      ? {
          may: (draft) => missingFrom(draft).length === 0,
          onSaved: () => {
            const address = `${home}/${id}/edit`;
            if (window.location.pathname === address) return;
            arrival.stayAt(address);
            leaving.pass(() => go(address, { replace: true }));
          },
        }
      : undefined,
  });
  useCloseWarning(edit.unsaved);
  const leaving = useLeaveWarning(edit.unsaved && !edit.auto.possible, edit.discard);
  const live = useAnswer('getFinding', { params: { id } }, { enabled: edit.base !== null });
  const record = live.data ?? edit.base;

  const [template, setTemplate] = useState({ at: 0, texts: textsOf(edit.values) });
  const begin = (entry: CatalogueEntry) => {
    const begun = begunFrom(entry, edit.values);
    edit.set(begun);
    setTemplate((now) => ({ at: now.at + 1, texts: textsOf({ ...edit.values, ...begun }) }));
  };
  const entry = useEntry(survey, start.entry);
  const asksEntry = useRef(true);
  useEffect(() => {
    if (!entry || !asksEntry.current) return;
    asksEntry.current = false;
    if (!edit.values.origin) begin(entry);
  });

  const remove = useDeleteFinding(() => {
    edit.discard();
    leaving.pass(() => go(home));
  });
  const form = useRef<HTMLFormElement>(null);
  const saveAndNext = () => {
    // As the main button does: the browser leads to the field that still has to be filled in.
    if (!form.current?.reportValidity()) return;
    edit.save((saved) => {
      onAnother();
      leaving.pass(() => go(`${home}/new?after=${saved.id}`));
    });
  };
  const toNeighbour = (by: 1 | -1) => {
    const all = findings.data ?? [];
    const at = all.findIndex((one) => one.id === id);
    const other = at < 0 ? (by < 0 ? all.at(-1) : undefined) : all[at + by];
    if (other) go(findingPath(other));
  };
  const shift = (by: 1 | -1) => {
    if (record) move.run({ id, by });
  };
  useKeys({
    'record-next': saveAndNext,
    'next-finding': () => toNeighbour(1),
    'previous-finding': () => toNeighbour(-1),
    'move-down': () => shift(1),
    'move-up': () => shift(-1),
  });

  // Nothing is written yet, and nothing was asked to begin from.
  const [blank] = useState(() => !finding && !start.entry && !edit.base && same(edit.values, valuesOf(null)));
  const beginBox = useRef<HTMLDetailsElement>(null);
  useEffect(() => {
    // Here and not in the box itself: after the page's heading has taken the focus.
    if (blank) beginBox.current?.querySelector('input')?.focus();
  }, [blank]);

  return {
    blank,
    beginBox,
    form,
    edit,
    autosaves,
    record,
    leaving,
    remove,
    begin,
    template,
    saveAndNext,
    photos: photos.data ?? [],
    photosError: photos.error,
    findings: findings.data ?? [],
    moveError: move.error,
    after: start.after,
    toList: () => go(home),
    cancel: () => {
      edit.discard();
      leaving.pass(() => go(home));
    },
  };
}

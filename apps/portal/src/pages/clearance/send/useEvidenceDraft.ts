import type { Finding } from '@garboard/contract/findings';
import { useState } from 'react';
import { newIdempotencyKey } from '../../../api/client.ts';
import { useKeptDraft } from '../../../app/keptDraft.ts';
import { useCloseWarning, useHeldWriting } from '../../../app/leaving.tsx';
import { useMe } from '../../../app/session.tsx';
import type { DraftFile } from '../../../capture/evidence.ts';
import { dropDraftFiles, keepDraftFile } from '../../../capture/evidence.ts';
import { isFull } from '../../../capture/space.ts';
import { today } from '../../../ui/format.ts';
import type { Draft } from '../../worksheets/form/draft.ts';

/** A file of the evidence, and the photo of the finding of which it shows the same place. */
export interface EvidenceFile extends DraftFile {
  beforePhotoId: string | null;
}

/** Evidence as it is being put together. */
export interface EvidenceDraft {
  statement: string;
  workDoneBy: string;
  workDoneOn: string;
  /** Null: all items that are left. */
  itemIds: string[] | null;
  files: EvidenceFile[];
  /** A measurement taken again. */
  measured: { kind: string; entries: Draft } | null;
  /** A measurement that the survey has already. */
  worksheetId: string;
  /** The revision of the finding that stood here when writing began. */
  revision: number | null;
  /** The name under which it was last tried: an attempt whose answer was lost is repeated, not made twice. */
  attempt: { of: string; key: string } | null;
}

export const evidenceKey = (findingId: string) => `evidence:${findingId}`;

/** Evidence for a finding, kept on the device with its photos from the first key or picture until it has arrived. */
export function useEvidenceDraft(finding: Finding, timeZone: string) {
  const me = useMe();
  const personId = me.person.id;
  const isYard = me.parties.some((p) => p.surveyId === finding.surveyId && p.role === 'yard');
  const draft = useKeptDraft<EvidenceDraft>(personId, evidenceKey(finding.id), () => ({
    statement: '',
    workDoneBy: isYard ? me.person.name : '',
    workDoneOn: today(timeZone),
    itemIds: null,
    files: [],
    measured: null,
    worksheetId: '',
    revision: null,
    attempt: null,
  }));
  const [trouble, setTrouble] = useState<string | null>(null);
  const [keeping, setKeeping] = useState(0);
  const { value } = draft;
  const begun = Boolean(value && (value.statement || value.files.length || value.measured));
  useHeldWriting(begun);
  useCloseWarning(keeping > 0 || (begun && !draft.safe));
  const set = (change: Partial<EvidenceDraft>) =>
    draft.change((now) => ({ ...now, revision: now.revision ?? finding.revision, ...change }));

  async function addFiles(files: File[]) {
    setTrouble(null);
    setKeeping((n) => n + 1);
    for (const file of files) {
      try {
        const kept = await keepDraftFile(personId, file);
        draft.change((now) => ({ ...now, files: [...now.files, { ...kept, beforePhotoId: null }] }));
      } catch (error) {
        setTrouble(
          isFull(error)
            ? `There is no room on this device for ${file.name}. Send what you have, or free some room, and choose it again.`
            : `${file.name} could not be read. Choose it again.`,
        );
      }
    }
    setKeeping((n) => n - 1);
  }
  function takeOut(id: string) {
    draft.change((now) => ({ ...now, files: now.files.filter((file) => file.id !== id) }));
    void dropDraftFiles(personId, [id]);
  }
  /** The name of an attempt to send just this, the same again after a reload. */
  function attemptKey(of: string): string {
    if (value?.attempt?.of === of) return value.attempt.key;
    const key = newIdempotencyKey();
    draft.change((now) => ({ ...now, attempt: { of, key } }));
    return key;
  }
  /** Forgets all of it, once it has arrived or when it is given up. */
  async function forget() {
    const ids = value?.files.map((file) => file.id) ?? [];
    await draft.clear();
    await dropDraftFiles(personId, ids);
  }
  return {
    ...{ personId, value, begun, safe: draft.safe, keeping: keeping > 0, trouble },
    ...{ set, addFiles, takeOut, attemptKey, forget },
  };
}

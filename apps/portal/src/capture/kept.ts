import type { CoverageAnswer, CoverageItem } from '@garboard/contract/coverage';
import type { System } from '@garboard/trade/vocabulary';

/** What has become of something kept on the telephone. `sending` is only true while a sender runs. */
export type KeptState = 'waiting' | 'sending' | 'sent' | 'refused';

interface Common {
  /** Made here (UUIDv7); the record on the server has the same, so that nothing is ever made twice. */
  id: string;
  surveyId: string;
  /** For the list: which boat and survey, as people say it. */
  surveyName: string;
  system: System;
  /** When it was kept, milliseconds; a later answer in its place has a later one. */
  keptAt: number;
  state: KeptState;
  /** How often sending was begun: what was never begun can still be taken back. */
  attempts: number;
  bytes: number;
  sentBytes: number;
  sentAt: number | null;
  /** Why the server refused it, in its own sentence. */
  refusal: string | null;
}

export interface KeptPhoto extends Common {
  kind: 'photo';
  name: string;
  sha256: string;
  takenAt: string | null;
  /** The note it was taken for. */
  noteId: string | null;
  thumb: ArrayBuffer | null;
  /** The photo on the server: another than `id` when the same picture was there already. */
  photoId: string | null;
}

export interface KeptNote extends Common {
  kind: 'note';
  text: string;
  urgent: boolean;
  /** Photos kept before it that show what it says. */
  photoIds: string[];
}

export interface KeptCoverage extends Common {
  kind: 'coverage';
  answer: CoverageAnswer;
  /** The version that was on the telephone when it was answered. */
  fromVersion: number | null;
  /** An earlier answer that may have arrived although no word of it came back. */
  tried: CoverageAnswer | null;
  /** What somebody else answered meanwhile. */
  theirs: CoverageItem | null;
}

export interface KeptWorksheet extends Common {
  kind: 'worksheet';
  worksheetKind: string;
  kindTitle: string;
  title: string;
  inputs: Record<string, unknown>;
  verdict: string | null;
  reasons: string[];
}

export type Kept = KeptPhoto | KeptNote | KeptCoverage | KeptWorksheet;

/** A survey as the capture page needs it. */
export interface SurveyBrief {
  id: string;
  name: string;
  purpose: string;
  may: { photos: boolean; findings: boolean; coverage: boolean; worksheets: boolean };
}

/** A finding's heading, to see what has been written already. */
export interface FindingTitle {
  id: string;
  number: number;
  system: System;
  title: string;
}

/** Coverage of one system has one answer: a later one takes its place. */
export const coverageId = (surveyId: string, system: System) => `coverage:${surveyId}:${system}`;

/** What still has to reach the server, refused or not. */
export const isUnsent = (kept: Kept): boolean => kept.state !== 'sent';

const titleLength = 80;

/** The heading of a draft finding: the note's first line, cut at a word. */
export function titleOf(text: string): string {
  const line = text.trim().split('\n')[0]?.trim() ?? '';
  const letters = [...line];
  if (letters.length <= titleLength) return line;
  const cut = letters.slice(0, titleLength).join('');
  const atWord = cut.replace(/\s+\S*$/u, '');
  return `${atWord.length > titleLength / 2 ? atWord : cut}…`;
}

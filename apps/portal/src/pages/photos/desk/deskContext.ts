import { createContext, useContext } from 'react';
import type { Cell } from './cells.ts';
import type { TypedCaption } from './useCaptions.ts';

/** What the cells of the grid share; they read it themselves, so that the grid needn't be built anew for it. */
export interface Desk {
  surveyId: string;
  timeZone: string;
  editable: boolean;
  /** The photo whose caption is being written. */
  writing: string | null;
  typed: ReadonlyMap<string, TypedCaption>;
  write: (id: string) => void;
  saveCaption: (cell: Cell, text: string) => void;
  /** After a caption: on to the next photo's, back to the photo, or nothing when the focus has gone elsewhere. */
  afterCaption: (cell: Cell, way: 'next' | 'back' | 'left') => void;
  toggleGroup: (group: string) => void;
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error('useDesk was called outside the photo desk.');
  return desk;
}

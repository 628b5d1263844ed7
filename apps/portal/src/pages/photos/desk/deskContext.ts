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
  /** After a caption: the next photo's; without one, back to the grid. */
  afterCaption: (cell: Cell, next: boolean) => void;
  toggleGroup: (group: string) => void;
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error('useDesk was called outside the photo desk.');
  return desk;
}

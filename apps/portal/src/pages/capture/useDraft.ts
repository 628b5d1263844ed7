import { useKeptDraft } from '../../app/keptDraft.ts';
import { useOnBoard } from './person.ts';

/** What is being written on board, kept on the telephone of the person who works there. */
export function useDraft<T>(key: string, empty: () => T) {
  return useKeptDraft(useOnBoard().me.person.id, key, empty);
}

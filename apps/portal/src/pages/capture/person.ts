import { createContext, useContext } from 'react';
import type { Me } from '../../app/session.tsx';

interface OnBoard {
  me: Me;
  /** The session has ended: what is kept stays here until the same person signs in again. */
  ended: boolean;
  signIn: () => void;
}

export const OnBoardContext = createContext<OnBoard | null>(null);

/** Who works here, and whether the server still knows them. */
export function useOnBoard(): OnBoard {
  const onBoard = useContext(OnBoardContext);
  if (!onBoard) throw new Error('useOnBoard was called outside the capture pages.');
  return onBoard;
}

import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { createContext, useContext } from 'react';
import type { Answer } from '../api/client.ts';
import { call } from '../api/client.ts';
import { isStatus } from '../api/problems.ts';

export type Me = Answer<'getMe'>;

/** Where the answer to "who am I" is kept; `null` is nobody. */
export const meKey = ['getMe'];

const MeContext = createContext<Me | null>(null);

/** Who is signed in: undefined while asking, null when nobody is. */
export function useSession() {
  return useQuery({
    queryKey: meKey,
    queryFn: async ({ signal }): Promise<Me | null> => {
      try {
        return await call('getMe', { signal });
      } catch (error) {
        if (isStatus(error, 401)) return null;
        throw error;
      }
    },
    staleTime: 60_000,
  });
}

/** Gives the pages inside it the person who is signed in. */
export function MeProvider({ me, children }: { me: Me; children: ReactNode }) {
  return <MeContext value={me}>{children}</MeContext>;
}

/** The person who is signed in. Pages are only shown to somebody. */
export function useMe(): Me {
  const me = useContext(MeContext);
  if (!me) throw new Error('useMe was called outside the signed-in part of the portal.');
  return me;
}

/** Whether the person belongs to a survey firm. */
export function useIsStaff(): boolean {
  return useMe().firmRoles.length > 0;
}

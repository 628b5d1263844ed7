import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { forgetPerson } from '../capture/identity.ts';
import type { Me } from './session.tsx';
import { meKey } from './session.tsx';

/**
 * Keeps the portal openable without a network and works for a surveyor in the background. Everything for it is
 * loaded after the page; where the address isn't secure (plain HTTP) browsers offer none of it.
 */
export function useBackground(me: Me | null | undefined): void {
  const queryClient = useQueryClient();
  const personId = me?.firmRoles.length ? me.person.id : null;
  const signedIn = Boolean(me);
  useEffect(() => {
    if (!window.isSecureContext || !navigator.serviceWorker) return;
    if (import.meta.env.MODE === 'production' && (personId || navigator.serviceWorker.controller)) {
      void import('./shell.ts').then(({ keepShell }) => keepShell());
    }
    const mine = queryClient.getQueryData<Me | null>(meKey);
    // A party signed in where a surveyor worked: the surveyor's page is no longer open to whoever holds the device.
    if (signedIn && !personId) forgetPerson();
    if (!personId || !mine) return;
    let over = false;
    let end: () => void = () => undefined;
    void import('../capture/background.ts').then(({ workFor }) => {
      if (!over) end = workFor(mine, () => queryClient.setQueryData(meKey, null));
    });
    return () => {
      over = true;
      end();
    };
  }, [personId, signedIn, queryClient]);
}

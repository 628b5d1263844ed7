import { useEffect, useRef } from 'react';
import { call } from '../../api/client.ts';
import { useAction } from '../../api/queries.ts';
import { count } from '../../ui/format.ts';

/** Has a link sent to an address. What is said afterwards is the same whether anybody has an account under it. */
export function useAskLink() {
  const ask = useAction({ run: (email: string) => call('askSignInLink', { body: { email } }) });
  return { ...ask, asked: ask.output };
}

/** Where to look for the link; takes the focus so that it is heard. */
export function LinkAsked({ email, minutes }: { email: string; minutes: number }) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => box.current?.focus(), []);
  return (
    <div ref={box} className="notice" role="status" tabIndex={-1}>
      <p>
        <strong>Look in your mail.</strong>
      </p>
      <p>
        If {email} has an account here, a link is on its way. It works once, within {count(minutes, 'minute')}
        .
      </p>
      <p className="soft">Nothing there? Look among unwanted mail, and whether the address is right.</p>
    </div>
  );
}

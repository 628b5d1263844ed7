import type { ReactNode } from 'react';
import { createContext, useCallback, useContext, useEffect, useState } from 'react';

const StatusContext = createContext<(message: string) => void>(() => undefined);

const shownFor = 6000;

/** Holds the one line at the foot of the window that says what has just been done, aloud as well. */
export function StatusProvider({ children }: { children: ReactNode }) {
  const [message, setMessage] = useState({ text: '', at: 0 });
  const say = useCallback((text: string) => setMessage({ text, at: Date.now() }), []);
  useEffect(() => {
    if (!message.text) return;
    const timer = setTimeout(() => setMessage({ text: '', at: 0 }), shownFor);
    return () => clearTimeout(timer);
  }, [message]);
  return (
    <StatusContext.Provider value={say}>
      {children}
      <div className="status-line" role="status" aria-live="polite">
        {message.text ? <p key={message.at}>{message.text}</p> : null}
      </div>
    </StatusContext.Provider>
  );
}

/** Says one short sentence about an action just done. */
export function useStatus(): (message: string) => void {
  return useContext(StatusContext);
}

import type { ReactNode } from 'react';
import { createContext, useCallback, useContext, useRef, useState } from 'react';
import { Button } from './Button.tsx';

/** A way back from what has just been done. */
export interface WayBack {
  label: string;
  run: () => void;
}
type Say = (message: string, back?: WayBack) => void;

const StatusContext = createContext<Say>(() => undefined);

/** A line with a way back stays longer, and as long as it is pointed at or has the focus. */
const shownFor = { plain: 6000, withWayBack: 20_000 };

/** Holds the one line at the foot of the window that says what has just been done, aloud as well. */
export function StatusProvider({ children }: { children: ReactNode }) {
  const [message, setMessage] = useState<{ text: string; at: number; back?: WayBack | undefined }>({
    text: '',
    at: 0,
  });
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const hold = useCallback(() => clearTimeout(timer.current), []);
  const letGo = useCallback(
    (after: number) => {
      hold();
      timer.current = setTimeout(() => setMessage({ text: '', at: 0 }), after);
    },
    [hold],
  );
  const say = useCallback<Say>(
    (text, back) => {
      setMessage({ text, at: Date.now(), back });
      letGo(back ? shownFor.withWayBack : shownFor.plain);
    },
    [letGo],
  );
  const { text, at, back } = message;
  return (
    <StatusContext.Provider value={say}>
      {children}
      <div className="status-line" role="status" aria-live="polite">
        {text ? (
          <p
            key={at}
            onFocus={hold}
            onPointerEnter={hold}
            onBlur={() => letGo(shownFor.plain)}
            onPointerLeave={() => letGo(shownFor.plain)}
          >
            {text}{' '}
            {back ? (
              <Button
                kind="quiet"
                onClick={() => {
                  hold();
                  setMessage({ text: '', at: 0 });
                  back.run();
                }}
              >
                {back.label}
              </Button>
            ) : null}
          </p>
        ) : null}
      </div>
    </StatusContext.Provider>
  );
}

/** Says one short sentence about an action just done, with a way back where there is one. */
export function useStatus(): Say {
  return useContext(StatusContext);
}

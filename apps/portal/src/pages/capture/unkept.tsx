import type { ReactNode } from 'react';
import { createContext, useCallback, useContext, useEffect, useRef, useState } from 'react';
import { holdWriting } from '../../app/writing.ts';
import { onChange } from '../../capture/changes.ts';
import { keepPhoto, type Place } from '../../capture/keep.ts';
import { isFull } from '../../capture/space.ts';
import { Button } from '../../ui/Button.tsx';
import { ConfirmDialog } from '../../ui/Dialog.tsx';
import { count } from '../../ui/format.ts';
import { useStatus } from '../../ui/Status.tsx';

interface Shot {
  place: Place;
  file: File;
  noteId: string | null;
}
interface Keeping {
  busy: boolean;
  unkept: Shot[];
  full: boolean;
  keep: (shots: Shot[]) => Promise<void>;
  giveUp: () => void;
}

const KeepingContext = createContext<Keeping | null>(null);

/** Keeps photos one after another; those for which there is no room stay in the window until there is. */
export function KeepingProvider({ children }: { children: ReactNode }) {
  const say = useStatus();
  const [unkept, setUnkept] = useState<Shot[]>([]);
  const [full, setFull] = useState(false);
  const [running, setRunning] = useState(0);
  const queue = useRef(Promise.resolve());
  const keep = useCallback(
    (shots: Shot[]) => {
      setRunning((n) => n + 1);
      const work = async () => {
        const left: Shot[] = [];
        let kept = 0;
        let known = 0;
        let noRoom = false;
        for (const shot of shots) {
          try {
            const { before } = await keepPhoto(shot.place, shot.file, shot.noteId);
            if (before) known += 1;
            else kept += 1;
          } catch (error) {
            noRoom ||= isFull(error);
            left.push(shot);
          }
        }
        setUnkept((others) => [...others.filter((other) => !shots.includes(other)), ...left]);
        setFull(noRoom);
        setRunning((n) => n - 1);
        const words = [
          kept ? `Kept: ${count(kept, 'photo')}.` : '',
          known ? `${count(known, 'photo')} had been kept before.` : '',
        ].filter(Boolean);
        if (words.length) say(words.join(' '));
      };
      queue.current = queue.current.then(work);
      return queue.current;
    },
    [say],
  );
  useEffect(() => {
    if (!unkept.length && !running) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    const release = holdWriting();
    return () => {
      release();
      window.removeEventListener('beforeunload', warn);
    };
  }, [unkept.length, running]);
  useEffect(() => {
    if (!unkept.length || running) return;
    // Whatever has been sent has made room.
    return onChange((change) => {
      if (change === 'sent') void keep(unkept);
    });
  }, [unkept, running, keep]);
  return (
    <KeepingContext value={{ busy: running > 0, unkept, full, keep, giveUp: () => setUnkept([]) }}>
      {children}
    </KeepingContext>
  );
}

/** How to keep photos. */
export function useKeeping(): Keeping {
  const keeping = useContext(KeepingContext);
  if (!keeping) throw new Error('useKeeping was called outside the capture pages.');
  return keeping;
}

/** Says which photos are not kept, and what can be done for them. */
export function Unkept() {
  const { unkept, full, keep, giveUp, busy } = useKeeping();
  const [sure, setSure] = useState(false);
  if (!unkept.length) return null;
  const one = unkept.length === 1;
  return (
    <div className="notice notice-error" role="alert">
      <p>Not kept: {count(unkept.length, 'photo')}</p>
      <p>
        {full
          ? 'This telephone gives the page no more room. Whatever was kept before is safe.'
          : `The ${one ? 'picture' : 'pictures'} could not be read.`}{' '}
        Leave this page open: {one ? 'it is' : 'they are'} tried again when something has been sent. Or free
        some room on the telephone, or save {one ? 'it' : 'them'} among your files.
      </p>
      <div className="capture-actions">
        <Button busy={busy} busyLabel="Trying…" onClick={() => void keep(unkept)}>
          Try again now
        </Button>
        {unkept.map(({ file }, at) => (
          <SaveFile key={`${file.name}-${file.lastModified}-${file.size}`} file={file} number={at + 1} />
        ))}
        <Button kind="quiet" onClick={() => setSure(true)}>
          Give {one ? 'it' : 'them'} up
        </Button>
      </div>
      {sure ? (
        <ConfirmDialog
          title={`Give up ${count(unkept.length, 'photo')}?`}
          confirmLabel="Give up"
          cancelLabel="Not yet"
          onClose={() => setSure(false)}
          onConfirm={() => {
            setSure(false);
            giveUp();
          }}
        >
          <p>What you have not saved among your files is lost.</p>
        </ConfirmDialog>
      ) : null}
    </div>
  );
}

/** A link that saves a picture among the telephone's own files. */
export function SaveFile({ file, number }: { file: File; number: number }) {
  const [url, setUrl] = useState('');
  useEffect(() => {
    const made = URL.createObjectURL(file);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return (
    <a className="button button-plain" href={url} download={file.name || `photo-${number}.jpg`}>
      Save photo {number} among my files
    </a>
  );
}

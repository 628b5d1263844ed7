import { Button } from './Button.tsx';

/** Says that unsaved writing from before was brought back, and lets it go. */
export function Restored({ when, onDiscard }: { when: boolean; onDiscard: () => void }) {
  if (!when) return null;
  return (
    <div className="notice" role="status">
      <p>What you had written here and not saved has been brought back.</p>
      <Button kind="quiet" onClick={onDiscard}>
        Throw it away and show what is saved
      </Button>
    </div>
  );
}

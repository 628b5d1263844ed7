import { Button } from '../../ui/Button.tsx';
import { listed } from '../../ui/format.ts';

interface Auto {
  saving: boolean;
  conflict: boolean;
  possible: boolean;
  unreachable: boolean;
}

/** Says quietly how far what is written has been saved, and what is in the way. */
export function SavedLine({
  auto,
  unsaved,
  saved,
  missing,
  onPutTogether,
}: {
  auto: Auto;
  unsaved: boolean;
  /** Whether there is something on the server yet. */
  saved: boolean;
  missing: readonly string[];
  onPutTogether: () => void;
}) {
  if (auto.conflict) {
    return (
      <div className="notice" role="alert">
        <p>Someone else changed the same words. Yours are kept here and not saved yet.</p>
        <Button onClick={onPutTogether}>Put the two together</Button>
      </div>
    );
  }
  return (
    <p className="autosaved" role="status">
      {words(auto, unsaved, saved, missing)}
    </p>
  );
}

function words(auto: Auto, unsaved: boolean, saved: boolean, missing: readonly string[]): string {
  if (auto.unreachable)
    return 'Not saved: no connection. It is kept in this window and tried again by itself.';
  if (unsaved && missing.length)
    return `Kept in this window. To save it with the survey it needs ${listed(missing)}.`;
  if (auto.saving) return 'Saving…';
  if (unsaved) return auto.possible ? 'Saved when you pause.' : '';
  return saved ? 'Saved' : '';
}

import type { SavedView } from '@garboard/contract/saved-views';
import { useState } from 'react';
import { Link, useLocation, useSearchParams } from 'wouter';
import { call } from '../../api/client.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';

/** The address of a view, in one order, so that two can be compared. */
const addressOf = (query: Readonly<Record<string, string>>): string =>
  new URLSearchParams(Object.entries(query).sort()).toString();

/** The person's named views of this list; the filters that stand now can be kept as another. */
export function SavedViews({ page }: { page: SavedView['page'] }) {
  const [params] = useSearchParams();
  const [path] = useLocation();
  const [open, setOpen] = useState<'save' | SavedView | null>(null);
  const views = useAnswer('listSavedViews', { query: { page } }).data?.items ?? [];
  const query = Object.fromEntries([...params].filter(([, value]) => value));
  const now = addressOf(query);
  const current = views.find((view) => addressOf(view.query) === now);
  if (!views.length && !now) return null;
  return (
    <section className="views" aria-label="Your views">
      {views.length ? (
        <>
          <span className="soft">Your views:</span>
          <ul>
            {views.map((view) => (
              <li key={view.id}>
                <Link
                  href={`${path}?${addressOf(view.query)}`}
                  aria-current={view === current ? 'page' : undefined}
                >
                  {view.name}
                </Link>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {current ? (
        <Button kind="quiet" onClick={() => setOpen(current)}>
          Rename or delete this view
        </Button>
      ) : now ? (
        <Button kind="quiet" onClick={() => setOpen('save')}>
          Keep these filters as a view
        </Button>
      ) : null}
      {open === 'save' ? <SaveView page={page} query={query} onClose={() => setOpen(null)} /> : null}
      {open && open !== 'save' ? <ChangeView view={open} onClose={() => setOpen(null)} /> : null}
    </section>
  );
}

function SaveView({
  page,
  query,
  onClose,
}: {
  page: SavedView['page'];
  query: Record<string, string>;
  onClose: () => void;
}) {
  const [name, setName] = useState('');
  const save = useAction({
    run: (body: { page: SavedView['page']; name: string; query: Record<string, string> }, idempotencyKey) =>
      call('createSavedView', { body, idempotencyKey }),
    done: (view) => `“${view.name}” is among your views.`,
    touches: ['listSavedViews'],
    onDone: onClose,
  });
  return (
    <Dialog title="Keep these filters as a view" onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          save.run({ page, name, query });
        }}
      >
        <TextField
          label="Name"
          hint="Only you see it."
          value={name}
          onChange={setName}
          required
          maxLength={60}
          autoFocus
        />
        {save.error ? <ErrorNotice error={save.error} /> : null}
        <div className="actions">
          <Button kind="main" type="submit" busy={save.busy}>
            Keep the view
          </Button>
          <Button onClick={onClose}>Cancel</Button>
        </div>
      </form>
    </Dialog>
  );
}

function ChangeView({ view, onClose }: { view: SavedView; onClose: () => void }) {
  const [name, setName] = useState(view.name);
  const params = { id: view.id };
  const touches = ['listSavedViews'] as const;
  const rename = useAction({
    run: (body: { name: string }) => call('updateSavedView', { params, body }),
    done: 'The view is renamed.',
    touches,
    onDone: onClose,
  });
  const remove = useAction({
    run: () => call('deleteSavedView', { params }),
    done: `“${view.name}” is no longer among your views.`,
    touches,
    onDone: onClose,
  });
  const error = rename.error ?? remove.error;
  return (
    <Dialog title="Your view" onClose={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          rename.run({ name });
        }}
      >
        <TextField label="Name" value={name} onChange={setName} required maxLength={60} autoFocus />
        {error ? <ErrorNotice error={error} /> : null}
        <div className="actions">
          <Button kind="main" type="submit" busy={rename.busy}>
            Rename
          </Button>
          <Button busy={remove.busy} onClick={() => remove.run(undefined)}>
            Delete this view
          </Button>
        </div>
      </form>
    </Dialog>
  );
}

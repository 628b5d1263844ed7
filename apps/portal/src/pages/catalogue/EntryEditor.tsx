import type { CatalogueEntry } from '@garboard/contract/catalogue';
import { etagOf } from '@garboard/contract/client';
import { Link, useLocation } from 'wouter';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { useFirm } from '../../app/firm.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { NotFound } from '../../app/NotFound.tsx';
import { useRecordEdit } from '../../app/recordEdit.ts';
import { Button } from '../../ui/Button.tsx';
import { Restored } from '../../ui/EditNotices.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Merge } from '../../ui/Merge.tsx';
import { Page } from '../../ui/Page.tsx';
import { EntryFields } from './EntryFields.tsx';
import { bodyOf, draftOf, type EntryDraft, entryLabels, keyFor, showField } from './entryDraft.ts';

/** Writes an entry of the firm's own, or the firm's words over ours. */
export default function EntryEditor({ entryKey }: { entryKey?: string }) {
  const { firmId } = useFirm();
  const answer = useAnswer(
    'getCatalogueEntry',
    { params: { key: entryKey ?? '' }, query: { firmId } },
    { enabled: Boolean(entryKey), anew: true },
  );
  if (isStatus(answer.error, 404) || isStatus(answer.error, 422)) return <NotFound />;
  if (entryKey && !(answer.data && answer.isFetchedAfterMount)) {
    return answer.error ? <ErrorNotice error={answer.error} /> : <Loading what="the entry" />;
  }
  return <Editor firmId={firmId} entry={answer.data ?? null} />;
}

function Editor({ firmId, entry }: { firmId: string; entry: CatalogueEntry | null }) {
  const [, go] = useLocation();
  const query = { firmId };
  const edit = useRecordEdit<CatalogueEntry, EntryDraft>({
    record: entry,
    valuesOf: draftOf,
    save: (draft, base, unique) =>
      call('putCatalogueEntry', {
        params: { key: base?.key ?? keyFor(draft.title, unique) },
        query,
        body: bodyOf(draft),
        ...(base ? { ifMatch: etagOf(base) } : {}),
      }),
    reload: () => call('getCatalogueEntry', { params: { key: entry?.key ?? '' }, query }),
    keepAs: `unsaved:catalogue:${entry?.key ?? 'new'}`,
    touches: ['listCatalogue', 'getCatalogueEntry', 'listCatalogueVersions'],
    done: (saved) => `Saved as version ${saved.version}: ${saved.title}.`,
    onDone: (saved) => leaving.pass(() => go(`/catalogue/${saved.key}`)),
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  const head = {
    title: entry ? `In our words: ${entry.title}` : 'New entry',
    over: <Link href="/catalogue">Catalogue</Link>,
  };
  if (edit.theirs) {
    return (
      <Page {...head}>
        <Merge
          base={draftOf(edit.base)}
          mine={edit.values}
          theirs={draftOf(edit.theirs)}
          labels={entryLabels}
          show={showField}
          busy={edit.busy}
          onSettle={edit.settle}
          onPostpone={edit.postpone}
        />
      </Page>
    );
  }
  return (
    <Page
      {...head}
      under={
        entry
          ? 'Each save is a new version. Findings keep the words they have.'
          : 'An entry of your firm’s own, for all its surveyors.'
      }
    >
      <form
        className="stack measure"
        onSubmit={(event) => {
          event.preventDefault();
          edit.save();
        }}
      >
        <Restored when={edit.restored} onDiscard={edit.discard} />
        <EntryFields draft={edit.values} set={edit.set} error={edit.error} firmId={firmId} />
        <ErrorNotice error={edit.error} />
        <div className="actions">
          <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
            Save
          </Button>
          <Button
            onClick={() => {
              edit.discard();
              leaving.pass(() => go(entry ? `/catalogue/${entry.key}` : '/catalogue'));
            }}
          >
            Cancel
          </Button>
        </div>
      </form>
      {leaving.dialog}
    </Page>
  );
}

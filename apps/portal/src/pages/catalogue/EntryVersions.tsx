import { useList } from '../../api/queries.ts';
import { formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { EntryTexts } from './EntryTexts.tsx';

/** Every wording there has been, newest first, each to be opened and read. */
export function EntryVersions({ firmId, entryKey }: { firmId: string; entryKey: string }) {
  const versions = useList('listCatalogueVersions', { params: { key: entryKey }, query: { firmId } });
  return (
    <section className="stack">
      <h2>Versions</h2>
      <MoreList list={versions} what="its versions" empty={<p>None.</p>}>
        {(items) => (
          <ul className="plain-list">
            {items.map((version) => (
              <li key={version.version}>
                <details>
                  <summary>
                    Version {version.version}, {version.savedBy}, {formatInstant(version.savedAt)}
                    {version.current ? ' (in use)' : ''}
                  </summary>
                  {version.retiredAt ? (
                    <p className="soft">
                      Taken back by {version.retiredBy}, {formatInstant(version.retiredAt)}
                    </p>
                  ) : null}
                  <p className="lead" dir="auto">
                    {version.title}
                  </p>
                  <EntryTexts entry={version} />
                </details>
              </li>
            ))}
          </ul>
        )}
      </MoreList>
    </section>
  );
}

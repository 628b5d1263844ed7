import { hullMaterialLabels, systemLabels, systems } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import type { Item } from '../../api/client.ts';
import { useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { formatInstantDay } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';

type Shot = Item<'listPhotoLibrary'>;
const day = /^\d{4}-\d{2}-\d{2}$/;

/** The photos of all the firm's surveys, latest first, searched by words, system, hull and date. */
export default function Library() {
  const [filter, setFilter] = useFilters();
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const dated = (name: string) => (day.test(filter(name)) ? filter(name) : undefined);
  const query = {
    q: filter('q') || undefined,
    system: oneOf(filter('system'), systems),
    hullMaterial: filter('hull') || undefined,
    from: dated('from'),
    to: dated('to'),
  };
  const list = useList('listPhotoLibrary', { query });
  const filtered = Object.values(query).some(Boolean);
  return (
    <Page title="Photo library" under="Photos of all the firm's surveys, latest first">
      <search className="filters">
        <TextField
          className="grow"
          label="Words in captions, findings and boat names"
          type="search"
          value={search}
          onChange={setSearch}
        />
        <SelectField
          label="System"
          value={query.system ?? ''}
          options={systemLabels}
          empty="Any system"
          onChange={(value) => setFilter('system', value)}
        />
        <SelectField
          label="Hull material"
          value={query.hullMaterial ?? ''}
          options={hullMaterialLabels}
          empty="Any material"
          onChange={(value) => setFilter('hull', value)}
        />
        <TextField
          label="Taken from"
          type="date"
          value={query.from ?? ''}
          onChange={(value) => setFilter('from', value)}
        />
        <TextField
          label="Taken until"
          type="date"
          value={query.to ?? ''}
          onChange={(value) => setFilter('to', value)}
        />
      </search>
      <MoreList
        list={list}
        what="the photos"
        empty={
          <EmptyState title={filtered ? 'No photo matches' : 'No photos yet'}>
            <p>
              {filtered
                ? 'Search for fewer words, another system or a longer time.'
                : 'Photos taken on any survey of the firm are found here.'}
            </p>
          </EmptyState>
        }
      >
        {(items) => (
          <ul className="library">
            {items.map((shot) => (
              <li key={shot.id}>
                <LibraryPhoto shot={shot} />
              </li>
            ))}
          </ul>
        )}
      </MoreList>
    </Page>
  );
}

function LibraryPhoto({ shot }: { shot: Shot }) {
  const { vessel, survey, findings } = shot;
  return (
    <figure>
      <Link href={`/surveys/${survey.id}/photos/${shot.id}`}>
        {shot.images.thumb ? (
          <img
            src={shot.images.thumb}
            width={shot.thumbWidth}
            height={shot.thumbHeight}
            alt={shot.caption || `Photo of ${vessel.name}, no caption`}
            loading="lazy"
            decoding="async"
          />
        ) : (
          <span className="photo-waiting">Being prepared…</span>
        )}
      </Link>
      <figcaption>
        <p>
          <strong>{vessel.name}</strong>, <Link href={`/surveys/${survey.id}`}>{survey.number}</Link>
          {shot.takenAt ? `, ${formatInstantDay(shot.takenAt)}` : ''}
        </p>
        {shot.caption ? <p>{shot.caption}</p> : null}
        {findings.map((finding) => (
          <p key={finding.id}>
            <Link href={`/findings/${finding.id}`}>
              {finding.number}. {finding.title}
            </Link>
            <span className="soft">, {systemLabels[finding.system].toLowerCase()}</span>
          </p>
        ))}
      </figcaption>
    </figure>
  );
}

import type { CatalogueListed } from '@garboard/contract/catalogue';
import { systemLabels, systems } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { useList } from '../../api/queries.ts';
import { oneOf, useFilters, useSearchField } from '../../app/filters.ts';
import { useFirm } from '../../app/firm.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import type { Column } from '../../ui/Table.tsx';
import { Table } from '../../ui/Table.tsx';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { originWords } from './entryWords.ts';
import { ReadAs } from './ReadAs.tsx';

const columns: Column<CatalogueListed>[] = [
  {
    key: 'title',
    heading: 'Defect',
    cell: (entry) => <Link href={`/catalogue/${entry.key}`}>{entry.title}</Link>,
  },
  { key: 'system', heading: 'System', cell: (entry) => systemLabels[entry.system] },
  { key: 'urgency', heading: 'How soon', cell: (entry) => <UrgencyGauge urgency={entry.urgency} /> },
  { key: 'words', heading: 'Words', cell: (entry) => originWords[entry.origin] },
  { key: 'diagram', heading: 'Drawing', cell: (entry) => (entry.hasDiagram ? 'Yes' : '') },
];

/** Known defects, ours and the firm's own, by words, system and standard. */
export default function Catalogue() {
  const { firmId, writesCatalogue } = useFirm();
  const [filter, setFilter] = useFilters();
  const [q, standard] = [filter('q'), filter('standard')];
  const system = oneOf(filter('system'), systems);
  const [search, setSearch] = useSearchField(q, (value) => setFilter('q', value));
  const [sought, setSought] = useSearchField(standard, (value) => setFilter('standard', value));
  const list = useList('listCatalogue', {
    query: { firmId, q: q || undefined, system, standard: standard || undefined },
  });
  return (
    <Page
      title="Catalogue"
      under="Known defects: what to look for, how to say it, why it matters and what to do."
      action={
        writesCatalogue ? (
          <ButtonLink href="/catalogue/new" kind="main">
            New entry
          </ButtonLink>
        ) : null
      }
    >
      <search className="filters">
        <TextField className="grow" label="Words" type="search" value={search} onChange={setSearch} />
        <SelectField
          label="System"
          value={system ?? ''}
          options={systemLabels}
          empty="Every system"
          onChange={(value) => setFilter('system', value)}
        />
        <TextField label="Standard" type="search" value={sought} onChange={setSought} />
      </search>
      <ReadAs typed={q} readAs={list.first?.readAs} />
      <MoreList
        list={list}
        what="the catalogue"
        empty={
          <EmptyState title="No entry matches">
            <p>Try fewer words, another system, or the standard without its clause.</p>
          </EmptyState>
        }
      >
        {(items) => (
          <Table
            caption={q ? 'Best match first' : 'By system'}
            columns={columns}
            rows={items}
            rowKey={(entry) => entry.key}
          />
        )}
      </MoreList>
    </Page>
  );
}

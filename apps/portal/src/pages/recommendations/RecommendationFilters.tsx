import { findingStateLabels, systemLabels, urgencyLabels } from '@garboard/trade/vocabulary';
import { useSearchField } from '../../app/filters.ts';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { MoreFilters } from '../lists/MoreFilters.tsx';
import { dueLabels, sortLabels, waitLabels } from './recommendationQuery.ts';

const { draft: _draft, ...issuedLabels } = findingStateLabels;
const stateLabels = { all: 'Any state', decided: 'Decided', ...issuedLabels } as const;

/** Everything by which the recommendations can be narrowed and put in order. */
export function RecommendationFilters({
  filter,
  setFilter,
  firms,
}: {
  filter: (name: string) => string;
  setFilter: (name: string, value: string) => void;
  firms: readonly { id: string; name: string }[];
}) {
  const [search, setSearch] = useSearchField(filter('q'), (q) => setFilter('q', q));
  const select = (name: string, label: string, empty: string, options: Readonly<Record<string, string>>) => (
    <SelectField
      label={label}
      value={filter(name) in options ? filter(name) : ''}
      options={options}
      empty={empty}
      onChange={(value) => setFilter(name, value)}
    />
  );
  const { due: soonest, ...otherOrders } = sortLabels;
  return (
    <search>
      <div className="filters">
        <TextField
          className="grow"
          label="Vessel, number or words"
          type="search"
          value={search}
          onChange={setSearch}
        />
        {select('state', 'State', 'Still to clear', stateLabels)}
        {select('due', 'Due', 'Any day', dueLabels)}
        {select('waiting', 'Waiting for', 'Anybody', waitLabels)}
        {select('sort', 'Order', soonest, otherOrders)}
      </div>
      <MoreFilters set={Boolean(filter('urgency') || filter('system') || filter('firm'))}>
        {select('urgency', 'Urgency', 'Any urgency', urgencyLabels)}
        {select('system', 'System', 'Any system', systemLabels)}
        {firms.length > 1
          ? select(
              'firm',
              'Survey firm',
              'Any firm',
              Object.fromEntries(firms.map((firm) => [firm.id, firm.name])),
            )
          : null}
      </MoreFilters>
    </search>
  );
}

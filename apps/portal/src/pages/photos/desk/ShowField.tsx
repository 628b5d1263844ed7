import type { Finding } from '@garboard/contract/findings';
import { memo } from 'react';
import { SelectField } from '../../../ui/Field.tsx';
import { count } from '../../../ui/format.ts';
import type { Shown } from './cells.ts';

/** What the rail offers, as a field, for narrow windows. */
export const ShowField = memo(function ShowField({
  findings,
  shown,
  counts,
  onShow,
}: {
  findings: readonly Finding[];
  shown: Shown;
  counts: { all: number; none: number };
  onShow: (shown: Shown) => void;
}) {
  const options = Object.fromEntries([
    ['all', `All photos, ${counts.all}`],
    ['none', `In no finding yet, ${counts.none}`],
    ...findings.map((one) => [one.id, `${one.number}. ${one.title}, ${count(one.photos.length, 'photo')}`]),
  ]);
  return (
    <SelectField label="Show" value={shown} options={options} onChange={(value) => onShow(value || 'all')} />
  );
});

import type { Expiry, InventoryItem } from '@garboard/contract/inventory';
import { yearsBetween } from '@garboard/trade/inventory';
import { count, formatDay, today } from '../../ui/format.ts';
import type { Column } from '../../ui/Table.tsx';

type Item = InventoryItem | Expiry;

/** Until when it is good; what has expired says so. */
export function GoodUntil({ item }: { item: Pick<Item, 'expiresOn' | 'expired'> }) {
  if (!item.expiresOn) return null;
  const day = formatDay(item.expiresOn);
  return item.expired ? <strong className="signal">Expired {day}</strong> : day;
}

/** Columns that both lists of equipment have. */
export const placeColumn: Column<Item> = {
  key: 'place',
  heading: 'Where',
  cell: (item) => item.place ?? '',
};
export const numberColumn: Column<Item> = {
  key: 'number',
  heading: 'Maker, serial number',
  cell: (item) => [item.maker, item.serialNumber].filter(Boolean).join(', '),
};
export const untilColumn: Column<Item> = {
  key: 'until',
  heading: 'Good until',
  cell: (item) => <GoodUntil item={item} />,
};
export const madeColumn: Column<Item> = {
  key: 'made',
  heading: 'Made or fitted',
  cell: ({ madeOn }) => {
    if (!madeOn) return '';
    const years = yearsBetween(madeOn, today());
    return (
      <>
        {formatDay(madeOn)}
        {years > 0 ? <small>{count(years, 'year')} old</small> : null}
      </>
    );
  },
};

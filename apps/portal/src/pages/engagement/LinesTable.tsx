import { taxWords } from '@garboard/trade/engagement';
import { type Line, taxByRate, writtenAmount, writtenQuantity } from '@garboard/trade/fees';
import { Table } from '../../ui/Table.tsx';

/** What is charged, line by line, with tax and total. */
export function LinesTable({
  lines,
  currency,
  taxName,
  total,
}: {
  lines: readonly Line[];
  currency: string;
  taxName: string;
  total: number;
}) {
  const money = (minor: number) => writtenAmount(minor, currency);
  const taxes = taxByRate(lines).filter(({ taxRate }) => taxRate > 0);
  const rows = [
    ...lines.map((line, at) => ({
      key: `line ${at}`,
      text: line.text,
      quantity: writtenQuantity(line),
      price: writtenQuantity(line) === '' ? '' : money(line.price),
      amount: money(line.net),
    })),
    ...taxes.map(({ taxRate, net, tax }) => ({
      key: `tax ${taxRate}`,
      text: `${taxWords(taxName, taxRate)} on ${money(net)}`,
      quantity: '',
      price: '',
      amount: money(tax),
    })),
    { key: 'total', text: 'Total', quantity: '', price: '', amount: money(total) },
  ];
  return (
    <Table
      caption="Fee"
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        { key: 'for', heading: 'For', cell: (row) => row.text },
        { key: 'quantity', heading: 'Quantity', align: 'num', cell: (row) => row.quantity },
        { key: 'price', heading: 'Price', align: 'num', cell: (row) => row.price },
        {
          key: 'amount',
          heading: 'Amount',
          align: 'num',
          cell: (row) => (row.key === 'total' ? <strong>{row.amount}</strong> : row.amount),
        },
      ]}
    />
  );
}

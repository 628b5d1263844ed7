import type { Finding } from '@garboard/contract/findings';
import { systemLabels } from '@garboard/trade/vocabulary';
import { Autocomplete, useFilter } from 'react-aria-components/Autocomplete';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { SearchField } from 'react-aria-components/SearchField';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { count } from '../../../ui/format.ts';

/** Chooses a finding by its number or words: type, arrow, Enter; or tap it. The last one used stands first. */
export function FindFinding({
  photos,
  findings,
  last,
  onChoose,
  onNew,
  onClose,
}: {
  /** How many photos are to be filed. */
  photos: number;
  findings: readonly Finding[];
  last: string | null;
  onChoose: (finding: Finding) => void;
  onNew: () => void;
  onClose: () => void;
}) {
  const { contains } = useFilter({ sensitivity: 'base' });
  const ordered = [...findings].sort((a, b) => Number(b.id === last) - Number(a.id === last));
  const rows = [
    ...ordered.map((finding) => ({ id: finding.id, words: `${finding.number}. ${finding.title}`, finding })),
    { id: 'new', words: `A new finding from ${photos === 1 ? 'this photo' : 'these photos'}`, finding: null },
  ];
  const matches = (text: string, typed: string) =>
    /^\d+$/.test(typed.trim())
      ? text.startsWith(typed.trim())
      : typed
          .split(/\s+/)
          .filter(Boolean)
          .every((word) => contains(text, word));
  return (
    <Dialog title={`Put ${count(photos, 'photo')} into a finding`} onClose={onClose}>
      <Autocomplete filter={(text, typed) => text.startsWith('A new finding') || matches(text, typed)}>
        <SearchField autoFocus className="field">
          <Label className="field-label">Number or words</Label>
          <Input className="input pick-input" autoComplete="off" />
        </SearchField>
        <ListBox
          aria-label="Findings"
          className="pick-list"
          items={rows}
          selectionMode="none"
          onAction={(key) => {
            const row = rows.find((one) => one.id === key);
            if (row?.finding) onChoose(row.finding);
            else if (row) onNew();
          }}
        >
          {(row) => (
            <ListBoxItem
              className="rail-row"
              textValue={row.finding ? `${row.words} ${systemLabels[row.finding.system]}` : row.words}
            >
              <span>{row.words}</span>
              {row.finding ? <span className="soft">{systemLabels[row.finding.system]}</span> : null}
            </ListBoxItem>
          )}
        </ListBox>
      </Autocomplete>
      <div className="actions">
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </Dialog>
  );
}

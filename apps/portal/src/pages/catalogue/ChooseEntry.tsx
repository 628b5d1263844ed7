import type { CatalogueEntry } from '@garboard/contract/catalogue';
import type { System } from '@garboard/trade/vocabulary';
import { systemLabels } from '@garboard/trade/vocabulary';
import { useEffect, useRef, useState } from 'react';
import { Autocomplete } from 'react-aria-components/Autocomplete';
import { Input } from 'react-aria-components/Input';
import { Label } from 'react-aria-components/Label';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { SearchField } from 'react-aria-components/SearchField';
import { Text } from 'react-aria-components/Text';
import { call } from '../../api/client.ts';
import { useAction, useList } from '../../api/queries.ts';
import { useSearchField } from '../../app/filters.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { urgencyText } from '../../ui/UrgencyGauge.tsx';
import { ReadAs } from './ReadAs.tsx';

// As many as are looked over at a glance; the list grows with them, so that nothing in it has to be scrolled to.
const most = 8;

/**
 * Finds a known defect as one types and hands the whole entry over. The keys never leave the field: arrows go through
 * the list, Enter takes the marked one, Escape empties the field.
 */
export function ChooseEntry({
  firmId,
  system,
  autoFocus = false,
  onChoose,
}: {
  /** Whose catalogue: the firm of the survey. */
  firmId: string;
  /** Keeps to one system, as when the finding has one already. */
  system?: System | '' | undefined;
  autoFocus?: boolean;
  onChoose: (entry: CatalogueEntry) => void;
}) {
  const [q, setQ] = useState('');
  const [typed, setTyped] = useSearchField(q, setQ);
  const list = useList('listCatalogue', {
    query: { firmId, q: q || undefined, system: system || undefined, limit: most },
  });
  const taking = useAction({
    run: (key: string) => call('getCatalogueEntry', { params: { key }, query: { firmId } }),
    onDone: onChoose,
  });
  const items = list.items ?? [];
  // Enter pressed before the answer has come waits for it: the list still shows what other words found.
  const [wanted, setWanted] = useState('');
  const answered = wanted !== '' && wanted === q && !list.behind && list.items !== undefined;
  useEffect(() => {
    if (!answered) return;
    setWanted('');
    const [best] = items;
    if (best) taking.run(best.key);
  });
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // After the list has drawn its new entries.
    const frame = requestAnimationFrame(() => forgetGone(box.current));
    return () => cancelAnimationFrame(frame);
  });
  return (
    <div className="choose-entry" ref={box}>
      <Autocomplete
        inputValue={typed}
        disableAutoFocusFirst
        onInputChange={(words) => {
          setWanted('');
          setTyped(words);
        }}
      >
        <SearchField
          autoFocus={autoFocus}
          // Enter is kept from the form around it, and takes the best match when nothing is marked.
          onSubmit={() => setWanted(typed)}
        >
          <Label className="field-label">Known defect</Label>
          <Text slot="description" className="field-hint">
            Some of its words, or a standard. Enter takes the first; arrow keys and Enter another.
          </Text>
          <Input className="input" />
        </SearchField>
        <ErrorNotice quiet error={taking.error ?? list.error} onRetry={list.error ? list.retry : undefined} />
        <ReadAs typed={q} readAs={list.first?.readAs} />
        <ListBox
          aria-label="Known defects"
          className="options"
          items={items.map((item) => ({ ...item, id: item.key }))}
          onAction={(key) => taking.run(String(key))}
          renderEmptyState={() => (list.items ? 'No entry has these words.' : 'Fetching the catalogue…')}
        >
          {(item) => (
            <ListBoxItem id={item.key} textValue={item.title} className="option">
              <strong>{item.title}</strong>
              <span className="soft small">
                {systemLabels[item.system]}. {urgencyText(item.urgency)}
              </span>
            </ListBoxItem>
          )}
        </ListBox>
      </Autocomplete>
    </div>
  );
}

/**
 * A marked entry that went when the answer of the server came in is still named to screen readers. The list drops the
 * name when it believes that the focus has come back to it.
 */
function forgetGone(box: HTMLElement | null): void {
  const field = box?.querySelector('input');
  const marked = field?.getAttribute('aria-activedescendant');
  if (!marked || document.activeElement !== field || document.getElementById(marked)) return;
  box?.querySelector('[role="listbox"]')?.dispatchEvent(new FocusEvent('focusin', { bubbles: true }));
}

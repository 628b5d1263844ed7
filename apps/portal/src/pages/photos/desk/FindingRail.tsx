import type { Finding } from '@garboard/contract/findings';
import { memo } from 'react';
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox';
import { isTextDropItem, useDragAndDrop } from 'react-aria-components/useDragAndDrop';
import { count } from '../../../ui/format.ts';
import type { Shown } from './cells.ts';
import { photoDragType } from './PhotoGrid.tsx';

interface Row {
  id: string;
  /** Null for the two choices that are no finding. */
  finding: Finding | null;
  words: string;
  photos: number;
}

/** The survey's findings beside the photos: choosing one shows its photos, dropping photos on one files them there. */
export const FindingRail = memo(function FindingRail({
  findings,
  shown,
  counts,
  editable,
  onShow,
  onDrop,
}: {
  findings: readonly Finding[];
  shown: Shown;
  counts: { all: number; none: number };
  editable: boolean;
  onShow: (shown: Shown) => void;
  onDrop: (finding: Finding, photoIds: string[]) => void;
}) {
  const rows: Row[] = [
    { id: 'all', finding: null, words: 'All photos', photos: counts.all },
    { id: 'none', finding: null, words: 'In no finding yet', photos: counts.none },
    ...findings.map((finding) => ({
      id: finding.id,
      finding,
      words: `${finding.number}. ${finding.title}`,
      photos: finding.photos.length,
    })),
  ];
  const findingOf = (key: unknown) => rows.find((row) => row.id === key)?.finding ?? null;
  const { dragAndDropHooks } = useDragAndDrop({
    isDisabled: !editable,
    acceptedDragTypes: [photoDragType],
    shouldAcceptItemDrop: ({ key }) => findingOf(key) !== null,
    getDropOperation: (target) =>
      target.type === 'item' && target.dropPosition === 'on' ? 'copy' : 'cancel',
    onItemDrop: async ({ items, target }) => {
      const finding = findingOf(target.key);
      const texts = items.filter(isTextDropItem).map((item) => item.getText(photoDragType));
      if (finding) onDrop(finding, await Promise.all(texts));
    },
  });
  return (
    <ListBox
      aria-label="Show the photos of"
      className="rail"
      items={rows}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={[shown]}
      onSelectionChange={(keys) => {
        const [key] = keys === 'all' ? [] : [...keys];
        if (key !== undefined) onShow(String(key));
      }}
      dragAndDropHooks={dragAndDropHooks}
    >
      {(row) => (
        <ListBoxItem textValue={row.words} className="rail-row">
          <span>{row.words}</span>
          <span className="soft">{row.finding ? count(row.photos, 'photo') : row.photos}</span>
        </ListBoxItem>
      )}
    </ListBox>
  );
});

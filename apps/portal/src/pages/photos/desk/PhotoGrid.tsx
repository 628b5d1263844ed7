import type { KeyboardEvent } from 'react';
import { useMemo } from 'react';
import type { Key, Selection } from 'react-aria-components/GridList';
import { GridList } from 'react-aria-components/GridList';
import { useDragAndDrop } from 'react-aria-components/useDragAndDrop';
import { GridLayout, Size, Virtualizer } from 'react-aria-components/Virtualizer';
import { useKeysOn } from '../../../app/keys.ts';
import { count } from '../../../ui/format.ts';
import type { Cell } from './cells.ts';
import { PhotoCell } from './PhotoCell.tsx';

/** The kind of thing that is dragged from the grid: ids of photos. */
export const photoDragType = 'application/x-garboard-photo';

/** What a key asks for, with the photo that has the focus. */
export type Command = 'open' | 'file' | 'caption' | 'turn' | 'marks' | 'group' | 'delete';

const keys: Readonly<Record<string, Command>> = {
  Enter: 'open',
  f: 'file',
  c: 'caption',
  t: 'turn',
  m: 'marks',
  g: 'group',
  Delete: 'delete',
};

/**
 * The photos in the order they were taken. Only those near the window are in the page; their places are known before
 * they arrive, so nothing shifts. Selecting by mouse, touch and keyboard is the grid's own; letters are commands.
 */
export function PhotoGrid({
  cells,
  chosen,
  editable,
  onChoose,
  onCommand,
}: {
  cells: Cell[];
  chosen: ReadonlySet<Key>;
  editable: boolean;
  onChoose: (chosen: ReadonlySet<Key>) => void;
  onCommand: (command: Command, id: string) => void;
}) {
  const layoutOptions = useMemo(
    () => ({
      minItemSize: new Size(148, 208),
      maxItemSize: new Size(260, 292),
      minSpace: new Size(10, 14),
      // Heights follow from widths; nothing is measured after it is shown.
      preserveAspectRatio: true,
    }),
    [],
  );
  const { dragAndDropHooks } = useDragAndDrop({
    isDisabled: !editable,
    getItems: (dragged: Set<Key>) =>
      [...dragged].map((key) => ({ [photoDragType]: String(key), 'text/plain': `Photo ${String(key)}` })),
    getAllowedDropOperations: () => ['copy'],
    renderDragPreview: (items) => <div className="drag-preview">{count(items.length, 'photo')}</div>,
  });
  // The grid keeps what it has drawn of an item for as long as the item is the same object.
  const items = useMemo(() => cells.map((cell) => ({ ...cell, id: cell.photo.id })), [cells]);
  const keysOn = useKeysOn();
  const press = (event: KeyboardEvent) => {
    const at = event.target instanceof HTMLElement ? event.target : null;
    const id = at?.dataset.key;
    const modified = event.ctrlKey || event.metaKey || event.altKey || event.shiftKey;
    // Letters can be switched off; Enter and Delete can't be typed by mistake.
    const command = modified || (!keysOn && event.key.length === 1) ? undefined : keys[event.key];
    if (!id || at?.getAttribute('role') !== 'row' || !command) return;
    event.preventDefault();
    event.stopPropagation();
    onCommand(command, id);
  };
  const choose = (selection: Selection) =>
    // Given back as it came: it remembers where a run of photos began.
    onChoose(selection === 'all' ? new Set(cells.map((cell) => cell.photo.id)) : selection);
  return (
    // Before the grid itself sees the key, for which Enter would mean choosing.
    <div onKeyDownCapture={press}>
      <Virtualizer layout={GridLayout} layoutOptions={layoutOptions}>
        <GridList
          aria-label="Photos in the order they were taken"
          className="desk-grid"
          layout="grid"
          items={items}
          selectionMode="multiple"
          selectionBehavior="toggle"
          keyboardNavigationBehavior="tab"
          disallowTypeAhead
          selectedKeys={chosen}
          onSelectionChange={choose}
          dragAndDropHooks={dragAndDropHooks}
        >
          {(cell) => <PhotoCell cell={cell} />}
        </GridList>
      </Virtualizer>
    </div>
  );
}

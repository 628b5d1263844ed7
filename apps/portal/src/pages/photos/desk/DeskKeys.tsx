const keys: readonly [string, string, boolean][] = [
  ['Arrows', 'to another photo', false],
  ['Space', 'choose it, or not', false],
  ['Shift and arrows', 'choose a run', false],
  ['Ctrl or ⌘ and A', 'choose all that are shown', false],
  ['Escape', 'choose none', false],
  ['Enter', 'open it', false],
  ['G', 'open or close a group of alike photos', false],
  ['F', 'put what is chosen into a finding', true],
  ['C', 'write its caption; Enter goes on to the next', true],
  ['T', 'turn right', true],
  ['M', 'mark it up', true],
  ['Delete', 'delete', true],
];

/** The keys of the photo grid, for those who want them. */
export function DeskKeys({ editable }: { editable: boolean }) {
  return (
    <details className="desk-keys">
      <summary>Keys, while a photo has the focus</summary>
      <dl className="facts small">
        {keys.map(([key, what, writes]) =>
          writes && !editable ? null : (
            <div key={key}>
              <dt>{key}</dt>
              <dd>{what}</dd>
            </div>
          ),
        )}
      </dl>
      {editable ? (
        <p className="small soft">
          Dragging without a mouse: Tab to Drag, press Enter, choose a finding with the arrows, press Enter.
        </p>
      ) : null}
    </details>
  );
}

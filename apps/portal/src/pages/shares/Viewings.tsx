import { useList } from '../../api/queries.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { formatInstant } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';

/** When a link was opened. */
export function Viewings({ link, onClose }: { link: { id: string; label: string }; onClose: () => void }) {
  const list = useList('listShareViewings', { params: { id: link.id } });
  return (
    <Dialog title={`When the link for ${link.label} was opened`} onClose={onClose}>
      <MoreList list={list} what="the openings" empty={<p>Not yet.</p>}>
        {(views) => (
          <ul className="bullets">
            {views.map((view) => (
              <li key={view.id}>
                {formatInstant(view.openedAt)} <span className="soft">{view.device}</span>
              </li>
            ))}
          </ul>
        )}
      </MoreList>
      <div className="actions">
        <Button onClick={onClose}>Close</Button>
      </div>
    </Dialog>
  );
}

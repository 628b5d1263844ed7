import type { Finding } from '@garboard/contract/findings';
import type { Photo } from '@garboard/contract/photos';
import type { Survey } from '@garboard/contract/surveys';
import { useMemo, useState } from 'react';
import { useLocation } from 'wouter';
import { useFilters } from '../../../app/filters.ts';
import { Button } from '../../../ui/Button.tsx';
import { EmptyState } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { count } from '../../../ui/format.ts';
import { useSteady } from '../../../ui/useSteady.ts';
import { useWide } from '../../../ui/useWide.ts';
import { DeletePhotos } from '../DeletePhotos.tsx';
import { useTurning } from '../usePhotoChanges.ts';
import { type Cell, cellsOf, countsOf } from './cells.ts';
import { DeskKeys } from './DeskKeys.tsx';
import { DeskContext } from './deskContext.ts';
import { FindFinding } from './FindFinding.tsx';
import { FindingRail } from './FindingRail.tsx';
import { focusPhoto, showAround } from './focusPhoto.ts';
import { type Command, PhotoGrid } from './PhotoGrid.tsx';
import { ShowField } from './ShowField.tsx';
import { useCaptions } from './useCaptions.ts';
import { type Filing, useFiling } from './useFiling.ts';

/** All photos of a survey, to be looked through, told apart and filed under its findings. */
export function PhotoDesk({
  survey,
  photos,
  findings,
  editable,
}: {
  survey: Survey;
  photos: readonly Photo[];
  findings: readonly Finding[];
  editable: boolean;
}) {
  const [, go] = useLocation();
  const [filter, setFilter] = useFilters();
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const [chosen, setChosen] = useState<ReadonlySet<string | number>>(new Set());
  const [writing, setWriting] = useState<string | null>(null);
  const [asking, setAsking] = useState<{ what: 'file' | 'delete'; ids: string[] } | null>(null);
  const [last, setLast] = useState<Filing | null>(null);
  const wide = useWide();
  const captions = useCaptions();
  const turning = useTurning();
  const filing = useFiling((done) => setLast(done.photoIds.length ? done : null));

  const asked = filter('show');
  const here = findings.find((finding) => finding.id === asked) ?? null;
  const shown = here ? here.id : asked === 'none' ? 'none' : 'all';
  const cells = useMemo(() => cellsOf(photos, findings, shown, open), [photos, findings, shown, open]);
  const counts = useMemo(() => countsOf(photos, findings), [photos, findings]);
  const byId = new Map(cells.map((cell) => [cell.photo.id, cell]));
  const seen = [...chosen].map(String).filter((id) => byId.has(id));
  const photosOf = (ids: readonly string[]) => ids.flatMap((id) => byId.get(id)?.photo ?? []);
  const home = `/surveys/${survey.id}`;

  const show = useSteady((next: string) => {
    setFilter('show', next === 'all' ? '' : next);
    setChosen(new Set());
  });
  const put = useSteady((finding: Finding, photoIds: readonly string[]) => {
    filing.run({ way: 'in', finding, photoIds });
    setChosen(new Set());
  });
  const toggleGroup = useSteady((group: string) =>
    setOpen((now) => {
      const next = new Set(now);
      if (!next.delete(group)) next.add(group);
      return next;
    }),
  );
  const command = useSteady((what: Command, id: string) => {
    const ids = seen.length ? seen : [id];
    const group = byId.get(id)?.group;
    if (what === 'open') go(`${home}/photos/${id}`);
    if (what === 'group' && group) toggleGroup(group);
    if (!editable) return;
    if (what === 'marks') go(`${home}/photos/${id}/marks`);
    if (what === 'caption') setWriting(id);
    if (what === 'turn') turning.run(photosOf(ids));
    if (what === 'file' || what === 'delete') setAsking({ what, ids });
  });
  const afterCaption = useSteady((cell: Cell, way: 'next' | 'back' | 'left') => {
    const at = cells.findIndex((one) => one.photo.id === cell.photo.id);
    const following = way === 'next' ? cells[at + 1] : undefined;
    if (following) showAround(cell.photo.id);
    // Leaving one field by opening another must not close that one.
    setWriting((now) => following?.photo.id ?? (way === 'left' && now !== cell.photo.id ? now : null));
    if (way !== 'left' && !following) focusPhoto(cell.photo.id);
  });
  const saveCaption = useSteady((cell: Cell, text: string) => captions.save(cell.photo, cell.number, text));
  const { typed } = captions;
  const { id: surveyId, timeZone } = survey;
  // The same while photos are moved among and chosen, so that of hundreds only what changes is drawn anew.
  const desk = useMemo(
    () => ({
      ...{ surveyId, timeZone, editable, writing, typed },
      ...{ write: setWriting, saveCaption, afterCaption, toggleGroup },
    }),
    [surveyId, timeZone, editable, writing, typed, saveCaption, afterCaption, toggleGroup],
  );
  return (
    <DeskContext value={desk}>
      <div className="desk">
        {wide ? (
          <aside className="desk-side" aria-label="Findings">
            <FindingRail
              findings={findings}
              shown={shown}
              counts={counts}
              editable={editable}
              onShow={show}
              onDrop={put}
            />
            <DeskKeys editable={editable} />
          </aside>
        ) : null}
        <section className="desk-main" aria-label="Photos">
          {wide ? null : <ShowField findings={findings} shown={shown} counts={counts} onShow={show} />}
          <fieldset className="desk-bar" aria-label="What to do with the photos chosen">
            <div className="desk-choices">
              <p aria-live="polite">
                {seen.length
                  ? `${count(seen.length, 'photo')} chosen`
                  : `${count(cells.length, 'photo')} shown`}
              </p>
              {editable && seen.length ? (
                <>
                  <Button
                    kind="main"
                    busy={filing.busy}
                    onClick={() => setAsking({ what: 'file', ids: seen })}
                  >
                    Put into a finding
                  </Button>
                  {here ? (
                    <Button
                      kind="quiet"
                      onClick={() => filing.run({ way: 'out', finding: here, photoIds: seen })}
                    >
                      Take out of finding {here.number}
                    </Button>
                  ) : null}
                  <Button kind="quiet" busy={turning.busy} onClick={() => turning.run(photosOf(seen))}>
                    Turn right
                  </Button>
                  <Button kind="quiet" onClick={() => setAsking({ what: 'delete', ids: seen })}>
                    Delete
                  </Button>
                  <Button kind="quiet" onClick={() => setChosen(new Set())}>
                    Choose none
                  </Button>
                </>
              ) : null}
              {last && !seen.length ? (
                <Button
                  kind="quiet"
                  busy={filing.busy}
                  onClick={() => filing.run({ ...last, way: last.way === 'in' ? 'out' : 'in' })}
                >
                  Undo: {count(last.photoIds.length, 'photo')} {last.way === 'in' ? 'into' : 'out of'} finding{' '}
                  {last.finding.number}
                </Button>
              ) : null}
            </div>
          </fieldset>
          <ErrorNotice error={filing.error ?? turning.error} />
          {cells.length ? (
            <PhotoGrid
              cells={cells}
              chosen={chosen}
              editable={editable}
              onChoose={setChosen}
              onCommand={command}
            />
          ) : (
            <EmptyState title={here ? 'This finding has no photos yet' : 'Every photo is in a finding'}>
              <p>
                {here
                  ? 'Show all photos, choose some and put them into it, or drag them onto it.'
                  : 'Show all photos to look through them again.'}
              </p>
            </EmptyState>
          )}
        </section>
      </div>
      {asking?.what === 'file' ? (
        <FindFinding
          photos={asking.ids.length}
          findings={findings}
          last={last?.finding.id ?? null}
          onChoose={(finding) => {
            put(finding, asking.ids);
            setAsking(null);
            focusPhoto(asking.ids[0] ?? '');
          }}
          onNew={() => go(`${home}/findings/new?photos=${asking.ids.join(',')}`)}
          onClose={() => setAsking(null)}
        />
      ) : null}
      {asking?.what === 'delete' ? (
        <DeletePhotos
          photos={photosOf(asking.ids)}
          numberOf={(id) => byId.get(id)?.number ?? 0}
          onClose={(gone) => {
            setChosen(new Set(seen.filter((id) => !gone.includes(id))));
            setAsking(null);
          }}
        />
      ) : null}
    </DeskContext>
  );
}

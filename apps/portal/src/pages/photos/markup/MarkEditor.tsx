import { etagOf } from '@garboard/contract/client';
import type { Mark, Photo } from '@garboard/contract/photos';
import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { call } from '../../../api/client.ts';
import { isStatus } from '../../../api/problems.ts';
import { useAnswer } from '../../../api/queries.ts';
import { useLeaveWarning } from '../../../app/leaving.tsx';
import { NotFound } from '../../../app/NotFound.tsx';
import { useRecordEdit } from '../../../app/recordEdit.ts';
import { Button, ButtonLink } from '../../../ui/Button.tsx';
import { Restored } from '../../../ui/EditNotices.tsx';
import { Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { SurveyFrame, WithSurvey } from '../../surveys/SurveyFrame.tsx';
import { type Point, pinned, type Shape, type Tone, turned } from './geometry.ts';
import { HeldMark, MarkTools } from './MarkChoices.tsx';
import { MarkStage } from './MarkStage.tsx';
import { mergeMarks } from './mergeMarks.ts';
import { canShowPlain } from './PlainPicture.tsx';
import { Together } from './Together.tsx';
import { useSteps } from './useSteps.ts';
import { marksInWords, worded } from './words.ts';

/** Marks drawn over a photo: kept as vectors, burned only into the sizes made from it. */
export default function MarkEditor({ surveyId, photoId }: { surveyId: string; photoId: string }) {
  const photo = useAnswer('getPhoto', { params: { id: photoId } }, { anew: true });
  if (isStatus(photo.error, 404) || isStatus(photo.error, 422)) return <NotFound />;
  if (!(photo.data && photo.isFetchedAfterMount)) {
    return photo.error ? <ErrorNotice error={photo.error} /> : <Loading what="the photo" />;
  }
  const { data } = photo;
  return <WithSurvey id={surveyId}>{(survey) => <Editor survey={survey} photo={data} />}</WithSurvey>;
}

interface Draft {
  marks: Mark[];
}

function Editor({ survey, photo }: { survey: Survey; photo: Photo }) {
  const [, go] = useLocation();
  const home = `/surveys/${survey.id}/photos/${photo.id}`;
  const [tool, setTool] = useState<Shape | null>('arrow');
  const [tone, setTone] = useState<Tone>('signal');
  const [chosen, setChosen] = useState<number | null>(null);
  const edit = useRecordEdit<Photo, Draft>({
    record: photo,
    valuesOf: (one) => ({ marks: one?.marks ?? [] }),
    save: ({ marks }, base) =>
      call('updatePhoto', {
        params: { id: photo.id },
        body: { marks: marks.map(worded) },
        ...(base ? { ifMatch: etagOf(base) } : {}),
      }),
    reload: () => call('getPhoto', { params: { id: photo.id } }),
    keepAs: `unsaved:marks:${photo.id}`,
    touches: ['getPhoto', 'listPhotos', 'listFindings', 'getFinding', 'listPhotoLibrary'],
    done: (saved) => `Saved: ${marksInWords(saved.marks).toLowerCase()}.`,
    onDone: () => leaving.pass(() => go(home)),
  });
  const leaving = useLeaveWarning(edit.unsaved, edit.discard);
  const { marks } = edit.values;
  const steps = useSteps<Mark[]>(marks, (next) => edit.set({ marks: next }));
  const base = edit.base ?? photo;

  const held = chosen === null ? undefined : marks[chosen];

  const change = (next: Mark[], choose?: number, run?: string) => {
    steps.take(next, run);
    if (choose !== undefined) setChosen(choose);
  };
  const add = (mark: Mark) => {
    change([...marks, mark], marks.length);
    setTool(null);
  };
  const placeLabel = (at: Point) => add({ shape: 'label', at: pinned(at), text: 'Label', tone });
  const step = (way: 'undo' | 'redo') => {
    steps[way]();
    setChosen(null);
  };
  if (edit.theirs) {
    const { theirs } = edit;
    // Marks follow the picture when the other person turned it.
    const turns = theirs.quarterTurns - base.quarterTurns;
    const follow = (all: readonly Mark[]) => turned(all, turns, base);
    const together = mergeMarks(follow(base.marks), follow(marks), theirs.marks);
    return (
      <SurveyFrame survey={survey} title="Marks">
        <Together
          photo={theirs}
          mine={follow(marks)}
          theirs={theirs.marks}
          together={together}
          busy={edit.busy}
          onSettle={(settled) => edit.settle({ marks: settled })}
        />
      </SurveyFrame>
    );
  }
  return (
    <SurveyFrame survey={survey} title="Marks">
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          edit.save();
        }}
        onKeyDown={(event) => {
          const writes = event.target instanceof HTMLInputElement && event.target.type === 'text';
          if (writes || !(event.ctrlKey || event.metaKey)) return;
          const key = event.key.toLowerCase();
          if (key !== 'z' && key !== 'y') return;
          event.preventDefault();
          step(key === 'y' || event.shiftKey ? 'redo' : 'undo');
        }}
      >
        <Restored
          when={edit.restored}
          onDiscard={() => {
            edit.discard();
            steps.forget();
          }}
        />
        {canShowPlain(base) ? null : (
          <p className="notice">
            This file's kind can't be shown without its marks, so those saved last stand in the picture below
            as well. Moving one leaves its old place visible only until you save.
          </p>
        )}
        <div className="marks-page">
          <MarkTools
            tool={tool}
            tone={tone}
            size={base}
            onTool={(next) => {
              setTool(next);
              setChosen(null);
            }}
            onTone={setTone}
            onAdd={add}
          />
          <div className="marks-stage stack">
            <MarkStage
              photo={base}
              marks={marks}
              tool={tool}
              tone={tone}
              chosen={chosen}
              onChoose={setChosen}
              onChange={change}
              onPlaceLabel={placeLabel}
            />
            <p className="soft small">
              {marksInWords(marks)}. Everything under a privacy blur is averaged away for good in what others
              get to see; the firm's original stays untouched.
            </p>
          </div>
          <div className="stack">
            {held && chosen !== null ? (
              <HeldMark
                mark={held}
                at={chosen}
                onChange={(mark) =>
                  change(
                    marks.map((other, at) => (at === chosen ? mark : other)),
                    chosen,
                  )
                }
                onRemove={() => {
                  change(marks.filter((_, other) => other !== chosen));
                  setChosen(null);
                }}
              />
            ) : null}
            <div className="row">
              <Button disabled={!steps.canUndo} onClick={() => step('undo')}>
                Undo
              </Button>
              <Button disabled={!steps.canRedo} onClick={() => step('redo')}>
                Redo
              </Button>
            </div>
            <ErrorNotice error={edit.error} />
            <div className="actions">
              <Button kind="main" type="submit" busy={edit.busy} busyLabel="Saving…">
                Save the marks
              </Button>
              {edit.unsaved ? (
                <Button
                  onClick={() => {
                    edit.discard();
                    leaving.pass(() => go(home));
                  }}
                >
                  Cancel
                </Button>
              ) : (
                <ButtonLink href={home}>Back to the photo</ButtonLink>
              )}
            </div>
          </div>
        </div>
      </form>
      {leaving.dialog}
    </SurveyFrame>
  );
}

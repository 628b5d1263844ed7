import { systemLabels } from '@garboard/trade/vocabulary';
import { useLocation } from 'wouter';
import { keepNote, type Place } from '../../capture/keep.ts';
import type { KeptNote, KeptPhoto } from '../../capture/kept.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox, TextArea } from '../../ui/Field.tsx';
import { useStatus } from '../../ui/Status.tsx';
import { useKept } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { useSpeech } from './speech.ts';
import { Thumb } from './Thumb.tsx';
import { useDraft } from './useDraft.ts';
import { useKeep } from './useKeep.ts';
import { usePlace } from './usePlace.ts';
import { clockWords } from './words.ts';

/** A note, written or spoken; `noteId` names a refused one to be corrected. */
export function NotePage({
  surveyId,
  system,
  noteId,
}: {
  surveyId: string;
  system: string;
  noteId: string | null;
}) {
  const place = usePlace(surveyId, system);
  const kept = useKept();
  const refused = kept.find((item): item is KeptNote => item.kind === 'note' && item.id === noteId);
  if (!place || (noteId && !refused)) return <Missing loading={place === undefined || !kept.length} />;
  const photos = kept.filter(
    (item): item is KeptPhoto =>
      item.kind === 'photo' && item.surveyId === surveyId && item.system === system,
  );
  return (
    <Note key={noteId} place={place} refused={refused ?? null} photos={photos.toReversed()} all={kept} />
  );
}

interface Draft {
  text: string;
  urgent: boolean;
  photoIds: string[];
}

/** Photos taken this short a time ago most likely show what is being written about. */
const justTaken = 10 * 60_000;

function Note({
  place,
  refused,
  photos,
  all,
}: {
  place: Place;
  refused: KeptNote | null;
  photos: KeptPhoto[];
  all: readonly { kind: string }[];
}) {
  const [, go] = useLocation();
  const say = useStatus();
  const { run, busy, trouble } = useKeep();
  const home = `/capture/${place.survey.id}/${place.system}`;
  const taken = new Set((all as KeptNote[]).flatMap((item) => (item.kind === 'note' ? item.photoIds : [])));
  const free = photos.filter(
    (photo) => refused?.photoIds.includes(photo.id) || (!photo.noteId && !taken.has(photo.id)),
  );
  const draft = useDraft<Draft>(`note:${refused?.id ?? `${place.survey.id}:${place.system}`}`, () =>
    refused
      ? { text: refused.text, urgent: refused.urgent, photoIds: refused.photoIds }
      : {
          text: '',
          urgent: false,
          photoIds: free.filter(({ keptAt }) => Date.now() - keptAt < justTaken).map(({ id }) => id),
        },
  );
  const { value, set } = draft;
  const speech = useSpeech((words) => {
    if (value) set({ ...value, text: joined(value.text, words) });
  });
  if (!value) return null;
  const keep = () =>
    run(async () => {
      const { id } = await keepNote(
        place,
        { text: value.text.trim(), urgent: value.urgent, photoIds: value.photoIds },
        refused?.id,
      );
      await draft.drop();
      say('Note kept.');
      go(place.survey.may.photos ? `${home}?note=${id}` : home);
    });
  return (
    <Frame
      title={refused ? 'Correct the note' : 'A note'}
      over={
        <>
          <strong>{place.survey.name}</strong> · {systemLabels[place.system]}
        </>
      }
      back={{ href: home, label: systemLabels[place.system] }}
    >
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          if (value.text.trim()) void keep();
        }}
      >
        {refused?.refusal ? <p className="field-error">{refused.refusal}</p> : null}
        <TextArea
          label="What do you see?"
          hint="The first line becomes the heading of the draft finding."
          dir="auto"
          rows={5}
          maxLength={40_000}
          value={value.text}
          onChange={(text) => set({ ...value, text })}
        />
        {speech.heard ? <p className="soft">{speech.heard}…</p> : null}
        {speech.trouble ? <p className="field-error">{speech.trouble}</p> : null}
        {speech.toggle ? (
          <div className="capture-actions">
            <Button onClick={speech.toggle} aria-pressed={speech.listening}>
              {speech.listening ? 'Stop listening' : 'Speak'}
            </Button>
            <p className="soft small">
              The browser’s own speech service listens; its maker may get the sound. Signal may be needed.
            </p>
          </div>
        ) : null}
        <Checkbox
          label="Urgent: put right before the boat is next used"
          checked={value.urgent}
          onChange={(urgent) => set({ ...value, urgent })}
        />
        {free.length ? (
          <fieldset>
            <legend className="field-label">Photos that show it</legend>
            <div className="capture-thumbs">
              {free.slice(0, 12).map((photo, at) => (
                <label key={photo.id} className="photo-check">
                  <Thumb photo={photo} />
                  <span className="choice">
                    <input
                      type="checkbox"
                      aria-label={`Photo ${at + 1}, ${clockWords(photo.keptAt)}`}
                      checked={value.photoIds.includes(photo.id)}
                      onChange={({ target }) =>
                        set({
                          ...value,
                          photoIds: target.checked
                            ? [...value.photoIds, photo.id]
                            : value.photoIds.filter((id) => id !== photo.id),
                        })
                      }
                    />
                    <span>{clockWords(photo.keptAt)}</span>
                  </span>
                </label>
              ))}
            </div>
          </fieldset>
        ) : null}
        {trouble ? (
          <p className="field-error" role="alert">
            {trouble}
          </p>
        ) : null}
        <div className="capture-actions">
          <Button kind="main" type="submit" busy={busy} busyLabel="Keeping…" disabled={!value.text.trim()}>
            Keep the note
          </Button>
        </div>
      </form>
    </Frame>
  );
}

/** What was spoken, after what stands there. */
const joined = (text: string, words: string) =>
  text && !/\s$/u.test(text) ? `${text} ${words}` : text + words;

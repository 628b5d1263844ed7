import type { Finding } from '@garboard/contract/findings';
import { outcomeLabels } from '@garboard/trade/re-inspection';
import { Link } from 'wouter';
import { fieldError } from '../../../api/problems.ts';
import { Button } from '../../../ui/Button.tsx';
import { CheckboxGroup, RadioGroup, TextArea, TextField } from '../../../ui/Field.tsx';
import { FilePicker } from '../../../ui/FilePicker.tsx';
import { DueDate } from '../../../ui/UrgencyGauge.tsx';
import { DraftPicture } from '../send/ChosenFiles.tsx';
import { stateWords } from '../stateWords.ts';
import type { useVisitDraft } from './useVisitDraft.ts';
import { itemsLeftOf, type SeenDraft, unseen, type VisitDraft } from './visitDraft.ts';

const choices = { 'not-looked-at': 'Not looked at', ...outcomeLabels } as const;
const noteLabels = {
  'put-right': 'What was seen',
  'not-put-right': 'What was seen, and what is still missing',
  'as-it-is': 'What was seen',
} as const;

/** One finding at the visit: what was seen of it, with photos taken there. */
export function SeenFinding({
  finding,
  draft,
  value,
  error,
  pointer,
}: {
  finding: Finding;
  draft: ReturnType<typeof useVisitDraft>;
  value: VisitDraft;
  error: unknown;
  /** Where it stands in what is sent. */
  pointer: string;
}) {
  const seen = value.seen[finding.id] ?? unseen;
  const set = (part: Partial<SeenDraft>) => draft.setSeen(finding.id, (now) => ({ ...now, ...part }));
  const left = itemsLeftOf(finding);
  const { outcome } = seen;
  const of = `of finding ${finding.number}`;
  return (
    <section className="seen stack">
      <div>
        <h2>
          {finding.number}.{' '}
          <Link href={`/findings/${finding.id}`} dir="auto">
            {finding.title}
          </Link>
        </h2>
        <p className="soft">
          {stateWords(finding)}
          {finding.dueOn ? (
            <>
              {', due '}
              <DueDate dueOn={finding.dueOn} overdue={finding.overdue} />
            </>
          ) : null}
        </p>
        {finding.recommendation ? (
          <p className="text" dir="auto">
            {finding.recommendation}
          </p>
        ) : null}
      </div>
      <RadioGroup
        label={`Seen ${of}`}
        name={`seen-${finding.id}`}
        value={outcome || 'not-looked-at'}
        options={choices}
        onChange={(next) => set({ outcome: next === 'not-looked-at' ? '' : next })}
        error={fieldError(error, `${pointer}/outcome`)}
      />
      {outcome ? (
        <>
          {left.length > 1 ? (
            <CheckboxGroup
              label={`Items ${of} that this is about`}
              values={left.map(({ id }) => id).filter((id) => seen.itemIds?.includes(id) ?? true)}
              options={Object.fromEntries(left.map((item) => [item.id, item.text]))}
              onChange={(itemIds) => set({ itemIds })}
              error={fieldError(error, `${pointer}/itemIds`)}
            />
          ) : null}
          {outcome === 'as-it-is' ? (
            <div className="fields-2">
              <TextField
                label="The limit within which it may stay"
                required
                maxLength={1000}
                value={seen.limit}
                onChange={(limit) => set({ limit })}
                error={fieldError(error, `${pointer}/limit`)}
              />
              <TextField
                label="Until"
                optional
                type="date"
                value={seen.limitUntil}
                onChange={(limitUntil) => set({ limitUntil })}
                error={fieldError(error, `${pointer}/limitUntil`)}
              />
            </div>
          ) : null}
          <TextArea
            label={`${noteLabels[outcome]} ${of}`}
            optional={outcome !== 'not-put-right'}
            required={outcome === 'not-put-right'}
            rows={2}
            maxLength={10_000}
            value={seen.note}
            onChange={(note) => set({ note })}
            error={fieldError(error, `${pointer}/note`)}
          />
          <div className="actions">
            <div className="by-hand">
              <FilePicker
                camera
                label={`Take a photo ${of}`}
                onFiles={(files) => void draft.addPhotos(finding.id, files)}
              />
            </div>
            <FilePicker
              label={`Choose photos ${of}`}
              onFiles={(files) => void draft.addPhotos(finding.id, files)}
            />
          </div>
          {seen.photos.length ? (
            <ul className="chosen-files">
              {seen.photos.map((photo) => (
                <li key={photo.id}>
                  <div className="chosen-pictures">
                    <DraftPicture personId={draft.personId} file={photo} />
                  </div>
                  <div>
                    <p>
                      {photo.name} {photo.photoId ? <span className="soft">has arrived</span> : null}
                    </p>
                    <Button
                      kind="quiet"
                      aria-label={`Take out ${photo.name}`}
                      onClick={() => draft.takeOut(finding.id, photo.id)}
                    >
                      Take out
                    </Button>
                  </div>
                </li>
              ))}
            </ul>
          ) : null}
        </>
      ) : null}
    </section>
  );
}

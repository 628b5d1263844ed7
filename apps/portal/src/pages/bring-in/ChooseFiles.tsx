import type { Survey } from '@garboard/contract/surveys';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { RadioGroup } from '../../ui/Field.tsx';
import { FileDrop } from '../../ui/FileDrop.tsx';
import { count, formatBytes, listed } from '../../ui/format.ts';
import { Columns } from './Columns.tsx';
import { type Chosen, choose, missingIn, nothingChosen } from './chosen.ts';

/** Choosing the sheet and the photos, as a folder, as files or as a ZIP. */
export function ChooseFiles({
  survey,
  busy,
  onLook,
}: {
  survey: Survey;
  busy: boolean;
  onLook: (chosen: Chosen, sheet: File | undefined) => void;
}) {
  const [chosen, setChosen] = useState(nothingChosen);
  const [which, setWhich] = useState('');
  const [tried, setTried] = useState(false);
  const { sheets, zips, photos, others } = chosen;
  const sheet = sheets.length === 1 ? sheets[0] : sheets.find(({ name }) => name === which);
  const missing = missingIn(chosen, sheet);
  const any = sheets.length + zips.length + photos.size + others.length > 0;
  return (
    <div className="stack">
      <p className="text">
        A sheet of findings (CSV) and the photos that it names become findings of this survey, as drafts. You
        see what each row becomes before anything is brought in.
      </p>
      <FileDrop
        label="Choose files or a ZIP"
        folderLabel="Choose a folder"
        accept=".csv,.tsv,.txt,.zip,image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif"
        hint="or drop files here. The folder or the ZIP may hold the sheet as well."
        onFiles={(files) => setChosen((now) => choose(now, files))}
      />
      {any ? (
        <section aria-label="Chosen" className="stack">
          <ul className="bullets">
            {sheets.map(({ name, size }) => (
              <li key={name}>
                Sheet: {name}, {formatBytes(size)}
              </li>
            ))}
            {zips.map(({ name, size }) => (
              <li key={name}>
                ZIP: {name}, {formatBytes(size)}
              </li>
            ))}
            {photos.size ? (
              <li>
                {count(photos.size, 'photo')}, {formatBytes(bytesOf(photos))}
              </li>
            ) : null}
            {others.length ? (
              <li>
                Stays out, as neither a photo nor a sheet:{' '}
                {listed(others.slice(0, 5).map(({ name }) => name))}
                {others.length > 5 ? ` and ${others.length - 5} more` : ''}
              </li>
            ) : null}
          </ul>
          {sheets.length > 1 ? (
            <RadioGroup
              label="Which sheet holds the findings?"
              name="sheet"
              value={which}
              options={Object.fromEntries(sheets.map(({ name }) => [name, name]))}
              onChange={setWhich}
            />
          ) : null}
          <p role="alert" className="field-error">
            {tried ? missing : ''}
          </p>
          <div className="actions">
            <Button
              kind="main"
              busy={busy}
              busyLabel="Looking…"
              onClick={() => {
                setTried(true);
                if (!missing) onLook(chosen, sheet);
              }}
            >
              See what comes in
            </Button>
            <Button kind="quiet" onClick={() => setChosen(nothingChosen)}>
              Choose again
            </Button>
          </div>
        </section>
      ) : null}
      <Columns surveyId={survey.id} findings={survey.findingCount} />
    </div>
  );
}

const bytesOf = (photos: ReadonlyMap<string, File>) =>
  [...photos.values()].reduce((sum, { size }) => sum + size, 0);

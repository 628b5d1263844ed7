import { etagOf } from '@garboard/contract/client';
import { useState } from 'react';
import { call } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction } from '../../api/queries.ts';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { TextField } from '../../ui/Field.tsx';

/** A photo's caption, saved on leaving the field or with Enter. */
export function CaptionField({
  photo,
  number,
}: {
  photo: { id: string; caption: string; version?: number };
  number: number;
}) {
  // What is being typed; null while the field shows what is saved.
  const [typed, setTyped] = useState<string | null>(null);
  const value = typed ?? photo.caption;
  const save = useAction({
    run: (caption: string) =>
      call('updatePhoto', {
        params: { id: photo.id },
        body: { caption },
        ...(photo.version === undefined ? {} : { ifMatch: etagOf({ version: photo.version }) }),
      }),
    done: `Caption of photo ${number} saved.`,
    touches: ['listPhotos', 'listFindings', 'getFinding'],
  });
  const commit = () => {
    if (typed !== null && typed !== photo.caption) save.run(typed);
  };
  // Once the list has come back with what was typed, the field follows it again.
  if (typed !== null && typed === photo.caption && !save.busy) setTyped(null);
  return (
    <div>
      <TextField
        label={`Caption of photo ${number}`}
        maxLength={500}
        value={value}
        onChange={setTyped}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          commit();
        }}
      />
      <ErrorNotice quiet error={save.error} />
      {isStatus(save.error, 412) ? (
        <p className="small">
          Someone else wrote: {photo.caption || '(nothing)'}. Leave the field again to save yours.
        </p>
      ) : null}
    </div>
  );
}

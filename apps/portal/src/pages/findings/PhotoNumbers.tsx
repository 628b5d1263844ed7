import { useState } from 'react';
import { TextField } from '../../ui/Field.tsx';
import { listed } from '../../ui/format.ts';
import { numbersIn, numbersOf } from './photoNumbers.ts';

/** Chooses photos by their numbers in the survey, in the order of the report: `3, 7-9`. */
export function PhotoNumbers({
  all,
  ids,
  onChange,
}: {
  /** The survey's photos in their order. */
  all: readonly { id: string }[];
  ids: readonly string[];
  onChange: (ids: string[]) => void;
}) {
  const [typed, setTyped] = useState<string | null>(null);
  const { unread } = numbersIn(typed ?? '', all.length);
  const shown = typed ?? numbersOf(ids.map((id) => all.findIndex((photo) => photo.id === id) + 1));
  return (
    <TextField
      label="Photos by number"
      optional
      hint={all.length ? `1 to ${all.length}, such as 3, 7-9` : 'This survey has no photos yet'}
      error={
        typed && unread.length
          ? `No photo ${listed(unread)}: this survey has ${all.length}. The others are chosen.`
          : undefined
      }
      inputMode="text"
      autoComplete="off"
      value={shown}
      onFocus={() => setTyped(shown)}
      onBlur={() => setTyped(null)}
      onChange={(text) => {
        setTyped(text);
        const wanted = numbersIn(text, all.length).numbers;
        onChange(wanted.flatMap((number) => all[number - 1]?.id ?? []));
      }}
    />
  );
}

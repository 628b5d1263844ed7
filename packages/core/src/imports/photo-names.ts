/** A photo that a row may name: one given with the import, or one that the survey has. */
export interface NamedPhoto {
  name: string;
  /** The photo's id; null while it hasn't been taken in yet. */
  photoId: string | null;
}

export type Match = { photo: NamedPhoto } | { missing: true } | { several: string[] };

const plain = (name: string): string =>
  name
    .trim()
    .normalize('NFC')
    .replaceAll('\\', '/')
    .replace(/^(\.?\/)+/, '')
    .toLowerCase();
const baseOf = (name: string) => name.slice(name.lastIndexOf('/') + 1);
const stemOf = (name: string) => name.replace(/\.[a-z0-9]{2,5}$/, '');

/**
 * Finds photos by the names that a sheet has for them: with or without folder and ending, in any case. What is given
 * with the import goes before what the survey has.
 */
export function photoFinder(given: readonly NamedPhoto[], ofSurvey: readonly NamedPhoto[]) {
  const finders = [finderIn(given), finderIn(ofSurvey)];
  return (name: string): Match => {
    for (const find of finders) {
      const found = find(plain(name));
      if (!('missing' in found)) return found;
    }
    return { missing: true };
  };
}

function finderIn(photos: readonly NamedPhoto[]) {
  const byWord = new Map<string, NamedPhoto[]>();
  const put = (word: string, photo: NamedPhoto) => {
    const there = byWord.get(word);
    if (!there) byWord.set(word, [photo]);
    else if (!there.includes(photo)) there.push(photo);
  };
  for (const photo of photos) {
    const name = plain(photo.name);
    // Every end of the path, so that `deck/1.jpg` is found in `boat/deck/1.jpg`.
    for (let at = 0; at >= 0; at = name.indexOf('/', at + 1)) put(name.slice(at === 0 ? 0 : at + 1), photo);
    put(stemOf(baseOf(name)), photo);
  }
  const answer = (found: NamedPhoto[] | undefined): Match | null => {
    const [photo, other] = found ?? [];
    if (!photo) return null;
    return other ? { several: (found ?? []).map(({ name }) => name) } : { photo };
  };
  const whole = new Map(photos.map((photo) => [plain(photo.name), photo]));
  return (name: string): Match => {
    const exact = whole.get(name);
    if (exact) return { photo: exact };
    // A sheet may know folders that the ZIP or the picker has left out.
    const [long, short] = [byWord.get(name), byWord.get(baseOf(name))];
    return answer(long) ?? answer(short) ?? { missing: true };
  };
}

/** The names in a cell: one a line, or parted by ; | or ,. A name that is there whole isn't taken apart. */
export function namesIn(cell: string, find: (name: string) => Match): string[] {
  const trimmed = cell.trim();
  if (trimmed === '') return [];
  if (cell.includes('\n')) return distinct(cell.split('\n'));
  if (isWhole(trimmed, find)) return [trimmed];
  const strong = distinct(trimmed.split(/[;|]/));
  return distinct(strong.flatMap((part) => (isWhole(part, find) ? [part] : part.split(','))));
}

/** Whether this is one name as it stands, not several of which the last is there. */
function isWhole(name: string, find: (name: string) => Match): boolean {
  if (!name.includes(',')) return !('missing' in find(name));
  const found = find(name);
  if ('missing' in found) return false;
  const names = 'photo' in found ? [found.photo.name] : found.several;
  return names.every((one) => plain(one).endsWith(plain(name)));
}

const distinct = (parts: readonly string[]) => [
  ...new Set(parts.map((part) => part.trim()).filter((part) => part !== '')),
];

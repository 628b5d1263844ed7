/** Files as they were chosen, sorted into what a survey is brought in from. */
export interface Chosen {
  sheets: File[];
  zips: File[];
  /** By the name under which the sheet may name them: with folders where they were chosen so. */
  photos: Map<string, File>;
  others: File[];
}

export const nothingChosen: Chosen = { sheets: [], zips: [], photos: new Map(), others: [] };

const litter = /^(\._|\.DS_Store$|thumbs\.db$|desktop\.ini$)/i;

/** Adds files to what was chosen before; one of the same name takes the other's place. */
export function choose(before: Chosen, files: readonly File[]): Chosen {
  const [sheets, zips, others] = [[...before.sheets], [...before.zips], [...before.others]];
  const photos = new Map(before.photos);
  const put = (list: File[], file: File) => {
    const at = list.findIndex(({ name }) => name === file.name);
    list.splice(at < 0 ? list.length : at, 1, file);
  };
  for (const file of files) {
    if (litter.test(file.name)) continue;
    if (/\.(jpe?g|png|webp|heic|heif)$/i.test(file.name)) photos.set(nameOf(file), file);
    else if (/\.zip$/i.test(file.name)) put(zips, file);
    else if (/\.(csv|tsv|txt)$/i.test(file.name)) put(sheets, file);
    else put(others, file);
  }
  return { sheets, zips, photos, others };
}

/** Its path in the folder chosen, without that folder's own name. */
const nameOf = (file: File) => file.webkitRelativePath.split('/').slice(1).join('/') || file.name;

/** Why it can't be looked at yet, or nothing. */
export function missingIn({ sheets, zips, photos }: Chosen, sheet: File | undefined): string {
  if (zips.length > 1) return 'Choose one ZIP. Bring the photos of the other in afterwards.';
  if (zips.length && photos.size) return 'Choose either a ZIP or the photos themselves, not both.';
  if (sheets.length > 1 && !sheet) return 'Say which sheet holds the findings.';
  if (!sheets.length && !zips.length) return 'Choose the sheet of findings too: a CSV file.';
  return '';
}

// Brings a folder of photos and a sheet of findings into a survey, over the REST interface:
//   npm run --silent import-survey -- --folder <folder> --survey <number or id> --key-file <file> [--csv <file>]
// Without --csv the folder must hold one sheet. --dry-run only says what would come in. Exit status 1 when rows can't come
// in or something was refused, 2 for bad arguments.
import { createHash } from 'node:crypto';
import { openAsBlob } from 'node:fs';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { parseArgs } from 'node:util';

import { uuidv7 } from 'uuidv7';
import { createClient, ProblemError, pathOf } from '../src/client.ts';
import type { SurveyImportRecord } from '../src/imports.ts';
import { partBytes } from '../src/uploads.ts';

const usage = `Usage: npm run --silent import-survey -- --folder <folder> --survey <number or id> --key-file <file>
  --csv <file>              the sheet of findings; without it the one in the folder
  --url <address>           of the server; http://127.0.0.1:3000 unless given
  --key-file <file>         holds a key that may write, made under “Your account”
  --dry-run                 only say what would come in
  --leave-out-bad-rows      bring in the others; the rows left out are written beside the sheet, with the reasons
  --leave-out-other-columns don’t add columns that aren’t understood to the end of what was seen`;

const say = (line: string) => void process.stdout.write(`${line}\n`);
function stop(status: 1 | 2, ...lines: string[]): never {
  for (const line of lines) process.stderr.write(`${line}\n`);
  process.exit(status);
}

function readArguments() {
  const text = { type: 'string' } as const;
  const flag = { type: 'boolean', default: false } as const;
  try {
    const { values } = parseArgs({
      options: {
        ...{ folder: text, csv: text, survey: text, 'key-file': text },
        url: { type: 'string', default: 'http://127.0.0.1:3000' },
        ...{ 'dry-run': flag, 'leave-out-bad-rows': flag, 'leave-out-other-columns': flag },
      },
    });
    const { folder, survey, 'key-file': keyFile } = values;
    if (!folder || !survey || !keyFile) return stop(2, usage);
    return { ...values, folder, survey, keyFile };
  } catch (error) {
    return stop(2, error instanceof Error ? error.message : String(error), usage);
  }
}

const given = readArguments();
const token = (
  await readFile(given.keyFile, 'utf8').catch(() => stop(2, `${given.keyFile} can’t be read.`))
).trim();
const call = createClient({ baseUrl: given.url, token });

/** Photos and sheets of the folder by their path in it. Links aren't followed, hidden files are passed over. */
async function lookThrough(folder: string) {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() =>
    stop(2, `${folder} is no folder that can be read.`),
  );
  const names = entries
    .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
  return {
    photos: names.filter((name) => /\.(jpe?g|png|webp|heic|heif)$/i.test(name)),
    sheets: names.filter((name) => /\.(csv|tsv)$/i.test(name)),
  };
}

async function findSurvey(wanted: string): Promise<string> {
  if (/^[0-9a-f-]{36}$/i.test(wanted)) return wanted;
  const { items } = await call('listJobs', { query: { q: wanted } });
  const found = items.find(({ number }) => number === wanted);
  return found?.id ?? stop(2, `There is no survey ${wanted}, or this key may not see it.`);
}

/** Sends a photo in parts, unless the survey has it; tried again when the connection is lost. */
async function sendPhoto(surveyId: string, path: string) {
  const bytes = await readFile(path);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const body = { id: uuidv7(), name: basename(path), bytes: bytes.length, sha256 };
  for (let attempt = 1; ; attempt += 1) {
    try {
      let upload = await call('createUpload', { params: { id: surveyId }, body });
      while (upload.state === 'receiving') {
        const part = {
          offset: upload.received,
          bytes: bytes.subarray(upload.received, upload.received + partBytes),
        };
        upload = await call('sendUploadPart', { params: { id: upload.id }, part });
      }
      return { photoId: upload.photoId, problem: upload.problem };
    } catch (error) {
      if (error instanceof ProblemError) {
        if (error.problem.status >= 500 || [401, 403, 404, 409].includes(error.problem.status)) throw error;
        return { photoId: null, problem: error.message };
      }
      if (attempt === 5) throw error;
      await sleep(500 * 2 ** attempt);
    }
  }
}

function tell({ counts, rows, remarks, missingPhotos, otherColumns }: SurveyImportRecord): void {
  say(
    `${counts.rows} rows: ${counts.findings} become findings, ${counts.there} are here already, ${counts.leftOut} can’t come in.`,
  );
  say(`${counts.photos} photos, ${counts.photosNamed} of them named by a row.`);
  for (const remark of remarks) say(remark);
  if (otherColumns.length > 0) say(`Columns that aren’t understood: ${otherColumns.join(', ')}.`);
  if (missingPhotos.length > 0) say(`Named and not there: ${missingPhotos.join(', ')}.`);
  for (const { line, problems } of rows) {
    for (const { column, detail } of problems) say(`Line ${line}${column ? `, ${column}` : ''}: ${detail}`);
  }
}

async function keepLeftOut(record: SurveyImportRecord, sheet: string): Promise<void> {
  const address = given.url + pathOf('getImportLeftOut', { id: record.id });
  const answer = await fetch(address, { headers: { authorization: `Bearer ${token}` } });
  const path = `${sheet.replace(/\.\w+$/, '')}-left-out.csv`;
  await writeFile(path, Buffer.from(await answer.arrayBuffer()));
  say(`The rows that can’t come in, with the reasons: ${path}`);
}

async function bringIn(): Promise<number> {
  const surveyId = await findSurvey(given.survey);
  const { photos, sheets } = await lookThrough(given.folder);
  if (!given.csv && sheets.length !== 1) {
    stop(2, `The folder holds ${sheets.length} sheets; say with --csv which one holds the findings.`);
  }
  const sheet = given.csv ?? join(given.folder, sheets[0] ?? '');
  const form = new FormData();
  form.append('file', await openAsBlob(sheet), basename(sheet));
  const { id } = await call('createImport', { params: { id: surveyId }, form });
  const name = (items: { name: string }[]) => call('nameImportPhotos', { params: { id }, body: { items } });
  const looked = await name(photos.map((photo) => ({ name: photo })));
  tell(looked);
  const stuck = looked.counts.leftOut > 0 && !given['leave-out-bad-rows'];
  if (looked.counts.leftOut > 0) await keepLeftOut(looked, sheet);
  if (stuck || given['dry-run']) {
    await call('discardImport', { params: { id } });
    say(
      stuck
        ? 'Nothing was brought in. Put the rows right, or leave them out with --leave-out-bad-rows.'
        : 'Nothing was brought in: a dry run.',
    );
    return stuck ? 1 : 0;
  }
  const sent: { name: string; photoId: string | null; problem: string | null }[] = [];
  for (const photo of photos) {
    sent.push({ name: photo, ...(await sendPhoto(surveyId, join(given.folder, photo))) });
    if (sent.length % 25 === 0) say(`${sent.length} of ${photos.length} photos sent.`);
  }
  await name(sent);
  const otherColumns = given['leave-out-other-columns'] ? 'leave-out' : 'append';
  let record = await call('startImport', {
    ...{ params: { id }, body: { leaveOutBadRows: given['leave-out-bad-rows'], otherColumns } },
  });
  while (record.state === 'queued' || record.state === 'running') {
    await sleep(300);
    record = await call('getImport', { params: { id } });
  }
  if (record.state !== 'done') stop(1, record.problem ?? 'It was not brought in.');
  for (const refused of record.refusedPhotos) say(`${refused.name}: ${refused.problem}`);
  const taken = record.counts.photosDone - record.refusedPhotos.length;
  say(`Brought in: ${record.counts.findings} findings, ${taken} photos.`);
  return record.refusedPhotos.length + record.counts.leftOut > 0 ? 1 : 0;
}

process.exitCode = await bringIn().catch((error: unknown) => {
  if (!(error instanceof ProblemError)) throw error;
  const told = (error.problem.errors ?? []).map(({ pointer, detail }) => `${pointer}: ${detail}`);
  return stop(1, error.message, ...told);
});

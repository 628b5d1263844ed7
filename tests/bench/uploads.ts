// Uploads of photos: through the whole api process, beside the same bytes piped through SHA-256 to the disk.
import { mkdir, rm } from 'node:fs/promises';
import { Agent, request } from 'node:http';
import { join } from 'node:path';
import { type Bench, median, type Part, type Round } from './harness.ts';
import { buildSurvey, type MediaOffice, makePhoto, numbered, openMediaOffice } from './media-office.ts';
import { cpuMsOf } from './process-figures.ts';
import { type BenchProcess, startApi, startFloor } from './processes.ts';

/** As the portal sends them: so many photos a request, so many requests at once. */
const portalSends = { photos: 10, atOnce: 2 };

export interface UploadSizes {
  photo: Buffer;
  /** Requests a round. */
  requests: number;
}

export const run: Part = async (bench) => {
  const office = await openMediaOffice();
  try {
    await measureUploads(bench, office, { photo: await makePhoto(), requests: 8 });
  } finally {
    await office.close();
  }
};

/** Measures uploads into an office: in forms as the portal sends them, and one photo a request. */
export async function measureUploads(bench: Bench, office: MediaOffice, sizes: UploadSizes): Promise<void> {
  const folder = join(office.dataDir, 'bare');
  await mkdir(folder);
  const api = await startApi(office);
  const flushed = await startFloor('bare-upload', { dataDir: office.dataDir, args: [folder, 'flush'] });
  const unflushed = await startFloor('bare-upload', { dataDir: office.dataDir, args: [folder, 'no-flush'] });
  const agent = new Agent({ keepAlive: true });
  let serial = 0;
  const photos = (count: number) => Array.from({ length: count }, () => numbered(sizes.photo, ++serial));
  const surveyId = await buildSurvey(office);
  bench.note('photoBytes', sizes.photo.length);

  /** Sends photos, so many a request, and answers megabytes a second and the times of requests. */
  const spent: Record<'ours' | 'floor', number[]> = { ours: [], floor: [] };
  const watched = async (
    whose: 'ours' | 'floor',
    pid: number,
    send: () => Promise<Round>,
  ): Promise<Round> => {
    const before = await cpuMsOf(pid);
    const round = await send();
    spent[whose].push(((await cpuMsOf(pid)) - before) / (sizes.requests * portalSends.photos));
    return round;
  };
  const ours = (perRequest: number) => async (): Promise<Round> => {
    const path = `${api.url}/v1/surveys/${surveyId}/photos`;
    const forms = Array.from({ length: Math.ceil((sizes.requests * portalSends.photos) / perRequest) }, () =>
      formOf(photos(perRequest)),
    );
    const type = `multipart/form-data; boundary=${boundary}`;
    const headers = { authorization: `Bearer ${office.surveyor.token}`, 'content-type': type };
    const sendForms = () => sendAll(forms, (form) => send(agent, path, headers, form, 201));
    return perRequest > 1 ? watched('ours', api.pid, sendForms) : sendForms();
  };
  const bare = (floor: BenchProcess) => async (): Promise<Round> => {
    const headers = { 'content-type': 'application/octet-stream' };
    const files = photos(sizes.requests * portalSends.photos);
    const round = await watched('floor', floor.pid, () =>
      sendAll(files, (photo) => send(agent, floor.url, headers, photo, 200)),
    );
    await rm(folder, { recursive: true });
    await mkdir(folder);
    return round;
  };
  const unit = 'MB/s';
  try {
    await bench.compare([
      {
        ...{ what: 'ten photos a request, as the portal', unit, target: 0.7 },
        ...{ ours: ours(portalSends.photos), floor: bare(flushed) },
      },
      { what: 'one photo a request', unit, ours: ours(1), floor: bare(flushed) },
      {
        ...{ what: 'ten photos, floor not flushed to the disk', unit },
        ...{ ours: ours(portalSends.photos), floor: bare(unflushed) },
      },
    ]);
    // Tells more than throughput where other work keeps the machine busy.
    bench.note('uploadCpuMsAPhoto', Math.round(median(spent.ours) * 10) / 10);
    bench.note('uploadFloorCpuMsAPhoto', Math.round(median(spent.floor) * 10) / 10);
  } finally {
    agent.destroy();
    await Promise.all([api.stop(), flushed.stop(), unflushed.stop()]);
  }
}

const boundary = 'garboard-bench-photo';

function formOf(photos: readonly Buffer[]): Buffer {
  const parts = photos.flatMap((photo, at) => [
    Buffer.from(
      `--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="IMG_${at}.jpg"\r\nContent-Type: image/jpeg\r\n\r\n`,
    ),
    photo,
    Buffer.from('\r\n'),
  ]);
  return Buffer.concat([...parts, Buffer.from(`--${boundary}--\r\n`)]);
}

/** Sends bodies, two at once, and answers megabytes a second. */
async function sendAll(bodies: Buffer[], post: (body: Buffer) => Promise<void>): Promise<Round> {
  const bytes = bodies.reduce((sum, body) => sum + body.length, 0);
  const begun = performance.now();
  const work = async () => {
    for (let body = bodies.shift(); body; body = bodies.shift()) await post(body);
  };
  await Promise.all(Array.from({ length: portalSends.atOnce }, work));
  return { value: bytes / 1e6 / ((performance.now() - begun) / 1000) };
}

function send(
  agent: Agent,
  url: string,
  headers: Record<string, string>,
  body: Buffer,
  status: number,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const all = { ...headers, 'content-length': body.length };
    const outgoing = request(url, { method: 'POST', agent, headers: all }, (answer) => {
      let said = '';
      answer.setEncoding('utf8').on('data', (text: string) => {
        said += text;
      });
      answer.on('end', () =>
        answer.statusCode === status
          ? resolve()
          : reject(new Error(`${url}: ${answer.statusCode} ${said.slice(0, 500)}`)),
      );
      answer.on('error', reject);
    });
    outgoing.on('error', reject);
    outgoing.end(body);
  });
}

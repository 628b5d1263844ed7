import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Fault, Run } from '../run.ts';

/** The beginning of an upload of a file that is said to be large. */
function beginUpload(run: Run, surveyId: string): Socket {
  const { port, host } = new URL(run.installation.url);
  const socket = connect(Number(port), '127.0.0.1');
  socket.on('error', () => undefined);
  const boundary = `part${randomUUID()}`;
  const head = [
    `POST /v1/surveys/${surveyId}/photos HTTP/1.1`,
    `host: ${host}`,
    `authorization: Bearer ${run.cast.firm.surveyor.token}`,
    `content-type: multipart/form-data; boundary=${boundary}`,
    'content-length: 8000000',
  ];
  const part = [
    `--${boundary}`,
    'content-disposition: form-data; name="file"; filename="begun.jpg"',
    'content-type: image/jpeg',
  ];
  socket.write(`${head.join('\r\n')}\r\n\r\n${part.join('\r\n')}\r\n\r\n`);
  socket.write(run.cast.jpeg);
  return socket;
}

const aSurvey = (run: Run): string => {
  const [survey] = run.ledger.since('survey');
  if (!survey) throw new Error('No survey was made yet.');
  return survey.id;
};

/** Clients whose connection breaks in the middle of a file. */
export const uploadsBrokenOff: Fault = {
  name: 'eight clients that stop in mid-upload',
  async inflict(run) {
    const sockets = Array.from({ length: 8 }, () => beginUpload(run, aSurvey(run)));
    await sleep(700);
    for (const [at, socket] of sockets.entries()) {
      if (at % 2) socket.destroy();
      else socket.resetAndDestroy();
    }
  },
};

/** How long a client may take that sends or reads a byte a second, in milliseconds; see apps/api/src/http/pace.ts. */
const slowEndsMs = 150_000;

/** Clients that send a byte a second: others go on meanwhile, and after a while they are cut off. */
export const crawlingSenders: Fault = {
  name: 'twenty clients that send a byte a second',
  inflict: (run) =>
    crawl(
      run,
      (surveyId) => beginUpload(run, surveyId),
      (socket) => socket.write('x'),
    ),
};

/** Clients that ask for files and read a byte a second. */
export const crawlingReaders: Fault = {
  name: 'twenty clients that read a byte a second',
  async inflict(run) {
    const [report] = run.ledger.since('issued');
    if (!report) return run.say('no report was issued yet, so there is nothing large to be read');
    const { port, host } = new URL(run.installation.url);
    const begin = () => {
      const socket = connect(Number(port), '127.0.0.1');
      socket.on('error', () => undefined);
      socket.pause();
      const ask = [
        `GET /v1/reports/${report.id}/pdf HTTP/1.1`,
        `host: ${host}`,
        `authorization: Bearer ${run.cast.firm.surveyor.token}`,
      ].join('\r\n');
      // Asked for often on one connection, so that more is on its way than any buffer takes.
      for (let n = 0; n < 200; n += 1) socket.write(`${ask}\r\n\r\n`);
      return socket;
    };
    // An empty line between requests: who has been hung up on learns of it by sending, with so much still to be read.
    await crawl(run, begin, (socket) => [socket.read(1), socket.write('\r\n')]);
  },
};

async function crawl(run: Run, begin: (surveyId: string) => Socket, step: (socket: Socket) => unknown) {
  const surveyId = aSurvey(run);
  const sockets = Array.from({ length: 20 }, () => begin(surveyId));
  const before = run.ledger.acknowledged;
  const started = performance.now();
  const ends = sockets.map((socket) => once(socket, 'close').catch(() => undefined));
  const timer = setInterval(() => {
    for (const socket of sockets) if (!socket.destroyed) step(socket);
  }, 1_000);
  const late = sleep(slowEndsMs, 'late' as const, { ref: false });
  const outcome = await Promise.race([Promise.all(ends), late]);
  clearInterval(timer);
  if (outcome === 'late')
    run.ledger.violation(`A byte a second holds a connection for more than ${slowEndsMs / 1000} s.`);
  for (const socket of sockets) socket.destroy();
  const served = run.ledger.acknowledged - before;
  const seconds = (performance.now() - started) / 1000;
  run.say(
    `cut off after ${Math.round(seconds)} s; ${served} pieces of work of others acknowledged meanwhile`,
  );
  if (served < seconds / 10) run.ledger.violation('While some clients crawl, others hardly get on.');
}

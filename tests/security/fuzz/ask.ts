import { Agent, request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { type ProblemType, problem, problemTypes } from '@garboard/contract/problems';
import { type Route, routes } from '@garboard/contract/routes';
import { buildJpeg } from '@garboard/seed/builders';
import type { Asked } from './request.ts';

/** Where requests go, and who and what their names stand for. */
export interface Target {
  url: string;
  /** Tokens of the askers by name. */
  tokens: Record<string, string>;
  /** Ids by place and noun: `own.findings`. */
  ids: Record<string, string>;
  /** How long an answer may take, in milliseconds. */
  slowMs: number;
}

export interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  body: Buffer;
  tookMs: number;
}

const agent = new Agent({ keepAlive: true, maxSockets: 16 });
export const hangUp = (): void => agent.destroy();

const jpeg = buildJpeg(7, { width: 64, height: 48 });
const ready: Record<string, () => Promise<Buffer>> = {
  jpeg: () => jpeg,
  png: async () =>
    Buffer.from(
      'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
      'base64',
    ),
  pdf: async () => Buffer.from('%PDF-1.4\n1 0 obj<<>>endobj\ntrailer<<>>\n%%EOF\n', 'latin1'),
};

async function bytesOf(body: Asked['body'], fill: (text: string) => string) {
  if (body.kind === 'none') return null;
  if (body.kind === 'json') {
    return {
      type: 'application/json',
      bytes: Buffer.from(fill(JSON.stringify(body.value) ?? 'null'), 'utf8'),
    };
  }
  if (body.kind === 'raw') return { type: body.type, bytes: Buffer.from(fill(body.text), 'latin1') };
  const form = new FormData();
  for (const [key, value] of Object.entries(body.fields)) form.append(key, fill(value));
  for (const { name, content } of body.files) {
    const bytes = (await ready[content]?.()) ?? Buffer.from(content, 'latin1');
    form.append('file', new Blob([new Uint8Array(bytes)]), name);
  }
  const made = new Response(form);
  return { type: made.headers.get('content-type'), bytes: Buffer.from(await made.arrayBuffer()) };
}

/** Makes a request and reads its answer to the end. */
export async function ask(target: Target, asked: Asked): Promise<Answer> {
  const fill = (text: string) =>
    text.replace(/@([\w ]+\.[\w.-]+)@/g, (whole, name: string) => target.ids[name] ?? whole);
  const search = new URLSearchParams(
    asked.query.map(([key, value]) => {
      const filled = fill(value);
      return [key, filled.startsWith('key:') ? Buffer.from(filled.slice(4)).toString('base64url') : filled];
    }),
  );
  const sent = await bytesOf(asked.body, fill);
  const headers: Record<string, string> = { ...asked.headers };
  const token = asked.who === 'a made-up token' ? 'x'.repeat(43) : target.tokens[asked.who];
  if (token && asked.by === 'bearer') headers.authorization ??= `Bearer ${token}`;
  if (token && asked.by === 'cookie') headers.cookie ??= `garboard_session=${token}`;
  if (sent?.type) headers['content-type'] = sent.type;
  if (sent) headers['content-length'] = String(sent.bytes.length);
  const path = fill(asked.path) + (search.size > 0 ? `?${search}` : '');
  const begun = performance.now();
  return new Promise((resolve, reject) => {
    const out = httpRequest(
      new URL(target.url),
      { method: routes[asked.route].method, path, headers, agent },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('error', reject);
        answer.on('end', () => {
          const { statusCode: status = 0, headers: got } = answer;
          resolve({ status, headers: got, body: Buffer.concat(parts), tookMs: performance.now() - begun });
        });
      },
    );
    const silence = 120_000;
    out.setTimeout(silence, () => out.destroy(new Error(`No answer within ${silence / 1000} s.`)));
    out.on('error', reject);
    out.end(sent?.bytes);
  });
}

/** What only a programmer should read. */
const innards =
  /prisma|postgres|violates|constraint|column "|relation "|SELECT |INSERT |undefined|\[object |node_modules|\.ts\b|TypeError|Cannot read|FST_|ZodError|invalid_type|at line \d|EACCES|ENOENT/;
/** A sentence, or a file’s name and a sentence. */
const sentence = /^(?=.{12,})(?:.{1,220}: )?[\p{Lu}“"'/\d‘].*[.!?…”)]$/su;

/** What is wrong with an answer, as a sentence; null when nothing is. */
export function faultOf(asked: Asked, answer: Answer, slowMs: number): string | null {
  const route: Route = routes[asked.route];
  const { status, headers, body, tookMs } = answer;
  const said = body.toString('utf8');
  if (status >= 500) return `It answered ${status}: ${said.slice(0, 300)}`;
  if (tookMs > slowMs) return `It took ${Math.round(tookMs)} ms.`;
  if (headers['x-content-type-options'] !== 'nosniff')
    return 'Its type may be guessed: no X-Content-Type-Options.';
  if (status < 300) return faultOfSuccess(route, answer, said);
  if (status === 304) return null;
  return faultOfRefusal(asked, answer, said);
}

function faultOfSuccess(route: Route, { status, headers, body }: Answer, said: string): string | null {
  if (status !== route.status) return `It answered ${status}, not ${route.status} as the contract says.`;
  if (route.response === undefined) return body.length > 0 ? 'It answered a body where there is none.' : null;
  if (route.response === 'bytes') {
    return headers['content-disposition'] ? null : 'A file without Content-Disposition.';
  }
  if (!headers['content-type']?.startsWith('application/json'))
    return `Its type is ${headers['content-type']}.`;
  const parsed = route.response.safeParse(JSON.parse(said));
  return parsed.success ? null : `The answer doesn’t match its schema: ${parsed.error.message.slice(0, 300)}`;
}

function faultOfRefusal(asked: Asked, { status, headers }: Answer, said: string): string | null {
  const type = headers['content-type'] ?? '';
  if (!type.startsWith('application/problem+json'))
    return `A refusal of type “${type}”: ${status} ${said.slice(0, 200)}`;
  const parsed = problem.safeParse(JSON.parse(said));
  if (!parsed.success) return `Not a problem document: ${said.slice(0, 200)}`;
  const { detail, type: name, errors = [] } = parsed.data;
  const known = problemTypes[name.replace('/problems/', '') as ProblemType];
  // Headers that are too large are refused before there is a request.
  if (known?.status !== status && status !== 431) return `A problem of type ${name} with status ${status}.`;
  for (const words of [detail, ...errors.map((e) => e.detail)]) {
    if (words.length > 20_000) return `A refusal of ${words.length} characters: ${words.slice(0, 200)}`;
    if (!sentence.test(words)) return `Not a sentence: ${words.slice(0, 300)}`;
    const echoed = JSON.stringify(asked);
    const leaked = innards.exec(words)?.[0];
    if (leaked && !echoed.includes(leaked))
      return `It tells of its innards (“${leaked}”): ${words.slice(0, 300)}`;
  }
  return null;
}

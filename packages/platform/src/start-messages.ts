import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Env } from './env.ts';

/** A line the database's preparation printed for the person at the terminal. */
export interface Announcement {
  step: string;
  /** What to show, when there is something. */
  text?: string;
  /** A one-time link to make the first account. */
  link?: string;
}

/** Reads a line of the form `{"step": …}`; undefined for any other, such as a log line. */
export function readAnnouncement(line: string): Announcement | undefined {
  const content = parse(line);
  if (typeof content?.step !== 'string') return undefined;
  const { step, what, applied, link } = content;
  if (typeof link === 'string') return { step, link };
  if (Array.isArray(applied))
    return { step, text: `Database brought up to date (${applied.length} migrations)` };
  return typeof what === 'string' ? { step, text: `${capital(step)} ${what}` } : { step };
}

/** A service's log line as shown at the terminal: errors and worse, and what isn't a log line; else undefined. */
export function warningText(service: string, line: string): string | undefined {
  if (line.trim() === '') return undefined;
  const content = parse(line);
  if (typeof content?.level !== 'number') return `${service}: ${line}`;
  if (content.level < 50) return undefined;
  const err = content.err;
  const cause = typeof err === 'object' && err !== null && 'message' in err ? `: ${err.message}` : '';
  return `${service}: ${content.msg ?? 'error'}${cause}`;
}

/** What is printed when everything answers. */
export async function readyText(from: {
  env: Env;
  announcements: Announcement[];
  seconds: number;
  logFolder: string;
}): Promise<string> {
  const { env, announcements, seconds, logFolder } = from;
  const lines = [
    '',
    `Ready in ${seconds.toFixed(1)} s.`,
    '',
    `  Portal         ${env.publicUrl}`,
    `  API reference  ${env.publicUrl}/docs`,
    `  Logs           ${logFolder}`,
  ];
  const link = announcements.find((announcement) => announcement.link)?.link;
  const file = join(env.dataDir, 'demo-sign-ins.json');
  const signIns = await readSignIns(file);
  if (link) lines.push('', '  Make the first account with this link (one use, within a day):', `  ${link}`);
  else if (env.demo && signIns.length > 0) {
    lines.push(
      '',
      `  Sign-ins of the demonstration (${file}):`,
      '',
      ...table(signIns).map((row) => `  ${row}`),
    );
  }
  return [...lines, '', 'Ctrl-C stops everything.', ''].join('\n');
}

interface SignIn {
  role: string;
  name: string;
  email: string;
  password: string;
  firm?: number;
}

async function readSignIns(file: string): Promise<SignIn[]> {
  const content: unknown = JSON.parse(await readFile(file, 'utf8').catch(() => '[]'));
  return Array.isArray(content) ? content : [];
}

function table(signIns: SignIn[]): string[] {
  const rows = [
    ['Role', 'Name', 'E-mail', 'Password'],
    ...signIns.map(({ role, name, email, password, firm }) => [
      firm === undefined ? role : `${role} (firm ${firm})`,
      name,
      email,
      password,
    ]),
  ];
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

function parse(line: string): Record<string, unknown> | undefined {
  if (!line.startsWith('{')) return undefined;
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

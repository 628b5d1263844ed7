import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { vi } from 'vitest';
import type { TestServer } from './server.ts';

/** Every message sent so far to an address, the newest last; soft line breaks undone. */
export async function mailsTo(server: TestServer, email: string): Promise<string[]> {
  const folder = join(server.dataDir, 'mail');
  const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.eml')).sort();
  const all = await Promise.all(names.map((name) => readFile(join(folder, name), 'utf8')));
  return all
    .map((mail) => mail.replace(/=\r?\n/g, '').replace(/=3D/g, '='))
    .filter((mail) => mail.includes(`To: ${email}`));
}

/** Secrets in the order in which they were first seen: the names of files go by the clock, which may be set back. */
const seen = new WeakMap<TestServer, Map<string, string[]>>();

/** The secret of the one-time link in the `n`th message to an address, once it has been sent. */
export async function tokenMailedTo(server: TestServer, email: string, n = 1): Promise<string> {
  return vi.waitFor(
    async () => {
      const mails = await mailsTo(server, email);
      const tokens = seen.get(server)?.get(email) ?? [];
      for (const mail of mails) {
        const found = /#token=([\w-]{43})/.exec(mail)?.[1];
        if (found && !tokens.includes(found)) tokens.push(found);
      }
      seen.set(server, (seen.get(server) ?? new Map()).set(email, tokens));
      const token = tokens[n - 1];
      if (!token) throw new Error(`${tokens.length} links were mailed to ${email}.`);
      return token;
    },
    { timeout: 60_000, interval: 100 },
  );
}

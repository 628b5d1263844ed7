import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';
import { describe, expect, it } from 'vitest';

// What the code leaves out on purpose, so that a whole kind of hole can't come up. Read from the sources that ship.
const root = repositoryRoot();
const leftOut = new Set(['node_modules', 'dist', 'generated']);

function sources(folder: string): [string, string][] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return leftOut.has(entry.name) ? [] : sources(path);
    return /\.(ts|tsx|mjs)$/.test(entry.name) ? [[path, readFileSync(join(root, path), 'utf8')]] : [];
  });
}
const files = ['apps', 'packages', 'seed'].flatMap(sources);

/** Where a pattern is written, but for those files in which it is meant. */
const where = (pattern: RegExp, meant: string[] = []): string[] =>
  files.filter(([path, text]) => pattern.test(text) && !meant.includes(path)).map(([path]) => path);

describe('the code', () => {
  it('is all looked at', () => {
    expect(files.length).toBeGreaterThan(500);
  });

  it('compiles and runs no text as code', () => {
    expect(where(/\beval\(|new Function\(|setTimeout\(\s*['"`]|node:vm\b/)).toEqual([]);
  });

  it('writes no markup into a page but drawings of our own', () => {
    // The report’s drawings are made by our drawing code, which escapes what it is given.
    expect(
      where(/dangerouslySetInnerHTML|\.innerHTML\b|outerHTML|insertAdjacentHTML|document\.write\(/, [
        'packages/report/src/drawn.tsx',
      ]),
    ).toEqual([]);
  });

  it('starts programs without a shell, by lists of arguments', () => {
    expect(where(/\bexecSync\(|\bexec\((?!\w*[,)]?\))[`'"]/)).toEqual([]);
    // Windows finds npm’s script only so; the arguments there are fixed words.
    expect(
      where(/shell:\s*(true|process)/, [
        'packages/platform/bin/prepare.mjs',
        'packages/platform/bin/audit.mjs',
      ]),
    ).toEqual([]);
  });

  it('puts no value into the text of a query', () => {
    expect(where(/\$(query|execute)RawUnsafe/)).toEqual([]);
    // Raw parts are names of tables and columns out of lists of ours.
    for (const [path, text] of files) {
      for (const [, part = ''] of text.matchAll(/Prisma\.raw\(([^)]*)\)/g)) {
        expect(part, path).not.toMatch(/input\.|query\.(?!sort)|body\.|params\.|request\./);
      }
    }
  });

  it('draws nothing that opens something from a weak source of chance', () => {
    const weak = where(/Math\.random\(/);
    // Waiting times and positions on a drawing may come from it; tokens, codes and names of files may not.
    for (const path of weak)
      expect(path).not.toMatch(/people|shares|api-keys|webhooks|signing|sealing|session/);
  });

  it('hashes and seals by nothing broken', () => {
    expect(where(/createHash\(['"](md5|sha1|ripemd160)['"]|createCipheriv\(['"](?!aes-256-gcm)/i)).toEqual(
      [],
    );
    expect(where(/rejectUnauthorized|NODE_TLS_REJECT_UNAUTHORIZED/)).toEqual([]);
  });
});

describe('fields for passwords', () => {
  it('are masked, named for password managers and take what is pasted', () => {
    expect(where(/onPaste=/)).toEqual([]);
    for (const [path, text] of files) {
      if (!/session\/(SignIn|NewPassword)|PresentPassword/.test(path)) continue;
      expect(text, path).toMatch(/type="password"/);
      expect(text, path).toMatch(/autoComplete="(current|new)-password"/);
    }
  });

  it('are for passwords: no question about a first pet, no hint', () => {
    expect(where(/security question|mother.s maiden|passwordHint|secretQuestion/i)).toEqual([]);
  });
});

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { repositoryRoot } from '@garboard/platform/paths';
import { describe, expect, it } from 'vitest';
import { requirements } from './asvs-numbers.ts';

const read = (path: string) => readFileSync(join(repositoryRoot(), path), 'utf8');
const page = read('tests/security/asvs.md');

interface Line {
  number: string;
  level: number;
  matter: string;
  how: string;
  shown: string[];
}
const lines: Line[] = page
  .split('\n')
  .filter((line) => line.startsWith('| v'))
  .map((line) => {
    const [, number = '', level = '', matter = '', how = '', shown = ''] = line
      .split('|')
      .map((cell) => cell.trim());
    return { number, level: Number(level), matter, how, shown: shown.split('<br>') };
  });

const named = /^`(tests\/[\w./-]+\.test\.ts)`: “(.+)”$/;
const words = /^(By reason|Documented|Not applicable|In part|Not met|Not met here): (.{7,})[.]$/;

function complaintsOf({ matter, how, shown }: Line): string[] {
  const found = matter.length > 3 && how ? [] : ['no matter, or not how it is met'];
  for (const cell of shown) {
    const [, path = '', title = ''] = named.exec(cell) ?? [];
    if (path === '') {
      if (!words.test(cell)) found.push(`neither a test nor a reason: ${cell}`);
    } else if (!existsSync(join(repositoryRoot(), path))) found.push(`no file ${path}`);
    else {
      // As it is written beside it(, test( or it.each(…)(, with its quotation mark.
      const text = read(path);
      const quoted = [`'${title}'`, `"${title}"`, `\`${title}\``];
      if (!quoted.some((each) => text.includes(each))) found.push(`no test “${title}” in ${path}`);
    }
  }
  // Where nothing is done about it, a reason has to say why.
  const reasons = /^(Not applicable|Not met|In part|By reason)/;
  if (how === '—' && !shown.some((cell) => reasons.test(cell))) found.push('nothing is done, and no reason');
  return found;
}

describe('the table of requirements', () => {
  it('has all 70 of level 1 and all 183 of level 2, each once, in order', () => {
    const counted = (level: number) => requirements.filter((one) => one.level === level).length;
    expect([counted(1), counted(2)]).toEqual([70, 183]);
    const wanted = requirements.map(({ number, level }) => `${number} ${level}`).sort();
    expect(lines.map(({ number, level }) => `${number} ${level}`).sort()).toEqual(wanted);
    const order = lines.map(({ number }) => number.replace('v5.0.0-', '').split('.').map(Number));
    const asNumbers = ([a = 0, b = 0, c = 0]: number[]) => a * 10_000 + b * 100 + c;
    expect(order.map(asNumbers)).toEqual(order.map(asNumbers).sort((a, b) => a - b));
  });

  it('shows for each a test that exists, or says why not', () => {
    const complaints = lines.flatMap((line) => complaintsOf(line).map((what) => `${line.number}: ${what}`));
    expect(complaints).toEqual([]);
  });

  it('names files that are there', () => {
    const files = [...page.matchAll(/`((?:apps|packages|tests|prisma)\/[\w./-]+)`/g)].map(
      (match) => match[1] ?? '',
    );
    expect(files.length).toBeGreaterThan(50);
    for (const file of new Set(files)) expect(existsSync(join(repositoryRoot(), file)), file).toBe(true);
  });
});

describe('what the guide says of security', () => {
  const guide = read('DEVELOPERS.md');
  const passage = guide.slice(guide.indexOf('\n## Security\n'), guide.indexOf('\n## Decisions\n'));

  it('is there, with the figures that hold', async () => {
    expect(passage.length).toBeGreaterThan(1000);
    const { idleDays, sessionDays } = await import('@garboard/core/people/start-session');
    const { linkMinutes } = await import('@garboard/contract/limits');
    expect(passage).toContain(`${idleDays} days without a request, ${sessionDays} days in all`);
    expect(passage).toContain(`${linkMinutes} minutes`);
    expect(passage).toContain('12 to 200 characters');
  });
});

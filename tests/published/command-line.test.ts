import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { worksheets } from '@garboard/trade/worksheets/registry';
import { describe, expect, it } from 'vitest';

function run(...args: string[]) {
  const command = ['--import', 'tsx', 'packages/trade/bin/worksheet.ts', ...args];
  const done = spawnSync(process.execPath, command, { encoding: 'utf8' });
  return { code: done.status, out: done.stdout, err: done.stderr };
}

const held = '{"startPressure":500,"endPressure":480,"holdTime":5,"gaugeResolution":5,"noLiquid":true}';

describe('worksheets from the command line', { timeout: 60_000 }, () => {
  it('lists every kind when none is named', () => {
    const { code, out } = run();
    expect(code).toBe(0);
    expect(
      out
        .trim()
        .split('\n')
        .map((line) => line.split(' ')[0]),
    ).toEqual(worksheets.map((w) => w.kind));
  });

  it('is the command that the README names', () => {
    const scripts = JSON.parse(readFileSync('package.json', 'utf8')).scripts;
    expect(scripts.worksheet).toBe('node --import tsx packages/trade/bin/worksheet.ts');
    const done = spawnSync('npm', ['run', '--silent', 'worksheet', '--', 'nothing', '{}'], {
      encoding: 'utf8',
    });
    expect({ code: done.status, out: done.stdout }).toEqual({ code: 2, out: '' });
  });

  it('prints the result as JSON', () => {
    const { code, out, err } = run('gas-leak-down', held);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const result = JSON.parse(out);
    expect(result.verdict).toBe('unsatisfactory');
    expect(result.outputs.fall).toMatchObject({ value: 20, unit: 'mbar' });
  });

  it('shows the inputs of a kind when none are given', () => {
    const { code, out } = run('gas-leak-down');
    expect(code).toBe(0);
    expect(JSON.parse(out).inputs.required).toContain('startPressure');
  });

  it.each([
    ['an unknown kind', ['no-such-thing', '{}'], 'There is no worksheet “no-such-thing”'],
    ['what is not JSON', ['gas-leak-down', '{start: 5}'], 'not JSON'],
    [
      'a missing field',
      ['gas-leak-down', held.replace('"holdTime":5,', '')],
      'holdTime: Time held must be given.',
    ],
    [
      'an impossible value',
      ['gas-leak-down', held.replace('500', '-1')],
      'startPressure: Pressure at the start must be more than 0',
    ],
    ['more than one text', ['gas-leak-down', held, held], 'one JSON text'],
  ])('answers %s with a sentence and status 2', (_what, args, sentence) => {
    const { code, out, err } = run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(sentence);
  });
});

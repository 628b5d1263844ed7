// Runs the whole service under load, does it harm, and looks whether anything acknowledged was lost or done twice:
//   npm run faults -- [--kills 300] [--seed 7] [--only kills,database,redis,store,disk,clients,clock,network]
//                     [--profile laptop|servers]
// Exit status 1 when anything was found, 2 on bad usage.
import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { groupNames, groups, toldToEnd } from './groups.ts';
import type { Profile } from './processes.ts';
import { Report } from './report.ts';

const profiles: Profile[] = ['laptop', 'servers'];
const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '300' },
    seed: { type: 'string', default: String(Date.now() % 1_000_000) },
    only: { type: 'string', default: groupNames.join(',') },
    profile: { type: 'string', default: profiles.join(',') },
  },
});
const [kills, seed] = [Number(values.kills), Number(values.seed)];
const only = values.only.split(',');
const wanted = values.profile.split(',');
const unknown = [
  ...only.filter((name) => !groupNames.includes(name)),
  ...wanted.filter((p) => !profiles.some((known) => known === p)),
];
if (unknown.length > 0 || !Number.isInteger(kills) || !Number.isInteger(seed)) {
  console.error(
    `Not known: ${unknown.join(', ') || 'a number that is none'}. Groups: ${groupNames.join(', ')}.`,
  );
  process.exit(2);
}

console.log(`Seed ${seed}. Load of the machine before: ${loadavg()[0]?.toFixed(1)}.`);
const report = new Report();
for (const profile of profiles.filter((name) => wanted.includes(name)))
  for (const group of groups) {
    if (toldToEnd.aborted || !only.includes(group.name) || !group.profiles.includes(profile)) continue;
    console.log(`\n${profile}: ${group.name}`);
    report.add(
      profile,
      group.name,
      await group.run(profile, { seed, kills: Math.ceil(kills / wanted.length) }),
    );
  }
report.print();
process.exit(report.violations > 0 ? 1 : 0);

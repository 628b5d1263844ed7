// Asks the registry for known holes in what ships, and tells apart three ends: clean (0), holes of high or critical
// severity (1), and a registry that couldn't be asked (2), which says nothing about the packages.
import { spawnSync } from 'node:child_process';

const args = ['audit', '--omit=dev', '--audit-level=high', '--json', ...process.argv.slice(2)];
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
const { stdout, stderr, error } = spawnSync(npm, args, {
  encoding: 'utf8',
  maxBuffer: 64 * 1024 * 1024,
  shell: process.platform === 'win32',
});

const answer = readAnswer();
const counts = answer?.metadata?.vulnerabilities;
if (!counts) {
  const said =
    answer?.message ?? answer?.error?.summary ?? error?.message ?? (stderr.trim() || stdout.trim());
  console.error(`The registry could not be asked, so nothing is known about holes: ${said}`);
  process.exitCode = 2;
} else {
  const named = Object.values(answer.vulnerabilities ?? {}).filter(({ severity }) =>
    ['high', 'critical'].includes(severity),
  );
  for (const { name, severity, range } of named) console.error(`${name} ${range}: ${severity}`);
  const looked = answer.metadata.dependencies?.total ?? 0;
  const lesser = (counts.low ?? 0) + (counts.moderate ?? 0) + (counts.info ?? 0);
  console.log(
    `${named.length} of high or critical severity, ${lesser} of less, in ${looked} packages looked up.`,
  );
  process.exitCode = named.length > 0 ? 1 : 0;
}

function readAnswer() {
  try {
    return JSON.parse(stdout);
  } catch {
    return undefined;
  }
}

import type { Job } from '@garboard/contract/job-list';
import type { JobStage } from '@garboard/trade/job-stages';
import { count, formatDay } from '../../ui/format.ts';

type Wait = Job['waiting'][number];

/** What the one who is waited for has to do, by the stage of the job. */
const toDo: Record<JobStage, string> = {
  enquiry: 'answer the enquiry',
  booked: 'say how the attendance went',
  attended: 'write it up',
  drafting: 'finish the draft',
  'in-review': 'review it',
  issued: 'close the job',
  'in-clearance': '',
  closed: '',
  cancelled: '',
};

/** Who has to do what next, in a line: `Owner: evidence for 2`. */
export function waitWords(job: Pick<Job, 'stage' | 'next'>, wait: Wait): string {
  const who = {
    office: 'Office',
    client: 'Client',
    surveyor: wait.name ?? 'A surveyor',
    reviewer: wait.name ?? 'A second surveyor',
    owner: 'Owner',
    insurer: 'Insurer',
  }[wait.for];
  if (wait.for === 'client') return `${who}: accept the quotation`;
  if (wait.for === 'owner') return `${who}: evidence for ${wait.count}`;
  if (wait.count !== null) return `${who}: decide on ${wait.count}`;
  if (wait.for === 'office' && job.stage === 'booked') return `${who}: arrange a day`;
  if (wait.for === 'office' && job.stage === 'in-clearance') return `${who}: hand the report over`;
  return `${who}: ${toDo[job.stage]}`;
}

/** The next day in words: `Attendance on 4 May 2026`, `2 overdue since 1 May 2026`. */
export function nextWords(job: Pick<Job, 'next' | 'overdue' | 'undecided'>): {
  words: string;
  passed: boolean;
} {
  const { next } = job;
  if (!next) return { words: '', passed: false };
  const day = formatDay(next.on);
  if (next.what === 'attendance') {
    return { words: next.passed ? `Attendance was on ${day}` : `Attendance on ${day}`, passed: next.passed };
  }
  return next.passed
    ? { words: `${count(job.overdue, 'recommendation')} overdue, since ${day}`, passed: true }
    : { words: `Next recommendation due on ${day}`, passed: false };
}

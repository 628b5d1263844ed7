import type { Urgency } from '@garboard/trade/vocabulary';
import { urgencies, urgencyLabels } from '@garboard/trade/vocabulary';
import { formatDay } from './format.ts';

const segments = [0, 1, 2, 3];

/** How soon, in words, beside an upright gauge of four segments filled from the bottom. */
export function UrgencyGauge({ urgency, withinDays }: { urgency: Urgency; withinDays?: number | null }) {
  const filled = urgencies.length - urgencies.indexOf(urgency);
  return (
    <span className={urgency === 'before-use' ? 'gauge gauge-urgent' : 'gauge'}>
      <svg viewBox="0 0 14 30" aria-hidden="true" focusable="false">
        {segments.map((fromBottom) => (
          <rect
            key={fromBottom}
            className={fromBottom < filled ? 'filled' : undefined}
            x="1"
            y={24.5 - fromBottom * 7.8}
            width="12"
            height="4.5"
          />
        ))}
      </svg>
      <span>{urgencyText(urgency, withinDays)}</span>
    </span>
  );
}

/** The words alone: `Within 30 days`, `Before next use`. */
export function urgencyText(urgency: Urgency, withinDays?: number | null): string {
  return urgency === 'within-days' && withinDays ? `Within ${withinDays} days` : urgencyLabels[urgency];
}

/** A due date, and in words and in the signal colour when it has passed. */
export function DueDate({ dueOn, overdue }: { dueOn: string | null; overdue: boolean }) {
  if (!dueOn) return <span className="soft">No date</span>;
  return overdue ? <span className="signal">Overdue since {formatDay(dueOn)}</span> : formatDay(dueOn);
}

import type { Finding } from '@garboard/contract/findings';
import { firmRoleLabels, partyRoleLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import type { Item } from '../../api/client.ts';
import { formatInstant } from '../../ui/format.ts';

const roleLabels: Readonly<Record<string, string>> = { ...firmRoleLabels, ...partyRoleLabels };

/** Someone and what they are to the survey: `Ines Abrunhal, owner`. */
export function whoWas(actor: { name: string; role: string }): string {
  return actor.role ? `${actor.name}, ${(roleLabels[actor.role] ?? actor.role).toLowerCase()}` : actor.name;
}

/**
 * Events one under the other, each with who and when. Among the events of a whole survey those about one finding
 * name it, which is what `findings` is for.
 */
export function EventSteps({
  events,
  timeZone,
  findings = [],
}: {
  events: readonly Item<'listEvents'>[];
  timeZone: string;
  findings?: readonly Finding[];
}) {
  const about = (event: Item<'listEvents'>) =>
    findings.find((finding) => finding.id === event.findingId && !event.summary.includes(finding.title));
  return (
    <ol className="steps">
      {events.map((event) => (
        <li key={event.id}>
          <p>{event.summary}</p>
          <About finding={about(event)} />
          <p className="soft small">
            {whoWas(event.actor)}, <time dateTime={event.at}>{formatInstant(event.at, timeZone)}</time>
          </p>
        </li>
      ))}
    </ol>
  );
}

function About({ finding }: { finding: Finding | undefined }) {
  if (!finding) return null;
  return (
    <p className="small">
      {finding.number}. <Link href={`/findings/${finding.id}`}>{finding.title}</Link>
    </p>
  );
}

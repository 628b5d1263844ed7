import { firmRoleLabels, partyRoleLabels } from '@garboard/trade/vocabulary';
import type { Item } from '../../api/client.ts';
import { formatInstant } from '../../ui/format.ts';

const roleLabels: Readonly<Record<string, string>> = { ...firmRoleLabels, ...partyRoleLabels };

/** Someone and what they are to the survey: `Ines Abrunhal, owner`. */
export function whoWas(actor: { name: string; role: string }): string {
  return actor.role ? `${actor.name}, ${(roleLabels[actor.role] ?? actor.role).toLowerCase()}` : actor.name;
}

/** Events one under the other, each with who and when. */
export function EventSteps({
  events,
  timeZone,
}: {
  events: readonly Item<'listEvents'>[];
  timeZone: string;
}) {
  return (
    <ol className="steps">
      {events.map((event) => (
        <li key={event.id}>
          <p>{event.summary}</p>
          <p className="soft small">
            {whoWas(event.actor)}, <time dateTime={event.at}>{formatInstant(event.at, timeZone)}</time>
          </p>
        </li>
      ))}
    </ol>
  );
}

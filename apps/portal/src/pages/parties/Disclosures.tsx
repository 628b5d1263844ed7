import type { Survey } from '@garboard/contract/surveys';
import { useList } from '../../api/queries.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { EventSteps } from '../surveys/EventSteps.tsx';

/** To whom the report was released, from whom it was withdrawn and who opened it; for the firm and who pays. */
export function Disclosures({ survey }: { survey: Survey }) {
  const list = useList('listDisclosures', { params: { id: survey.id }, query: { limit: 20 } });
  return (
    <section className="stack section" aria-labelledby="disclosures">
      <h2 id="disclosures">Who was given the report, and who opened it</h2>
      <p className="soft small">A party’s look is noted once a day and document. The firm’s own aren’t.</p>
      <MoreList list={list} what="who was given it" empty={<p>Nobody has been given anything yet.</p>}>
        {(events) => <EventSteps events={events} timeZone={survey.timeZone} />}
      </MoreList>
    </section>
  );
}

import type { CoverageItem } from '@garboard/contract/coverage';
import { systemLabels } from '@garboard/trade/vocabulary';
import { Link, useSearch } from 'wouter';
import type { FindingTitle, KeptPhoto } from '../../capture/kept.ts';
import { coverageId, titleOf } from '../../capture/kept.ts';
import { Big } from './Big.tsx';
import { useHeard, useKept } from './data.ts';
import { Frame } from './Frame.tsx';
import { Missing } from './Missing.tsx';
import { TakePhotos } from './TakePhotos.tsx';
import { Thumb } from './Thumb.tsx';
import { usePlace } from './usePlace.ts';
import { clockWords, reachWords, stateOf, whatIs } from './words.ts';

/** One system of one boat: what can be done here, and what has been kept here. */
export function SystemPage({ surveyId, system }: { surveyId: string; system: string }) {
  const place = usePlace(surveyId, system);
  const kept = useKept().filter((item) => item.surveyId === surveyId && item.system === system);
  const coverage = useHeard<CoverageItem[]>('coverage', surveyId);
  const findings = useHeard<FindingTitle[]>('findings', surveyId);
  const noteId = new URLSearchParams(useSearch()).get('note');
  if (!place) return <Missing loading={place === undefined} />;
  const { may, name } = place.survey;
  const home = `/capture/${surveyId}/${system}`;
  const note = kept.find((item) => item.id === noteId && item.kind === 'note');
  const answered = kept.find((item) => item.id === coverageId(surveyId, place.system));
  const theirs = coverage?.data.find((item) => item.system === system);
  const reached =
    answered?.kind === 'coverage' && answered.state !== 'sent' ? answered.answer.reached : theirs?.reached;
  const photos = kept.filter((item): item is KeptPhoto => item.kind === 'photo');
  const others = kept.filter((item) => item.kind === 'note' || item.kind === 'worksheet');
  const written = findings?.data.filter((finding) => finding.system === system) ?? [];
  return (
    <Frame
      title={systemLabels[place.system]}
      over={<strong>{name}</strong>}
      back={{ href: `/capture/${surveyId}`, label: 'the systems' }}
    >
      {note?.kind === 'note' ? (
        <div className="notice">
          <p>
            Photos taken now belong to the note <strong dir="auto">{titleOf(note.text)}</strong>
          </p>
          <Link href={home} className="button button-plain">
            No more for this note
          </Link>
        </div>
      ) : null}
      <div className="capture-actions">
        {may.photos ? <TakePhotos place={place} noteId={note?.id ?? null} /> : null}
        {may.findings ? (
          <Big href={`${home}/note`} title="Write or speak a note" more="Becomes a draft finding" />
        ) : null}
        {may.coverage ? (
          <Big href={`${home}/coverage`} title="How far examined" more={reachWords(reached ?? null)} />
        ) : null}
        {may.worksheets ? <Big href={`${home}/worksheets`} title="Fill in a worksheet" /> : null}
      </div>
      {photos.length || others.length ? <h2>Kept here</h2> : null}
      {photos.length ? (
        <ul className="capture-thumbs" aria-label="Photos kept here, newest first">
          {photos.toReversed().map((photo) => (
            <li key={photo.id}>
              <Thumb photo={photo} />
              <span className="small">
                {clockWords(photo.keptAt)}
                <br />
                {stateOf(photo)}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {others.length ? (
        <ul className="capture-lines">
          {others.toReversed().map((item) => (
            <li key={item.id}>
              <span dir="auto">{whatIs(item)}</span>
              <span className="soft small">
                {clockWords(item.keptAt)}, {stateOf(item).toLowerCase()}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {written.length && findings ? (
        <>
          <h2>Written up already</h2>
          <ul className="capture-lines">
            {written.map((finding) => (
              <li key={finding.id} dir="auto">
                {finding.number}. {finding.title}
              </li>
            ))}
          </ul>
          <p className="soft small">As the server had it, {clockWords(findings.at)}</p>
        </>
      ) : null}
    </Frame>
  );
}

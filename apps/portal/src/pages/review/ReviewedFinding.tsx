import type { Finding } from '@garboard/contract/findings';
import type { ReviewComment } from '@garboard/contract/reviews';
import type { Survey } from '@garboard/contract/surveys';
import { harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import { Link } from 'wouter';
import { pathOf } from '../../api/client.ts';
import { listed } from '../../ui/format.ts';
import { UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { Threads } from './Threads.tsx';

/** A finding as it is written now, and beside it what is said about it. */
export function ReviewedFinding({
  survey,
  finding,
  comments,
  mayComment,
}: {
  survey: Survey;
  finding: Finding;
  comments: readonly ReviewComment[];
  mayComment: boolean;
}) {
  return (
    <article className="reviewed" id={`finding-${finding.number}`}>
      <div className="stack">
        <h3 dir="auto">
          {finding.number}. {finding.title}
        </h3>
        <p>
          <UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />
        </p>
        <p className="soft small">
          {systemLabels[finding.system]}
          {finding.harms.length ? `. ${listed(finding.harms.map((harm) => harmLabels[harm]))}` : ''}
        </p>
        <Passage lead="What was seen." text={finding.observed} />
        <Passage lead="Why it matters." text={finding.consequence} />
        <Passage lead="What to do." text={finding.recommendation} />
        {finding.references.length ? (
          <p className="soft">References: {finding.references.join('; ')}</p>
        ) : null}
        {finding.photos.length ? (
          <ul className="photos">
            {finding.photos.map((photo, at) => (
              <li key={photo.id}>
                {photo.images.thumb ? (
                  <a href={photo.images.screen ?? photo.images.thumb} target="_blank" rel="noreferrer">
                    <img
                      src={photo.images.thumb}
                      alt={photo.caption || `Photo ${at + 1}, no caption`}
                      loading="lazy"
                    />
                  </a>
                ) : null}
                <p className="small">{photo.caption}</p>
              </li>
            ))}
          </ul>
        ) : null}
        <ul className="plain-list">
          {finding.worksheets.map((worksheet) => (
            <li key={worksheet.id}>
              Measurement: <Link href={`/worksheets/${worksheet.id}`}>{worksheet.title}</Link>
            </li>
          ))}
          <li>
            <a href={pathOf('previewFinding', { id: finding.id })} target="_blank" rel="noreferrer">
              See finding {finding.number} as it is printed
            </a>
          </li>
        </ul>
      </div>
      <section aria-label={`Comments on finding ${finding.number}`}>
        <Threads
          survey={survey}
          findingId={finding.id}
          about={`finding ${finding.number}`}
          comments={comments}
          mayComment={mayComment}
        />
      </section>
    </article>
  );
}

function Passage({ lead, text }: { lead: string; text: string }) {
  if (!text) return null;
  return (
    <p className="text" dir="auto">
      <strong>{lead}</strong> {text}
    </p>
  );
}

import type { Finding } from '@garboard/contract/findings';
import { findingStateLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { httpLink } from '../../ui/format.ts';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';
import { draftOfCost, showCost } from '../findings/costDraft.ts';
import { PhotoFrame } from '../photos/PhotoFrame.tsx';
import { limitWords } from './decide/Decided.tsx';

/** The words of a finding as the report has them. */
export function FindingWords({ finding }: { finding: Finding }) {
  return (
    <div className="stack">
      <Passage title="What was seen" text={finding.observed} />
      <Passage title="Why it matters" text={finding.consequence} />
      <Passage title="What to do" text={finding.recommendation} />
      <Items finding={finding} />
      {finding.cost ? <Passage title="Cost to put right" text={showCost(draftOfCost(finding.cost))} /> : null}
      <References references={finding.references} />
    </div>
  );
}

function Passage({ title, text }: { title: string; text: string }) {
  if (!text) return null;
  return (
    <section>
      <h2>{title}</h2>
      <p className="text" dir="auto">
        {text}
      </p>
    </section>
  );
}

/** What is to be put right one by one, and how far each has come. */
function Items({ finding }: { finding: Finding }) {
  if (!finding.items.length) return null;
  const issued = finding.state !== 'draft';
  return (
    <section>
      <h2>To be put right, one by one</h2>
      <ol className="bullets">
        {finding.items.map((item) => (
          <li key={item.id} dir="auto">
            {item.text}
            {issued ? (
              <>
                {': '}
                <strong>{findingStateLabels[item.state].toLowerCase()}</strong>
                {item.limit ? `, ${limitWords(item.limit, item.limitUntil)}` : ''}
              </>
            ) : null}
          </li>
        ))}
      </ol>
    </section>
  );
}

function References({ references }: { references: readonly string[] }) {
  if (!references.length) return null;
  return (
    <section>
      <h2>References</h2>
      <ul className="plain-list">
        {references.map((reference) => {
          const address = httpLink(reference);
          return (
            <li key={reference}>
              {address ? (
                <a href={address} rel="noreferrer nofollow" target="_blank">
                  {reference}
                </a>
              ) : (
                reference
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Its photos, numbered as those who send evidence speak of them. */
export function FindingPhotos({ finding }: { finding: Finding }) {
  const [open, setOpen] = useState<number | null>(null);
  if (!finding.photos.length) return null;
  return (
    <section className="stack">
      <h2>Photos</h2>
      <ul className="photos photos-large">
        {finding.photos.map((photo, at) => (
          <li key={photo.id}>
            <PhotoFrame
              photo={{ caption: photo.caption, images: { thumb: photo.images.screen ?? photo.images.thumb } }}
              number={at + 1}
              onOpen={() => setOpen(at)}
            />
            <p>{photo.caption}</p>
          </li>
        ))}
      </ul>
      {open === null ? null : (
        <PhotoViewer
          photos={finding.photos.map((photo) => ({
            id: photo.id,
            src: photo.images.screen ?? photo.images.thumb ?? '',
            caption: photo.caption,
          }))}
          startAt={open}
          onClose={() => setOpen(null)}
        />
      )}
    </section>
  );
}

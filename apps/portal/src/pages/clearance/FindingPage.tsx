import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import { findingStateLabels, harmLabels, systemLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { Link } from 'wouter';
import { pathOf } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAnswer, useList } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { isStaffOf, mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { httpLink, listed } from '../../ui/format.ts';
import { MoreList } from '../../ui/MoreList.tsx';
import { Page } from '../../ui/Page.tsx';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';
import { DueDate, UrgencyGauge } from '../../ui/UrgencyGauge.tsx';
import { draftOfCost, showCost } from '../findings/costDraft.ts';
import { PhotoFrame } from '../photos/PhotoFrame.tsx';
import { EventSteps } from '../surveys/EventSteps.tsx';
import { WithSurvey } from '../surveys/SurveyFrame.tsx';
import { Measured } from '../worksheets/Measured.tsx';
import { Evidence } from './Evidence.tsx';
import { WithdrawFinding, Withdrawn } from './WithdrawFinding.tsx';

/** One finding: what was seen, its photos, and what has been done about it since. */
export default function FindingPage({ id }: { id: string }) {
  const finding = useAnswer('getFinding', { params: { id } });
  if (isStatus(finding.error, 404) || isStatus(finding.error, 422)) return <NotFound />;
  if (finding.data) {
    const found = finding.data;
    return (
      <WithSurvey id={found.surveyId}>{(survey) => <FindingOf survey={survey} finding={found} />}</WithSurvey>
    );
  }
  if (finding.error) return <ErrorNotice error={finding.error} onRetry={() => void finding.refetch()} />;
  return <Loading what="the finding" />;
}

function FindingOf({ survey, finding }: { survey: Survey; finding: Finding }) {
  return (
    <Page
      title={`${finding.number}. ${finding.title}`}
      windowTitle={`Finding ${finding.number}, ${survey.vesselName} ${survey.number}`}
      over={
        <Link href={isStaffOf(survey) ? `/surveys/${survey.id}/findings` : `/surveys/${survey.id}`}>
          {survey.vesselName}, {survey.number}
        </Link>
      }
      under={<UrgencyGauge urgency={finding.urgency} withinDays={finding.withinDays} />}
      action={
        finding.may.edit ? (
          <ButtonLink href={`/surveys/${survey.id}/findings/${finding.id}/edit`}>Edit the finding</ButtonLink>
        ) : null
      }
    >
      <div className="stack-wide">
        {finding.withdrawal ? <Withdrawn withdrawal={finding.withdrawal} timeZone={survey.timeZone} /> : null}
        <Facts
          facts={[
            ['State', <strong key="state">{findingStateLabels[finding.state]}</strong>],
            ...(finding.requiresClearing
              ? [['Due', <DueDate key="due" dueOn={finding.dueOn} overdue={finding.overdue} />] as const]
              : []),
            ['System', systemLabels[finding.system]],
            ...(finding.harms.length
              ? [['What could come of it', listed(finding.harms.map((harm) => harmLabels[harm]))] as const]
              : []),
          ]}
        />
        <div className="stack">
          <Passage title="What was seen" text={finding.observed} />
          <Passage title="Why it matters" text={finding.consequence} />
          <Passage title="What to do" text={finding.recommendation} />
          {finding.cost ? (
            <Passage title="Cost to put right" text={showCost(draftOfCost(finding.cost))} />
          ) : null}
          <References references={finding.references} />
        </div>
        <FindingPhotos finding={finding} />
        <Measured worksheets={finding.worksheets} href={(id) => `/worksheets/${id}`} />
        {mayDo('evidence.read', survey) && finding.state !== 'draft' && mayBeCleared(finding) ? (
          <Evidence survey={survey} finding={finding} />
        ) : null}
        {mayDo('finding.preview', survey) && finding.state !== 'withdrawn' ? (
          <p>
            <a href={pathOf('previewFinding', { id: finding.id })} target="_blank" rel="noreferrer">
              See it as it is printed
            </a>
          </p>
        ) : null}
        {finding.may.withdraw ? <WithdrawFinding finding={finding} /> : null}
        <FindingHistory survey={survey} finding={finding} />
      </div>
    </Page>
  );
}

/** Also a note may have had evidence sent, where the firm's rule has changed since. */
function mayBeCleared(finding: Finding): boolean {
  return (
    finding.requiresClearing || finding.may.sendEvidence || finding.may.decide || finding.state !== 'open'
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

function FindingPhotos({ finding }: { finding: Finding }) {
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

/** Every step with who and when; left out for those who may not see it. */
function FindingHistory({ survey, finding }: { survey: Survey; finding: Finding }) {
  const list = useList('listFindingEvents', { params: { id: finding.id } });
  if (isStatus(list.error, 403) || isStatus(list.error, 404)) return null;
  return (
    <section className="stack">
      <h2>History</h2>
      <MoreList list={list} what="the history" empty={<p>Nothing has happened since it was issued.</p>}>
        {(events) => <EventSteps events={events} timeZone={survey.timeZone} />}
      </MoreList>
    </section>
  );
}

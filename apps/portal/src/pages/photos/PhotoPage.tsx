import { etagOf } from '@garboard/contract/client';
import type { Finding } from '@garboard/contract/findings';
import type { Photo } from '@garboard/contract/photos';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import { call, pathOf } from '../../api/client.ts';
import { isStatus } from '../../api/problems.ts';
import { useAction, useAnswer, useWholeList } from '../../api/queries.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { mayDo } from '../../app/roles.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { formatInstant } from '../../ui/format.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { ChooseEarlier } from './before/ChooseEarlier.tsx';
import { PairView } from './before/PairView.tsx';
import { CaptionField } from './CaptionField.tsx';
import { DeletePhotos } from './DeletePhotos.tsx';
import { whilePreparing } from './preparing.ts';
import { useTurning } from './usePhotoChanges.ts';

/** One photo of a survey, large: what it shows, where it is used, and what can be done with it. */
export default function PhotoPage({ surveyId, photoId }: { surveyId: string; photoId: string }) {
  const photo = useAnswer(
    'getPhoto',
    { params: { id: photoId } },
    // The picture with its marks comes a moment after they were saved.
    { again: (one) => (one?.state === 'processing' ? 1000 : false) },
  );
  if (isStatus(photo.error, 404) || isStatus(photo.error, 422)) return <NotFound />;
  if (!photo.data) return photo.error ? <ErrorNotice error={photo.error} /> : <Loading what="the photo" />;
  const { data } = photo;
  return <WithSurvey id={surveyId}>{(survey) => <OnePhoto survey={survey} photo={data} />}</WithSurvey>;
}

function OnePhoto({ survey, photo }: { survey: Survey; photo: Photo }) {
  const [, go] = useLocation();
  const [asking, setAsking] = useState<'delete' | 'earlier' | null>(null);
  const params = { params: { id: survey.id } };
  const photos = useWholeList('listPhotos', { ...params, query: { limit: 500 } }, { again: whilePreparing });
  const findings = useWholeList('listFindings', params);
  const editable = surveyIsEditable(survey.state) && mayDo('photo.write', survey);
  const home = `/surveys/${survey.id}/photos`;
  const at = photos.data?.findIndex((one) => one.id === photo.id) ?? -1;
  const [earlier, later] = [photos.data?.[at - 1], photos.data?.[at + 1]];
  const turning = useTurning();
  const pairing = useAction({
    run: (beforePhotoId: string | null) =>
      call('updatePhoto', { params: { id: photo.id }, body: { beforePhotoId }, ifMatch: etagOf(photo) }),
    done: (saved) => (saved.before ? 'Paired with the earlier photo.' : 'The pair is parted.'),
    touches: ['getPhoto', 'listPhotos'],
    onDone: () => setAsking(null),
  });
  const number = at + 1;
  return (
    <SurveyFrame
      survey={survey}
      title={number ? `Photo ${number}` : 'Photo'}
      action={
        editable ? (
          <ButtonLink kind="main" href={`${home}/${photo.id}/marks`}>
            Mark up
          </ButtonLink>
        ) : null
      }
    >
      <div className="stack-wide">
        <nav className="row" aria-label="Photos">
          {earlier ? (
            <Link href={`${home}/${earlier.id}`}>Previous photo</Link>
          ) : (
            <span className="soft">First photo</span>
          )}
          {later ? (
            <Link href={`${home}/${later.id}`}>Next photo</Link>
          ) : (
            <span className="soft">Last photo</span>
          )}
          <Link href={home}>All photos</Link>
        </nav>
        <div className="one-photo">
          <figure className="stack">
            <Picture photo={photo} number={number} />
          </figure>
          <div className="one-photo-words stack">
            {editable && number ? <CaptionField photo={photo} number={number} /> : <p>{photo.caption}</p>}
            <Facts
              facts={[
                ['Taken', photo.takenAt ? formatInstant(photo.takenAt, survey.timeZone) : 'Not known'],
                ['File', photo.fileName],
                ['Size', `${photo.width} × ${photo.height}`],
                [
                  'Shown by',
                  <Users key="used" photo={photo} findings={findings.data ?? []} home={survey.id} />,
                ],
              ]}
            />
            <ErrorNotice error={turning.error} />
            <div className="actions">
              {editable ? (
                <>
                  {mayDo('finding.write', survey) ? (
                    <ButtonLink href={`/surveys/${survey.id}/findings/new?photo=${photo.id}`}>
                      Record a finding
                    </ButtonLink>
                  ) : null}
                  <Button busy={turning.busy} onClick={() => turning.run([photo])}>
                    Turn right
                  </Button>
                  <Button onClick={() => setAsking('delete')}>Delete</Button>
                </>
              ) : null}
              <a
                className="button button-plain"
                href={pathOf('getPhotoImage', { id: photo.id }, { size: 'original' })}
                target="_blank"
                rel="noreferrer"
              >
                Original file
              </a>
            </div>
          </div>
        </div>
        {photo.before || editable ? (
          <section className="section stack">
            <h2>Earlier and now</h2>
            {photo.before ? (
              <PairView before={photo.before} after={photo} timeZone={survey.timeZone} />
            ) : (
              <p className="soft">
                Set beside a photo of the same place from an earlier survey, this one shows what changed.
              </p>
            )}
            <ErrorNotice error={pairing.error} />
            {editable ? (
              <div className="actions">
                <Button onClick={() => setAsking('earlier')}>
                  {photo.before ? 'Choose another earlier photo' : 'Choose the earlier photo'}
                </Button>
                {photo.before ? (
                  <Button kind="quiet" busy={pairing.busy} onClick={() => pairing.run(null)}>
                    Part the pair
                  </Button>
                ) : null}
              </div>
            ) : null}
          </section>
        ) : null}
      </div>
      {asking === 'earlier' ? (
        <ChooseEarlier survey={survey} photo={photo} onChoose={pairing.run} onClose={() => setAsking(null)} />
      ) : null}
      {asking === 'delete' ? (
        <DeletePhotos
          photos={[photo]}
          numberOf={() => number}
          onClose={(gone) => (gone.length ? go(home) : setAsking(null))}
        />
      ) : null}
    </SurveyFrame>
  );
}

function Picture({ photo, number }: { photo: Photo; number: number }) {
  if (photo.state === 'failed')
    return <p className="notice notice-error">{photo.problem ?? 'This photo could not be prepared.'}</p>;
  return (
    <>
      {photo.images.screen ? (
        <img
          className="whole-picture"
          src={photo.images.screen}
          width={photo.width}
          height={photo.height}
          alt={photo.caption || `Photo ${number}, no caption`}
        />
      ) : null}
      <figcaption className="soft" aria-live="polite">
        {photo.state === 'processing'
          ? photo.images.screen
            ? 'Being made anew with its marks and turns…'
            : 'Being prepared…'
          : photo.marks.length
            ? 'As it is printed, with its marks. The original file is untouched.'
            : 'As it is printed.'}
      </figcaption>
    </>
  );
}

function Users({ photo, findings, home }: { photo: Photo; findings: readonly Finding[]; home: string }) {
  const used = findings.filter((finding) => finding.photos.some((one) => one.id === photo.id));
  if (!used.length) return 'No finding yet';
  return (
    <ul className="plain-list">
      {used.map((finding) => (
        <li key={finding.id}>
          <Link href={`/surveys/${home}/findings/${finding.id}/edit`}>
            {finding.number}. {finding.title}
          </Link>
        </li>
      ))}
    </ul>
  );
}

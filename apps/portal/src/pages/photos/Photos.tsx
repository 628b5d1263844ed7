import type { Photo } from '@garboard/contract/photos';
import { uploadLimits } from '@garboard/contract/photos';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { useState } from 'react';
import { pathOf } from '../../api/client.ts';
import { useWholeList } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { mayDo } from '../../app/roles.ts';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { FileDrop } from '../../ui/FileDrop.tsx';
import { count, megabytes } from '../../ui/format.ts';
import { PhotoViewer } from '../../ui/PhotoViewer.tsx';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { PhotoCard } from './PhotoCard.tsx';
import { UploadList } from './UploadList.tsx';
import { usePhotoUploads } from './uploads.ts';

/** While the worker is still making sizes, the list looks again soon. */
export const whilePreparing = (photos: Photo[]) =>
  photos.some((photo) => photo.state === 'processing') ? 2000 : false;

const uploading = {
  title: 'Leave while photos are being sent?',
  text: 'The photos that have not arrived yet are sent on while this window stays open, but you will not see how they fare.',
  leave: 'Leave',
};

/** All photos of a survey in the order they were taken, and the way to add more. */
export default function Photos({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <PhotosOf survey={survey} />}</WithSurvey>;
}

function PhotosOf({ survey }: { survey: Survey }) {
  const editable = surveyIsEditable(survey.state) && mayDo('photo.write', survey);
  const photos = useWholeList('listPhotos', { params: { id: survey.id } }, { again: whilePreparing });
  const uploads = usePhotoUploads(survey.id);
  const [open, setOpen] = useState<number | null>(null);
  const leaving = useLeaveWarning(uploads.busy, () => undefined, uploading);
  const all = photos.data ?? [];
  return (
    <SurveyFrame survey={survey} title="Photos">
      <div className="stack-wide">
        {editable ? (
          <div className="stack">
            <FileDrop
              label="Choose photos"
              accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif"
              hint={`or drop them here, as many as you like. JPEG, PNG or WebP, each up to ${megabytes(uploadLimits.photoBytes)}.`}
              onFiles={uploads.add}
            />
            <UploadList
              rows={uploads.rows}
              busy={uploads.busy}
              onRetry={uploads.retry}
              onClear={uploads.clear}
            />
          </div>
        ) : null}
        {photos.error && !photos.data ? (
          <ErrorNotice quiet error={photos.error} onRetry={() => void photos.refetch()} />
        ) : null}
        {photos.isPending ? <Loading what="the photos" /> : null}
        {photos.data && !all.length ? (
          <EmptyState title="No photos yet">
            <p>
              They are put in the order they were taken, by the camera's own clock. The files are kept as they
              are.
            </p>
          </EmptyState>
        ) : null}
        {all.length ? (
          <section className="stack">
            <h2>{count(all.length, 'photo')}, in the order they were taken</h2>
            <ul className="photos">
              {all.map((photo, at) => (
                <PhotoCard
                  key={photo.id}
                  photo={photo}
                  number={at + 1}
                  timeZone={survey.timeZone}
                  editable={editable}
                  onOpen={() => setOpen(at)}
                />
              ))}
            </ul>
          </section>
        ) : null}
      </div>
      {open === null ? null : (
        <PhotoViewer
          photos={all.map((photo) => ({
            id: photo.id,
            src: photo.images.screen ?? pathOf('getPhotoImage', { id: photo.id }, { size: 'screen' }),
            original: pathOf('getPhotoImage', { id: photo.id }, { size: 'original' }),
            caption: photo.caption,
          }))}
          startAt={open}
          onClose={() => setOpen(null)}
        />
      )}
      {leaving.dialog}
    </SurveyFrame>
  );
}

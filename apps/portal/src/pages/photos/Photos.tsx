import { uploadLimits } from '@garboard/contract/limits';
import type { Survey } from '@garboard/contract/surveys';
import { surveyIsEditable } from '@garboard/trade/states';
import { useWholeList } from '../../api/queries.ts';
import { useLeaveWarning } from '../../app/leaving.tsx';
import { mayDo } from '../../app/roles.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { FileDrop } from '../../ui/FileDrop.tsx';
import { megabytes } from '../../ui/format.ts';
import { SurveyFrame, WithSurvey } from '../surveys/SurveyFrame.tsx';
import { PhotoDesk } from './desk/PhotoDesk.tsx';
import { whilePreparing } from './preparing.ts';
import { UploadList } from './UploadList.tsx';
import { usePhotoUploads } from './uploads.ts';

const uploading = {
  title: 'Leave while photos are being sent?',
  text: 'The photos that have not arrived yet are sent on while this window stays open, but you will not see how they fare.',
  leave: 'Leave',
};

/** All photos of a survey in the order they were taken, and the way to add more. */
export default function Photos({ id }: { id: string }) {
  // Asked for together with the survey, not after it: on a slow line one wait instead of two.
  useWholeList('listPhotos', photosOf(id));
  useWholeList('listFindings', { params: { id } });
  return <WithSurvey id={id}>{(survey) => <PhotosOf survey={survey} />}</WithSurvey>;
}

const photosOf = (id: string) => ({ params: { id }, query: { limit: 500 } });

function PhotosOf({ survey }: { survey: Survey }) {
  const editable = surveyIsEditable(survey.state) && mayDo('photo.write', survey);
  const photos = useWholeList('listPhotos', photosOf(survey.id), { again: whilePreparing });
  const findings = useWholeList('listFindings', { params: { id: survey.id } });
  const uploads = usePhotoUploads(survey.id);
  const leaving = useLeaveWarning(uploads.busy, () => undefined, uploading);
  const pairs = photos.data?.filter((photo) => photo.before).length ?? 0;
  return (
    <SurveyFrame
      survey={survey}
      title="Photos"
      action={
        pairs ? (
          <ButtonLink href={`/surveys/${survey.id}/photos/pairs`}>
            Earlier and now, {String(pairs)}
          </ButtonLink>
        ) : null
      }
    >
      <div className="stack">
        {editable ? (
          <div className="stack">
            <FileDrop
              label="Choose photos"
              accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic,.heif"
              hint={`or drop them here, as many as you like. JPEG, PNG, WebP or HEIC, each up to ${megabytes(uploadLimits.photoBytes)}.`}
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
        {findings.error && !findings.data ? (
          <ErrorNotice quiet error={findings.error} onRetry={() => void findings.refetch()} />
        ) : null}
        {photos.isPending || findings.isPending ? (
          <div className="desk-waiting-page">
            <Loading what="the photos" />
          </div>
        ) : null}
        {photos.data && !photos.data.length ? (
          <EmptyState title="No photos yet">
            <p>
              They are put in the order they were taken, by the camera's own clock. The files are kept as they
              are.
            </p>
          </EmptyState>
        ) : null}
        {photos.data?.length && findings.data ? (
          <PhotoDesk survey={survey} photos={photos.data} findings={findings.data} editable={editable} />
        ) : null}
      </div>
      {leaving.dialog}
    </SurveyFrame>
  );
}

import type { Photo } from '@garboard/contract/photos';
import type { Survey } from '@garboard/contract/surveys';
import { purposeLabels } from '@garboard/trade/vocabulary';
import { useState } from 'react';
import { useWholeList } from '../../../api/queries.ts';
import { Button } from '../../../ui/Button.tsx';
import { Dialog } from '../../../ui/Dialog.tsx';
import { Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { SelectField } from '../../../ui/Field.tsx';
import { formatInstantDay } from '../../../ui/format.ts';

/** Chooses the earlier photo of a pair out of the boat's earlier surveys, or of this one before it. */
export function ChooseEarlier({
  survey,
  photo,
  onChoose,
  onClose,
}: {
  survey: Survey;
  photo: Photo;
  onChoose: (id: string) => void;
  onClose: () => void;
}) {
  const surveys = useWholeList('listSurveys', { query: { vesselId: survey.vesselId } });
  const others = (surveys.data ?? []).filter(
    (one) => one.id !== survey.id && one.createdAt < survey.createdAt && (one.photoCount ?? 0) > 0,
  );
  const choices = [...others, survey];
  const [picked, setPicked] = useState('');
  const from = choices.find((one) => one.id === picked) ?? choices[0];
  return (
    <Dialog title="Choose the earlier photo" wide onClose={onClose}>
      {surveys.isPending ? <Loading what="the boat's surveys" /> : null}
      <ErrorNotice quiet error={surveys.error} onRetry={() => void surveys.refetch()} />
      {surveys.data && from ? (
        <>
          {others.length ? null : (
            <p className="soft">
              There is no earlier survey of {survey.vesselName} with photos. A photo of this survey can stand
              in, to show a place before and after something was opened or cleaned.
            </p>
          )}
          <SelectField
            label="Survey"
            value={from.id}
            options={Object.fromEntries(
              choices.map((one) => [
                one.id,
                one.id === survey.id
                  ? `This survey, ${one.number}`
                  : `${one.number}, ${purposeLabels[one.purpose]}`,
              ]),
            )}
            onChange={setPicked}
          />
          <Pictures surveyId={from.id} besides={photo.id} timeZone={survey.timeZone} onChoose={onChoose} />
        </>
      ) : null}
      <div className="actions">
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </Dialog>
  );
}

function Pictures({
  surveyId,
  besides,
  timeZone,
  onChoose,
}: {
  surveyId: string;
  besides: string;
  timeZone: string;
  onChoose: (id: string) => void;
}) {
  const photos = useWholeList('listPhotos', { params: { id: surveyId }, query: { limit: 500 } });
  if (!photos.data)
    return photos.error ? <ErrorNotice quiet error={photos.error} /> : <Loading what="its photos" />;
  return (
    <ul className="photos photos-small">
      {photos.data.map((photo, at) =>
        photo.id === besides ? null : (
          <li key={photo.id}>
            <button type="button" className="photo-frame" onClick={() => onChoose(photo.id)}>
              <span className="photo-number">{at + 1}</span>
              {photo.images.thumb ? (
                <img
                  src={photo.images.thumb}
                  width={photo.thumbWidth}
                  height={photo.thumbHeight}
                  alt={`Choose number ${at + 1}${photo.caption ? `, ${photo.caption}` : ''}`}
                  loading="lazy"
                />
              ) : (
                <span className="photo-waiting">Being prepared…</span>
              )}
            </button>
            <p className="small">{photo.caption}</p>
            <p className="small soft">{photo.takenAt ? formatInstantDay(photo.takenAt, timeZone) : ''}</p>
          </li>
        ),
      )}
    </ul>
  );
}

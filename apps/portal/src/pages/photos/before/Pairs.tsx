import type { Survey } from '@garboard/contract/surveys';
import { Link } from 'wouter';
import { useWholeList } from '../../../api/queries.ts';
import { EmptyState, Loading } from '../../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../../ui/ErrorNotice.tsx';
import { SurveyFrame, WithSurvey } from '../../surveys/SurveyFrame.tsx';
import { PlainPair } from './PairView.tsx';

/** All pairs of a survey, earlier and now, one under the other. */
export default function Pairs({ id }: { id: string }) {
  return <WithSurvey id={id}>{(survey) => <PairsOf survey={survey} />}</WithSurvey>;
}

function PairsOf({ survey }: { survey: Survey }) {
  const photos = useWholeList('listPhotos', { params: { id: survey.id }, query: { limit: 500 } });
  const home = `/surveys/${survey.id}/photos`;
  const pairs = (photos.data ?? []).flatMap((photo, at) =>
    photo.before ? [{ photo, before: photo.before, number: at + 1 }] : [],
  );
  return (
    <SurveyFrame survey={survey} title="Earlier and now">
      <div className="stack-wide">
        <p>
          <Link href={home}>All photos</Link>
        </p>
        {photos.isPending ? <Loading what="the pairs" /> : null}
        <ErrorNotice quiet error={photos.error} onRetry={() => void photos.refetch()} />
        {photos.data && !pairs.length ? (
          <EmptyState title="No pairs yet">
            <p>Open a photo and choose the earlier one that it is to be compared with.</p>
          </EmptyState>
        ) : null}
        {pairs.map(({ photo, before, number }) => (
          <section key={photo.id} className="section stack">
            <h2>
              <Link href={`${home}/${photo.id}`}>Photo {number}</Link>
              {photo.caption ? `, ${photo.caption}` : ''}
            </h2>
            <PlainPair before={before} after={photo} timeZone={survey.timeZone} />
          </section>
        ))}
      </div>
    </SurveyFrame>
  );
}

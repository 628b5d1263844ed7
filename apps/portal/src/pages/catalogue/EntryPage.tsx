import { systemLabels } from '@garboard/trade/vocabulary';
import { Link, useLocation } from 'wouter';
import { isStatus } from '../../api/problems.ts';
import { useAnswer } from '../../api/queries.ts';
import { useFirm } from '../../app/firm.ts';
import { NotFound } from '../../app/NotFound.tsx';
import { ButtonLink } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { SvgPicture } from '../../ui/SvgPicture.tsx';
import { EntryTexts } from './EntryTexts.tsx';
import { EntryVersions } from './EntryVersions.tsx';
import { originWords } from './entryWords.ts';
import { TakeBack } from './TakeBack.tsx';

/** A known defect: its texts, its drawing, and what the firm has made of it. */
export default function EntryPage({ entryKey }: { entryKey: string }) {
  const { firmId } = useFirm();
  const [, go] = useLocation();
  const answer = useAnswer('getCatalogueEntry', { params: { key: entryKey }, query: { firmId } });
  if (isStatus(answer.error, 404) || isStatus(answer.error, 422)) return <NotFound />;
  const entry = answer.data;
  if (!entry) {
    return answer.error ? (
      <ErrorNotice error={answer.error} onRetry={() => void answer.refetch()} />
    ) : (
      <Loading what="the entry" />
    );
  }
  return (
    <Page
      title={entry.title}
      over={
        <>
          <Link href="/catalogue">Catalogue</Link>, {systemLabels[entry.system]}
        </>
      }
      under={`${originWords[entry.origin]}, version ${entry.version}`}
      action={
        entry.may.edit ? (
          <ButtonLink href={`/catalogue/${entry.key}/edit`}>
            {entry.origin === 'garboard' ? 'Write it in our words' : 'Edit'}
          </ButtonLink>
        ) : null
      }
    >
      <div className="entry">
        <EntryTexts entry={entry} />
        <div className="stack">
          {entry.diagram ? (
            <figure className="drawing">
              <SvgPicture svg={entry.diagram.svg} />
              <figcaption className="soft small">{entry.diagram.title}</figcaption>
            </figure>
          ) : null}
          <EntryVersions key={entry.version} firmId={firmId} entryKey={entry.key} />
          {entry.may.edit && entry.origin !== 'garboard' ? (
            <TakeBack
              entry={entry}
              firmId={firmId}
              onDone={() => {
                if (entry.origin === 'firm') go('/catalogue');
              }}
            />
          ) : null}
        </div>
      </div>
    </Page>
  );
}

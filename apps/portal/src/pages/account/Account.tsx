import { Link } from 'wouter';
import { useAnswer } from '../../api/queries.ts';
import { useMe } from '../../app/session.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { Page } from '../../ui/Page.tsx';
import { ApiKeys } from './ApiKeys.tsx';
import { Calendar } from './Calendar.tsx';
import { Password } from './Password.tsx';
import { SecondFactor } from './SecondFactor.tsx';
import { Sessions } from './Sessions.tsx';
import { YourData } from './YourData.tsx';

/** How the person who is signed in gets in, and where they are. */
export default function Account() {
  const { person } = useMe();
  const means = useAnswer('getSignInMeans', {}, { anew: true });
  return (
    <Page title="Your account" under={`${person.name}, ${person.email}`}>
      <div className="stack-wide">
        {means.data ? (
          <>
            <Password means={means.data} />
            <SecondFactor means={means.data} />
            <Sessions />
            <Calendar />
            <ApiKeys means={means.data} />
            <section className="stack">
              <h2>Other systems</h2>
              <p>
                <Link href="/systems">Systems that are told</Link> when something happens
              </p>
            </section>
            <YourData means={means.data} email={person.email} />
          </>
        ) : means.error ? (
          <ErrorNotice error={means.error} onRetry={() => void means.refetch()} />
        ) : (
          <Loading what="your account" />
        )}
      </div>
    </Page>
  );
}

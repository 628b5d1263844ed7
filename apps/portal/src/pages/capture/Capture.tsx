import '../../ui/styles/capture.css';
import { useEffect, useState } from 'react';
import { Link, Route, Switch } from 'wouter';
import { useBackground } from '../../app/background.ts';
import { Layout } from '../../app/Layout.tsx';
import { type Me, useSession } from '../../app/session.tsx';
import { lastPerson } from '../../capture/identity.ts';
import { Page } from '../../ui/Page.tsx';
import SignIn from '../session/SignIn.tsx';
import { ChooseSurvey } from './ChooseSurvey.tsx';
import { ChooseSystem } from './ChooseSystem.tsx';
import { ChooseWorksheet } from './ChooseWorksheet.tsx';
import { CoveragePage } from './CoveragePage.tsx';
import { useChanges } from './data.ts';
import { FillWorksheet } from './FillWorksheet.tsx';
import { KeptList } from './KeptList.tsx';
import { NotePage } from './NotePage.tsx';
import { OnBoardContext } from './person.ts';
import { SystemPage } from './SystemPage.tsx';
import { KeepingProvider } from './unkept.tsx';
import { useManifest } from './useManifest.ts';

const askAgainAfter = 15_000;

/** What a surveyor does on board, with or without signal. */
export default function Capture() {
  const session = useSession();
  useBackground(session.data);
  useManifest();
  const [signingIn, setSigningIn] = useState(false);
  const { error, refetch } = session;
  const unknown = session.data === undefined;
  useEffect(() => {
    if (!unknown || !error) return;
    const timer = window.setInterval(() => void refetch(), askAgainAfter);
    return () => window.clearInterval(timer);
  }, [unknown, error, refetch]);
  useEffect(() => {
    if (session.data) setSigningIn(false);
  }, [session.data]);

  // Whoever was here last goes on at once; somebody else has to sign in, and then sees nothing of theirs.
  const me = session.data ?? lastPerson();
  if (!window.isSecureContext || !('indexedDB' in window)) return <NotHere />;
  if (signingIn || (session.data === null && !me)) {
    return (
      <Layout me={null}>
        <SignIn />
      </Layout>
    );
  }
  if (!me) return <Layout me={null}>{error || session.fetchStatus === 'paused' ? <Unknown /> : null}</Layout>;
  if (!me.firmRoles.length) return <NotStaff me={me} />;
  return (
    <OnBoardContext value={{ me, ended: session.data === null, signIn: () => setSigningIn(true) }}>
      <KeepingProvider>
        <Pages personId={me.person.id} key={me.person.id} />
      </KeepingProvider>
    </OnBoardContext>
  );
}

function Pages({ personId }: { personId: string }) {
  useChanges(personId);
  return (
    <Switch>
      <Route path="/capture/kept" component={KeptList} />
      <Route path="/capture/:survey">{({ survey }) => <ChooseSystem surveyId={survey} />}</Route>
      <Route path="/capture/:survey/:system">
        {({ survey, system }) => <SystemPage key={system} surveyId={survey} system={system} />}
      </Route>
      <Route path="/capture/:survey/:system/note/:id?">
        {({ survey, system, id }) => <NotePage surveyId={survey} system={system} noteId={id ?? null} />}
      </Route>
      <Route path="/capture/:survey/:system/coverage">
        {({ survey, system }) => <CoveragePage surveyId={survey} system={system} />}
      </Route>
      <Route path="/capture/:survey/:system/worksheets">
        {({ survey, system }) => <ChooseWorksheet surveyId={survey} system={system} />}
      </Route>
      <Route path="/capture/:survey/:system/worksheets/:kind/:id?">
        {({ survey, system, kind, id }) => (
          <FillWorksheet surveyId={survey} system={system} kind={kind} worksheetId={id ?? null} />
        )}
      </Route>
      <Route component={ChooseSurvey} />
    </Switch>
  );
}

function NotHere() {
  return (
    <Layout me={null}>
      <Page title="Not at this address">
        <p>
          Browsers only keep things for the time without signal when the portal is opened through https. Ask
          your firm for that address. <Link href="/surveys">To the surveys</Link>
        </p>
      </Page>
    </Layout>
  );
}

function Unknown() {
  return (
    <Page title="Sign in once while there is signal">
      <p>Nobody is signed in on this telephone. After signing in once, this page opens without signal.</p>
    </Page>
  );
}

function NotStaff({ me }: { me: Me }) {
  return (
    <Layout me={me}>
      <Page title="For the survey firm’s own people">
        <p>
          This page is for working on board. <Link href="/surveys">To the surveys shared with you</Link>
        </p>
      </Page>
    </Layout>
  );
}

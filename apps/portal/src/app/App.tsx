import { lazy, Suspense } from 'react';
import { Link, Redirect, Route, Router, Switch } from 'wouter';
import { ErrorNotice } from '../ui/ErrorNotice.tsx';
import { useBackground } from './background.ts';
import { ErrorBoundary } from './ErrorBoundary.tsx';
import { useGuardedLocation } from './guard.ts';
import { Layout } from './Layout.tsx';
import { NewerVersion } from './NewerVersion.tsx';
import { NotFound } from './NotFound.tsx';
import { MeProvider, useIsStaff, useSession } from './session.tsx';

const SignIn = lazy(() => import('../pages/session/SignIn.tsx'));
const Verify = lazy(() => import('../pages/verify/Verify.tsx'));
const Welcome = lazy(() => import('../pages/session/Welcome.tsx'));
const SurveyList = lazy(() => import('../pages/surveys/SurveyList.tsx'));
const JobList = lazy(() => import('../pages/jobs/JobList.tsx'));
const ChooseSurveyFor = lazy(() => import('../pages/bring-in/ChooseSurveyFor.tsx'));
const BringIn = lazy(() => import('../pages/bring-in/BringIn.tsx'));
const NewSurvey = lazy(() => import('../pages/surveys/NewSurvey.tsx'));
const Survey = lazy(() => import('../pages/surveys/Survey.tsx'));
const Reading = lazy(() => import('../pages/reading/Reading.tsx'));
const Attendances = lazy(() => import('../pages/surveys/Attendances.tsx'));
const Photos = lazy(() => import('../pages/photos/Photos.tsx'));
const PhotoPage = lazy(() => import('../pages/photos/PhotoPage.tsx'));
const MarkEditor = lazy(() => import('../pages/photos/markup/MarkEditor.tsx'));
const Pairs = lazy(() => import('../pages/photos/before/Pairs.tsx'));
const Library = lazy(() => import('../pages/library/Library.tsx'));
const Findings = lazy(() => import('../pages/findings/Findings.tsx'));
const FindingEditor = lazy(() => import('../pages/findings/FindingEditor.tsx'));
const ClearancePage = lazy(() => import('../pages/clearance/ClearancePage.tsx'));
const ReInspection = lazy(() => import('../pages/clearance/visit/ReInspection.tsx'));
const FindingPage = lazy(() => import('../pages/clearance/FindingPage.tsx'));
const Worksheets = lazy(() => import('../pages/worksheets/Worksheets.tsx'));
const ChooseKind = lazy(() => import('../pages/worksheets/ChooseKind.tsx'));
const NewWorksheet = lazy(() => import('../pages/worksheets/NewWorksheet.tsx'));
const EditWorksheet = lazy(() => import('../pages/worksheets/EditWorksheet.tsx'));
const WorksheetPage = lazy(() => import('../pages/worksheets/WorksheetPage.tsx'));
const Coverage = lazy(() => import('../pages/coverage/Coverage.tsx'));
const Equipment = lazy(() => import('../pages/equipment/Equipment.tsx'));
const EquipmentEditor = lazy(() => import('../pages/equipment/EquipmentEditor.tsx'));
const Expiries = lazy(() => import('../pages/equipment/Expiries.tsx'));
const Parties = lazy(() => import('../pages/parties/Parties.tsx'));
const Review = lazy(() => import('../pages/review/Review.tsx'));
const ReportPage = lazy(() => import('../pages/reading/report/ReportPage.tsx'));
const Reports = lazy(() => import('../pages/reports/Reports.tsx'));
const History = lazy(() => import('../pages/surveys/History.tsx'));
const Engagement = lazy(() => import('../pages/engagement/Engagement.tsx'));
const QuotationPage = lazy(() => import('../pages/engagement/QuotationPage.tsx'));
const QuotationEditor = lazy(() => import('../pages/engagement/QuotationEditor.tsx'));
const InvoiceList = lazy(() => import('../pages/invoices/InvoiceList.tsx'));
const InvoicePage = lazy(() => import('../pages/invoices/InvoicePage.tsx'));
const InvoiceEditor = lazy(() => import('../pages/invoices/InvoiceEditor.tsx'));
const Account = lazy(() => import('../pages/account/Account.tsx'));
const Notices = lazy(() => import('../pages/notices/Notices.tsx'));
const NoticeSettings = lazy(() => import('../pages/notices/NoticeSettings.tsx'));
const Systems = lazy(() => import('../pages/webhooks/Systems.tsx'));
const SystemPage = lazy(() => import('../pages/webhooks/SystemPage.tsx'));
const OpenShared = lazy(() => import('../pages/shares/OpenShared.tsx'));
const SharedReport = lazy(() => import('../pages/shares/SharedReport.tsx'));
const Recommendations = lazy(() => import('../pages/recommendations/Recommendations.tsx'));
const VesselsToClear = lazy(() => import('../pages/recommendations/VesselsToClear.tsx'));
const VesselList = lazy(() => import('../pages/vessels/VesselList.tsx'));
const VesselPage = lazy(() => import('../pages/vessels/VesselPage.tsx'));
const VesselEditor = lazy(() => import('../pages/vessels/VesselEditor.tsx'));
const Catalogue = lazy(() => import('../pages/catalogue/Catalogue.tsx'));
const EntryPage = lazy(() => import('../pages/catalogue/EntryPage.tsx'));
const EntryEditor = lazy(() => import('../pages/catalogue/EntryEditor.tsx'));
const Capture = lazy(() => import('../pages/capture/Capture.tsx'));
const Firm = lazy(() => import('../pages/firm/Firm.tsx'));

/** The portal: what the address and the person signed in decide between them. */
export function App() {
  return (
    <Router hook={useGuardedLocation}>
      <Switch>
        <Route path="/welcome">
          <Layout me={null}>
            <Welcome />
          </Layout>
        </Route>
        <Route path="/capture/*?">
          <ErrorBoundary>
            <Suspense>
              <Capture />
            </Suspense>
          </ErrorBoundary>
        </Route>
        <Route path="/shared">
          <Layout me={null}>
            <OpenShared />
          </Layout>
        </Route>
        <Route path="/shared/:id">
          {({ id }) => (
            <Layout me={null}>
              <SharedReport key={id} id={id} />
            </Layout>
          )}
        </Route>
        <Route path="/verify/:code?">
          {({ code }) => (
            <Layout me={null}>
              <Verify key={code} code={code} />
            </Layout>
          )}
        </Route>
        <Route>
          <SignedIn />
        </Route>
      </Switch>
      <NewerVersion />
    </Router>
  );
}

function SignedIn() {
  const session = useSession();
  useBackground(session.data);
  if (session.data) {
    return (
      <MeProvider me={session.data}>
        <Layout me={session.data}>
          <Pages />
        </Layout>
      </MeProvider>
    );
  }
  if (session.error) {
    return (
      <Layout me={null}>
        <ErrorNotice error={session.error} onRetry={() => void session.refetch()} />
        <OnBoardInstead />
      </Layout>
    );
  }
  if (session.data === null) {
    return (
      <Layout me={null}>
        <SignIn />
      </Layout>
    );
  }
  return <Layout me={null}>{session.fetchStatus === 'paused' ? <OnBoardInstead /> : null}</Layout>;
}

/** What still works without a connection. */
function OnBoardInstead() {
  return (
    <p className="text">
      There is no connection to the server. What you do on board works without one:{' '}
      <Link href="/capture">photos, notes, coverage and worksheets on board</Link>.
    </p>
  );
}

function Pages() {
  const staff = useIsStaff();
  return (
    <Switch>
      <Route path="/">
        <Redirect to="/surveys" replace />
      </Route>
      <Route path="/sign-in">
        <Redirect to="/surveys" replace />
      </Route>
      <Route path="/surveys" component={staff ? JobList : SurveyList} />
      {staff ? <Route path="/surveys/new" component={NewSurvey} /> : null}
      {staff ? <Route path="/surveys/bring-in" component={ChooseSurveyFor} /> : null}
      <Route path="/surveys/:id">{({ id }) => <Survey id={id} />}</Route>
      {staff ? <Route path="/surveys/:id/bring-in">{({ id }) => <BringIn key={id} id={id} />}</Route> : null}
      <Route path="/surveys/:id/reading">{({ id }) => <Reading id={id} />}</Route>
      <Route path="/surveys/:id/parties">{({ id }) => <Parties id={id} />}</Route>
      <Route path="/surveys/:id/engagement">{({ id }) => <Engagement id={id} />}</Route>
      {staff ? (
        <Route path="/surveys/:id/quotations/new">{({ id }) => <QuotationEditor surveyId={id} />}</Route>
      ) : null}
      <Route path="/surveys/:id/quotations/:quotationId">
        {({ id, quotationId }) => <QuotationPage key={quotationId} surveyId={id} id={quotationId} />}
      </Route>
      {staff ? (
        <Route path="/surveys/:id/quotations/:quotationId/edit">
          {({ id, quotationId }) => <QuotationEditor key={quotationId} surveyId={id} id={quotationId} />}
        </Route>
      ) : null}
      {staff ? (
        <Route path="/surveys/:id/invoices/new">{({ id }) => <InvoiceEditor surveyId={id} />}</Route>
      ) : null}
      {staff ? <Route path="/invoices" component={InvoiceList} /> : null}
      <Route path="/invoices/:id">{({ id }) => <InvoicePage key={id} id={id} />}</Route>
      {staff ? <Route path="/surveys/:id/attendances">{({ id }) => <Attendances id={id} />}</Route> : null}
      {staff ? <Route path="/surveys/:id/photos">{({ id }) => <Photos id={id} />}</Route> : null}
      {staff ? <Route path="/surveys/:id/photos/pairs">{({ id }) => <Pairs id={id} />}</Route> : null}
      {staff ? (
        <Route path="/surveys/:id/photos/:photoId">
          {({ id, photoId }) => <PhotoPage key={photoId} surveyId={id} photoId={photoId} />}
        </Route>
      ) : null}
      {staff ? (
        <Route path="/surveys/:id/photos/:photoId/marks">
          {({ id, photoId }) => <MarkEditor key={photoId} surveyId={id} photoId={photoId} />}
        </Route>
      ) : null}
      {staff ? <Route path="/surveys/:id/findings">{({ id }) => <Findings id={id} />}</Route> : null}
      {staff ? (
        // One route for both, so that a new finding stays on its screen when its draft gets an address.
        <Route path={/^\/surveys\/(?<id>[^/]+)\/findings\/(?<which>new|[^/]+\/edit)\/?$/}>
          {({ id, which }) => (
            <FindingEditor key={id} surveyId={id ?? ''} which={which?.replace(/\/edit$/, '') ?? ''} />
          )}
        </Route>
      ) : null}
      {staff ? <Route path="/surveys/:id/worksheets">{({ id }) => <Worksheets id={id} />}</Route> : null}
      {staff ? <Route path="/surveys/:id/worksheets/new">{({ id }) => <ChooseKind id={id} />}</Route> : null}
      {staff ? (
        <Route path="/surveys/:id/worksheets/new/:kind">
          {({ id, kind }) => <NewWorksheet key={kind} surveyId={id} kind={kind} />}
        </Route>
      ) : null}
      {staff ? (
        <Route path="/surveys/:id/worksheets/:worksheetId">
          {({ id, worksheetId }) => (
            <EditWorksheet key={worksheetId} surveyId={id} worksheetId={worksheetId} />
          )}
        </Route>
      ) : null}
      {staff ? <Route path="/surveys/:id/coverage">{({ id }) => <Coverage key={id} id={id} />}</Route> : null}
      {staff ? <Route path="/surveys/:id/equipment">{({ id }) => <Equipment id={id} />}</Route> : null}
      {staff ? (
        <Route path="/surveys/:id/equipment/new">{({ id }) => <EquipmentEditor surveyId={id} />}</Route>
      ) : null}
      {staff ? (
        <Route path="/surveys/:id/equipment/:itemId">
          {({ id, itemId }) => <EquipmentEditor key={itemId} surveyId={id} itemId={itemId} />}
        </Route>
      ) : null}
      <Route path="/worksheets/:id">{({ id }) => <WorksheetPage key={id} id={id} />}</Route>
      {staff ? <Route path="/surveys/:id/review">{({ id }) => <Review id={id} />}</Route> : null}
      <Route path="/reports/:id">{({ id }) => <ReportPage key={id} id={id} />}</Route>
      {staff ? <Route path="/surveys/:id/report">{({ id }) => <Reports id={id} />}</Route> : null}
      {staff ? <Route path="/surveys/:id/clearance">{({ id }) => <ClearancePage id={id} />}</Route> : null}
      {staff ? (
        <Route path="/surveys/:id/re-inspection">{({ id }) => <ReInspection key={id} id={id} />}</Route>
      ) : null}
      {staff ? <Route path="/surveys/:id/history">{({ id }) => <History id={id} />}</Route> : null}
      <Route path="/findings/:id">{({ id }) => <FindingPage key={id} id={id} />}</Route>
      <Route path="/recommendations" component={Recommendations} />
      <Route path="/recommendations/vessels" component={VesselsToClear} />
      <Route path="/systems" component={Systems} />
      <Route path="/systems/:id">{({ id }) => <SystemPage key={id} id={id} />}</Route>
      <Route path="/account" component={Account} />
      <Route path="/notices" component={Notices} />
      <Route path="/notices/settings" component={NoticeSettings} />
      {staff ? <Route path="/expiries" component={Expiries} /> : null}
      {staff ? <Route path="/vessels" component={VesselList} /> : null}
      {staff ? (
        <Route path="/vessels/new">
          <VesselEditor />
        </Route>
      ) : null}
      {staff ? <Route path="/vessels/:id">{({ id }) => <VesselPage id={id} />}</Route> : null}
      {staff ? <Route path="/vessels/:id/edit">{({ id }) => <VesselEditor id={id} />}</Route> : null}
      {staff ? <Route path="/catalogue" component={Catalogue} /> : null}
      {staff ? (
        <Route path="/catalogue/new">
          <EntryEditor />
        </Route>
      ) : null}
      {staff ? (
        <Route path="/catalogue/:key">{({ key }) => <EntryPage key={key} entryKey={key} />}</Route>
      ) : null}
      {staff ? (
        <Route path="/catalogue/:key/edit">{({ key }) => <EntryEditor key={key} entryKey={key} />}</Route>
      ) : null}
      {staff ? <Route path="/library" component={Library} /> : null}
      {staff ? <Route path="/firm" component={Firm} /> : null}
      <Route component={NotFound} />
    </Switch>
  );
}

import { ButtonLink } from '../ui/Button.tsx';
import { Page } from '../ui/Page.tsx';

/** For an address that leads nowhere, or to something that isn't shared with the person who is signed in. */
export function NotFound() {
  return (
    <Page title="There is nothing here for you">
      <div className="stack measure">
        <p>
          The address may be mistyped, the page may be gone, or the survey may not be shared with the account
          you are signed in with. If you were invited, sign in with the e-mail address the invitation was sent
          to, or ask the survey firm.
        </p>
        <ButtonLink href="/surveys" kind="main">
          Go to your surveys
        </ButtonLink>
      </div>
    </Page>
  );
}

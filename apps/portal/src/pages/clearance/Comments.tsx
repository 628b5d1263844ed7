import type { FindingComment } from '@garboard/contract/finding-comments';
import type { Finding } from '@garboard/contract/findings';
import type { Survey } from '@garboard/contract/surveys';
import type { PartyRole } from '@garboard/trade/vocabulary';
import { partyRoleLabels, partyRoles } from '@garboard/trade/vocabulary';
import { call } from '../../api/client.ts';
import { fieldError, isStatus } from '../../api/problems.ts';
import { useAction, useWholeList } from '../../api/queries.ts';
import { useKeptDraft } from '../../app/keptDraft.ts';
import { useHeldWriting } from '../../app/leaving.tsx';
import { isStaffOf } from '../../app/roles.ts';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { CheckboxGroup, TextArea } from '../../ui/Field.tsx';
import { formatInstant, listed } from '../../ui/format.ts';
import { whoWas } from '../surveys/EventSteps.tsx';

/** What is said on a finding, each to those whom its author chose. */
export function Comments({ survey, finding }: { survey: Survey; finding: Finding }) {
  const list = useWholeList('listFindingComments', { params: { id: finding.id } });
  if (isStatus(list.error, 403)) return null;
  const said = list.data ?? [];
  if (list.data && !said.length && !finding.may.comment) return null;
  return (
    <section className="stack">
      <h2>Comments</h2>
      {list.error ? <ErrorNotice quiet error={list.error} onRetry={() => void list.refetch()} /> : null}
      {said.length ? (
        <ol className="steps">
          {said.map((comment) => (
            <Said key={comment.id} comment={comment} timeZone={survey.timeZone} />
          ))}
        </ol>
      ) : null}
      {finding.may.comment ? <Write survey={survey} finding={finding} /> : null}
    </section>
  );
}

function Said({ comment, timeZone }: { comment: FindingComment; timeZone: string }) {
  const remove = useAction({
    run: () => call('removeFindingComment', { params: { id: comment.id } }),
    done: 'Taken back. That there was a comment stays on record.',
    touches: ['listFindingComments', 'listFindingEvents'],
  });
  const readers = [
    'the firm',
    ...comment.visibleTo.map((role) => `the ${partyRoleLabels[role].toLowerCase()}`),
  ];
  return (
    <li>
      {comment.removedAt ? (
        <p className="soft">Taken back on {formatInstant(comment.removedAt, timeZone)}</p>
      ) : (
        <p className="text" dir="auto">
          {comment.text}
        </p>
      )}
      <p className="soft small">
        {whoWas(comment.by)}, {formatInstant(comment.at, timeZone)}. Read by {listed(readers)}.
      </p>
      {comment.may.remove ? (
        <Button kind="quiet" busy={remove.busy} onClick={() => remove.run(undefined)}>
          Take it back
        </Button>
      ) : null}
      <ErrorNotice error={remove.error} />
    </li>
  );
}

interface Draft {
  text: string;
  visibleTo: PartyRole[];
}

function Write({ survey, finding }: { survey: Survey; finding: Finding }) {
  const empty = (): Draft => ({ text: '', visibleTo: [] });
  const draft = useKeptDraft(useMe().person.id, `comment:${finding.id}`, empty);
  const parties = useWholeList('listParties', { params: { id: survey.id } }, { enabled: isStaffOf(survey) });
  const add = useAction({
    run: (body: Draft, idempotencyKey) =>
      call('addFindingComment', { params: { id: finding.id }, body, idempotencyKey }),
    done: 'Comment added.',
    touches: ['listFindingComments', 'listFindingEvents'],
    onDone: () => void draft.clear(),
  });
  const { value, set } = draft;
  useHeldWriting(Boolean(value?.text));
  if (!value) return null;
  // The firm knows the parties and chooses among them; others, who see few of them, among all that there may be.
  const roles = partyRoles.filter(
    (role) =>
      !survey.myRoles.includes(role) && (!parties.data || parties.data.some((party) => party.role === role)),
  );
  return (
    <form
      className="stack measure"
      onSubmit={(event) => {
        event.preventDefault();
        add.run(value);
      }}
    >
      <TextArea
        label="Comment"
        required
        maxLength={5000}
        value={value.text}
        onChange={(text) => set({ ...value, text })}
        error={fieldError(add.error, '/text')}
      />
      {roles.length ? (
        <CheckboxGroup
          label="Who may read it"
          hint={
            isStaffOf(survey)
              ? 'The firm always reads it.'
              : `${survey.firmName} always reads it, and so do you.`
          }
          values={value.visibleTo}
          options={
            Object.fromEntries(roles.map((role) => [role, partyRoleLabels[role]])) as Record<
              PartyRole,
              string
            >
          }
          onChange={(visibleTo) => set({ ...value, visibleTo })}
          error={fieldError(add.error, '/visibleTo')}
        />
      ) : null}
      <ErrorNotice error={add.error} />
      <div className="actions">
        <Button type="submit" busy={add.busy} busyLabel="Adding…">
          Add the comment
        </Button>
      </div>
    </form>
  );
}

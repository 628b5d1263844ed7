import { type Language, languageLabels } from '@garboard/trade/languages';
import { type NoticeTopic, type NoticeWay, noticeTopics, waysOf } from '@garboard/trade/notice-kinds';
import { useState } from 'react';
import { Link } from 'wouter';
import type { Answer } from '../../api/client.ts';
import { call } from '../../api/client.ts';
import { fieldError } from '../../api/problems.ts';
import { useAction, useAnswer } from '../../api/queries.ts';
import { useMe } from '../../app/session.tsx';
import { Button } from '../../ui/Button.tsx';
import { Loading } from '../../ui/EmptyState.tsx';
import { ErrorNotice } from '../../ui/ErrorNotice.tsx';
import { SelectField, TextField } from '../../ui/Field.tsx';
import { formatInstant } from '../../ui/format.ts';
import { Page } from '../../ui/Page.tsx';

type Settings = Answer<'getNoticeSettings'>;

const topicLabels: Record<NoticeTopic, string> = {
  access: 'You are invited, or something is released to you',
  reports: 'Reports are issued, findings withdrawn',
  evidence: 'Evidence comes in',
  decisions: 'Evidence is accepted or returned',
  comments: 'Somebody comments on a finding',
  'due-dates': 'Due dates come near or are moved',
  overdue: 'What is overdue',
  reviews: 'Reviews within the firm',
  engagement: 'Quotations, visits and invoices',
};

const wayLabels: Record<NoticeWay, string> = {
  'at-once': 'By mail at once',
  daily: 'By mail, once a day',
  weekly: 'By mail, once a week',
  'portal-only': 'Only in the list here',
};

/** What is mailed to the person who is signed in, in which language and time zone. */
export default function NoticeSettings() {
  const { person } = useMe();
  const settings = useAnswer('getNoticeSettings', {}, { anew: true });
  return (
    <Page
      over={<Link href="/notices">Notices</Link>}
      title="What is mailed to you"
      under={`To ${person.email}. The list here has it all, whatever you choose.`}
    >
      {settings.data && settings.isFetchedAfterMount ? (
        <div className="stack">
          <Refused settings={settings.data} />
          <Form settings={settings.data} />
        </div>
      ) : settings.error ? (
        <ErrorNotice error={settings.error} onRetry={() => void settings.refetch()} />
      ) : (
        <Loading what="what is mailed to you" />
      )}
    </Page>
  );
}

/** Said when the mail server refused the address, with the way to have it tried again. */
function Refused({ settings: { mailProblem } }: { settings: Settings }) {
  const retry = useAction({
    run: (_: undefined) => call('retryMailAddress', {}),
    done: 'The next message will be sent to you again.',
    touches: ['getNoticeSettings'],
  });
  if (!mailProblem) return null;
  return (
    <section className="stack">
      <h2>Mail to you was refused</h2>
      <p className="measure">
        Since {formatInstant(mailProblem.at)} nothing is mailed to you. The mail server answered: “
        {mailProblem.answer}”
      </p>
      <ErrorNotice error={retry.error} />
      <Button busy={retry.busy} busyLabel="One moment…" onClick={() => retry.run(undefined)}>
        Try my address again
      </Button>
    </section>
  );
}

function Form({ settings }: { settings: Settings }) {
  const [language, setLanguage] = useState<Language>(settings.language);
  const [zone, setZone] = useState(settings.timeZone ?? '');
  const [topics, setTopics] = useState(settings.topics);
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const save = useAction({
    run: (body: { language: Language; timeZone: string | null; topics: Settings['topics'] }) =>
      call('updateNoticeSettings', { body }),
    done: 'Saved.',
    touches: ['getNoticeSettings'],
  });
  return (
    <form
      className="stack measure"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save.run({ language, timeZone: zone.trim() || null, topics });
      }}
    >
      <h2>Language and time</h2>
      <SelectField
        label="Language of mails"
        value={language}
        options={languageLabels}
        onChange={(value) => value && setLanguage(value)}
      />
      <TextField
        label="Time zone"
        optional
        hint={`Such as ${here}, the one of this device. Left empty, times are told as where the boat lies.`}
        error={fieldError(save.error, '/timeZone')}
        value={zone}
        onChange={setZone}
      />
      {zone === here ? null : (
        <Button kind="quiet" onClick={() => setZone(here)}>
          Use the time zone of this device
        </Button>
      )}
      <h2>How you are told</h2>
      <p className="measure">
        What happens within a few minutes comes in one message, and what you have read here meanwhile is left
        out.
      </p>
      {noticeTopics.map((topic) => (
        <SelectField
          key={topic}
          label={topicLabels[topic]}
          value={topics[topic]}
          options={
            Object.fromEntries(waysOf(topic).map((way) => [way, wayLabels[way]])) as Record<NoticeWay, string>
          }
          onChange={(way) => way && setTopics({ ...topics, [topic]: way })}
        />
      ))}
      <ErrorNotice error={save.error} />
      <Button kind="main" type="submit" busy={save.busy} busyLabel="Saving…">
        Save
      </Button>
    </form>
  );
}

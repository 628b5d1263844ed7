import type { AddressInfo } from 'node:net';
import { gatherDue, resendDue } from '@garboard/core/notices/gather-mail';
import { inTransaction } from '@garboard/db/database';
import { openMailer } from '@garboard/platform/mail';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { startServer, type TestServer } from '../support/server.ts';
import { mailWorker, toldScene } from './scene.ts';

const minute = 60_000;

let server: TestServer;
let scene: Awaited<ReturnType<typeof toldScene>>;
const received: { to: string; mail: ParsedMail }[] = [];
const running: SMTPServer[] = [];

beforeEach(async () => {
  received.length = 0;
  server = await startServer();
  scene = await toldScene(server);
});
afterEach(async () => {
  await Promise.all(running.splice(0).map((smtp) => new Promise<void>((done) => smtp.close(() => done()))));
  await server.close();
});

/** A real mail server that keeps what it is given. */
async function startSmtp(port = 0, options: SMTPServerOptions = {}): Promise<number> {
  const smtp = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onData(stream, session, done) {
      simpleParser(stream)
        .then((mail) => {
          received.push({ to: session.envelope.rcptTo[0]?.address ?? '', mail });
          done();
        })
        .catch(done);
    },
    ...options,
  });
  running.push(smtp);
  await new Promise<void>((ready) => {
    smtp.listen(port, '127.0.0.1', ready);
  });
  return (smtp.server.address() as AddressInfo).port;
}

async function stopSmtp(): Promise<void> {
  const [smtp] = running.splice(0);
  await new Promise<void>((done) => {
    if (smtp) smtp.close(() => done());
    else done();
  });
}

const workerTo = (port: number) =>
  mailWorker(
    server,
    openMailer({
      smtpUrl: `smtp://127.0.0.1:${port}`,
      dataDir: server.dataDir,
      from: 'Garboard <no-reply@garboard.example>',
    }),
  );

async function sweep({ worker }: ReturnType<typeof mailWorker>): Promise<void> {
  const ctxOf = <T>(work: (ctx: Parameters<typeof resendDue>[0]) => Promise<T>) =>
    inTransaction(server.db, [scene.firm.id], (tx) => work({ tx, clock: () => worker.now }));
  await ctxOf((ctx) => gatherDue(ctx, [scene.firm.id]));
  await ctxOf((ctx) => resendDue(ctx));
}

/** Everything that is due by now is gathered and sent. */
async function round(post: ReturnType<typeof mailWorker>, laterMs = 0): Promise<void> {
  post.later(laterMs);
  await post.work();
  await sweep(post);
  await post.work();
}

const mailsTo = (address: string) => received.filter((r) => r.to === address).map((r) => r.mail);
const personOf = (id: string) =>
  inTransaction(server.db, [], (tx) => tx.person.findUniqueOrThrow({ where: { id } }));
const settle = (person: { id: string; email: string; name: string; token: string }, patch: object) =>
  server.as(person).patch('/v1/me/notice-settings').send(patch);

it('tells the decider of evidence, with text, HTML, the way to the settings and times in the survey’s zone', async () => {
  const post = workerTo(await startSmtp());
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  await scene.sendEvidence(owner, await scene.addFinding('Hose & <clips>'));
  await round(post);
  expect(mailsTo(insurer.email)).toHaveLength(0);
  await round(post, 2 * minute);
  const [mail, ...more] = mailsTo(insurer.email);
  expect(more).toHaveLength(0);
  expect(mail?.subject).toContain(
    `Grey Wagtail, survey ${scene.number}: The owner sent evidence on finding 1`,
  );
  expect(mail?.text).toContain('The owner sent evidence on finding 1, “Hose & <clips>”: Hose renewed.');
  expect(mail?.text).toMatch(/\d{4} at \d\d:\d\d (WET|WEST|GMT|GMT\+1|UTC\+1)/);
  expect(mail?.html).toContain('Hose &#38; &#60;clips&#62;');
  expect(mail?.html).toContain('<html lang="en-GB">');
  const unsubscribe = mail?.headerLines.find(({ key }) => key === 'list-unsubscribe')?.line;
  expect(unsubscribe).toContain('<https://garboard.example/notices/settings>');
  expect(mailsTo(owner.email)).toHaveLength(0);
  expect(mailsTo(scene.firm.surveyor.email)).toHaveLength(1);
});

it('sends one message instead of ten, and none about what was read in the portal meanwhile', async () => {
  const post = workerTo(await startSmtp());
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  for (let n = 0; n < 10; n += 1) await scene.sendEvidence(owner, await scene.addFinding(`Fault ${n}`));
  await round(post);
  const list = await server.as(scene.firm.surveyor).get('/v1/notices').expect(200);
  expect(list.body.items).toHaveLength(10);
  const read = { upTo: list.body.items[0].id };
  expect((await server.as(scene.firm.surveyor).post('/v1/notices/read').send(read)).body).toEqual({
    unread: 0,
  });
  await round(post, 2 * minute);
  const [mail, ...more] = mailsTo(insurer.email);
  expect(more).toHaveLength(0);
  expect(mail?.subject).toBe('10 things to know from Garboard');
  for (let n = 0; n < 10; n += 1) expect(mail?.text).toContain(`“Fault ${n}”`);
  expect(mailsTo(scene.firm.surveyor.email)).toHaveLength(0);
  // What comes within ten minutes of a message waits for the next.
  await scene.sendEvidence(owner, await scene.addFinding('Late'));
  await round(post);
  await round(post, 5 * minute);
  expect(mailsTo(insurer.email)).toHaveLength(1);
  await round(post, 10 * minute);
  expect(mailsTo(insurer.email)).toHaveLength(2);
});

it('loses nothing and sends nothing twice while the mail server is down for a day', async () => {
  const port = await startSmtp();
  const post = workerTo(port);
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  await stopSmtp();
  await scene.sendEvidence(owner, await scene.addFinding('First'));
  await round(post);
  for (let hour = 0; hour < 24; hour += 1) {
    if (hour === 12) await scene.sendEvidence(owner, await scene.addFinding('Second'));
    await round(post, 60 * minute);
  }
  expect(received).toHaveLength(0);
  await startSmtp(port);
  for (let n = 0; n < 5; n += 1) await round(post, 61 * minute);
  const mails = mailsTo(insurer.email);
  expect(mails).toHaveLength(1);
  expect(mails[0]?.text).toContain('“First”');
  expect(mails[0]?.text).toContain('“Second”');
});

it('tries a greylisting server again, and sends once', async () => {
  let asked = 0;
  const grey = await startSmtp(0, {
    onRcptTo(_address, _session, done) {
      asked += 1;
      done(asked <= 3 ? Object.assign(new Error('4.7.1 try later'), { responseCode: 451 }) : null);
    },
  });
  const post = workerTo(grey);
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  await settle(scene.firm.surveyor, { topics: { evidence: 'portal-only' } }).expect(200);
  await scene.sendEvidence(owner, await scene.addFinding('Hose'));
  await round(post);
  for (let n = 0; n < 12; n += 1) await round(post, 2 * minute);
  expect(asked).toBe(4);
  expect(mailsTo(insurer.email)).toHaveLength(1);
  expect((await personOf(insurer.id)).mailProblem).toBeNull();
});

it('keeps an address that is refused for good, mails it no more, and again when its person asks', async () => {
  let gone = '';
  const smtp = await startSmtp(0, {
    onRcptTo({ address }, _session, done) {
      done(
        address === gone ? Object.assign(new Error('5.1.1 no such mailbox'), { responseCode: 550 }) : null,
      );
    },
  });
  const post = workerTo(smtp);
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  gone = insurer.email;
  await scene.sendEvidence(owner, await scene.addFinding('Hose'));
  await round(post);
  await round(post, 2 * minute);
  expect((await personOf(insurer.id)).mailProblem).toContain('5.1.1 no such mailbox');
  const settings = await server.as(insurer).get('/v1/me/notice-settings').expect(200);
  expect(settings.body.mailProblem.answer).toContain('no such mailbox');
  gone = '';
  await scene.sendEvidence(owner, await scene.addFinding('Clip'));
  await round(post, 20 * minute);
  await round(post, 20 * minute);
  expect(mailsTo(insurer.email)).toHaveLength(0);
  await server.as(insurer).delete('/v1/me/mail-problem').expect(204);
  await scene.sendEvidence(owner, await scene.addFinding('Valve'));
  await round(post, 20 * minute);
  await round(post, 20 * minute);
  const [mail] = mailsTo(insurer.email);
  expect(mail?.text).toContain('“Valve”');
  expect((await server.as(insurer).get('/v1/notices').expect(200)).body.items).toHaveLength(3);
});

it('does not blame an address for a refused sign-in or a message refused as such', async () => {
  const smtp = await startSmtp(0, {
    onMailFrom(_address, _session, done) {
      done(Object.assign(new Error('5.7.1 sender not allowed'), { responseCode: 550 }));
    },
  });
  const post = workerTo(smtp);
  const [owner, insurer] = [await scene.join('owner'), await scene.join('insurer')];
  await scene.sendEvidence(owner, await scene.addFinding('Hose'));
  await round(post);
  await round(post, 2 * minute);
  expect((await personOf(insurer.id)).mailProblem).toBeNull();
  const [row] = await inTransaction(server.db, [], (tx) =>
    tx.mail.findMany({ where: { personId: insurer.id } }),
  );
  expect(row).toMatchObject({ state: 'waiting', attempts: 1 });
  expect(row?.problem).toContain('sender not allowed');
});

it('writes in each person’s language and time zone', async () => {
  const post = workerTo(await startSmtp());
  const owner = await scene.join('owner');
  const said: [string, string, RegExp][] = [
    ['de', 'Asia/Tokyo', /hat einen Nachweis zu Mangel 1, „Hose“ gesandt: Hose renewed\./],
    ['fr', 'Europe/Paris', /a envoyé un justificatif pour le constat 1, « Hose » : Hose renewed\./],
    ['es', 'America/Lima', /ha enviado un justificante del defecto 1, «Hose»: Hose renewed\./],
    ['en-US', 'America/New_York', /sent evidence on finding 1, “Hose”: Hose renewed\./],
  ];
  const insurers = [];
  for (const [language, timeZone] of said) {
    const insurer = await scene.join('insurer');
    await settle(insurer, { language, timeZone }).expect(200);
    insurers.push(insurer);
  }
  await scene.sendEvidence(owner, await scene.addFinding('Hose'));
  await round(post);
  await round(post, 2 * minute);
  const [at] = await inTransaction(server.db, [scene.firm.id], (tx) => tx.notice.findMany({ take: 1 }));
  for (const [n, [language, timeZone, sentence]] of said.entries()) {
    const [mail] = mailsTo(insurers[n]?.email ?? '');
    expect(mail?.text).toMatch(sentence);
    expect(mail?.html).toContain(`<html lang="${language}">`);
    const time = new Intl.DateTimeFormat(language, { timeZone, hour: '2-digit', minute: '2-digit' });
    expect(mail?.text).toContain(
      time.format(at?.at).replace(/\s/g, mail?.text?.includes(' AM') ? ' ' : '$&'),
    );
  }
});

it('gathers a daily digest at seven by the person’s clock, and leaves out who lost sight meanwhile', async () => {
  const post = workerTo(await startSmtp());
  const [owner, insurer, other] = [
    await scene.join('owner'),
    await scene.join('insurer'),
    await scene.join('insurer'),
  ];
  for (const one of [insurer, other]) {
    await settle(one, { timeZone: 'Pacific/Auckland', topics: { evidence: 'daily' } }).expect(200);
  }
  await settle(insurer, { topics: { evidence: 'weekly' } }).expect(422);
  await scene.sendEvidence(owner, await scene.addFinding('Hose'));
  await post.work();
  const [notice] = await inTransaction(server.db, [scene.firm.id], (tx) =>
    tx.notice.findMany({ where: { personId: insurer.id } }),
  );
  const hour = new Intl.DateTimeFormat('en-GB', { timeZone: 'Pacific/Auckland', timeStyle: 'medium' });
  expect(hour.format(notice?.mailAfter ?? undefined)).toBe('07:00:00');
  await inTransaction(server.db, [scene.firm.id], (tx) =>
    tx.party.update({ where: { id: other.partyId }, data: { released: false } }),
  );
  await round(post, 25 * 60 * minute);
  expect(mailsTo(insurer.email)).toHaveLength(1);
  expect(mailsTo(other.email)).toHaveLength(0);
  expect((await server.as(other).get('/v1/notices').expect(200)).body.items).toEqual([]);
  expect((await server.as(other).get('/v1/notices/unread').expect(200)).body).toEqual({ unread: 0 });
});

it('an invitation that a server refuses is shown beside the party, until a server takes mail for it', async () => {
  const gone = 'gone@harbour.example';
  let refuses = true;
  const smtp = await startSmtp(0, {
    onRcptTo({ address }, _session, done) {
      const no = refuses && address === gone;
      done(no ? Object.assign(new Error('5.1.1 no such mailbox'), { responseCode: 550 }) : null);
    },
  });
  const post = workerTo(smtp);
  const path = `/v1/surveys/${scene.surveyId}/parties`;
  await scene.surveyor.post(path).send({ role: 'owner', name: 'O', email: gone }).expect(201);
  await expect(post.work(['mail.invitation'])).rejects.toThrow('no such mailbox');
  const stands = async () =>
    (await scene.surveyor.get(path).expect(200)).body.items.map(
      (p: { mailRefused: boolean }) => p.mailRefused,
    );
  expect(await stands()).toEqual([true]);
  refuses = false;
  await scene.surveyor.post(path).send({ role: 'buyer', name: 'O', email: gone }).expect(201);
  await post.work(['mail.invitation']);
  expect(await stands()).toEqual([false, false]);
  // Whoever has no account yet gets the link and no notice of it beside.
  await round(post);
  await round(post, 2 * minute);
  expect(mailsTo(gone).map((mail) => mail.subject)).toEqual(['Your invitation to Garboard']);
});

import { execFileSync } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { createServer, type Server } from 'node:https';
import type { AddressInfo } from 'node:net';
import { openMailer } from '@garboard/platform/mail';
import { isPublicAddress, outwardPost } from '@garboard/platform/outward-post';
import { SMTPServer } from 'smtp-server';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { newFolder, testFolder } from '../platform/folders.ts';

// Where we are the client: whom a connection reaches, and that it is encrypted to whom it should be.
let key: string;
let cert: string;
let receiver: Server;
let received = 0;
const open: SMTPServer[] = [];

beforeAll(async () => {
  const folder = await newFolder();
  execFileSync(
    'openssl',
    [
      ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2'],
      ...['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost,IP:127.0.0.1'],
      ...['-keyout', `${folder}/key.pem`, '-out', `${folder}/cert.pem`],
    ],
    { stdio: 'ignore' },
  );
  key = await readFile(`${folder}/key.pem`, 'utf8');
  cert = await readFile(`${folder}/cert.pem`, 'utf8');
  await rm(folder, { recursive: true });
  receiver = createServer({ key, cert }, (_, response) => {
    received += 1;
    response.writeHead(204).end();
  });
  await new Promise<void>((done) => receiver.listen(0, '127.0.0.1', done));
});
afterAll(async () => {
  receiver?.closeAllConnections();
  await new Promise((done) => receiver?.close(done));
  await Promise.all(open.map((smtp) => new Promise<void>((done) => smtp.close(done))));
});

const post = (url: string, allowPrivate = true) =>
  outwardPost({ url, headers: {}, body: '{}', allowPrivate, timeoutMs: 5_000 });
const portOf = () => (receiver.address() as AddressInfo).port;

test('a webhook goes to nobody whose certificate no authority vouches for', async () => {
  await expect(post(`https://localhost:${portOf()}/`)).rejects.toThrow(/self-signed/i);
  expect(received).toBe(0);
});

test('no address but a public one is sent to, in whatever way it is written', async () => {
  for (const host of [
    ...['127.0.0.1', '127.1', '2130706433', '0x7f000001', '0177.0.0.1', '0.0.0.0', '10.0.0.1', '172.16.0.1'],
    ...['192.168.0.1', '169.254.169.254', '100.64.0.1', '192.0.2.1', '224.0.0.1', '255.255.255.255'],
    ...['[::1]', '[::]', '[::ffff:127.0.0.1]', '[fe80::1]', '[fc00::1]', '[64:ff9b::7f00:1]', 'localhost'],
  ]) {
    await expect(post(`https://${host}:${portOf()}/`, false), host).rejects.toThrow(/not a public address/);
  }
  await expect(post(`http://127.0.0.1:${portOf()}/`, false)).rejects.toThrow('Only https');
  for (const scheme of ['file:///etc/passwd', 'ftp://127.0.0.1/', 'gopher://127.0.0.1/', 'data:,x']) {
    await expect(post(scheme, false)).rejects.toThrow('Only https');
  }
  expect(received).toBe(0);
  expect(isPublicAddress('198.41.0.4')).toBe(true);
});

async function smtp(
  options: ConstructorParameters<typeof SMTPServer>[0],
): Promise<{ port: number; seen: string[] }> {
  const seen: string[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disableReverseLookup: true,
    onAuth: ({ password }, _, done) => {
      seen.push(password ?? '');
      done(null, { user: 'office' });
    },
    onData: (stream, session, done) => {
      stream.resume();
      stream.on('end', () => {
        seen.push(session.secure ? 'a message, encrypted' : 'a message in the clear');
        done();
      });
    },
    ...options,
  });
  open.push(server);
  server.on('error', () => undefined);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return { port: (server.server.address() as AddressInfo).port, seen };
}

const message = {
  ...{ to: 'ines@harbour.example', subject: 'Report', text: 'Ready.', html: '<p>Ready.</p>' },
  messageId: '1@firm.example',
};

/** `0.0.0.0` reaches this machine, but isn't a name by which it is known for one. */
async function send(
  port: number,
  { host = '0.0.0.0', user = 'office:mail-secret@', query = '', scheme = 'smtp' } = {},
) {
  const smtpUrl = `${scheme}://${user}${host}:${port}${query}`;
  const mailer = openMailer({ smtpUrl, dataDir: await testFolder(), from: 'office@firm.example' });
  await mailer.sendMail(message).finally(() => mailer.close());
}

test('a password goes to no mail server that doesn’t encrypt, unless its address says so', async () => {
  const plain = await smtp({ hideSTARTTLS: true, disabledCommands: ['STARTTLS'], allowInsecureAuth: true });
  await expect(send(plain.port)).rejects.toThrow();
  expect(plain.seen).toEqual([]);
  await send(plain.port, { query: '?requireTLS=false' });
  expect(plain.seen).toEqual(['mail-secret', 'a message in the clear']);
  // A relay on this machine, and one that wants no password, are used as they are.
  await send(plain.port, { host: '127.0.0.1' });
  await send(plain.port, { user: '' });
  expect(plain.seen.filter((line) => line === 'a message in the clear')).toHaveLength(3);
});

test('a mail server’s certificate is verified, when it is upgraded to and from the start', async () => {
  const upgrades = await smtp({ key, cert });
  await expect(send(upgrades.port)).rejects.toThrow(/self-signed/i);
  const fromTheStart = await smtp({ key, cert, secure: true });
  await expect(send(fromTheStart.port, { scheme: 'smtps', host: 'localhost' })).rejects.toThrow(
    /self-signed/i,
  );
  expect([...upgrades.seen, ...fromTheStart.seen]).toEqual([]);
});

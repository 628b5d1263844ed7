import { readdir, readFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { openMailer } from '@garboard/platform/mail';
import { expect, onTestFinished, test } from 'vitest';
import { testFolder } from './folders.ts';

const message = {
  to: 'Ines Aldaro <ines@harbour.example>',
  subject: 'Ein Bericht – für Sie',
  text: 'Good day.\n\nThe report is ready.',
  html: '<p>Good day.</p>',
  messageId: '0193-abc@firm.example',
};

test('without a mail server each message is a file, and the names sort by time', async () => {
  const dataDir = await testFolder();
  const mailer = openMailer({ dataDir, from: 'Office <office@firm.example>' });
  await mailer.sendMail(message);
  await new Promise((resolve) => setTimeout(resolve, 5));
  await mailer.sendMail({ ...message, subject: 'Second' });
  const names = (await readdir(join(dataDir, 'mail'))).sort();
  expect(names).toHaveLength(2);
  const [first, second] = await Promise.all(
    names.map((name) => readFile(join(dataDir, 'mail', name), 'utf8')),
  );
  expect(first).toContain('To: Ines Aldaro <ines@harbour.example>');
  expect(first).toContain('From: Office <office@firm.example>');
  expect(first).toContain('Message-ID: <0193-abc@firm.example>');
  expect(first).toContain('The report is ready.');
  expect(first).toContain('<p>Good day.</p>');
  expect(second).toContain('Subject: Second');
});

test('a line break in an address or subject starts no header of its own', async () => {
  const dataDir = await testFolder();
  const mailer = openMailer({ dataDir, from: 'office@firm.example' });
  await mailer.sendMail({ ...message, subject: 'Hello\r\nBcc: everyone@elsewhere.example' });
  const [name = ''] = await readdir(join(dataDir, 'mail'));
  expect(await readFile(join(dataDir, 'mail', name), 'utf8')).not.toMatch(/^Bcc:/m);
});

test('with a mail server the message goes there', async () => {
  const received: string[] = [];
  // As little of an SMTP server as takes one message.
  const server = createServer((socket) => {
    let inData = false;
    let pending = '';
    socket.write('220 test\r\n');
    socket.on('data', (chunk) => {
      pending += chunk.toString('utf8');
      for (let end = pending.indexOf('\r\n'); end >= 0; end = pending.indexOf('\r\n')) {
        const line = pending.slice(0, end);
        pending = pending.slice(end + 2);
        received.push(line);
        if (inData) {
          if (line === '.') {
            inData = false;
            socket.write('250 taken\r\n');
          }
        } else if (line === 'DATA') {
          inData = true;
          socket.write('354 go on\r\n');
        } else if (line === 'QUIT') socket.end('221 bye\r\n');
        else socket.write('250 ok\r\n');
      }
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  const mailer = openMailer({
    smtpUrl: `smtp://127.0.0.1:${address.port}`,
    dataDir: await testFolder(),
    from: 'office@firm.example',
  });
  await mailer.sendMail(message);
  mailer.close();
  expect(received).toContain('RCPT TO:<ines@harbour.example>');
  expect(received).toContain('Message-ID: <0193-abc@firm.example>');
});

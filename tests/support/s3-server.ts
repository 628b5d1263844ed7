import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { dirname, join } from 'node:path';

const program = join(dirname(createRequire(import.meta.url).resolve('s3rver/package.json')), 'bin/s3rver.js');

/** What the test server takes for an account; for the AWS SDK's own environment variables. */
export const s3Account = { AWS_ACCESS_KEY_ID: 'S3RVER', AWS_SECRET_ACCESS_KEY: 'S3RVER' } as const;

export interface S3Server {
  /** Address of a store in its bucket, as in OBJECT_STORE_URL. */
  url: string;
  port: number;
  stop(): Promise<void>;
}

/** Starts an S3-compatible server as a process of its own, with one empty bucket kept in this folder. */
export async function startS3Server(folder: string, port?: number): Promise<S3Server> {
  const at = port ?? (await freePort());
  await keepFolders(join(folder, 'garboard/firm-files'));
  const child = spawn(
    process.execPath,
    // It seals the marks between the pages of a list with a cipher that OpenSSL 3 gives on demand only.
    [
      '--openssl-legacy-provider',
      program,
      '-d',
      folder,
      '-a',
      '127.0.0.1',
      '-p',
      String(at),
      '--configure-bucket',
      'garboard',
    ],
    { stdio: ['ignore', 'ignore', 'pipe'] },
  );
  let said = '';
  child.stderr.on('data', (chunk) => {
    said += chunk;
  });
  let stopped = false;
  child.once('exit', (code, signal) => {
    // Tests that find their bucket gone would look for the reason elsewhere.
    if (!stopped) console.error(`The S3 server ended by itself (${code ?? signal}). ${said.slice(-4_000)}`);
  });
  for (let tries = 0; !(await answers(at)); tries += 1) {
    if (tries > 200 || child.exitCode !== null) throw new Error(`The S3 server did not start. ${said}`);
    await new Promise((done) => setTimeout(done, 50));
  }
  return {
    url: `s3://garboard/firm-files?endpoint=http://127.0.0.1:${at}&region=eu-west-1&pathStyle=1`,
    port: at,
    async stop() {
      stopped = true;
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill('SIGKILL');
      await once(child, 'exit');
    },
  };
}

/**
 * The server removes a folder with its last object, and dies when another request is just writing into it. A file that
 * is no object of its own keeps the folders that all objects lie in.
 */
async function keepFolders(home: string): Promise<void> {
  const hex = Array.from({ length: 256 }, (_, n) => n.toString(16).padStart(2, '0'));
  for (const name of ['check', 'parts', ...hex]) {
    await mkdir(join(home, name), { recursive: true });
    await writeFile(join(home, name, 'kept'), '');
  }
}

async function answers(port: number): Promise<boolean> {
  return fetch(`http://127.0.0.1:${port}/`).then(
    () => true,
    () => false,
  );
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port is free.');
  return address.port;
}

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { connect } from 'node:net';
import { setTimeout as sleep } from 'node:timers/promises';
import { freePort } from './installation.ts';

export interface RedisServer {
  url: string;
  stop(): Promise<void>;
}

/** Starts a Redis as a process of its own, empty, kept in memory. Needs `redis-server` on PATH. */
export async function startRedis(): Promise<RedisServer> {
  const port = await freePort();
  const settings = ['--port', String(port), '--bind', '127.0.0.1', '--save', '', '--appendonly', 'no'];
  const child = spawn('redis-server', settings, { stdio: 'ignore' });
  for (let tries = 0; !(await listens(port)); tries += 1) {
    if (tries > 200 || child.exitCode !== null) throw new Error('redis-server did not start.');
    await sleep(50);
  }
  return {
    url: `redis://127.0.0.1:${port}`,
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill('SIGKILL');
      await once(child, 'exit');
    },
  };
}

async function listens(port: number): Promise<boolean> {
  const socket = connect(port, '127.0.0.1');
  try {
    await once(socket, 'connect');
    return true;
  } catch {
    return false;
  } finally {
    socket.destroy();
  }
}

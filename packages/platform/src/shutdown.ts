import type { Logger } from './logger.ts';

/**
 * Runs `stop` once when the process is told to end (SIGTERM or SIGINT), then exits: 0 when it went well,
 * 1 when it failed or took longer than `timeoutMs`. A second signal ends the process at once. A program that was
 * started by the supervisor also stops when that dies: the channel between them closes.
 */
export function onShutdown(
  log: Pick<Logger, 'info' | 'error'>,
  stop: () => Promise<void>,
  timeoutMs = 20_000,
): void {
  let stopping = false;
  const begin = async (signal: NodeJS.Signals) => {
    if (stopping) {
      log.error({ signal }, 'told to end again while stopping: ending at once');
      process.exit(1);
    }
    stopping = true;
    log.info({ signal }, 'stopping');
    const timer = setTimeout(() => {
      log.error({ timeoutMs }, 'stopping took too long');
      process.exit(1);
    }, timeoutMs);
    timer.unref();
    try {
      await stop();
      process.exit(0);
    } catch (error) {
      log.error({ err: error }, 'stopping failed');
      process.exit(1);
    }
  };
  if (process.connected) process.once('disconnect', () => void begin('SIGHUP'));
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => void begin(signal));
  }
}

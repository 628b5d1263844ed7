/**
 * The least time that some work took in so many tries, in milliseconds: what the work costs, whatever else the machine
 * does meanwhile. Of each try the clock's time or the processor's counts, whichever is less: a try that had to wait for
 * a processor took less of it than of the clock.
 */
export function leastMs(tries: number, work: () => unknown): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < tries; i += 1) {
    const start = performance.now();
    const used = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(used);
    least = Math.min(least, performance.now() - start, (user + system) / 1_000);
  }
  return least;
}

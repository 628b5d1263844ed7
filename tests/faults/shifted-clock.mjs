// Loaded into a process before anything else: its clock runs apart from the machine's by what a file says, in
// milliseconds, which is looked at every 100 ms. Timers go on as they did, as they do when a clock is set.
import { readFileSync } from 'node:fs';

const file = process.env.CLOCK_SHIFT_FILE;
const RealDate = Date;
let shift = 0;

const look = () => {
  try {
    shift = Number(readFileSync(file, 'utf8')) || 0;
  } catch {
    shift = 0;
  }
};

if (file) {
  look();
  setInterval(look, 100).unref();
  const now = () => RealDate.now() + shift;
  globalThis.Date = new Proxy(RealDate, {
    construct: (target, args, made) => Reflect.construct(target, args.length === 0 ? [now()] : args, made),
    apply: (target) => new target(now()).toString(),
    get: (target, name) => (name === 'now' ? now : Reflect.get(target, name)),
  });
}

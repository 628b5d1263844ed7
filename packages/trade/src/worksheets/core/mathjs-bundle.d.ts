declare module 'mathjs/lib/browser/math.js' {
  import type * as math from 'mathjs';

  const all: typeof math;
  export default all;
}

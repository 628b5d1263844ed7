declare module 'pg/lib/utils.js' {
  /** A value as `pg` sends it. */
  export function prepareValue(value: unknown): string | Buffer | null;
}

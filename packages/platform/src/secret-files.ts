import { readFileSync } from 'node:fs';

/** What may be given as the path of a file instead, in a variable of the same name with `_FILE` after it. */
const fromFiles = ['DATABASE_URL', 'DATABASE_DIRECT_URL', 'REDIS_URL', 'SMTP_URL', 'GARBOARD_SECRET'];

/**
 * Values kept in files, as containers are handed secrets: an environment is seen by whoever may inspect a process.
 *
 * @returns the values by name, and sentences on those that can't be had: no file there, or an empty one.
 */
export function readSecretFiles(source: NodeJS.ProcessEnv): {
  values: Record<string, string>;
  complaints: string[];
} {
  const values: Record<string, string> = {};
  const complaints: string[] = [];
  for (const name of fromFiles) {
    const path = source[`${name}_FILE`]?.trim();
    // A process that starts others hands them the value that it read.
    if (!path || source[name]?.trim()) continue;
    try {
      const text = readFileSync(path, 'utf8').trim();
      if (text) values[name] = text;
      else complaints.push(`${name}_FILE names an empty file.`);
    } catch (error) {
      complaints.push(`${name}_FILE can’t be read (${(error as NodeJS.ErrnoException).code ?? 'error'}).`);
    }
  }
  return { values, complaints };
}

import { createHash, randomBytes } from 'node:crypto';

/** A new secret for a session or a one-time link: 256 random bits. */
export const newToken = (): string => randomBytes(32).toString('base64url');

/** What is kept of a secret. It is random, so a plain hash can't be guessed back. */
export const hashToken = (token: string): string => createHash('sha256').update(token).digest('hex');

/** What a key for programs begins with, so that it is known for one wherever it turns up. */
export const apiKeyPrefix = 'gbk_';

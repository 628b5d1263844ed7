import { randomUUID } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, rename, rm, utimes } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import {
  DeleteObjectCommand,
  GetObjectCommand,
  HeadObjectCommand,
  ListObjectsV2Command,
  PutObjectCommand,
  type S3Client,
} from '@aws-sdk/client-s3';
import { ObjectMissingError, type ObjectStore, type StagedObject } from './object-store.ts';
import { type Bucket, isMissing, openBucket } from './s3-bucket.ts';
import { s3PartsIn } from './s3-parts.ts';
import { hashPath, privateFolder, type Received, receiveInto, removeOlder, sizeOf } from './stage-file.ts';

/** How long a file fetched for sharp or Chromium stays on this machine after it was last asked for. */
const copyMs = 60 * 60_000;

/**
 * Opens a store in a bucket of any S3-compatible server; `s3://bucket/prefix?endpoint=…&region=…&pathStyle=1`, with
 * the credentials that the AWS SDK finds in its usual places.
 *
 * Uploads are received and looked at on this machine first, so a bucket never holds half a file; what programs need as
 * a file is fetched into `work` and removed an hour after its last use.
 *
 * @throws Error when the address names no bucket
 */
export async function openS3ObjectStore(url: string, work: string): Promise<ObjectStore> {
  const bucket = openBucket(url);
  const { client, Bucket: name } = bucket;
  const [staging, copies] = [join(work, 'staging'), join(work, 'copies')];
  await privateFolder(staging);
  await privateFolder(copies);
  const keyOf = (sha256: string) => bucket.key(hashPath(sha256).join('/'));
  const copyOf = (sha256: string) => join(copies, hashPath(sha256)[2]);

  return {
    ...s3PartsIn(bucket),

    async stage(source, limits) {
      const received = await receiveInto(staging, source, limits);
      return stagedObject(bucket, received, keyOf(received.sha256), copyOf(received.sha256));
    },

    async read(sha256) {
      const { Body, ContentLength } = await get(client, name, keyOf(sha256), sha256);
      return { stream: Body, bytes: ContentLength };
    },

    async localFile(sha256) {
      const copy = copyOf(sha256);
      if ((await sizeOf(copy)) !== undefined) {
        await utimes(copy, new Date(), new Date());
        return copy;
      }
      const draft = join(staging, randomUUID());
      try {
        const { Body } = await get(client, name, keyOf(sha256), sha256);
        await pipeline(Body, createWriteStream(draft, { flags: 'wx', mode: 0o400 }));
        await rename(draft, copy);
      } finally {
        await rm(draft, { force: true });
      }
      return copy;
    },

    async has(sha256) {
      return (await length(bucket, keyOf(sha256))) !== undefined;
    },

    async remove(sha256) {
      await client.send(new DeleteObjectCommand({ Bucket: name, Key: keyOf(sha256) }));
      await rm(copyOf(sha256), { force: true });
    },

    async *objects() {
      let after: string | undefined;
      do {
        const page = await client.send(
          new ListObjectsV2Command({ Bucket: name, Prefix: bucket.key(''), ContinuationToken: after }),
        );
        for (const { Key, Size, LastModified } of page.Contents ?? []) {
          const sha256 = Key?.match(/\/?[0-9a-f]{2}\/[0-9a-f]{2}\/([0-9a-f]{64})$/)?.[1];
          if (sha256) yield { sha256, bytes: Size ?? 0, keptAt: LastModified ?? new Date() };
        }
        after = page.NextContinuationToken;
      } while (after);
    },

    async sweepStaging(olderThanMs) {
      await removeOlder(copies, copyMs);
      return removeOlder(staging, olderThanMs);
    },

    async check() {
      const Key = bucket.key(`check/${randomUUID()}`);
      await client.send(new PutObjectCommand({ Bucket: name, Key, Body: 'ready' }));
      await client.send(new DeleteObjectCommand({ Bucket: name, Key }));
    },
  };
}

async function get(client: S3Client, Bucket: string, Key: string, sha256: string) {
  try {
    const { Body, ContentLength } = await client.send(new GetObjectCommand({ Bucket, Key }));
    if (!Body || ContentLength === undefined) throw new ObjectMissingError(sha256);
    return { Body: Body as Readable, ContentLength };
  } catch (error) {
    throw isMissing(error) ? new ObjectMissingError(sha256) : error;
  }
}

/** Length of an object in bytes; undefined when there is none. */
async function length({ client, Bucket }: Bucket, Key: string): Promise<number | undefined> {
  try {
    return (await client.send(new HeadObjectCommand({ Bucket, Key }))).ContentLength;
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
}

function stagedObject(bucket: Bucket, received: Received, Key: string, copy: string): StagedObject {
  const { path, sha256, bytes } = received;
  let kept = false;
  return {
    sha256,
    bytes,
    get localPath() {
      return kept ? copy : path;
    },
    async keep() {
      if (kept) return;
      if ((await length(bucket, Key)) !== bytes) {
        // The server compares what arrived with the hash, and keeps nothing that differs.
        await bucket.client.send(
          new PutObjectCommand({
            Bucket: bucket.Bucket,
            Key,
            Body: createReadStream(path),
            ContentLength: bytes,
            ChecksumSHA256: Buffer.from(sha256, 'hex').toString('base64'),
          }),
        );
      }
      // A picture just received is soon asked for as a file, to make its sizes.
      await mkdir(dirname(copy), { recursive: true, mode: 0o700 });
      await rename(path, copy);
      kept = true;
    },
    async discard() {
      if (!kept) await rm(path, { force: true });
    },
  };
}

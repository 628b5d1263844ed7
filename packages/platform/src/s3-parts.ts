import { Readable } from 'node:stream';
import {
  DeleteObjectsCommand,
  GetObjectCommand,
  ListObjectsV2Command,
  PutObjectCommand,
  type _Object as S3Object,
} from '@aws-sdk/client-s3';
import { type ObjectStore, PartsMissingError } from './object-store.ts';
import type { Bucket } from './s3-bucket.ts';

type Parts = Pick<ObjectStore, 'putPart' | 'readParts' | 'dropParts' | 'sweepParts'>;

/** Keeps the parts of unfinished files in a bucket: `parts/<key>/<offset>`, so that any process can take the next. */
export function s3PartsIn(bucket: Bucket): Parts {
  const { client, Bucket: name } = bucket;
  const homeOf = (key: string) => {
    if (!/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(key))
      throw new Error(`Not a UUID: ${JSON.stringify(key)}.`);
    return bucket.key(`parts/${key}/`);
  };

  async function* below(Prefix: string): AsyncGenerator<S3Object & { Key: string }> {
    let ContinuationToken: string | undefined;
    do {
      const page = await client.send(new ListObjectsV2Command({ Bucket: name, Prefix, ContinuationToken }));
      for (const object of page.Contents ?? []) if (object.Key) yield { ...object, Key: object.Key };
      ContinuationToken = page.NextContinuationToken;
    } while (ContinuationToken);
  }

  async function remove(keys: string[]): Promise<void> {
    for (let at = 0; at < keys.length; at += 1000) {
      const Objects = keys.slice(at, at + 1000).map((Key) => ({ Key }));
      const { Errors } = await client.send(
        new DeleteObjectsCommand({ Bucket: name, Delete: { Objects, Quiet: true } }),
      );
      if (Errors?.[0])
        throw new Error(`The object store would not remove ${Errors[0].Key}: ${Errors[0].Message}.`);
    }
  }

  async function* read(key: string, bytes: number): AsyncGenerator<Uint8Array> {
    let at = 0;
    // Offsets have twelve digits, so the order of names is theirs.
    for await (const { Key } of below(homeOf(key))) {
      if (at >= bytes) break;
      if (Number(Key.slice(-12)) !== at) throw new PartsMissingError(key);
      const { Body } = await client.send(new GetObjectCommand({ Bucket: name, Key }));
      if (!Body) throw new PartsMissingError(key);
      const part = await Body.transformToByteArray();
      at += part.length;
      yield part;
    }
    if (at !== bytes) throw new PartsMissingError(key);
  }

  return {
    async putPart(key, offset, bytes) {
      const Key = `${homeOf(key)}${String(offset).padStart(12, '0')}`;
      await client.send(new PutObjectCommand({ Bucket: name, Key, Body: bytes }));
    },

    readParts: (key, bytes) => Readable.from(read(key, bytes), { objectMode: false }),

    async dropParts(key) {
      const keys: string[] = [];
      for await (const { Key } of below(homeOf(key))) keys.push(Key);
      if (keys.length > 0) await remove(keys);
    },

    async sweepParts(olderThanMs) {
      const before = Date.now() - olderThanMs;
      const files = new Map<string, { keys: string[]; last: number }>();
      for await (const { Key, LastModified } of below(bucket.key('parts/'))) {
        const home = Key.slice(0, Key.lastIndexOf('/'));
        const file = files.get(home) ?? { keys: [], last: 0 };
        file.keys.push(Key);
        file.last = Math.max(file.last, LastModified?.getTime() ?? Date.now());
        files.set(home, file);
      }
      const given = [...files.values()].filter(({ last }) => last <= before);
      for (const { keys } of given) await remove(keys);
      return given.length;
    },
  };
}

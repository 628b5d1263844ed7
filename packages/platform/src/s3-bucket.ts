import { S3Client, S3ServiceException } from '@aws-sdk/client-s3';

/** A bucket, or the part of it below a prefix. */
export interface Bucket {
  client: S3Client;
  Bucket: string;
  /** The whole key of a name within the prefix. */
  key(name: string): string;
}

/**
 * Opens `s3://bucket/prefix?endpoint=https://…&region=…&pathStyle=1`. Without an endpoint it is Amazon's; `pathStyle`
 * is for servers that don't give each bucket a host name.
 * @throws Error when no bucket is named
 */
export function openBucket(url: string): Bucket {
  const { hostname, pathname, searchParams } = new URL(url);
  if (!hostname)
    throw new Error('OBJECT_STORE_URL names no bucket: write s3://bucket or s3://bucket/prefix.');
  const prefix = pathname.replace(/^\/+|\/+$/g, '');
  const client = new S3Client({
    region: searchParams.get('region') ?? 'us-east-1',
    endpoint: searchParams.get('endpoint') ?? undefined,
    forcePathStyle: searchParams.get('pathStyle') === '1',
    // Servers other than Amazon's often don't know the checksums the SDK would add by itself.
    requestChecksumCalculation: 'WHEN_REQUIRED',
    responseChecksumValidation: 'WHEN_REQUIRED',
    maxAttempts: 4,
    requestHandler: { connectionTimeout: 3_000, requestTimeout: 30_000, throwOnRequestTimeout: true },
  });
  return { client, Bucket: hostname, key: (name) => (prefix ? `${prefix}/${name}` : name) };
}

/** Whether the server says that there is no such object. */
export function isMissing(error: unknown): boolean {
  return (
    error instanceof S3ServiceException &&
    (error.name === 'NoSuchKey' || error.name === 'NotFound' || error.$metadata.httpStatusCode === 404) &&
    error.name !== 'NoSuchBucket'
  );
}

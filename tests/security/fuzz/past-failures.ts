import type { Asked } from './request.ts';

const asked = (request: Partial<Asked> & Pick<Asked, 'route' | 'path'>): Asked => ({
  ...{ who: 'principal', by: 'bearer', query: [], headers: {}, body: { kind: 'none' } },
  ...request,
});

/** Requests that were once answered wrongly, each with what the answer was. */
export const pastFailures: { was: string; request: Asked }[] = [
  {
    was: 'the year 0 in a query: 500',
    request: asked({
      ...{ route: 'exportRecommendations', path: '/v1/recommendations.csv' },
      query: [['dueFrom', '0000-01-01']],
    }),
  },
  {
    was: 'NUL as a code to be verified: 500',
    request: asked({ route: 'verifyCode', path: '/v1/verifications/%00' }),
  },
  {
    was: 'a part of a form called as a prototype’s own: words of the framework',
    request: asked({
      ...{ route: 'uploadPhotos', path: '/v1/surveys/@own.surveys@/photos' },
      body: { kind: 'form', fields: { toString: 'x' }, files: [] },
    }),
  },
  {
    was: 'JSON with a prototype’s name: words of the framework',
    request: asked({
      ...{ route: 'createVessel', path: '/v1/vessels' },
      body: { kind: 'raw', text: '{"__proto__":{"a":1}}', type: 'application/json' },
    }),
  },
  {
    was: 'a page of a list of another size than accepted: words of the validator',
    request: asked({ route: 'listVessels', path: '/v1/vessels', query: [['limit', '1e3']] }),
  },
  {
    was: 'a form that ends in the head of a part: 500',
    request: asked({
      ...{ route: 'uploadPhotos', path: '/v1/surveys/@own.surveys@/photos' },
      body: { kind: 'raw', text: '--b\r\n\r\n', type: 'multipart/form-data; boundary=b' },
    }),
  },
];

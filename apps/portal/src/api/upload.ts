import type { Answer, RouteName } from './client.ts';
import { ProblemError, pathOf } from './client.ts';

type UploadName = Extract<RouteName, 'uploadPhotos' | 'sendClearance' | 'createImport'>;

/**
 * Sends a multipart form and reports how much of it has left, 0 to 1. `fetch` can't tell that yet.
 *
 * @throws ProblemError for a refusal, TypeError when the server can't be reached.
 */
export function upload<N extends UploadName>(
  name: N,
  id: string,
  form: FormData,
  onProgress: (share: number) => void,
  headers: Record<string, string> = {},
): Promise<Answer<N>> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', pathOf(name, { id }));
    request.setRequestHeader('accept', 'application/json');
    for (const [key, value] of Object.entries(headers)) request.setRequestHeader(key, value);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) onProgress(event.loaded / event.total);
    };
    request.onload = () => {
      const answer = parsed(request.responseText);
      if (request.status >= 200 && request.status < 300 && answer) resolve(answer as Answer<N>);
      else reject(refusal(request, answer));
    };
    request.onerror = () => reject(new TypeError('The server could not be reached.'));
    request.send(form);
  });
}

function parsed(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return null;
  }
}

function refusal(request: XMLHttpRequest, answer: unknown): ProblemError {
  const retryAfter = Number(request.getResponseHeader('retry-after')) || null;
  if (typeof answer === 'object' && answer && 'title' in answer && 'detail' in answer) {
    return new ProblemError(answer as ProblemError['problem'], retryAfter);
  }
  const detail = `The server answered ${request.status} without saying why. Try again in a moment.`;
  return new ProblemError(
    { type: 'about:blank', title: request.statusText, status: request.status, detail, instance: '' },
    retryAfter,
  );
}

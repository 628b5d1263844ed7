import { listNotices } from '@garboard/core/notices/list-notices';
import {
  getNoticeSettings,
  retryMailAddress,
  updateNoticeSettings,
} from '@garboard/core/notices/notice-settings';
import { countUnread, readNotices } from '@garboard/core/notices/read-notices';
import type { FastifyInstance } from 'fastify';
import type { Deps } from '../http/deps.ts';
import { serve } from '../http/serve.ts';

export function noticeRoutes(app: FastifyInstance, deps: Deps): void {
  serve(app, deps, 'listNotices', (ctx, { query }) => listNotices(ctx, query));
  serve(app, deps, 'countUnreadNotices', (ctx) => countUnread(ctx));
  serve(app, deps, 'readNotices', (ctx, { body }) => readNotices(ctx, body));
  serve(app, deps, 'getNoticeSettings', (ctx) => getNoticeSettings(ctx));
  serve(app, deps, 'updateNoticeSettings', (ctx, { body }) => updateNoticeSettings(ctx, body));
  serve(app, deps, 'retryMailAddress', (ctx) => retryMailAddress(ctx));
}

import * as notices from '../notices.ts';
import { route } from './route.ts';

const own = { access: 'signed-in', permission: 'own-account', tag: 'Being told' } as const;

/** What people are told, and how. */
export const noticesRoutes = {
  listNotices: route({
    ...own,
    method: 'GET',
    path: '/v1/notices',
    summary: 'What I was told, newest first',
    query: notices.noticeQuery,
    status: 200,
    response: notices.noticePage,
  }),
  countUnreadNotices: route({
    ...own,
    method: 'GET',
    path: '/v1/notices/unread',
    summary: 'How many of them I have not read',
    status: 200,
    response: notices.unreadCount,
  }),
  readNotices: route({
    ...own,
    method: 'POST',
    path: '/v1/notices/read',
    summary: 'Mark some, or all up to one, as read',
    body: notices.noticesRead,
    status: 200,
    response: notices.unreadCount,
  }),
  getNoticeSettings: route({
    ...own,
    method: 'GET',
    path: '/v1/me/notice-settings',
    summary: 'What I am mailed, in which language and time zone',
    status: 200,
    response: notices.noticeSettings,
  }),
  updateNoticeSettings: route({
    ...own,
    method: 'PATCH',
    path: '/v1/me/notice-settings',
    summary: 'Choose what I am mailed',
    body: notices.noticeSettingsPatch,
    status: 200,
    response: notices.noticeSettings,
  }),
  retryMailAddress: route({
    ...own,
    method: 'DELETE',
    path: '/v1/me/mail-problem',
    summary: 'Have mail to my address tried again after it was refused',
    status: 204,
  }),
};

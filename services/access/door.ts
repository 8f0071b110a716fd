/** The one door of this room. */
export { type Access, type Caller, createAccess, type Made } from './access.ts';
export { type CalendarTokens, calendarTokens } from './calendarToken.ts';
export { type DeviceName, heardTopics, mayDo, mayPublish, type Role, userOf } from './rights.ts';
export { newSecret, withoutSecrets } from './secrets.ts';

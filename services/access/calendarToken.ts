/**
 * The secret in the address of a place's calendar. Calendar programs cannot sign in, so whoever knows the
 * address may read the feed; a new token makes every earlier address useless.
 */
import type { Credentials } from '../store/store.ts';
import { newSecret } from './secrets.ts';

export interface CalendarTokens {
  /** The token of a place; made when it has none yet. */
  tokenOf(placeId: string): string;
  /** A new token; the one before opens nothing from now on. */
  renew(placeId: string): string;
  /** The place whose calendar this token opens; undefined for any other text. */
  placeOf(token: string): string | undefined;
}

export function calendarTokens(credentials: Credentials): CalendarTokens {
  const renew = (placeId: string) => {
    const token = newSecret();
    credentials.keepCalendarToken(placeId, token);
    return token;
  };
  return {
    tokenOf: (placeId) => credentials.calendarToken(placeId) ?? renew(placeId),
    renew,
    placeOf: (token) => credentials.placeOfCalendarToken(token),
  };
}

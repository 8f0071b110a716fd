/**
 * The phone channel: Web Push. Messages are encrypted for the browser (RFC 8291) and signed by this house
 * (RFC 8292); the push service between sees neither words nor names.
 */
import webPush from 'web-push';
import type { Phone } from '../../store/store.ts';
import { ChannelFault } from '../delivery.ts';
import type { Message } from '../message.ts';

/** How the house signs: an own P-256 key pair, base64url, and how to reach whoever runs it. */
export interface PushKeys {
  publicKey: string;
  privateKey: string;
}

export const newPushKeys = (): PushKeys => webPush.generateVAPIDKeys();

/** A push service keeps a message this long for a phone that is off. */
const keptSeconds = 2 * 24 * 3600;
const patienceMs = 20_000;
/** A push service takes 4096 bytes of ciphertext (RFC 8030, 7.2); words beyond are cut. */
const mostBytes = 3000;

export interface PushChannel {
  /** @throws ChannelFault, `isGone` when the browser has taken its agreement back */
  send(phone: Phone, message: Message): Promise<void>;
}

export function createPushChannel(options: { keys: PushKeys; contact: string }): PushChannel {
  const { keys, contact } = options;
  return {
    async send({ endpoint, p256dh, auth }, message) {
      const request = webPush.generateRequestDetails(
        { endpoint, keys: { p256dh, auth } },
        JSON.stringify(noticeOf(message)),
        {
          vapidDetails: { subject: contact, ...keys },
          TTL: keptSeconds,
          contentEncoding: 'aes128gcm',
          urgency: 'normal',
        },
      );
      const { method, headers, body } = request;
      const sent = { method, headers: stringsOf(headers), body: new Uint8Array(body ?? []) };
      let answer: Response;
      try {
        answer = await fetch(endpoint, {
          ...sent,
          // A push service answers itself; being sent elsewhere would reach into the house.
          redirect: 'error',
          signal: AbortSignal.timeout(patienceMs),
        });
      } catch {
        throw new ChannelFault('The push service did not answer.');
      }
      await answer.body?.cancel();
      if (answer.status === 404 || answer.status === 410) {
        throw new ChannelFault('This phone no longer takes messages.', { isGone: true });
      }
      if (!answer.ok) throw new ChannelFault(`The push service would not take it (${answer.status}).`);
    },
  };
}

/** What the service worker shows: a title and the first words. */
export function noticeOf({ subject, opening, items }: Message) {
  const rest = items.length === 1 ? (items[0]?.notes ?? []) : items.map(({ text }) => text);
  const body = [...opening, ...rest].join('\n');
  return { title: cut(subject, 200), body: cut(body, mostBytes) };
}

function cut(text: string, bytes: number): string {
  const encoded = new TextEncoder().encode(text);
  if (encoded.length <= bytes) return text;
  return `${new TextDecoder().decode(encoded.slice(0, bytes)).replace(/\uFFFD+$/, '')} ...`;
}

const stringsOf = (headers: object): Record<string, string> =>
  Object.fromEntries(
    Object.entries(headers)
      .filter(([name]) => name.toLowerCase() !== 'content-length')
      .map(([name, value]) => [name, String(value)]),
  );

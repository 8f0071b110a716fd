import { createECDH } from 'node:crypto';
import { afterEach, describe, expect, it } from 'vitest';
import type { Phone } from '../../services/store/store.ts';
import { createPushChannel, newPushKeys, noticeOf } from '../../services/warnings/channels/push.ts';
import { ChannelFault } from '../../services/warnings/delivery.ts';
import type { Message } from '../../services/warnings/message.ts';
import { placeId } from '../warnings/house.ts';
import { claimsOf, newSubscription, open, type Subscription, startPushService } from './pushService.ts';

type Service = Awaited<ReturnType<typeof startPushService>>;
const services: Service[] = [];
afterEach(async () => {
  for (const service of services.splice(0)) await service.close();
});
async function service(answer?: Service['answer']): Promise<Service> {
  const started = await startPushService(answer);
  services.push(started);
  return started;
}

const keys = newPushKeys();
const channel = createPushChannel({ keys, contact: 'mailto:glasshouse@example.org' });
const phoneAt = (endpoint: string, { p256dh, auth }: Subscription): Phone => ({
  placeId,
  id: 'p1',
  endpoint,
  p256dh,
  auth,
  name: 'kitchen phone',
  addedMs: 0,
});
const message = (subject: string): Message => ({
  subject,
  opening: [],
  items: [{ text: subject, notes: ['The last count was 14 whitefly a trap and week.'] }],
  parts: [],
  foot: '',
});

describe('the means of the test', () => {
  it('open the example of RFC 8291, appendix A', () => {
    const browser = createECDH('prime256v1');
    browser.setPrivateKey('q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94', 'base64url');
    const body = Buffer.from(
      'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN',
      'base64url',
    );
    expect(open(body, { keys: browser, auth: 'BTBZMqHH6r4Tts7J_aSIgg' })).toBe(
      'When I grow up, I want to be a watermelon',
    );
  });
});

describe('a message to a phone', () => {
  it('can be read by that browser and by no other', async () => {
    const { origin, received } = await service();
    const browser = newSubscription();
    await channel.send(phoneAt(`${origin}/send/abc`, browser), message('Order by Mon 18 May: 18 °C.'));
    expect(received).toHaveLength(1);
    const body = received[0]?.body ?? Buffer.alloc(0);
    expect(JSON.parse(open(body, browser))).toEqual({
      title: 'Order by Mon 18 May: 18 °C.',
      body: 'The last count was 14 whitefly a trap and week.',
    });
    expect(body.includes('whitefly')).toBe(false);
    const other = newSubscription();
    expect(() => open(body, other)).toThrow();
    expect(() => open(body, { ...browser, auth: other.auth })).toThrow();
  });

  it('carries the headers of RFC 8030 and 8291', async () => {
    const { origin, received } = await service();
    await channel.send(phoneAt(`${origin}/send/abc`, newSubscription()), message('Count the traps.'));
    expect(received[0]).toMatchObject({
      method: 'POST',
      path: '/send/abc',
      headers: { 'content-encoding': 'aes128gcm', ttl: '172800', urgency: 'normal' },
    });
  });

  it('is signed by the house, for this service, for less than a day (RFC 8292, 2)', async () => {
    const { origin, received } = await service();
    const sentAfter = Math.floor(Date.now() / 1000);
    await channel.send(phoneAt(`${origin}/send/abc`, newSubscription()), message('Count the traps.'));
    const { key, claims } = claimsOf(received[0]?.headers.authorization ?? '');
    expect(key).toBe(keys.publicKey);
    expect(claims).toMatchObject({ aud: origin, sub: 'mailto:glasshouse@example.org' });
    expect(claims.exp).toBeGreaterThan(sentAfter);
    expect(Number(claims.exp) - sentAfter).toBeLessThanOrEqual(24 * 3600);
  });

  it('fits what a push service must take, however much there is to say (RFC 8030, 7.2)', async () => {
    const { origin, received } = await service();
    const browser = newSubscription();
    const long = { ...message('Ümlaut '.repeat(200)), opening: ['Größe und Kälte. '.repeat(900)] };
    await channel.send(phoneAt(`${origin}/send/abc`, browser), long);
    const body = received[0]?.body ?? Buffer.alloc(0);
    expect(body.length).toBeLessThanOrEqual(4096);
    expect(JSON.parse(open(body, browser)).body).toMatch(/^Größe und Kälte.* \.\.\.$/s);
  });

  it('tells a browser that has left from a service that is away', async () => {
    const faultOf = async (answer: Service['answer']) => {
      const { origin } = await service(answer);
      const sent = channel.send(phoneAt(`${origin}/send/abc`, newSubscription()), message('Count.'));
      const fault: unknown = await sent.then(
        () => undefined,
        (error) => error,
      );
      if (!(fault instanceof ChannelFault)) throw new Error(`no fault at ${answer.status}`);
      return { isGone: fault.isGone, words: fault.message };
    };
    expect(await faultOf({ status: 410 })).toMatchObject({ isGone: true });
    expect(await faultOf({ status: 404 })).toMatchObject({ isGone: true });
    expect(await faultOf({ status: 429 })).toEqual({
      isGone: false,
      words: 'The push service would not take it (429).',
    });
  });

  it('is not sent elsewhere when the service says so', async () => {
    const elsewhere = await service();
    const { origin } = await service({ status: 307, location: `${elsewhere.origin}/inside` });
    const sent = channel.send(phoneAt(`${origin}/send/abc`, newSubscription()), message('Count.'));
    await expect(sent).rejects.toThrow('The push service did not answer.');
    expect(elsewhere.received).toEqual([]);
  });
});

describe('the notice a phone shows', () => {
  it('names one thing with its reason, several by their first words', () => {
    const two = { ...message('2 things'), items: [...message('Order.').items, ...message('Count.').items] };
    expect(noticeOf(two)).toMatchObject({ title: '2 things', body: 'Order.\nCount.' });
  });
});

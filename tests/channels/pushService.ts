/**
 * A push service and a browser for the tests: takes messages over HTTP as RFC 8030 says and opens them with
 * node:crypto alone, after RFC 8291 (keys) and RFC 8188 (the aes128gcm coding), without the sender's library.
 */
import {
  createDecipheriv,
  createECDH,
  createPublicKey,
  type ECDH,
  hkdfSync,
  randomBytes,
  verify,
} from 'node:crypto';
import { once } from 'node:events';
import { createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Subscription {
  p256dh: string;
  auth: string;
  keys: ECDH;
}

export function newSubscription(): Subscription {
  const keys = createECDH('prime256v1');
  keys.generateKeys();
  return {
    keys,
    p256dh: keys.getPublicKey('base64url'),
    auth: randomBytes(16).toString('base64url'),
  };
}

/** Opens one record. @throws when the tag does not fit: another key, another secret, a changed byte */
export function open(body: Buffer, { keys, auth }: Pick<Subscription, 'keys' | 'auth'>): string {
  // RFC 8188, 2.1: salt (16), record size (4), length of the key id (1), key id.
  const salt = body.subarray(0, 16);
  const recordSize = body.readUInt32BE(16);
  const senderKey = body.subarray(21, 21 + body.readUInt8(20));
  const sealed = body.subarray(21 + senderKey.length);
  if (sealed.length > recordSize) throw new Error('more than one record');
  // RFC 8291, 3.3 and 3.4.
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), keys.getPublicKey(), senderKey]);
  const shared = keys.computeSecret(senderKey);
  const material = Buffer.from(hkdfSync('sha256', shared, Buffer.from(auth, 'base64url'), info, 32));
  const derive = (label: string, bytes: number) =>
    Buffer.from(hkdfSync('sha256', material, salt, Buffer.from(`Content-Encoding: ${label}\0`), bytes));
  const decipher = createDecipheriv('aes-128-gcm', derive('aes128gcm', 16), derive('nonce', 12));
  decipher.setAuthTag(sealed.subarray(-16));
  const padded = Buffer.concat([decipher.update(sealed.subarray(0, -16)), decipher.final()]);
  // RFC 8188, 2: the last record ends with 2 and then zeros.
  const end = padded.lastIndexOf(2);
  if (padded.subarray(end + 1).some((byte) => byte !== 0)) throw new Error('no end of padding');
  return padded.subarray(0, end).toString('utf8');
}

/** What a house claims about itself (RFC 8292), with its signature checked. */
export function claimsOf(authorization: string): { key: string; claims: Record<string, unknown> } {
  const [, token = '', key = ''] = /^vapid t=([^,]+), ?k=([\w-]+)$/.exec(authorization) ?? [];
  const [header = '', body = '', signature = ''] = token.split('.');
  const point = Buffer.from(key, 'base64url');
  const publicKey = createPublicKey({
    format: 'jwk',
    key: {
      kty: 'EC',
      crv: 'P-256',
      x: point.subarray(1, 33).toString('base64url'),
      y: point.subarray(33).toString('base64url'),
    },
  });
  const isSigned = verify(
    'sha256',
    Buffer.from(`${header}.${body}`),
    { key: publicKey, dsaEncoding: 'ieee-p1363' },
    Buffer.from(signature, 'base64url'),
  );
  if (!isSigned) throw new Error('the signature does not fit the key');
  return { key, claims: JSON.parse(Buffer.from(body, 'base64url').toString('utf8')) };
}

export interface Received {
  method: string | undefined;
  path: string | undefined;
  headers: IncomingHttpHeaders;
  body: Buffer;
}

/** A service on this machine that answers every message with `status`. */
export async function startPushService(answer: { status: number; location?: string } = { status: 201 }) {
  const received: Received[] = [];
  const server = createServer(async (request, response) => {
    const parts: Buffer[] = [];
    for await (const part of request) parts.push(part as Buffer);
    const { method, url: path, headers } = request;
    received.push({ method, path, headers, body: Buffer.concat(parts) });
    response.writeHead(answer.status, answer.location === undefined ? {} : { location: answer.location });
    response.end();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const close = async () => {
    server.closeAllConnections();
    server.close();
    await once(server, 'close');
  };
  return { received, origin, answer, close };
}

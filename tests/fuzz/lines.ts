/** Bytes that are no protocol at all, on the real ports of HTTP and MQTT; afterwards both must answer as before. */
import { once } from 'node:events';
import { connect } from 'node:net';
import fc from 'fast-check';
import mqtt from 'mqtt';
import { openHouse } from '../api/house.ts';
import { openStation, placeId } from '../ingest/station.ts';
import { payloads } from './messages.ts';
import { hostileText } from './values.ts';

/** Sends the bytes, says that nothing more comes, and gathers what is answered until the line ends. */
async function sendBytes(port: number, bytes: Uint8Array): Promise<string> {
  const socket = connect(port, '127.0.0.1');
  let heard = '';
  socket.on('data', (data) => {
    heard += data.toString('latin1');
  });
  // A line that the other side cut is an answer too.
  socket.on('error', () => {});
  const over = once(socket, 'close');
  socket.end(bytes);
  await over;
  return heard;
}

const cutOrSpoilt = (whole: fc.Arbitrary<Buffer>) =>
  fc.tuple(whole, fc.nat(), fc.uint8Array({ maxLength: 8 }), fc.boolean()).map(([bytes, at, by, isCut]) => {
    const place = at % (bytes.length + 1);
    return isCut
      ? bytes.subarray(0, place)
      : Buffer.concat([bytes.subarray(0, place), by, bytes.subarray(place + by.length)]);
  });

const asks = fc
  .tuple(
    fc.constantFrom('GET', 'POST', 'PUT', 'BREW', 'CONNECT'),
    fc.oneof(fc.constantFrom('/api/places', '/api/health', '/', '*'), hostileText),
    fc.constantFrom('1.1', '1.0', '9'),
    hostileText,
  )
  .map(([method, path, version, header]) =>
    Buffer.from(
      `${method} ${path} HTTP/${version}\r\nHost: localhost\r\nX: ${header}\r\nContent-Length: 3\r\nConnection: close\r\n\r\n{}\n`,
    ),
  );

/** MQTT 3.1.1, 3.1 and 3.3: a client that signs in and publishes, as bytes. */
const packets = fc
  .tuple(
    hostileText,
    fc.constantFrom(`glasstide/${placeId}/readings/bench`, '', '$SYS/x', 'a/+', '#'),
    payloads,
    fc.nat(255),
  )
  .map(([name, topic, payload, flags]) =>
    Buffer.concat([
      packet(0x10, Buffer.concat([text('MQTT'), Buffer.from([4, 2, 0, 60]), text(name.slice(0, 100))])),
      packet(0x30 | (flags & 15), Buffer.concat([text(topic), Buffer.from([0, 1]), payload])),
      packet(flags & 0xf0, Buffer.from(payload).subarray(0, 50)),
    ]),
  );
const text = (of: string) =>
  Buffer.concat([Buffer.from([Buffer.byteLength(of) >> 8, Buffer.byteLength(of) & 255]), Buffer.from(of)]);
const packet = (first: number, rest: Buffer) =>
  Buffer.concat([Buffer.from([first, ...remainingLength(rest.length)]), rest]);
/** 2.2.3: seven bits a byte. */
const remainingLength = (length: number): number[] =>
  length < 128 ? [length] : [(length & 127) | 128, ...remainingLength(length >> 7)];

const noise = fc.uint8Array({ maxLength: 400 }).map((bytes) => Buffer.from(bytes));

export async function fuzzHttpLine(inputs: number, seed: number): Promise<void> {
  const house = await openHouse();
  await house.app.listen({ host: '127.0.0.1', port: 0 });
  const port = portOf(house.app.server.address());
  const property = fc.asyncProperty(fc.oneof(asks, cutOrSpoilt(asks), noise), async (bytes) => {
    const heard = await sendBytes(port, bytes);
    if (/^HTTP\/1\.1 5\d\d/.test(heard) && !/^HTTP\/1\.1 505/.test(heard))
      throw new Error(heard.slice(0, 300));
  });
  await fc.assert(property, { numRuns: inputs, seed });
  const answer = await fetch(`http://127.0.0.1:${port}/api/health`);
  if (answer.status !== 200) throw new Error(`Afterwards /api/health answered ${answer.status}.`);
  await house.close();
}

export async function fuzzMqttLine(inputs: number, seed: number): Promise<void> {
  const station = await openStation();
  const property = fc.asyncProperty(fc.oneof(packets, cutOrSpoilt(packets), noise), async (bytes) => {
    await sendBytes(station.port, bytes);
  });
  await fc.assert(property, { numRuns: inputs, seed });
  const board = await mqtt.connectAsync(`mqtt://127.0.0.1:${station.port}`);
  await board.publishAsync(`glasstide/${placeId}/readings/after`, '19.4', { qos: 1 });
  await board.endAsync();
  const after = (await station.readings()).filter(({ sensorId }) => sensorId === 'after');
  if (after.length !== 1) throw new Error('Afterwards a reading was not stored.');
  await station.close();
}

const portOf = (address: ReturnType<import('node:net').Server['address']>): number =>
  typeof address === 'object' && address ? address.port : 0;

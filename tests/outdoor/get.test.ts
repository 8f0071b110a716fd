/** One GET against a server of our own; only here may it reach this machine. */
import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, describe, expect, it, test } from 'vitest';
import { mayReach } from '../../services/outdoor/address.ts';
import { type GetLimits, getText } from '../../services/outdoor/get.ts';

let server: Server | undefined;
afterEach(async () => {
  server?.closeAllConnections();
  await new Promise((done) => (server ? server.close(done) : done(undefined)));
  server = undefined;
});

async function serve(handler: RequestListener): Promise<string> {
  server = createServer(handler);
  await new Promise<void>((done) => server!.listen(0, '127.0.0.1', done));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}
const here: Partial<GetLimits> = { mayReach: () => true };

describe('a fetch', () => {
  it('answers the body', async () => {
    const url = await serve((_, reply) => reply.end('{"air":[1]}'));
    expect(await getText(`${url}/air.json?key=secret`, here)).toBe('{"air":[1]}');
  });

  it('follows the same host, and tells of another without going there', async () => {
    let asked = 0;
    const url = await serve((request, reply) => {
      asked += 1;
      if (request.url === '/new') return reply.end('moved');
      const location = request.url === '/old' ? '/new' : 'http://elsewhere.example.org/a?key=secret';
      return reply.writeHead(302, { location }).end();
    });
    expect(await getText(`${url}/old`, here)).toBe('moved');
    await expect(getText(`${url}/away`, here)).rejects.toThrow(
      'sends on to http://elsewhere.example.org/a. It was not followed: set that address if you trust it.',
    );
    expect(asked).toBe(3);
  });

  it('gives up in circles, on refusals, and on too much', async () => {
    const url = await serve((request, reply) => {
      if (request.url === '/circle') return reply.writeHead(302, { location: '/circle' }).end();
      if (request.url === '/gone') return reply.writeHead(404).end();
      return reply.end('x'.repeat(2000));
    });
    await expect(getText(`${url}/circle`, here)).rejects.toThrow('leads round in circles');
    await expect(getText(`${url}/gone`, here)).rejects.toThrow('/gone answered 404.');
    await expect(getText(`${url}/large`, { ...here, mostBytes: 1000 })).rejects.toThrow(
      'more than 1000 bytes',
    );
  });

  it('does not wait for ever, and keeps the key out of its words', async () => {
    const url = await serve(() => {});
    const slow = getText(`${url}/slow?key=secret`, { ...here, timeoutMs: 50 });
    await expect(slow).rejects.toThrow(/\/slow did not answer in time\.$/);
  });

  it('never reaches this machine, by number or by name', async () => {
    let asked = 0;
    const url = await serve((_, reply) => {
      asked += 1;
      reply.end();
    });
    const refused = 'points at this machine itself or a reserved address';
    await expect(getText(url)).rejects.toThrow(refused);
    await expect(getText(url.replace('127.0.0.1', 'localhost'))).rejects.toThrow(refused);
    await expect(getText('http://[::1]/')).rejects.toThrow(refused);
    // The WHATWG URL parser reads these as 127.0.0.1 too.
    await expect(getText('http://2130706433/')).rejects.toThrow(refused);
    await expect(getText('http://0x7f.1/')).rejects.toThrow(refused);
    expect(asked).toBe(0);
  });
});

// RFC 6890 and RFC 4291; 169.254.169.254 is where clouds keep credentials.
test.each([
  ['127.0.0.1', false],
  ['127.8.9.1', false],
  ['0.0.0.0', false],
  ['169.254.169.254', false],
  ['224.0.0.1', false],
  ['255.255.255.255', false],
  ['::', false],
  ['::1', false],
  ['::ffff:127.0.0.1', false],
  ['::ffff:a9fe:a9fe', false],
  ['64:ff9b::7f00:1', false],
  ['fe80::1', false],
  ['fd00:ec2::254', false],
  ['ff02::1', false],
  ['no address', false],
  ['192.168.1.20', true],
  ['10.0.0.7', true],
  ['93.184.215.14', true],
  ['2606:2800:21f::1', true],
])('%s may be fetched from: %s', (address, may) => {
  expect(mayReach(address)).toBe(may);
});

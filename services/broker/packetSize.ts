/**
 * The largest MQTT packet that is taken. The parser gathers a packet until it is whole, and the protocol
 * allows 256 MB: a few clients could fill the memory of a small computer.
 */
import type { Socket } from 'node:net';

const largestPacketBytes = 2 * 1024 * 1024;

/** Ends the connection when a packet announces more than is taken. aedes reads by `socket.read`. */
export function refuseLargePackets(socket: Socket, most = largestPacketBytes): void {
  const announces = packetSizes();
  const read = socket.read.bind(socket);
  socket.read = (size?: number) => {
    const chunk: Buffer | null = read(size);
    if (chunk === null || announces(chunk) <= most) return chunk;
    socket.destroy(new Error('the packet is larger than is taken here'));
    return null;
  };
}

/** Follows the fixed headers through a stream (MQTT 3.1.1, 2.2.3); answers the largest length announced. */
export function packetSizes(): (chunk: Uint8Array) => number {
  /** Bytes of the present packet still to come; its header comes first. */
  let left = 0;
  let inHeader = false;
  let multiplier = 1;
  return (chunk) => {
    let largest = 0;
    for (let at = 0; at < chunk.length; ) {
      if (left > 0 && !inHeader) {
        const passed = Math.min(left, chunk.length - at);
        left -= passed;
        at += passed;
        continue;
      }
      const byte = chunk[at]!;
      at += 1;
      if (!inHeader) {
        inHeader = true;
        multiplier = 1;
        continue;
      }
      left += (byte & 127) * multiplier;
      multiplier *= 128;
      // A fifth byte of length is malformed; the parser says so.
      if (byte < 128 || multiplier > 128 ** 4) inHeader = false;
      largest = Math.max(largest, left);
    }
    return largest;
  };
}

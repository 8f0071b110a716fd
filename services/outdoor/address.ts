/** Which addresses a fetch may reach: the network and the house's own, never this machine or its cloud's secrets. */
import { BlockList, isIP } from 'node:net';

const refusedAddresses = new BlockList();
// This machine, link-local (where clouds keep credentials), multicast and broadcast (RFC 6890).
for (const [network, prefix] of [
  ['0.0.0.0', 8],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['224.0.0.0', 3],
] as const)
  refusedAddresses.addSubnet(network, prefix, 'ipv4');
for (const [network, prefix] of [
  ['::', 127],
  ['fe80::', 10],
  ['fd00:ec2::', 32],
  ['ff00::', 8],
] as const)
  refusedAddresses.addSubnet(network, prefix, 'ipv6');
// IPv4 in the clothes of IPv6 of every sort: mapped, translated (RFC 6052), 6to4.
for (const [network, prefix] of [
  ['64:ff9b::', 96],
  ['2002::', 16],
] as const)
  refusedAddresses.addSubnet(network, prefix, 'ipv6');

/** True for an IP address that may be fetched from. A weather station in the house's own network may be. */
export function mayReach(address: string): boolean {
  const family = isIP(address);
  if (family === 0) return false;
  // Mapped addresses (::ffff:127.0.0.1) are matched by the rules for IPv4.
  return !refusedAddresses.check(address, family === 4 ? 'ipv4' : 'ipv6');
}

/** Names under which a machine knows itself. */
const ownNames = /^(localhost|127(\.\d{1,3}){3}|\[?::1\]?)$/;

export function isThisMachine(host: string): boolean {
  return ownNames.test(host);
}

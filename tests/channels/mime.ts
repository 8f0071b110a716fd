/** Reads a mail as it came over the wire: just enough of RFC 5322, 2045 and 2047 for the tests. */
interface Part {
  type: string;
  body: string;
}

export function decoded(raw: string): { headers: Record<string, string>; parts: Part[] } {
  const { headers, body } = split(raw);
  const boundary = /boundary="?([^";]+)"?/.exec(headers['content-type'] ?? '')?.[1];
  if (boundary === undefined) throw new Error('the mail has no parts');
  const parts = body
    .split(`--${boundary}`)
    .slice(1, -1)
    .map((text) => split(text.replace(/^\r\n/, '')))
    .map((part) => ({
      type: (part.headers['content-type'] ?? '').split(';')[0] ?? '',
      body: decodeBody(part.body, part.headers['content-transfer-encoding'] ?? '7bit'),
    }));
  return { headers: { ...headers, subject: words(headers.subject ?? '') }, parts };
}

function split(text: string): { headers: Record<string, string>; body: string } {
  const end = text.indexOf('\r\n\r\n');
  const lines = text
    .slice(0, end)
    .replace(/\r\n[ \t]+/g, ' ')
    .split('\r\n');
  const headers = Object.fromEntries(
    lines.map((line) => {
      const colon = line.indexOf(':');
      return [line.slice(0, colon).toLowerCase(), line.slice(colon + 1).trim()];
    }),
  );
  return { headers, body: text.slice(end + 4) };
}

function decodeBody(body: string, encoding: string): string {
  if (encoding === 'base64') return Buffer.from(body, 'base64').toString('utf8');
  return encoding === 'quoted-printable' ? quoted(body.replace(/=\r\n/g, '')) : body;
}

/** Encoded words, RFC 2047. */
const words = (text: string): string =>
  text
    .replace(/\?=\s+=\?/g, '?==?')
    .replace(/=\?utf-8\?([QB])\?([^?]*)\?=/gi, (_all, kind: string, content: string) =>
      kind.toUpperCase() === 'B'
        ? Buffer.from(content, 'base64').toString('utf8')
        : quoted(content.replaceAll('_', ' ')),
    );

function quoted(text: string): string {
  const bytes = text.replace(/=([0-9A-F]{2})/gi, (_all, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
  return Buffer.from(bytes, 'latin1').toString('utf8');
}

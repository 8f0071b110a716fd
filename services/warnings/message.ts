/** A message as plain data, and its words for mail (text and HTML) and phone. */
import { formatDay, localDay, type Place } from '../model/index.ts';
import type { Warning } from '../store/store.ts';

export interface Message {
  subject: string;
  /** Paragraphs before the items. */
  opening: string[];
  items: { text: string; notes: string[] }[];
  /** Paragraphs after them, each with its own small heading. */
  parts: { title: string; lines: string[] }[];
  foot: string;
  /** Where the page is, when that is known. */
  address?: string;
}

export interface Told {
  raised: readonly Warning[];
  withdrawn: readonly Warning[];
}

/** The day's message: what is new, and what was said before and is no longer true. */
export function dailyMessage(place: Place, told: Told, address?: string): Message {
  const items = itemsOf(place, told);
  const [first] = items;
  return {
    subject: items.length === 1 && first ? first.text : `${items.length} things for ${place.name}`,
    opening: [],
    items,
    parts: [],
    foot: footOf(place),
    ...(address !== undefined && { address }),
  };
}

/** What "Try it" sends. */
export const trialMessage = (place: Place, address?: string): Message => ({
  subject: `A trial from ${place.name}`,
  opening: ['This is a trial: messages about your glasshouse arrive here.'],
  items: [],
  parts: [],
  foot: footOf(place),
  ...(address !== undefined && { address }),
});

export function itemsOf({ timeZone }: Place, { raised, withdrawn }: Told): Message['items'] {
  return [
    ...raised.map(({ text, reason, ends, deadlineMs }) => ({
      text,
      notes: [
        ...(text.includes(reason) ? [] : [reason]),
        `Until ${formatDay(localDay(deadlineMs, timeZone))}. ${ends}`,
      ],
    })),
    ...withdrawn.map(({ text, ended = '' }) => ({
      text: `No longer true: ${lowerFirst(text)}`,
      notes: [ended],
    })),
  ];
}

export const footOf = (place: Place): string =>
  `From your own glasstide, about ${place.name}. Change how you are told in its settings.`;

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Plain text, readable in any mail program. */
export function textOf({ opening, items, parts, foot, address }: Message): string {
  const blocks = [
    ...opening,
    ...items.map(({ text, notes }) => [`* ${text}`, ...notes.map((note) => `  ${note}`)].join('\n')),
    ...parts.map(({ title, lines }) => [title.toUpperCase(), ...lines].join('\n')),
    [...(address === undefined ? [] : [address]), `-- `, foot].join('\n'),
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** HTML without pictures, scripts or anything fetched: the same words, set larger. */
export function htmlOf({ subject, opening, items, parts, foot, address }: Message): string {
  const p = (text: string, style = '') => `<p style="margin:0 0 12px;${style}">${escaped(text)}</p>`;
  const item = ({ text, notes }: Message['items'][number]) =>
    `<li style="margin:0 0 16px">${p(text, 'font-weight:bold')}${notes.map((note) => p(note)).join('')}</li>`;
  const part = ({ title, lines }: Message['parts'][number]) =>
    `<h2 style="font-size:18px;margin:22px 0 8px">${escaped(title)}</h2>${lines.map((line) => p(line)).join('')}`;
  const link = address === undefined ? '' : `<p><a href="${escaped(address)}">${escaped(address)}</a></p>`;
  const list =
    items.length === 0 ? '' : `<ul style="padding-left:20px;margin:0">${items.map(item).join('')}</ul>`;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>${escaped(subject)}</title></head>
<body style="font:17px/25px Georgia,serif;color:#15212B;background:#FFFFFF;max-width:36em;margin:0 auto;padding:16px">
${opening.map((text) => p(text, 'font-size:20px;line-height:28px')).join('')}
${list}
${parts.map(part).join('')}
${link}${p(foot, 'color:#47565F;font-size:15px')}
</body></html>`;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Which refused messages a page shows, in which groups, and what each group is told. */
import type { ParkedMessage } from '../../api.ts';

export interface ParkedGroup {
  topic: string;
  /** None of the places that are set up is named by the topic. */
  ofNoPlace: boolean;
  code: string;
  messages: ParkedMessage[];
}

/** Messages of one topic refused for one reason are mended together. */
export function grouped(messages: readonly ParkedMessage[]): ParkedGroup[] {
  const groups = new Map<string, ParkedGroup>();
  for (const message of messages) {
    if (message.settled) continue;
    const key = `${message.topic} ${message.code}`;
    const group = groups.get(key) ?? {
      topic: message.topic,
      ofNoPlace: message.placeId === undefined,
      code: message.code,
      messages: [],
    };
    group.messages.push(message);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** What this page shows: the messages of its place, and those of no place, which no other page would show. */
export const shownAt = (messages: readonly ParkedMessage[], placeId: string | undefined): ParkedMessage[] =>
  messages.filter((each) => each.placeId === undefined || each.placeId === placeId);

/** Codes of messages that read the same however often they are read: only the board can mend the next ones. */
const lastingCodes: readonly string[] = ['time-implausible', 'retained-without-time', 'payload-too-large'];
export const canBeReadAgain = ({ code }: ParkedGroup): boolean => !lastingCodes.includes(code);

/** A reason often ends in its advice; cause and advice are each told once. */
export function causeAndAdvice({ reason, whatToDo }: Pick<ParkedMessage, 'reason' | 'whatToDo'>): {
  cause: string;
  advice: string;
} {
  const [cause = '', ...rest] = reason.split(/(?<=[.?!]) (?=[A-Z])/);
  return { cause, advice: rest.length > 0 ? rest.join(' ') : whatToDo };
}

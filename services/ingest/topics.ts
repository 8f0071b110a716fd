/** The topics of design §4.1, and MQTT topic filters for boards that publish elsewhere. */
import { type Refusal, refusals } from '../refusals.ts';

export type TopicMeaning =
  | { kind: 'reading' | 'health'; placeId: string; sensorId: string }
  | { kind: 'count'; placeId: string; trapId: string }
  | { kind: 'leaves' | 'outdoor'; placeId: string }
  /** What the service itself publishes. */
  | { kind: 'outgoing'; placeId: string };

const slugPattern = /^[a-z0-9][a-z0-9-]{0,62}$/;

/** Says what a topic means, or why it means nothing here. */
export function parseTopic(topic: string): TopicMeaning | Refusal {
  const [root, placeId, noun, id, ...more] = topic.split('/');
  if (root !== 'glasstide' || more.length > 0) return unknownTopic(topic);
  if (!isSlug(placeId)) return badName(topic, 'place', placeId);
  if (id === undefined) {
    if (noun === 'leaves' || noun === 'outdoor') return { kind: noun, placeId };
    if (noun === 'advice' || noun === 'warnings') return { kind: 'outgoing', placeId };
    return unknownTopic(topic);
  }
  if (noun !== 'readings' && noun !== 'counts' && noun !== 'health') return unknownTopic(topic);
  if (!isSlug(id)) return badName(topic, noun === 'counts' ? 'trap' : 'sensor', id);
  if (noun === 'counts') return { kind: 'count', placeId, trapId: id };
  return { kind: noun === 'readings' ? 'reading' : 'health', placeId, sensorId: id };
}

/** True when a topic falls under a filter: `+` is one level, `#` the rest (MQTT 3.1.1 §4.7.1). */
export function topicMatches(filter: string, topic: string): boolean {
  const wanted = filter.split('/');
  const levels = topic.split('/');
  // [MQTT-4.7.2-1] A wildcard at the start never covers $SYS and its like.
  if (topic.startsWith('$') && !filter.startsWith('$')) return false;
  for (const [index, part] of wanted.entries()) {
    if (part === '#') return true;
    if (index >= levels.length || (part !== '+' && part !== levels[index])) return false;
  }
  return wanted.length === levels.length;
}

function isSlug(text: string | undefined): text is string {
  return text !== undefined && slugPattern.test(text);
}

function unknownTopic(topic: string): Refusal {
  return {
    code: 'topic-unknown',
    reason: `Nothing here listens on ${topic}. ${refusals['topic-unknown'].whatToDo}`,
  };
}

function badName(topic: string, noun: string, received = ''): Refusal {
  const expected = 'use lower-case letters, digits and hyphens';
  return {
    code: 'topic-unknown',
    reason: `In ${topic} the ${noun} is "${received}"; ${expected}.`,
    issues: [{ path: noun, expected, received }],
  };
}

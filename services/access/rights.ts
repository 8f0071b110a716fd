/** Who may do what, as plain facts. */

/** From nobody in particular to the owner; each may do what the ones before may. */
const ranks = ['nobody', 'reader', 'helper', 'owner'] as const;
export type Role = (typeof ranks)[number];

export const mayDo = (role: Role, needed: Role): boolean => ranks.indexOf(role) >= ranks.indexOf(needed);

export interface DeviceName {
  placeId: string;
  /** Left out: a gateway that speaks for every sensor of the place. */
  sensorId?: string;
}

/** The name a board signs in with: `<place>` or `<place>/<sensor>`. */
export const userOf = ({ placeId, sensorId }: DeviceName): string =>
  sensorId === undefined ? placeId : `${placeId}/${sensorId}`;

/** Topics of ours that a board may publish on. */
export function ownTopics({ placeId, sensorId }: DeviceName): string[] {
  const root = `glasstide/${placeId}`;
  if (sensorId !== undefined) return [`${root}/readings/${sensorId}`, `${root}/health/${sensorId}`];
  return [`${root}/readings/+`, `${root}/health/+`, `${root}/counts/+`, `${root}/leaves`, `${root}/outdoor`];
}

/** What a board may listen to: what is said aloud for displays. */
export const heardTopics = ({ placeId }: DeviceName): string[] => [
  `glasstide/${placeId}/advice`,
  `glasstide/${placeId}/warnings`,
];

/**
 * Whether a board may publish on a topic. A mapped filter (of the sensor's own settings) opens topics of
 * other makers only: however wide it is, it never opens another sensor's glasstide topic.
 */
export function mayPublish(
  device: DeviceName,
  topic: string,
  parts: { matches(filter: string, topic: string): boolean; mapped(device: DeviceName): readonly string[] },
): boolean {
  if (ownTopics(device).some((filter) => parts.matches(filter, topic))) return true;
  if (topic.startsWith('glasstide/') || topic.startsWith('$')) return false;
  return parts.mapped(device).some((filter) => parts.matches(filter, topic));
}

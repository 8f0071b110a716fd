/** What the house takes from its owner alone; to others one line instead of a form that would be refused. */
import type { ComponentChildren } from 'preact';
import { isOwner } from '../access.ts';

export const ownerEnters = 'The owner of the house enters orders and releases.';

export const ownerKeeps =
  'The owner of the house keeps places, plants, traps, limits, supplier, days away and the weather.';
export const ownerMends = 'The owner of the house adds, corrects and mends sensors.';

export function OwnerOnly({ line, children }: { line?: string; children: ComponentChildren }) {
  if (isOwner.value) return <>{children}</>;
  return line ? <p class="note">{line}</p> : null;
}

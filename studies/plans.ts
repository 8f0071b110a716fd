/** Plans tried in hindsight: one parcel of any size at any time, large ones among them, and two or three in turn. */
import type { EnemyId, PestId, Place } from '../services/model/index.ts';
import { type Parcel, parcelOf } from './advisers.ts';

export interface Plan {
  name: string;
  orders: readonly { week: number; parcel: Parcel }[];
  /** The plants are washed with each order. */
  washed?: boolean;
}

/** Friends that may hold a pest, with the doses per m2 that are tried. */
const friends: Partial<Record<PestId, readonly { enemy: EnemyId; perM2: readonly number[] }[]>> = {
  'trialeurodes-vaporariorum': [
    { enemy: 'encarsia-formosa', perM2: [3, 6, 20] },
    { enemy: 'amblyseius-swirskii', perM2: [50, 200] },
  ],
  'aphis-gossypii': [
    { enemy: 'aphidius-colemani', perM2: [1, 4, 12] },
    { enemy: 'adalia-bipunctata', perM2: [5] },
  ],
  'myzus-persicae': [{ enemy: 'aphidius-colemani', perM2: [1, 4] }],
  'frankliniella-occidentalis': [
    { enemy: 'neoseiulus-cucumeris', perM2: [50, 200, 600] },
    { enemy: 'amblyseius-swirskii', perM2: [50, 200] },
    { enemy: 'orius-laevigatus', perM2: [2, 8] },
  ],
  'tetranychus-urticae': [
    { enemy: 'phytoseiulus-persimilis', perM2: [10, 40, 120] },
    { enemy: 'neoseiulus-californicus', perM2: [25, 100] },
  ],
};
const weeksTried = [4, 6, 8, 10, 12, 14, 16, 19];

export function plansFor(place: Place): Plan[] {
  const plans = place.pests.flatMap((pest) =>
    (friends[pest] ?? []).flatMap(({ enemy, perM2 }) =>
      perM2.flatMap((dose) =>
        weeksTried.flatMap((week) => {
          const parcel = parcelOf({ place }, { enemy, perM2: dose });
          const at = (...weeks: number[]): Plan => ({
            name: `${parcel.number} ${enemy} in week ${weeks.join(', ')}`,
            orders: weeks.map((each) => ({ week: each, parcel })),
          });
          return week <= 14 ? [at(week), at(week, week + 4)] : [at(week)];
        }),
      ),
    ),
  );
  // Two doses may be the same number of whole pieces.
  return [...new Map(plans.map((plan) => [plan.name, plan])).values()];
}

/**
 * What a season cost: money spent, and harm from pest-days. Harm of one pest = 1 - exp(-D / D0), D the pest-days per
 * plant (adults and young) above what a plant bears; of several the plants lose what is left in turn. Whitefly: an
 * economic injury level of 6.2 adults a plant on cucumber, which with their young for a season are some 7,000
 * pest-days, is read as a loss of 7 %. Spider mites: 0.0123 g of cucumber a mite-day (the upper value measured) on
 * plants that bear 5 kg. Aphids and thrips as whitefly, and the worth of the crop: judgement.
 */
import type { PestKind } from '../simulators/biology.ts';
import type { Truth } from '../simulators/truth.ts';

/** In the currency of the place, for the whole crop of the house. */
export const cropWorth = 250;

const harm: Record<PestKind, { bornePerPlant: number; scale: number }> = {
  whitefly: { bornePerPlant: 30, scale: 100_000 },
  aphid: { bornePerPlant: 30, scale: 100_000 },
  peachAphid: { bornePerPlant: 30, scale: 100_000 },
  thrips: { bornePerPlant: 30, scale: 100_000 },
  spiderMite: { bornePerPlant: 200, scale: 400_000 },
};

/** Worth of what the pests took, in the currency of the place. */
export function harmOf(truth: Truth): number {
  const kept = Object.entries(harm).reduce((left, [kind, { bornePerPlant, scale }]) => {
    const above = perPlant(truth, kind as PestKind).map((pests) => Math.max(0, pests - bornePerPlant));
    return left * Math.exp(-above.reduce((sum, pests) => sum + pests, 0) / scale);
  }, 1);
  return cropWorth * (1 - kept);
}

/** By another law: all is lost after so many days above what a plant bears, however many there are. Judgement. */
const daysToLoseAll = 100;

/** The same worth, were each such day to take an equal part. */
export function harmByDays(truth: Truth): number {
  const days = Object.entries(harm).map(([kind, { bornePerPlant }]) =>
    perPlant(truth, kind as PestKind).map((pests) => pests > bornePerPlant),
  );
  const harmed = days[0]!.filter((_, day) => days.some((ofPest) => ofPest[day])).length;
  return cropWorth * Math.min(1, harmed / daysToLoseAll);
}

/** Adults and young on a plant, by day. */
function perPlant(truth: Truth, kind: PestKind): number[] {
  const { adults, young } = truth.days[kind];
  return adults.map((perM2, day) => ((perM2 + young[day]!) * truth.areaM2) / truth.plants);
}

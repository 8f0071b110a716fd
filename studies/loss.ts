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
  const m2PerPlant = truth.areaM2 / truth.plants;
  const kept = Object.entries(harm).reduce((left, [kind, { bornePerPlant, scale }]) => {
    const { adults, young } = truth.days[kind as PestKind];
    const pestDays = adults.reduce((sum, perM2, day) => {
      const perPlant = (perM2 + young[day]!) * m2PerPlant;
      return sum + Math.max(0, perPlant - bornePerPlant);
    }, 0);
    return left * Math.exp(-pestDays / scale);
  }, 1);
  return cropWorth * (1 - kept);
}

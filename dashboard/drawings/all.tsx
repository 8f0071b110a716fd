/** Every picture with its scale; bodies are drawn to it from published sizes. */
import type { JSX } from 'preact';
import * as aphids from './aphids.tsx';
import * as bugs from './bugs.tsx';
import * as flies from './flies.tsx';
import * as lacewings from './lacewings.tsx';
import * as ladybirds from './ladybirds.tsx';
import * as maggots from './maggots.tsx';
import * as mealybugs from './mealybugs.tsx';
import * as mites from './mites.tsx';
import { SizeBar } from './pen.tsx';
import * as slender from './slender.tsx';
import * as wasps from './wasps.tsx';
import * as whitefly from './whitefly.tsx';

interface Drawing {
  /** Length of the bar. */
  mm: number;
  unitsPerMm: number;
  Drawn: () => JSX.Element;
  Bar: typeof SizeBar;
}
const drawn = (Drawn: () => JSX.Element, mm: number, unitsPerMm: number): Drawing => ({
  mm,
  unitsPerMm,
  Drawn,
  Bar: SizeBar,
});

/** By the id of the kind in the key. */
export const drawings: Readonly<Record<string, Drawing>> = {
  'living-scale': drawn(whitefly.LivingScale, 0.5, 190),
  'black-scale': drawn(whitefly.BlackScale, 0.5, 190),
  'tan-scale': drawn(whitefly.TanScale, 0.5, 190),
  'hole-scale': drawn(whitefly.HoleScale, 0.5, 190),
  'empty-case': drawn(whitefly.EmptyCase, 0.5, 190),
  'glasshouse-whitefly': drawn(whitefly.GlasshouseWhitefly, 0.5, 110),
  'tobacco-whitefly': drawn(whitefly.TobaccoWhitefly, 0.5, 110),
  'whitefly-eggs': drawn(whitefly.WhiteflyEggs, 0.1, 450),
  crawler: drawn(whitefly.Crawler, 0.1, 450),
  'spider-mite': drawn(mites.SpiderMite, 0.25, 290),
  'winter-mite': drawn(mites.WinterMite, 0.25, 290),
  'red-runner': drawn(mites.RedRunner, 0.25, 290),
  'pale-runner': drawn(mites.PaleRunner, 0.25, 290),
  'spider-mite-eggs': drawn(mites.SpiderMiteEggs, 0.25, 340),
  'predator-egg': drawn(mites.PredatorEgg, 0.25, 340),
  'ladybird-eggs': drawn(ladybirds.LadybirdEggs, 1, 45),
  'ladybird-larva': drawn(ladybirds.LadybirdLarva, 5, 18),
  'ladybird-pupa': drawn(ladybirds.LadybirdPupa, 5, 22),
  ladybird: drawn(ladybirds.Ladybird, 5, 22),
  aphid: drawn(aphids.Aphid, 1, 70),
  'winged-aphid': drawn(aphids.WingedAphid, 1, 60),
  'cast-skin': drawn(aphids.CastSkin, 1, 70),
  'tan-mummy': drawn(aphids.TanMummy, 1, 66),
  'black-mummy': drawn(aphids.BlackMummy, 1, 66),
  'cushion-mummy': drawn(aphids.CushionMummy, 1, 70),
  'ragged-mummy': drawn(aphids.RaggedMummy, 1, 66),
  'lacewing-egg': drawn(lacewings.LacewingEgg, 5, 24),
  'lacewing-larva': drawn(lacewings.LacewingLarva, 5, 20),
  'lacewing-cocoon': drawn(lacewings.LacewingCocoon, 2, 30),
  'lacewing-adult': drawn(lacewings.LacewingAdult, 5, 11),
  'midge-larva': drawn(maggots.MidgeLarva, 1, 65),
  'hoverfly-egg': drawn(maggots.HoverflyEgg, 0.5, 90),
  'hoverfly-larva': drawn(maggots.HoverflyLarva, 5, 14),
  'hoverfly-pupa': drawn(maggots.HoverflyPupa, 5, 14),
  'hoverfly-adult': drawn(maggots.HoverflyAdult, 5, 14),
  'gnat-larva': drawn(maggots.GnatLarva, 2, 33),
  'shore-fly-larva': drawn(maggots.ShoreFlyLarva, 2, 40),
  thrips: drawn(slender.Thrips, 0.5, 135),
  'thrips-larva': drawn(slender.ThripsLarva, 0.5, 150),
  springtail: drawn(slender.Springtail, 1, 90),
  'orius-adult': drawn(bugs.OriusAdult, 1, 80),
  'orius-nymph': drawn(bugs.OriusNymph, 0.5, 104),
  macrolophus: drawn(bugs.Macrolophus, 2, 45),
  'flower-bug': drawn(bugs.FlowerBug, 2, 43),
  'fungus-gnat': drawn(flies.FungusGnat, 2, 44),
  'aphid-midge': drawn(flies.AphidMidge, 1, 50),
  'shore-fly': drawn(flies.ShoreFly, 2, 48),
  'leaf-miner': drawn(flies.LeafMiner, 1, 72),
  'whitefly-wasp': drawn(wasps.WhiteflyWasp, 0.25, 260),
  'aphid-wasp': drawn(wasps.AphidWasp, 1, 65),
  ant: drawn(wasps.Ant, 2, 43),
  mealybug: drawn(mealybugs.Mealybug, 1, 41),
  'mealybug-ladybird-larva': drawn(mealybugs.MealybugLadybirdLarva, 5, 16),
  'mealybug-ladybird': drawn(ladybirds.MealybugLadybird, 1, 42),
};

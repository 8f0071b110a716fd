/** Names as growers say them. The species records hold the rest; the page needs only these. */
import type { EnemyId, LeafKind, PestId, TrapKind, TreatmentKind } from '../../services/model/index.ts';
import { pestWords } from './pests.ts';

export const pestNames = Object.fromEntries(
  Object.entries(pestWords).map(([pest, { name }]) => [pest, name]),
) as Record<PestId, string>;

/** `whitefly passes`, `peach aphids pass`. */
export function pestDoes(pest: PestId, verb: 'passes' | 'is over'): string {
  const many = { passes: 'pass', 'is over': 'are over' }[verb];
  return `${pestNames[pest]} ${pestNames[pest].endsWith('s') ? many : verb}`;
}

interface EnemyWords {
  name: string;
  /** Of a single one. */
  one: string;
  /** Stage as sold, as the species record has it. */
  form: string;
}
export const enemyWords: Record<EnemyId, EnemyWords> = {
  'amblyseius-swirskii': { name: 'swirskii mites', one: 'swirskii mite', form: 'mixed stages in sachets' },
  'phytoseiulus-persimilis': {
    name: 'persimilis mites',
    one: 'persimilis mite',
    form: 'adults and nymphs in a tube',
  },
  'neoseiulus-cucumeris': { name: 'cucumeris mites', one: 'cucumeris mite', form: 'mixed stages in sachets' },
  'neoseiulus-californicus': {
    name: 'californicus mites',
    one: 'californicus mite',
    form: 'mixed stages in sachets',
  },
  'amblyseius-andersoni': { name: 'andersoni mites', one: 'andersoni mite', form: 'mixed stages in sachets' },
  'encarsia-formosa': { name: 'Encarsia', one: 'Encarsia', form: 'pupa on card' },
  'eretmocerus-eremicus': { name: 'Eretmocerus', one: 'Eretmocerus', form: 'pupa on card' },
  'aphidius-colemani': { name: 'Aphidius', one: 'Aphidius', form: 'mummies in a tube' },
  'aphidius-ervi': { name: 'Aphidius ervi', one: 'Aphidius ervi', form: 'mummies in a tube' },
  'aphelinus-abdominalis': { name: 'Aphelinus', one: 'Aphelinus', form: 'black mummies in a tube' },
  'adalia-bipunctata': { name: 'ladybirds', one: 'ladybird', form: 'larvae' },
  'chrysoperla-carnea': { name: 'lacewings', one: 'lacewing', form: 'larvae' },
  'aphidoletes-aphidimyza': { name: 'aphid midges', one: 'aphid midge', form: 'pupae in moist peat' },
  'macrolophus-pygmaeus': { name: 'Macrolophus', one: 'Macrolophus', form: 'adults and nymphs' },
  'orius-laevigatus': { name: 'Orius', one: 'Orius', form: 'adults and old nymphs' },
  'delphastus-catalinae': { name: 'Delphastus', one: 'Delphastus', form: 'adults' },
  'cryptolaemus-montrouzieri': { name: 'Cryptolaemus', one: 'Cryptolaemus', form: 'adults' },
};

/** `120 Encarsia`, `1 ladybird`. */
export const animals = (n: number, enemy: EnemyId): string =>
  `${n} ${n === 1 ? enemyWords[enemy].one : enemyWords[enemy].name}`;

export const trapKindNames: Record<TrapKind, string> = {
  whitefly: 'Whitefly',
  aphid: 'Winged aphids',
  thrips: 'Thrips',
  'small-wasp': 'Small wasps',
  unknown: 'Not known',
};

const trapKindOne: Record<TrapKind, string> = {
  whitefly: 'whitefly',
  aphid: 'winged aphid',
  thrips: 'thrips',
  'small-wasp': 'small wasp',
  unknown: 'not known',
};

/** `14 whitefly`, `1 winged aphid`. */
export const trapCatch = (n: number, kind: TrapKind): string =>
  `${n} ${n === 1 ? trapKindOne[kind] : trapKindNames[kind].toLowerCase()}`;

export const leafKindWords: Record<LeafKind, { name: string; look: string; friend: boolean }> = {
  'whitefly-adult': { name: 'Whitefly', look: 'white, winged, flies up', friend: false },
  'whitefly-scale': { name: 'Whitefly scales', look: 'pale, flat, oval', friend: false },
  'black-scale': { name: 'Black scales', look: 'a friend at work', friend: true },
  aphid: { name: 'Aphids', look: 'pear shape, two pipes', friend: false },
  mummy: { name: 'Mummies', look: 'swollen, papery', friend: true },
  'spider-mite': { name: 'Spider mites', look: 'pale specks above, dots and webs below', friend: false },
  thrips: { name: 'Thrips', look: 'thin, quick; silvery marks', friend: false },
  mealybug: { name: 'Mealybugs', look: 'white wax, slow, in the joints', friend: false },
  'predatory-mite': { name: 'Predatory mites', look: 'pear shape, runs', friend: true },
  'ladybird-larva': { name: 'Ladybird larvae', look: 'dark, long, six legs', friend: true },
  'lacewing-larva': { name: 'Lacewing larvae', look: 'curved jaws, tapering', friend: true },
};

export const treatmentNames: Record<TreatmentKind, string> = {
  'water-jet': 'Washed with water',
  soap: 'Soap',
  oil: 'Oil',
  neem: 'Neem',
  pyrethrins: 'Pyrethrins',
  sulphur: 'Sulphur',
  'other-spray': 'Another spray',
};

/** A species id from outside as a name; an id we do not know yet stays readable. */
export const speciesName = (id: string): string =>
  pestNames[id as PestId] ?? enemyWords[id as EnemyId]?.name ?? id.replaceAll('-', ' ');

const scaleNames: Record<string, string> = {
  N1: 'crawler and first scale (N1)',
  N2: 'young scale (N2)',
  N3: 'young scale (N3)',
  'N4/pupa': 'old scale (N4, pupa)',
};

/** A stage as growers see it on the leaf; the record's own word where there is no other. */
export const stageName = (species: string, stage: string): string =>
  (pestWords[species as PestId]?.group === 'whitefly' ? scaleNames[stage] : undefined) ?? stage;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
